import { check, timesOf } from '../check.ts';

const FAR_BELOW = 0.35;

export default check({
  id: 'motor-current-far-below-rating',
  title: 'Motor current far below its rating',
  summary: 'The motor is set to so little current that most of its torque is unused.',
  place: 'drive.current-setting',
  figure: 'motor.current-use',
  basis: 'our threshold',
  sources: [{ title: 'a peak of half the rated current' }],
  // Little current is a fault only where torque is short.
  judge: ({ bounds }) => {
    const use = bounds('motor.current-use');
    if (!use || use.high >= FAR_BELOW) return undefined;
    return (bounds('motor.torque-margin')?.low ?? Infinity) < 1.5 ? 'warning' : 'information';
  },
  because: ['motor.current', 'drive.current-setting-as'],
  message: ({ bounds, show, severity }) =>
    `Motor carries ${show('motor.rms-current')} rms, ${timesOf(bounds('motor.current-use')?.nominal ?? Number.NaN)} its rated ${show('motor.current')}: ${
      severity === 'warning' ? 'torque is short, and more is there for the setting' : 'torque suffices, so a smaller motor would do, or the setting is a slip'
    }.`,
});
