import { check } from '../check.ts';
import { moreTravel } from '../unpowered.ts';

export default check({
  id: 'motor-too-fast-to-estimate',
  title: 'Motor too fast for a torque estimate',
  summary: 'At this speed iron loss and drag, which the estimate leaves out, take over.',
  place: 'motion.speed',
  figure: 'motor.speed',
  bad: 'above',
  limits: [
    { at: 2 * Math.PI * 25, severity: 'warning', basis: 'common practice', source: { title: 'one measured motor stalled at 25 rev/s, and one sheet ends there', weak: true } },
    { at: 2 * Math.PI * 15, severity: 'information', basis: 'common practice', source: { title: 'one measured motor lost control of its current near 20 rev/s', weak: true } },
  ],
  // Where even the estimate stalls, that finding says so. Of a motor that is not described, nothing is estimated.
  when: ({ bounds, choice, isDefault }) => choice('motor.kind') === 'stepper' && !isDefault('motor.kind') && bounds('motor.curve-end') === undefined && (bounds('motor.torque-margin')?.low ?? Infinity) >= 1,
  because: ['screw.lead', 'pulley.teeth', 'pinion.teeth', 'drive.reduction-ratio'],
  message: (facts) =>
    `Motor turns at ${facts.show('motor.speed', 'high')}: ${facts.severity === 'warning' ? 'few stepping motors get there, and nothing but a measured curve can tell' : 'losses that the estimate leaves out begin to count'}. Take ${moreTravel(facts)} or a smaller reduction, or give measured torque points.`,
});
