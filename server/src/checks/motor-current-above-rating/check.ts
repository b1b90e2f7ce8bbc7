import { check, timesOf } from '../check.ts';

export default check({
  id: 'motor-current-above-rating',
  title: 'Motor current above its rating',
  summary: 'The root mean square of the phase current is above the rated current.',
  place: 'drive.current-setting',
  figure: 'motor.current-use',
  bad: 'above',
  limits: [
    { at: 1.2, severity: 'error', basis: 'common practice', source: { title: 'heat grows with the square: 1.44 times the rated heat, and the iron saturates', weak: true } },
    { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'equal heat in the windings at the rated current' } },
  ],
  because: ['motor.current', 'drive.current-setting-as'],
  message: ({ show, worst, certain }) =>
    `Motor ${certain ? 'carries' : 'may carry'} ${show('motor.rms-current', 'high', 'motor.current')} rms, ${timesOf(worst)} its rated ${show('motor.current', 'low')}: it makes ${timesOf(worst ** 2)} the rated heat and ages its insulation. Set ${show('motor.current', 'low')} rms or less.`,
});
