/** What supports carry while masses may lie anywhere in an area, may be absent, and are accelerated all at once. */
import { requireFinite, requireNotNegative } from './require-argument.ts';
import { supportReactions, type PlanPoint, type PlateSupport } from './support-reactions.ts';
import { distanceToEdge, supportPolygon } from './support-polygon.ts';

type Range = readonly [number, number];

/** A mass of which neither size nor place is fixed. Ends may be alike. */
export interface OpenMass {
  /** kg, 0 or above; from 0 where it may be absent. */
  readonly mass: Range;
  /** Where its centre of gravity may lie in plan, m. */
  readonly x: Range;
  readonly y: Range;
  /** h, m above the line in which it is pushed sideways; negative below it. Without sideways acceleration it does not matter. */
  readonly height: Range;
}

/** An acceleration that all masses have at once, m/s². */
export interface CommonAcceleration {
  readonly x: number;
  readonly y: number;
  /** Upwards. */
  readonly z: number;
}

/** Anything that is linear in a load and its first moments: force F + x (F x) + y (F y). */
export interface LoadForm {
  readonly force: number;
  readonly x: number;
  readonly y: number;
}

/** How heavy one mass is and where it lies. */
export interface MassChoice extends PlanPoint {
  readonly mass: number;
  readonly height: number;
}

/** An extreme with what brings it about. */
export interface LoadExtreme {
  readonly value: number;
  /** Index of the acceleration. */
  readonly acceleration: number;
  /** For each mass. */
  readonly masses: readonly MassChoice[];
}

/**
 * What each support carries of a unit force and of unit first moments.
 *
 * Formula: reactions to unit loads at (0, 0), (1, 0) and (0, 1), since a reaction is linear: R = F (a + b x + c y).
 *
 * @param supports - see {@link PlateSupport}, without gaps
 * @returns a form for each support, N/N and N/(N·m)
 * @throws RangeError as `supportReactions`
 *
 * Source: statics, superposition.
 * Checked against: test/mechanics/supports-in-use.test.ts.
 */
export function supportForms(supports: readonly PlateSupport[]): readonly LoadForm[] {
  const unit = (x: number, y: number): readonly number[] => supportReactions(supports, [{ x, y, force: 1 }]).reactions;
  const [none, east, north] = [unit(0, 0), unit(1, 0), unit(0, 1)];
  return supports.map((_, i) => {
    const force = none[i] as number;
    return { force, x: (east[i] as number) - force, y: (north[i] as number) - force };
  });
}

/**
 * Largest or least value of a linear form over all masses, places and accelerations.
 *
 * Formula: sum m [(g + a_z)(w_F + w_x x + w_y y) − h (w_x a_x + w_y a_y)]; for one acceleration each mass adds by itself, and is linear in its size, place and
 * height, so that its extreme is at an end of each.
 *
 * @param form - w
 * @param masses - see {@link OpenMass}
 * @param accelerations - one or more; of equal extremes the first is told
 * @param gravity - g, m/s²
 * @param sign - 1 for the largest, −1 for the least
 * @returns see {@link LoadExtreme}
 * @throws RangeError without acceleration, for a negative mass, and for values that are not finite
 *
 * Source: d'Alembert; a linear function over a box is extreme at a corner.
 * Checked against: test/mechanics/supports-in-use.test.ts (a fine grid; `reactionExtremes`).
 */
export function extremeOf(form: LoadForm, masses: readonly OpenMass[], accelerations: readonly CommonAcceleration[], gravity: number, sign: 1 | -1): LoadExtreme {
  masses.forEach(requireOpenMass);
  let best: LoadExtreme | undefined;
  accelerations.forEach((acceleration, index) => {
    const found = extremeAt(form, masses, acceleration, gravity, sign);
    if (best === undefined || sign * (found.value - best.value) > 1e-12 * Math.abs(best.value)) best = { ...found, acceleration: index };
  });
  if (best === undefined) throw new RangeError('extremeOf: at least one acceleration is needed');
  return best;
}

function requireOpenMass({ mass, x, y, height }: OpenMass): void {
  mass.forEach((value) => { requireNotNegative('mass', value); });
  for (const value of [...x, ...y, ...height]) requireFinite('mass', value);
}

function extremeAt(form: LoadForm, masses: readonly OpenMass[], acceleration: CommonAcceleration, gravity: number, sign: 1 | -1): { readonly value: number; readonly masses: readonly MassChoice[] } {
  const down = gravity + acceleration.z;
  const sideways = form.x * acceleration.x + form.y * acceleration.y;
  const end = (range: Range, slope: number): number => range[sign * slope > 0 ? 1 : 0];
  let value = 0;
  const choices = masses.map((open): MassChoice => {
    const [x, y, height] = [end(open.x, down * form.x), end(open.y, down * form.y), end(open.height, -sideways)];
    const each = down * (form.force + form.x * x + form.y * y) - height * sideways;
    const mass = end(open.mass, each);
    value += mass * each;
    return { mass, x, y, height };
  });
  return { value, masses: choices };
}

