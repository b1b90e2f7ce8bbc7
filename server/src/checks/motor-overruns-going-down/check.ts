import { check } from '../check.ts';
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
    { at: 1.5, severity: 'warning', basis: 'common practice', source: { title: 'margin for stepping motors without position feedback', weak: true } },
  ],
  // Where going up is harder, the findings about the way up say all there is.
  when: ({ bounds }) => (bounds('motor.lowering-margin')?.low ?? Infinity) < (bounds('motor.torque-margin')?.low ?? Infinity),
  because: ['axis.moved-mass', 'counterbalance.force', 'motor.holding-torque', 'motion.acceleration'],
  message: ({ show, worst, limit }) =>
    `Motor has ${multipleBeside(worst, limit)} the torque needed on the way down (${show('motor.lowering-torque', 'high')} at steady speed): it ${worst < 1 ? 'stalls or is overrun' : 'may lose steps'}. Lower speed or acceleration, lighten the counterbalance, or take a stronger motor.`,
});
