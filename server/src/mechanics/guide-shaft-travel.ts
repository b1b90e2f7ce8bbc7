/** A carriage on bending shafts, over its travel. */
import { bendShaft, type BentShaft, type GuideShaft, type GuideShaftEnd } from './guide-shaft.ts';
import { requireFinite, requireNotNegative } from './require-argument.ts';

/** What one shaft carries of a carriage with one bearing or two. */
export interface CarriageOnShaft {
  /** Across the shaft, N, in the direction in which deflections count. */
  readonly force: number;
  /** About the middle of the carriage, N·m, positive when it presses the right bearing in the direction of the force. Only with two bearings. */
  readonly moment?: number | undefined;
  /** Between the middles of the two bearings on the shaft, m; 0 or left out: one bearing. */
  readonly bearingDistance?: number | undefined;
}

/** Where the carriage is, and what the shaft does to it there. */
export interface CarriageState {
  /** Middle of the carriage from the left end, m. */
  readonly position: number;
  /** Of the middle of the carriage, m: the mean of both bearings. */
  readonly sag: number;
  /** How much the carriage noses, rad: difference of the bearings over their distance, or the slope of the shaft under a single one. */
  readonly tilt: number;
  /** Angle between shaft and bearing, rad, 0 or above: what a bushing must bear. 0 for a single bearing, which follows the shaft. */
  readonly bearingAngle: number;
  /** Greatest bending moment anywhere in the shaft, N·m, 0 or above. */
  readonly greatestMoment: number;
}

/**
 * The shaft under a carriage at one place.
 *
 * Formula: each of two bearings carries F/2 ± M/b; the rest by `bendShaft`.
 *
 * @param shaft - see {@link GuideShaft}
 * @param carriage - see {@link CarriageOnShaft}
 * @param position - middle of the carriage, m from the left end; both bearings must be on the shaft
 * @returns see {@link CarriageState}; deflections of shafts alone, bearings taken as rigid
 * @throws RangeError for bearings off the shaft, a moment on a single bearing, and as `bendShaft`
 *
 * Source: statics of two bearings, and {@link bendShaft}.
 * Checked against: closed forms of two equal loads (test/mechanics/guide-shaft.test.ts); test/independent/guide-shafts.test.ts.
 */
export function carriageOnShaft(shaft: GuideShaft, carriage: CarriageOnShaft, position: number): CarriageState {
  const { force, moment = 0, bearingDistance = 0 } = carriage;
  requireFinite('force', force);
  requireFinite('moment', moment);
  requireNotNegative('bearingDistance', bearingDistance);
  if (bearingDistance === 0) {
    if (moment !== 0) throw new RangeError('carriageOnShaft: a single bearing takes no moment');
    const bent = bendShaft(shaft, [{ at: position, force }]);
    const { deflection, slope } = bent.at(position);
    return { position, sag: deflection, tilt: slope, bearingAngle: 0, greatestMoment: greatestMoment(bent, shaft.loadPerLength ?? 0) };
  }
  const places: readonly [number, number] = [position - bearingDistance / 2, position + bearingDistance / 2];
  const couple = moment / bearingDistance;
  const bent = bendShaft(shaft, [{ at: places[0], force: force / 2 - couple }, { at: places[1], force: force / 2 + couple }]);
  const [one, other] = [bent.at(places[0]), bent.at(places[1])];
  const tilt = (other.deflection - one.deflection) / bearingDistance;
  return {
    position,
    sag: (one.deflection + other.deflection) / 2,
    tilt,
    bearingAngle: Math.max(Math.abs(one.slope - tilt), Math.abs(other.slope - tilt)),
    greatestMoment: greatestMoment(bent, shaft.loadPerLength ?? 0),
  };
}

/** Greatest size of the moment: at the places where it has a kink, or where the shear is zero between two of them. */
function greatestMoment(bent: BentShaft, loadPerLength: number): number {
  let greatest = 0;
  bent.places.forEach((place, index) => {
    const here = bent.at(place).moment;
    greatest = Math.max(greatest, Math.abs(here));
    const next = bent.places[index + 1];
    if (next === undefined || loadPerLength === 0) return;
    // A parabola of curvature -q between the places.
    const span = next - place;
    const top = ((bent.at(next).moment - here) / span + (loadPerLength * span) / 2) / loadPerLength;
    if (top > 0 && top < span) greatest = Math.max(greatest, Math.abs(bent.at(place + top).moment));
  });
  return greatest;
}

