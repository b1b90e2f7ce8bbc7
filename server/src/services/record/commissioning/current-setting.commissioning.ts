import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'current-setting',
  title: 'Motor current, peak of a phase',
  order: 30,
  shows: ['motor.peak-current'],
  note: (view) => (view.bounds('motor.rms-current') === undefined ? undefined : `${view.show('motor.rms-current')} root mean square`),
  caution: 'Find out whether the amplifier is set as peak or as root mean square: they differ by 1.41. Set it with the power off, then feel for heat with care.',
  hazards: ['hot-surface'],
});
