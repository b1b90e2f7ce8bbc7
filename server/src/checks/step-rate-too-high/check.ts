import { check, timesOf } from '../check.ts';

export default check({
  id: 'step-rate-too-high',
  title: 'Step rate beyond the controller',
  summary: 'The controller cannot send microsteps as fast as the move needs them.',
  place: 'motion.speed',
  figure: 'motor.step-rate-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'the limit written in the description' } },
    { at: 0.8, severity: 'warning', basis: 'our threshold' },
    { at: 0.5, severity: 'information', basis: 'our threshold' },
  ],
  because: ['controller.step-rate', 'controller.microsteps', 'screw.lead', 'pulley.teeth'],
  message: ({ show, worst, severity }) =>
    `Axis needs ${show('motor.step-rate', 'high', 'controller.step-rate')}, ${timesOf(worst)} the ${show('controller.step-rate', 'low')} that the controller sends: ${
      severity === 'error' ? 'it cannot reach this speed' : 'little is left for several motors at once'
    }. Fewer microsteps, more travel per turn or a slower axis bring it down.`,
});