/** Extremes over the travel. */
export interface CarriageOverTravel {
  /** Where the carriage stands highest. */
  readonly highest: CarriageState;
  /** Where it hangs lowest. */
  readonly lowest: CarriageState;
  /** Sag at the lowest less sag at the highest place, m, 0 or above: what the work sees as unevenness. */
  readonly variation: number;
  /** Where it noses most. */
  readonly mostTilted: CarriageState;
  /** Where shaft and bearing stand most askew. */
  readonly mostAskew: CarriageState;
  /** Where the shaft is bent most. */
  readonly mostBent: CarriageState;
}

/**
 * Sag, tilt and bending over the travel of a carriage.
 *
 * Formula: the state at 65 places, and between the neighbours of the best one by golden section, to 1e-6 of the travel.
 *
 * @param shaft - see {@link GuideShaft}
 * @param carriage - see {@link CarriageOnShaft}
 * @param from - middle of the carriage at one end of the travel, m from the left end
 * @param to - at the other end, m, at least `from`
 * @returns extremes with the places
 * @throws RangeError for a travel that is turned round, and as {@link carriageOnShaft}
 *
 * Source: {@link carriageOnShaft}.
 * Checked against: Bansal 12.4 and closed forms (test/published/guide-shafts.test.ts, test/mechanics/guide-shaft.test.ts).
 */
export function carriageOverTravel(shaft: GuideShaft, carriage: CarriageOnShaft, from: number, to: number): CarriageOverTravel {
  requireFinite('from', from);
  requireFinite('to', to);
  if (to < from) throw new RangeError('carriageOverTravel: the travel must run from left to right');
  const state = (position: number): CarriageState => carriageOnShaft(shaft, carriage, position);
  const places = to === from ? [from] : Array.from({ length: 65 }, (_, i) => (i === 64 ? to : from + ((to - from) * i) / 64));
  const states = places.map(state);
  const most = (measure: (one: CarriageState) => number): CarriageState => {
    let best = 0;
    states.forEach((one, index) => {
      if (measure(one) > measure(states[best] as CarriageState)) best = index;
    });
    const refined = golden((x) => measure(state(x)), places[Math.max(0, best - 1)] as number, places[Math.min(places.length - 1, best + 1)] as number, 1e-6 * (to - from));
    const better = state(refined);
    return measure(better) > measure(states[best] as CarriageState) ? better : (states[best] as CarriageState);
  };
  const lowest = most(({ sag }) => sag);
  const highest = most(({ sag }) => -sag);
  return {
    highest,
    lowest,
    variation: lowest.sag - highest.sag,
    mostTilted: most(({ tilt }) => Math.abs(tilt)),
    mostAskew: most(({ bearingAngle }) => bearingAngle),
    mostBent: most((one) => one.greatestMoment),
  };
}

/** Place of the largest value of a function with one hill between two places. */
function golden(value: (x: number) => number, low: number, high: number, width: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [atC, atD] = [value(c), value(d)];
  while (b - a > width && b - a > 1e-14) {
    if (atC > atD) {
      [b, d, atD] = [d, c, atC];
      c = b - share * (b - a);
      atC = value(c);
    } else {
      [a, c, atC] = [c, d, atD];
      d = a + share * (b - a);
      atD = value(d);
    }
  }
  return (a + b) / 2;
}

/** A result for both bounds of how firmly the ends are clamped. */
export interface BetweenEnds {
  /** Both ends free to tilt: the most that the shaft sags. What a check judges. */
  readonly supported: CarriageOverTravel;
  /** Both ends kept from tilting: the least. */
  readonly clamped: CarriageOverTravel;
}

/**
 * Both bounds at once: ends that are free to tilt, and ends that are clamped. A real end block lies between.
 *
 * Formula: `carriageOverTravel` twice.
 *
 * @param shaft - without its ends
 * @param carriage - see {@link CarriageOnShaft}
 * @param from - m
 * @param to - m
 * @returns both; a printed or split clamp 1 to 1.5 diameters long lies between (common practice, no published source)
 * @throws RangeError as {@link carriageOverTravel}
 *
 * Source: the strain energy of a beam falls as its ends are freed, so these are bounds for any ends that are held sideways.
 * Checked against: test/mechanics/guide-shaft.test.ts.
 */
export function carriageBetweenBounds(shaft: Omit<GuideShaft, 'left' | 'right'>, carriage: CarriageOnShaft, from: number, to: number): BetweenEnds {
  const over = (end: GuideShaftEnd): CarriageOverTravel => carriageOverTravel({ ...shaft, left: end, right: end }, carriage, from, to);
  return { supported: over('supported'), clamped: over('fixed') };
}
