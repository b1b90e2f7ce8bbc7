import { check, sideBySide, timesOf } from '../check.ts';

export default check({
  id: 'amplifier-current-short',
  title: 'Amplifier gives too little current',
  summary: 'The current that the greatest torque of a move asks for is above the largest that the amplifier gives.',
  place: 'drive.current-limit',
  figure: 'motor.amplifier-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics' }],
  because: ['motor.torque-constant', 'axis.moved-mass', 'motion.acceleration'],
  message: ({ worst, certain, bounds }) => {
    const [asked, has] = sideBySide(bounds('motor.demanded-current')?.high ?? 0, bounds('drive.current-limit')?.low ?? 0, 'current');
    return `Move ${certain ? 'asks' : 'may ask'} for ${asked}, ${timesOf(worst)} the ${has} of the amplifier: the motor falls behind until it stops with an error. Ease the ramp, take a reduction, or raise the limit if motor and amplifier stand it.`;
  },
});
