import { percent } from '../checks/check.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { carriersOf, layoutOf } from '../figures/supports/layout.ts';
import { massPlaceOf, massRowOf, type MassPlace } from '../machine/mass-place.ts';
import { rowOf, type SupportJoint } from '../machine/support-joint.ts';
import type { Bounded, InputValue } from '../machine/values.ts';
import type { Origin } from '../machine/origin.ts';
import { turned } from './entry-proposals.ts';
import { rampDial } from './move-dials.ts';
import { remedy, type Change, type Proposal, type RemedyContext } from './remedy.ts';

/** Whole millimetres: nobody sets a mass more exactly. */
const STEP = 1e-3;

type Place = Change['place'];

function placesOf(origin: Origin): readonly Place[] {
  return origin.from === 'several' ? origin.parts.flatMap((part) => placesOf(part.origin)) : 'place' in origin && origin.place ? [origin.place] : [];
}

interface Scene {
  readonly masses: readonly MassPlace[];
  readonly massNames: readonly string[];
  readonly massPlaces: readonly Place[];
  readonly supports: readonly SupportJoint[];
  readonly supportNames: readonly string[];
  /** Indices of the supports that carry weight, and their middle. */
  readonly carriers: readonly number[];
  readonly middle: readonly [number, number];
}

/** Masses and the supports below them; undefined where either is not known. */
function sceneOf({ before }: RemedyContext): Scene | undefined {
  const [masses, joints] = [before.input('axis.mass-places'), before.input('axis.support-joints')];
  if (masses.state !== 'known' || masses.value.type !== 'table' || joints.state !== 'known' || joints.value.type !== 'table') return undefined;
  const layout = layoutOf(joints.value.rows, joints.value.titles);
  const carriers = layout ? carriersOf(layout) : [];
  if (!layout || carriers.length === 0) return undefined;
  const mean = (axis: 0 | 1): number => carriers.reduce((sum, index) => sum + (layout.supports[index]?.at[axis] ?? 0), 0) / carriers.length;
  return {
    masses: masses.value.rows.map(massPlaceOf), massNames: masses.value.titles ?? [], massPlaces: placesOf(masses.origin),
    supports: layout.supports, supportNames: joints.value.titles ?? [], carriers, middle: [mean(0), mean(1)],
  };
}

/** Masses as the input has them. */
const tableOf = (masses: readonly MassPlace[], titles: readonly string[]): InputValue => ({ type: 'table', rows: masses.map(massRowOf), titles });

const moved = (value: Bounded, by: number): Bounded => ({ nominal: value.nominal + by, low: value.low + by, high: value.high + by });

/** Rounded away from zero, so that what passed still does. */
const rounded = (value: number): number => Math.sign(value) * Math.ceil(Math.abs(value) / STEP - 1e-6) * STEP;

const written = (metres: number): string => `${Number((metres * 1000).toFixed(3))} mm`;
const told = (metres: number): string => formatQuantity(metres, 'length', { unit: 'mm', digits: 2 });

/** What every support that may let go carries then; nothing where another check is about it, which has words of its own. */
function sharesLeft({ finding }: RemedyContext): Pick<Proposal, 'result'> {
  if (finding.check === 'joint-overloaded') return {};
  return {
    result: (after) => {
      const share = after.bounds('supports.lift-off-share')?.low;
      return share === undefined ? undefined : `at least ${percent(share)} of the load on each`;
    },
  };
}

/** All that moves, shifted towards the middle of the supports as far as is needed. */
function shift(context: RemedyContext): readonly Proposal[] {
  const scene = sceneOf(context);
  const whole = scene?.masses.reduce((sum, { mass }) => sum + mass.nominal, 0) ?? 0;
  if (!scene || !(whole > 0)) return [];
  const { masses, massNames, massPlaces, middle } = scene;
  const way = (['x', 'y'] as const).map((axis, i) => (middle[i] ?? 0) - masses.reduce((sum, one) => sum + one.mass.nominal * one[axis].nominal, 0) / whole);
  const shifted = (by: readonly number[]): InputValue => tableOf(masses.map((one) => ({ ...one, x: moved(one.x, by[0] ?? 0), y: moved(one.y, by[1] ?? 0) })), massNames);
  const share = context.solveAlong((part) => ({ 'axis.mass-places': shifted(way.map((value) => value * part)) }));
  if (share === undefined) return [];
  const by = way.map((value) => rounded(value * share));
  const changes = massPlaces.flatMap(({ uri, path }, index): Change[] =>
    (['x', 'y'] as const).flatMap((axis, i) => {
      const [value, present] = [by[i] ?? 0, masses[index]?.[axis].nominal ?? 0];
      return Math.abs(value) < STEP / 2 ? [] : [{ place: { uri, path: [...path, 'at', String(i)] }, value: written(present + value) }];
    }),
  );
  return changes.length === 0 ? [] : [{ changes, what: `Shift what it carries by ${told(Math.hypot(...by))} towards the middle of its supports`, ...sharesLeft(context) }];
}

/** Areas are not made smaller than this part of what they are: then they are no longer what they were for. */
const LEAST_AREA = 0.2;

