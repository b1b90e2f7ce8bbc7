import { guideStiffness } from '../../catalogue/guide-stiffness.ts';
import type { JointKind } from '../../mechanics/constraint-wrenches.ts';
import { carriageOnShaft } from '../../mechanics/guide-shaft-travel.ts';
import { roundSecondMoment } from '../../mechanics/guide-shaft.ts';
import { fallbacks, type InputReader, type Member } from '../input.ts';
import type { Origin } from '../origin.ts';
import { formOf, JOINT_KINDS, rowOf, type SupportJoint } from '../support-joint.ts';
import { between, type Bounded } from '../values.ts';

type Triple = readonly [number, number, number];

const DIRECTIONS: Readonly<Record<string, Triple>> = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** Joints whose axis is the direction of the load: weight, unless said otherwise. */
const LOADED: ReadonlySet<JointKind> = new Set(['ball', 'cone', 'vee', 'flat', 'ball-on-radial-slide', 'rigid-bolts']);
/** Joints whose axis follows the travel; of a level axis nobody knows whether that is x or y. */
const NEEDS_ALONG: ReadonlySet<JointKind> = new Set(['blade-flexure', 'wire-flexure']);
/** Joints that hold another way when their second direction is another. */
const NEEDS_ACROSS: ReadonlySet<JointKind> = new Set(['fork', 'flat-wheel', 'vee', 'ball-on-radial-slide']);
/** Of these the usual second direction is away from the middle, so that growth slides along it; common practice. */
const RADIAL: ReadonlySet<JointKind> = new Set(['vee', 'ball-on-radial-slide']);

/** Kinds of guide that slide. */
const PLAIN = new Set(['lined-bushing', 'polymer-bushing', 'bronze-bushing', 'dry-slide']);

/** The row of the stiffness table for a joint; contacts and bolts count as a stiff carriage, an order of magnitude. */
function partOf(kind: JointKind, read: InputReader): string {
  if (kind.endsWith('-wheel') || kind === 'wheel-carriage') return 'wheel';
  if (kind.endsWith('bushing') || kind === 'two-bushings' || kind === 'fork') return PLAIN.has(read.choice('guides.bearing') ?? '') ? 'plain-bushing' : 'round-shaft-bushing';
  if (kind.startsWith('nut-') || kind === 'belt') return 'trapezoidal-nut';
  return 'carriage';
}

/** Kinds of guide whose carriages the joint stands for. */
const CARRIAGES: Partial<Record<JointKind, ReadonlySet<string>>> = {
  'rail-carriage': new Set(['profile-rail']),
  'carriage-on-ball': new Set(['profile-rail']),
  'one-bushing': new Set(['round-shaft', 'supported-shaft']),
  'self-aligning-bushing': new Set(['round-shaft', 'supported-shaft']),
};

/** Stiffness of one carriage of the axis's guides, written or by their size; undefined for what is no such carriage. */
const ofGuides = (kind: JointKind, read: InputReader): Bounded | undefined => {
  const found = CARRIAGES[kind]?.has(read.choice('guides.kind') ?? '') === true ? read.number('guides.carriage-stiffness') : undefined;
  return found !== undefined && found.low > 0 ? found : undefined;
};

/** Length over which a part bears against tilt, m: from a short bushing to a long carriage. */
const BEARING_LENGTH = { low: 0.02, high: 0.06 };

/** As an even bed of springs over the bearing length: k s²/12. */
const tiltOf = (stiffness: { readonly low: number; readonly high: number }): { low: number; high: number } => ({
  low: (stiffness.low * BEARING_LENGTH.low ** 2) / 12,
  high: (stiffness.high * BEARING_LENGTH.high ** 2) / 12,
});

/** Joints that run on a shaft, which gives where it is held by its ends alone. */
const ON_SHAFT: ReadonlySet<JointKind> = new Set(['one-bushing', 'two-bushings', 'self-aligning-bushing', 'fork']);

/**
 * How far a shaft on two holders yields across, as a spring where the carriage stands at the end of its travel: there it is stiffest, and what jams presses hardest.
 * Undefined where it is supported along its length, or where its sizes are not known.
 */
function shaftBehind(kind: JointKind, read: InputReader): { readonly low: number; readonly high: number } | undefined {
  if (!ON_SHAFT.has(kind) || read.choice('guides.kind') !== 'round-shaft') return undefined;
  const [length, diameter, bore, modulus, fixity, travel] = ['guides.unsupported-length', 'guides.shaft-diameter', 'guides.shaft-bore', 'guides.shaft-modulus', 'guides.end-fixity', 'axis.travel'].map((input) => read.number(input));
  if (!length || !diameter || !bore || !modulus || !fixity || !travel) return undefined;
  const apart = (read.number('guides.carriages')?.high ?? 1) > 1 ? (read.number('guides.carriage-spacing')?.high ?? 0) : 0;
  const at = (end: 'low' | 'high'): number | undefined => {
    const position = (length.low - travel.high - apart) / 2;
    if (!(position > 0 && bore.high >= 0 && diameter.low > bore.high && modulus.low > 0)) return undefined;
    const bendingStiffness = modulus[end] * roundSecondMoment(diameter[end], bore[end === 'low' ? 'high' : 'low']);
    const held = fixity[end] >= 1 ? ('fixed' as const) : { tiltStiffness: (fixity[end] / (1 - fixity[end])) * ((4 * bendingStiffness) / length.nominal) };
    return 1 / carriageOnShaft({ left: held, right: held, length: length.nominal, bendingStiffness }, { force: 1 }, position).sag;
  };
  const [low, high] = [at('low'), at('high')];
  return low === undefined || high === undefined ? undefined : { low, high };
}

