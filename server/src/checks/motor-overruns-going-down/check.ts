import { check } from '../check.ts';
import { hasFeedback, namesItsOwnLimit } from '../motor-kinds.ts';
import { multipleBeside } from '../multiples.ts';

export default check({
  id: 'motor-overruns-going-down',
  title: 'Motor lacks torque on the way down',
  summary: 'Going down is the harder direction, and the motor has too little torque for it.',
  place: 'motion.speed',
  figure: 'motor.lowering-margin',
  bad: 'below',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics' },
    { at: 'motor.margin-wanted', severity: 'warning', basis: 'common practice', source: { title: 'margin for stepping motors without position feedback, 1.5; 1.15 with it; 1.1 for DC and brushless motors', weak: true } },
  ],
  // Where going up is harder, the findings about the way up say all there is.
  when: ({ bounds }) => !namesItsOwnLimit(bounds) && (bounds('motor.lowering-margin')?.low ?? Infinity) < (bounds('motor.torque-margin')?.low ?? Infinity),
  because: ['axis.moved-mass', 'counterbalance.force', 'motor.holding-torque', 'motion.acceleration'],
  message: ({ show, bounds, choice, worst, limit, certain }) => {
    const steady = bounds('motor.lowering-torque');
    const end = steady && Math.abs(steady.low) > Math.abs(steady.high) ? 'low' : 'high';
    const fate = worst < 1 ? `${certain ? 'stalls' : 'may stall'} or is overrun` : hasFeedback(choice) ? 'may fall behind' : 'may lose steps';
    return `Motor ${certain ? 'has' : 'may have only'} ${multipleBeside(worst, limit)} the torque needed on the way down (${show('motor.lowering-torque', end)} at steady speed): it ${fate}. Lower speed or acceleration, lighten the counterbalance, or take a stronger motor.`;
  },
});