/** The load of chosen masses: F, F x and F y in the plane in which they are pushed. */
function loadOf(masses: readonly MassChoice[], { x: ax, y: ay, z: az }: CommonAcceleration, gravity: number): LoadForm {
  let [force, fx, fy] = [0, 0, 0];
  for (const { mass, x, y, height } of masses) {
    const down = mass * (gravity + az);
    force += down;
    fx += down * x - mass * ax * height;
    fy += down * y - mass * ay * height;
  }
  return { force, x: fx, y: fy };
}

const applied = (form: LoadForm, load: LoadForm): number => form.force * load.force + form.x * load.x + form.y * load.y;

/** Rounds of Dinkelbach's method; it ends by itself after a few, since each round reaches another corner. */
const MOST_ROUNDS = 60;

/**
 * Largest or least part that a linear form is of the whole load, over all masses, places and accelerations: a share, or a coordinate of where the load acts.
 *
 * Formula: extreme of w(load)/F. With t the ratio found so far, the extreme of w − t F is found as of a linear form; its masses give the next t, until it stays.
 *
 * @param form - w
 * @param masses - see {@link OpenMass}
 * @param accelerations - those at which masses would fall (a_z ≤ −g) are left out
 * @param gravity - g, m/s², above 0
 * @param sign - 1 for the largest, −1 for the least
 * @returns see {@link LoadExtreme}; `no load` where nothing weighs
 * @throws RangeError for a negative mass, and for values that are not finite
 *
 * Source: W. Dinkelbach, On Nonlinear Fractional Programming, Management Science 13 (1967) (from memory).
 * Checked against: test/mechanics/supports-in-use.test.ts (every corner tried; a fine grid).
 */
export function extremeRatio(form: LoadForm, masses: readonly OpenMass[], accelerations: readonly CommonAcceleration[], gravity: number, sign: 1 | -1): LoadExtreme | 'no load' {
  masses.forEach(requireOpenMass);
  let best: LoadExtreme | undefined;
  accelerations.forEach((acceleration, index) => {
    if (gravity + acceleration.z <= 0) return;
    let choices: readonly MassChoice[] = masses.map(({ mass, x, y, height }) => ({ mass: mass[1], x: x[0], y: y[0], height: height[0] }));
    let load = loadOf(choices, acceleration, gravity);
    if (load.force <= 0) return;
    let ratio = applied(form, load) / load.force;
    const hair = 1e-12 * Math.max(1, Math.abs(ratio));
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const next = extremeAt({ ...form, force: form.force - ratio }, masses, acceleration, gravity, sign).masses;
      load = loadOf(next, acceleration, gravity);
      if (load.force <= 0) break;
      const better = applied(form, load) / load.force;
      if (sign * (better - ratio) <= hair) break;
      [ratio, choices] = [better, next];
    }
    if (best === undefined || sign * (ratio - best.value) > 1e-12 * Math.max(1, Math.abs(best.value))) best = { value: ratio, acceleration: index, masses: choices };
  });
  return best ?? 'no load';
}

/** Where the load acts at its worst. */
export interface WorstLoadPoint extends LoadExtreme, PlanPoint {}

/** Directions that are tried besides those square to the edges. */
const DIRECTIONS = 16;

/**
 * The place of the whole load that lies nearest to the edge of the supports, or farthest beyond it, over all masses, places and accelerations.
 *
 * Formula: least `distanceToEdge` among the farthest places of the load square to every edge and in 16 directions. Inside the polygon this is exact, since the
 * distance is the least of linear functions; outside, the load lies at least that far out.
 *
 * @param supports - see `supportPolygon`
 * @param masses - see {@link OpenMass}
 * @param accelerations - see {@link extremeRatio}
 * @param gravity - g, m/s², above 0
 * @returns distance as `value`, m, with the place; `no load` where nothing weighs
 * @throws RangeError outside the stated domains
 *
 * Source: geometry; zero-moment point of d'Alembert's loads.
 * Checked against: test/mechanics/supports-in-use.test.ts (a fine grid).
 */
export function worstLoadPoint(supports: readonly PlanPoint[], masses: readonly OpenMass[], accelerations: readonly CommonAcceleration[], gravity: number): WorstLoadPoint | 'no load' {
  const polygon = supportPolygon(supports);
  const outwards = polygon.map((a, i): PlanPoint => {
    const b = polygon[(i + 1) % polygon.length] as PlanPoint;
    return { x: b.y - a.y, y: a.x - b.x };
  });
  const around = Array.from({ length: DIRECTIONS }, (_, i): PlanPoint => ({ x: Math.cos((2 * Math.PI * (i + 0.5)) / DIRECTIONS), y: Math.sin((2 * Math.PI * (i + 0.5)) / DIRECTIONS) }));
  let worst: WorstLoadPoint | undefined;
  for (const { x, y } of [...outwards, ...around]) {
    const found = extremeRatio({ force: 0, x, y }, masses, accelerations, gravity, 1);
    if (found === 'no load') return found;
    const load = loadOf(found.masses, accelerations[found.acceleration] as CommonAcceleration, gravity);
    const at = { x: load.x / load.force, y: load.y / load.force };
    const value = distanceToEdge(at, supports);
    if (worst === undefined || value < worst.value - 1e-12) worst = { ...found, ...at, value };
  }
  return worst ?? 'no load';
}
