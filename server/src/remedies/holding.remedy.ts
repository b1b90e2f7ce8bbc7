import type { Evaluation } from '../figures/evaluation.ts';
import { changeOf, solvedProposal } from './entry-proposals.ts';
import { niceNumber, withArticle } from './nice-values.ts';
import { choice, number, remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';
import { isCrossed, isWritten, transmissionOf } from './what-moves.ts';

const cures = ['drops-unpowered', 'may-creep-unpowered', 'held-by-friction-alone'];

/** Rated torques in which small spring-applied brakes are made, in N·m, and forces of clamps that grip a rail, in N; common practice, no published source. */
const BRAKES = [0.1, 0.2, 0.3, 0.4, 0.5, 0.8, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24, 32];
const CLAMPS = [20, 30, 40, 50, 60, 80, 100, 120, 160, 200, 250, 300, 400, 500, 650, 800, 1000, 1300, 1600, 2000];

/** Holds at the worst end of what is uncertain: a cure that only turns "drops" into "may creep" is none. */
const holds = (evaluation: Evaluation): boolean => (evaluation.bounds('drive.holding-verdict')?.low ?? 2) > 1.5;

type BrakePlace = 'motor' | 'shaft' | 'screw' | 'rail';

/** What is said of a brake, and what it does not do. */
function brakeWords(context: RemedyContext, at: BrakePlace, size: string): Pick<Proposal, 'what' | 'price'> {
  const moves = transmissionOf(context);
  if (at === 'rail') return { what: `Clamp the rail by a spring-applied brake of ${size}` };
  if (moves === 'screw') return { what: `Fit ${withArticle(size)} spring-applied brake` };
  const where = at === 'motor' ? 'motor' : moves === 'belt' ? 'pulley' : 'pinion';
  return { what: `Fit ${withArticle(size)} brake at the ${where}`, ...(moves === 'belt' ? { price: 'a broken belt still drops it' } : {}) };
}

/** The least usual brake at a place that holds with power off, in place of the one that is there. */
function brakeAt(context: RemedyContext, at: BrakePlace): readonly Proposal[] {
  const { before } = context;
  const place = context.place('brake');
  if (!place) return [];
  const [entry, sizes, unit] = at === 'rail' ? (['holding-force', CLAMPS, 'N'] as const) : (['holding-torque', BRAKES, 'N·m'] as const);
  const has = before.subject.isPresent('brake');
  const stays = has && before.choice('brake.at') === at;
  const present = stays ? (before.bounds(`brake.${entry}`)?.nominal ?? 0) : 0;
  const found = sizes.find((size) => {
    if (size <= present) return false;
    const after = context.tryWith({ [`brake.${entry}`]: number(size), 'brake.at': choice(at) });
    return (context.finding.check === 'broken-belt-drops' || holds(after)) && context.passes(after);
  });
  const sizePlace = context.place(`brake.${entry}`);
  if (found === undefined || !sizePlace) return [];
  const size = `${found} ${unit}`;
  const old = at === 'rail' ? 'holding-torque' : 'holding-force';
  const changes: readonly Change[] = !has
    ? [{ place, value: { [entry]: size, at } }]
    : [{ place: sizePlace, value: size }, ...(stays ? [] : [changeOf(context, 'brake.at', at), isWritten(context, `brake.${old}`) ? removal(context, `brake.${old}`) : undefined].filter((change) => change !== undefined))];
  return [{ changes, ...brakeWords(context, at, size) }];
}

function removal(context: RemedyContext, input: string): Change | undefined {
  const place = context.place(input);
  return place && { place, value: null };
}

/** A brake where there is one already, made stronger; else at every place where one can sit, the simplest first. */
function brake(context: RemedyContext): readonly Proposal[] {
  const at = context.before.subject.isPresent('brake') ? context.before.choice('brake.at') : undefined;
  if (transmissionOf(context) === 'screw') return brakeAt(context, at === 'screw' || at === 'shaft' ? at : 'motor');
  const places: readonly BrakePlace[] = at === 'motor' || at === 'shaft' || at === 'rail' ? [at, 'rail'] : transmissionOf(context) === 'belt' ? ['rail', 'motor', 'shaft'] : ['motor', 'shaft', 'rail'];
  return [...new Set(places)].flatMap((one, index) => brakeAt(context, one).map((proposal) => ({ ...proposal, cost: 4 + index / 10 })));
}

/** Part of the weight carried by another weight, which moves with the axis and must be moved too. */
function counterweight(context: RemedyContext): readonly Proposal[] {
  const { before } = context;
  const [most, gravity, place] = [mostCarried(context), before.bounds('conditions.gravity')?.nominal, context.place('counterbalance')];
  if (most === undefined || gravity === undefined || !place || before.subject.isPresent('counterbalance')) return [];
  const inputs = (newtons: number) => ({ 'counterbalance.force': number(newtons), 'counterbalance.kind': choice('weight'), 'counterbalance.mass': number(newtons / gravity) });
  const share = context.solveAlong((part) => inputs(part * most));
  if (share === undefined) return [];
  const kilograms = Math.min(niceNumber((Math.max(share, LEAST_CARRIED) * most) / gravity, 'up'), most / gravity);
  const [mass, force] = [`${Number(kilograms.toPrecision(3))} kg`, `${Number((kilograms * gravity).toPrecision(3))} N`];
  return [{ changes: [{ place, value: { kind: 'weight', force, mass } }], what: `Hang a counterweight of ${mass}`, price: `${force} stored, ${mass} more to move`, cost: 4.75 }];
}

/** Less of the weight than this is not worth a balance. */
const LEAST_CARRIED = 0.1;

/** Never more than the lightest load weighs, or the axis would rise, N. */
function mostCarried({ before }: RemedyContext): number | undefined {
  const mass = before.bounds('axis.moved-mass');
  const gravity = before.bounds('conditions.gravity')?.nominal;
  const inclination = before.bounds('axis.inclination')?.low;
  if (!mass || gravity === undefined || inclination === undefined) return undefined;
  const most = 0.98 * mass.low * gravity * Math.sin(inclination);
  return most > 0 ? most : undefined;
}

function counterbalance(context: RemedyContext): readonly Proposal[] {
  const [most, place] = [mostCarried(context), context.place('counterbalance')];
  if (most === undefined || !place || context.before.subject.isPresent('counterbalance')) return [];
  const share = context.solveAlong((part) => ({ 'counterbalance.force': number(part * most) }));
  if (share === undefined) return [];
  const carried = transmissionOf(context) === 'screw' ? share : Math.max(share, LEAST_CARRIED);
  const force = Math.min(niceNumber(carried * most, 'up'), most);
  const text = `${Number(force.toPrecision(2)) > most ? Math.floor(most) : Number(force.toPrecision(3))} N`;
  return [{ changes: [{ place, value: { force: text } }], what: `Counterbalance ${text} of the weight`, price: 'stored energy' }];
}

/** What a broken belt does then. */
const afterBreak = (after: Evaluation): string => ((after.bounds('drive.broken-belt-verdict')?.low ?? 0) >= 1.5 ? 'nothing is left to fall' : 'held when a belt breaks');

export default [
  remedy({ id: 'fit-a-brake', summary: 'Fits the smallest usual spring-applied brake that holds the load with power off: at the motor, on the shaft, or on the rail.', cost: 4, cures: [...cures, 'levelling-lost-unpowered'], propose: brake }),
  remedy({
    id: 'clamp-the-rail',
    summary: 'Fits a spring-applied brake that grips the rail, and so holds the load when a belt breaks.',
    cost: 4,
    cures: ['broken-belt-drops'],
    propose: (context) => (transmissionOf(context) === 'belt' ? brakeAt(context, 'rail').map((proposal) => ({ ...proposal, result: afterBreak })) : []),
  }),
  remedy({
    id: 'fit-a-latch',
    summary: 'Fits a latch that catches the axis at any height when nothing holds it any more. It still lets go, and what is left of the finding says so.',
    cost: 4.6,
    cures: ['drops-unpowered', 'broken-belt-drops'],
    propose: (context) => {
      const change = changeOf(context, 'axis.catcher', 'latch');
      if (!change || context.before.choice('axis.catcher') === 'latch') return [];
      return [{ changes: [change], what: 'Fit a latch that catches it at any height', result: () => 'it lets go, but falls no farther', catches: true }];
    },
  }),
  remedy({
    id: 'second-belt',
    summary: 'Hangs the load on a second belt with a drive of its own, which holds it when one of them breaks.',
    cost: 5,
    cures: ['broken-belt-drops'],
    propose: (context) => {
      const units = context.before.bounds('drive.units')?.nominal ?? 1;
      const change = changeOf(context, 'drive.units', '2');
      if (units !== 1 || isCrossed(context) || !change || !context.passes(context.tryWith({ 'drive.units': number(2) }))) return [];
      return [{ changes: [change], what: 'Hang it on a second belt', price: 'a second drive', result: afterBreak }];
    },
  }),
  remedy({
    id: 'hang-a-counterweight',
    summary: 'Carries the weight by another weight, no more than is needed.',
    cost: 4.75,
    cures: ['drops-unpowered', 'may-creep-unpowered', 'broken-belt-drops', 'held-by-friction-alone'],
    propose: (context) => (transmissionOf(context) === 'screw' ? [] : counterweight(context)),
  }),
  remedy({
    id: 'balance-the-weight',
    summary: 'Carries part of the weight by a spring or a counterweight: no more than is needed.',
    cost: 4.5,
    cures: [
      'drops-unpowered', 'may-creep-unpowered', 'levelling-lost-unpowered', 'motor-cannot-lift', 'motor-margin-thin', 'rest-current-too-low', 'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'screw-buckles',
      'coupling-overloaded', 'lowering-returns-energy', 'supply-voltage-rises', 'motor-overruns-going-down', 'thrust-bearing-overloaded', 'ball-nut-life-short', 'ball-nut-dents',
      'broken-belt-drops', 'belt-overtensioned', 'belt-goes-slack', 'belt-teeth-overloaded', 'motor-rms-torque-high', 'motor-peak-torque-exceeded', 'amplifier-current-short', 'reduction-overloaded', 'rack-tooth-overstressed', 'motor-winding-too-hot', 'motor-case-hot',
    ],
    propose: counterbalance,
  }),
  remedy({
    id: 'lighter-counterbalance',
    summary: 'Takes force out of the counterbalance, which the motor has to push against on the way down, or which takes the axis up.',
    cost: 2,
    cures: ['motor-overruns-going-down', 'drops-unpowered', 'may-creep-unpowered', 'broken-belt-drops'],
    propose: (context) => {
      const force = context.before.bounds('counterbalance.force')?.nominal;
      return force === undefined ? [] : solvedProposal(context, { input: 'counterbalance.force', towards: 0.1 * force, say: (written) => `Lighten the counterbalance to ${written}` });
    },
  }),
];