/** Areas over which masses may lie, drawn in about their middles as far as is needed. */
function drawIn(context: RemedyContext): readonly Proposal[] {
  const scene = sceneOf(context);
  if (!scene) return [];
  const { masses, massNames, massPlaces } = scene;
  const wide = masses.map(({ x, y }) => [x.high - x.low, y.high - y.low] as const);
  const open = masses.flatMap((_, index) => (Math.max(...(wide[index] ?? [0])) > STEP && hasArea(context, massPlaces[index]) ? [index] : []));
  if (open.length === 0) return [];
  const within = (share: number): number => 1 - share * (1 - LEAST_AREA);
  const about = ({ nominal, low, high }: Bounded, part: number): Bounded => ({ nominal, low: nominal + (low - nominal) * part, high: nominal + (high - nominal) * part });
  // Along x alone, along y alone, or both: what leaves most of the areas.
  const ways = [[1, 0], [0, 1], [1, 1]].flatMap((along) => {
    const parts = (share: number): readonly [number, number] => [along[0] === 1 ? within(share) : 1, along[1] === 1 ? within(share) : 1];
    const share = context.solveAlong((step) => {
      const [ofX, ofY] = parts(step);
      return { 'axis.mass-places': tableOf(masses.map((one, index) => (open.includes(index) ? { ...one, x: about(one.x, ofX), y: about(one.y, ofY) } : one)), massNames) };
    });
    return share === undefined ? [] : [parts(share)];
  });
  const [best] = ways.sort((one, other) => other[0] * other[1] - one[0] * one[1]);
  if (best === undefined) return [];
  const left = (index: number): readonly number[] => (wide[index] ?? []).map((size, i) => Math.floor((size * (best[i] ?? 1)) / STEP + 1e-6) * STEP);
  const changes = open.flatMap((index): Change[] => {
    const place = massPlaces[index];
    return place === undefined ? [] : left(index).flatMap((size, i): Change[] => (best[i] === 1 ? [] : [{ place: { uri: place.uri, path: [...place.path, 'area', String(i)] }, value: written(size) }]));
  });
  const [only] = open;
  const what = only !== undefined && open.length === 1 ? `Keep ${massNames[only] ?? 'it'} within ${left(only).map((size) => told(size)).join(' by ')}` : `Keep ${open.map((index) => massNames[index] ?? '').join(' and ')} within smaller areas`;
  return changes.length === 0 ? [] : [{ changes, what: what.length <= 70 ? what : 'Keep what it carries within a smaller area', ...sharesLeft(context) }];
}

/** An area has to be written where it is to be made smaller: masses may also lie elsewhere because their place is uncertain. */
function hasArea({ before }: RemedyContext, place: Place | undefined): boolean {
  if (place === undefined) return false;
  const { machine, log } = before.subject;
  return machine.look(place.uri, [...place.path, 'area', '0'], log) !== undefined && machine.look(place.uri, [...place.path, 'area', '1'], log) !== undefined;
}

/** How far out supports are tried, as a factor of their distance from the middle. */
const FARTHEST = 2;

/** The supports that carry weight, moved outwards from their middle as far as is needed. */
function spread(context: RemedyContext): readonly Proposal[] {
  const [scene, place] = [sceneOf(context), context.place('supports')];
  if (!scene || !place || scene.carriers.length < 2) return [];
  const { supports, supportNames, carriers, middle } = scene;
  const out = (index: number, share: number): readonly [number, number, number] => {
    const [x, y, z] = supports[index]?.at ?? [0, 0, 0];
    return [x + rounded((x - middle[0]) * share * (FARTHEST - 1)), y + rounded((y - middle[1]) * share * (FARTHEST - 1)), z];
  };
  const share = context.solveAlong((along) => ({
    'axis.support-joints': { type: 'table', rows: supports.map((support, index) => rowOf(carriers.includes(index) ? { ...support, at: out(index, along) } : support)), titles: supportNames },
  }));
  if (share === undefined) return [];
  const far = Math.max(...carriers.map((index) => Math.hypot(out(index, share)[0] - (supports[index]?.at[0] ?? 0), out(index, share)[1] - (supports[index]?.at[1] ?? 0))));
  const changes = carriers.flatMap((index): Change[] =>
    [0, 1].flatMap((i): Change[] => {
      const [now, then] = [supports[index]?.at[i] ?? 0, out(index, share)[i] ?? 0];
      return Math.abs(then - now) < STEP / 2 ? [] : [{ place: { uri: place.uri, path: [...place.path, supportNames[index] ?? '', 'at', String(i)] }, value: written(then) }];
    }),
  );
  return changes.length === 0 ? [] : [{ changes, what: `Move the ${carriers.length} carrying supports outwards by up to ${told(far)}`, ...sharesLeft(context) }];
}

export default [
  remedy({
    id: 'ease-the-ramp-on-supports',
    summary: 'Lowers the acceleration of the axis until its inertia lifts no support.',
    cost: 1,
    cures: ['support-lifts-off', 'support-share-small', 'joint-overloaded'],
    propose: (context) => turned(context, [rampDial(context)]),
  }),
  remedy({
    id: 'draw-in-the-area',
    summary: 'Keeps what the axis carries within a smaller area, as small as is needed.',
    cost: 2,
    cures: ['support-lifts-off', 'support-share-small', 'joint-overloaded'],
    propose: drawIn,
  }),
  remedy({
    id: 'shift-the-load-inwards',
    summary: 'Shifts all masses that the axis moves towards the middle of its supports, as far as is needed.',
    cost: 2,
    cures: ['support-lifts-off', 'support-share-small', 'joint-overloaded'],
    propose: shift,
  }),
  remedy({
    id: 'move-supports-outwards',
    summary: 'Moves the supports that carry weight outwards from their middle, as far as is needed.',
    cost: 3,
    cures: ['support-lifts-off', 'support-share-small'],
    propose: spread,
  }),
];
