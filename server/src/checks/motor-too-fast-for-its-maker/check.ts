import { check, percent } from '../check.ts';

export default check({
  id: 'motor-too-fast-for-its-maker',
  title: 'Motor turns faster than its maker allows',
  summary: 'At the highest speed of the axis the motor turns faster than the speed limit stated for it.',
  place: 'motor.speed-limit',
  figure: 'motor.speed-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice', source: { title: 'the limit written in the description' } }],
  because: ['motion.speed', 'drive.reduction-ratio'],
  message: ({ show, worst, certain }) =>
    `Motor ${certain ? 'turns' : 'may turn'} at ${show('motor.speed', 'high')}, ${percent(worst)} of the ${show('motor.speed-limit', 'low')} allowed for it: bearings and rotor wear early. Slow the axis, or take a smaller reduction or more travel per turn.`,
});