const ends = ({ low, high }: Bounded): { low: number; high: number } => ({ low, high });

/** A joint and what stands behind it as two springs, one after the other; the joint alone where nothing is said of the other. */
const inSeries = (joint: { readonly low: number; readonly high: number }, behind: { readonly low: number; readonly high: number } | undefined): { low: number; high: number } =>
  behind === undefined || behind.low <= 0 ? { ...joint } : { low: 1 / (1 / joint.low + 1 / behind.low), high: 1 / (1 / joint.high + 1 / behind.high) };

/** Place of a support; undefined where it cannot be read. */
function placeOf(member: Member): Triple | undefined {
  const [x, y, z] = member.quantities('at', 'position') ?? [];
  return x === undefined || y === undefined ? undefined : [x.nominal, y.nominal, z?.nominal ?? 0];
}

function directionOf(word: string | undefined, place: Triple, centre: Triple): Triple | undefined {
  if (word !== 'radial') return word === undefined ? undefined : DIRECTIONS[word];
  const [x, y] = [place[0] - centre[0], place[1] - centre[1]];
  return Math.hypot(x, y) > 1e-6 ? [x, y, 0] : undefined;
}

/** Which way a level axis goes; undefined for any other, and where nobody says. */
function levelTravel(read: InputReader): string | undefined {
  const along = read.number('axis.inclination')?.nominal === 0 ? read.choice('axis.along') : undefined;
  return along === 'z' ? undefined : along;
}

/** One support; undefined where something decisive is not written or cannot be read. */
function jointOf(member: Member, at: Triple, centre: Triple, vertical: boolean, read: InputReader): SupportJoint | undefined {
  const kind = JOINT_KINDS.find((one) => one === member.choice('joint'));
  if (kind === undefined) return undefined;
  const along = member.choice('along');
  const travel = vertical ? 'z' : levelTravel(read);
  const usualAxis = LOADED.has(kind) ? DIRECTIONS['z'] : travel === undefined || NEEDS_ALONG.has(kind) ? undefined : DIRECTIONS[travel];
  const axis = along === undefined ? usualAxis : DIRECTIONS[along];
  if (axis === undefined) return undefined;
  const pointed = member.choice('across');
  const across = directionOf(pointed ?? (RADIAL.has(kind) ? 'radial' : undefined), at, centre);
  if (across === undefined && (NEEDS_ACROSS.has(kind) || pointed !== undefined)) return undefined;
  const written = member.number('stiffness');
  const joint = written ?? ofGuides(kind, read) ?? guideStiffness(partOf(kind, read))?.stiffness;
  if (joint === undefined || joint.low <= 0) return undefined;
  const onShaft = inSeries(ends(joint), written === undefined ? shaftBehind(kind, read) : undefined);
  const stiffness = inSeries(onShaft, read.number('carried-part.stiffness'));
  const tilt = member.number('tilt-stiffness');
  return {
    kind, at, axis, across,
    lead: formOf(kind).drive === true && kind !== 'belt' ? (read.number('screw.lead')?.nominal ?? 0) : 0,
    stiffness,
    tiltStiffness: tilt && tilt.low > 0 ? ends(tilt) : tiltOf(joint),
    offset: member.number('offset')?.high ?? 0,
    tilt: member.number('tilt')?.high ?? 0,
    loadLimit: member.number('load-limit')?.low,
    float: member.number('float')?.low,
  };
}

const here = (member: Member): { title: string; origin: Origin } => ({ title: member.title, origin: { from: 'here', place: member.place } });

export default fallbacks(
  {
    input: 'axis.support-joints',
    title: 'Supports: joint, place and direction of each',
    symbol: 'W',
    compose: (read, lists) => {
      const members = lists.entries('axis.supports');
      if (!members || members.length === 0) return undefined;
      const places = members.map(placeOf);
      const known = places.flatMap((place) => (place ? [place] : []));
      // One support that cannot be read would make all others look freer than they are.
      if (known.length < members.length) return undefined;
      const mean = (index: 0 | 1 | 2): number => known.reduce((sum, place) => sum + place[index], 0) / known.length;
      const centre: Triple = [mean(0), mean(1), mean(2)];
      const vertical = Math.abs((read.number('axis.inclination')?.nominal ?? 0) - Math.PI / 2) < 1e-6;
      const joints = members.flatMap((member, i) => jointOf(member, known[i] ?? centre, centre, vertical, read) ?? []);
      if (joints.length < members.length) return undefined;
      return { value: { type: 'table', rows: joints.map(rowOf), titles: members.map((member) => member.title) }, origin: { from: 'several', parts: members.map(here) } };
    },
  },
  {
    // Nuts that are written as supports say how they are mounted.
    input: 'nut.mounting',
    compose: (_read, lists) => {
      const nuts = lists.entries('axis.supports')?.filter((support) => support.choice('joint')?.startsWith('nut-')) ?? [];
      if (nuts.length === 0) return undefined;
      return { value: { type: 'choice', text: nuts.some((nut) => nut.choice('joint') === 'nut-rigid') ? 'rigid' : 'decoupled' }, origin: { from: 'several', parts: nuts.map(here) } };
    },
  },
  {
    input: 'axis.joint-stiffness-end',
    title: 'Where the joints lie between soft and stiff',
    symbol: 'κ',
    quantity: 'share',
    handbook: () => ({
      value: { type: 'number', ...between(0, 0.5, 1) },
      source: 'from the soft end, 0 %, to the stiff end, 100 %, of the stiffness of every joint; orders of magnitude where none is written',
      weak: true,
    }),
  },
);
