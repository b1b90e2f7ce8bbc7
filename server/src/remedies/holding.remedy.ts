import type { Evaluation } from '../figures/evaluation.ts';
import { resultText } from './entry-proposals.ts';
import { niceNumber } from './nice-values.ts';
import { choice, number, remedy, type Proposal, type RemedyContext } from './remedy.ts';

const cures = ['drops-unpowered', 'may-creep-unpowered', 'held-by-friction-alone'];

/** Rated torques in which small spring-applied brakes are made, in N·m; common practice, no published source. */
const BRAKES = [0.1, 0.2, 0.3, 0.4, 0.5, 0.8, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24, 32];

/** Holds at the worst end of what is uncertain: a cure that only turns "drops" into "may creep" is none. */
const holds = (evaluation: Evaluation): boolean => (evaluation.bounds('drive.holding-verdict')?.low ?? 2) > 1.5;

function brake(context: RemedyContext): readonly Proposal[] {
  const has = context.before.subject.isPresent('brake');
  const present = has ? (context.before.bounds('brake.holding-torque')?.nominal ?? 0) : 0;
  const at = (has ? context.before.choice('brake.at') : undefined) ?? 'motor';
  const found = BRAKES.find((torque) => torque > present && holds(context.tryWith({ 'brake.holding-torque': number(torque), 'brake.at': choice(at) })));
  const place = context.place('brake');
  if (found === undefined || !place) return [];
  const torque = `${found} N·m`;
  const torquePlace = context.place('brake.holding-torque');
  const changes = has && torquePlace ? [{ place: torquePlace, value: torque }] : [{ place, value: { 'holding-torque': torque, at } }];
  return [{ changes, title: () => `Fit a spring-applied brake of ${torque} on the ${at === 'motor' ? 'motor shaft' : 'screw'}: it holds with power off` }];
}

function counterbalance(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const mass = before.bounds('axis.moved-mass');
  const gravity = before.bounds('conditions.gravity')?.nominal;
  if (!mass || gravity === undefined || before.subject.isPresent('counterbalance') || before.choice('axis.direction') !== 'vertical') return [];
  // Between the lightest and the heaviest load the axis is balanced; the weight must still win, or the axis would rise.
  const force = niceNumber(mass.low * gravity, 'down');
  const place = context.place('counterbalance');
  if (!place || force <= 0) return [];
  const text = `${Number(force.toPrecision(3))} N`;
  return [{ changes: [{ place, value: { force: text } }], title: (after) => `Balance ${text} of the weight by a spring or counterweight (stored energy)${resultText(context, after)}` }];
}

export default [
  remedy({ id: 'fit-a-brake', summary: 'Fits the smallest usual spring-applied brake that holds the load with power off.', cures, propose: brake }),
  remedy({ id: 'balance-the-weight', summary: 'Carries most of the weight by a spring or a counterweight.', cures: [...cures, 'motor-cannot-lift', 'motor-margin-thin'], propose: counterbalance }),
];
