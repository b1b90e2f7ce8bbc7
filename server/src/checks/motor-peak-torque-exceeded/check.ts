import { check, sideBySide, timesOf } from '../check.ts';

export default check({
  id: 'motor-peak-torque-exceeded',
  title: 'Move asks for more than the peak torque',
  summary: 'The greatest torque of a move is above what the maker of the motor allows even for a short time.',
  place: 'motion.acceleration',
  figure: 'motor.peak-torque-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'common practice', source: { title: 'the peak torque written in the description' } }],
  because: ['motor.peak-torque', 'axis.moved-mass', 'motion.speed'],
  message: ({ worst, certain, bounds }) => {
    const [asked, has] = sideBySide(bounds('motor.peak-demanded-torque')?.high ?? 0, bounds('motor.peak-torque')?.low ?? 0, 'torque');
    return `Motor ${certain ? 'is' : 'may be'} asked for ${asked}, ${timesOf(worst)} its peak torque of ${has}: the amplifier holds back and the axis falls behind, or magnets and gears suffer. Ease the ramp, or take a reduction or a larger motor.`;
  },
});
