import { check, timesOf, type Facts } from '../check.ts';

const STEPS = 'layout.diagonal-step-use';
const SPEED = 'layout.diagonal-speed-use';

/** A stepping motor is held back by its controller, a servo motor by its maker. */
const decisive = ({ bounds }: Facts): string => (bounds(STEPS) ? STEPS : SPEED);

export default check({
  id: 'crossed-belts-diagonal-too-fast',
  title: 'Motor would have to turn too fast on the diagonal',
  summary: 'In a move along both axes at once one motor turns with the sum of both speeds: more steps than the controller sends, or more turns than its maker allows.',
  place: 'motion.speed',
  figure: 'layout.diagonal-speed',
  basis: 'follows from the mechanics',
  sources: [{ title: 'the limit written in the description' }],
  because: ['partner-motion.speed', 'controller.step-rate', 'controller.microsteps', 'motor.speed-limit'],
  // What is too fast along one axis already is told there.
  when: ({ bounds }) => (bounds('motor.step-rate-use')?.high ?? 0) <= 1 && (bounds('motor.speed-use')?.high ?? 0) <= 1,
  judge: (facts) => {
    const use = facts.bounds(decisive(facts));
    if (!use || use.high <= 1 + 1e-9) return undefined;
    const certain = use.nominal > 1 + 1e-9;
    if (decisive(facts) === STEPS) return { severity: certain ? 'error' : 'warning', certain };
    return { severity: certain ? 'warning' : 'information', certain };
  },
  message: (facts) => {
    const { show, bounds, certain } = facts;
    const use = bounds(decisive(facts))?.high ?? 0;
    const needs = certain ? 'needs' : 'may need';
    if (decisive(facts) === STEPS) {
      return `Diagonal ${needs} ${show('layout.diagonal-step-rate', 'high', 'controller.step-rate')} for one motor, ${timesOf(use)} the ${show('controller.step-rate', 'low')} that the controller sends: both axes then lose their places. Fewer microsteps, a larger pulley or slower axes bring it down.`;
    }
    return `Diagonal ${needs} ${show('layout.diagonal-speed', 'high')} of one motor, ${timesOf(use)} the ${show('motor.speed-limit', 'low')} allowed for it: bearings and rotor wear early. Slow both axes, or take a smaller reduction or a larger pulley.`;
  },
});
