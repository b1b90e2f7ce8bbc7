import type { Evaluation } from '../figures/evaluation.ts';
import { solvedProposal } from './entry-proposals.ts';
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
  const found = BRAKES.find((torque) => {
    if (torque <= present) return false;
    const after = context.tryWith({ 'brake.holding-torque': number(torque), 'brake.at': choice(at) });
    return holds(after) && context.passes(after);
  });
  const place = context.place('brake');
  if (found === undefined || !place) return [];
  const torque = `${found} N·m`;
  const torquePlace = context.place('brake.holding-torque');
  const changes = has && torquePlace ? [{ place: torquePlace, value: torque }] : [{ place, value: { 'holding-torque': torque, at } }];
  return [{ changes, what: `Fit a ${torque} spring-applied brake` }];
}

function counterbalance(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const mass = before.bounds('axis.moved-mass');
  const gravity = before.bounds('conditions.gravity')?.nominal;
  const inclination = before.bounds('axis.inclination')?.low;
  const place = context.place('counterbalance');
  if (!mass || gravity === undefined || inclination === undefined || !place || before.subject.isPresent('counterbalance')) return [];
  // Never more than the lightest load weighs: the axis would rise.
  const most = 0.98 * mass.low * gravity * Math.sin(inclination);
  if (most <= 0) return [];
  const share = context.solveAlong((part) => ({ 'counterbalance.force': number(part * most) }));
  if (share === undefined) return [];
  const force = Math.min(niceNumber(share * most, 'up'), most);
  const text = `${Number(force.toPrecision(2)) > most ? Math.floor(most) : Number(force.toPrecision(3))} N`;
  return [{ changes: [{ place, value: { force: text } }], what: `Counterbalance ${text} of the weight`, price: 'stored energy' }];
}

export default [
  remedy({ id: 'fit-a-brake', summary: 'Fits the smallest usual spring-applied brake that holds the load with power off.', cost: 4, cures, propose: brake }),
  remedy({
    id: 'balance-the-weight',
    summary: 'Carries part of the weight by a spring or a counterweight: no more than is needed.',
    cost: 4.5,
    cures: [
      'drops-unpowered', 'may-creep-unpowered', 'motor-cannot-lift', 'motor-margin-thin', 'rest-current-too-low', 'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'screw-buckles',
      'coupling-overloaded', 'lowering-returns-energy', 'supply-voltage-rises', 'motor-overruns-going-down', 'thrust-bearing-overloaded', 'ball-nut-life-short', 'ball-nut-dents',
    ],
    propose: counterbalance,
  }),
  remedy({
    id: 'lighter-counterbalance',
    summary: 'Takes force out of the counterbalance, which the motor has to push against on the way down.',
    cost: 2,
    cures: ['motor-overruns-going-down'],
    propose: (context) => {
      const force = context.before.bounds('counterbalance.force')?.nominal;
      return force === undefined ? [] : solvedProposal(context, { input: 'counterbalance.force', towards: 0.1 * force, say: (written) => `Lighten the counterbalance to ${written}` });
    },
  }),
];
