/**
 * A carriage on a belt: two spans pull on it from opposite sides. The first span runs straight from the driving pulley (or the near anchor)
 * to the carriage, the second one the other way round. Both have one specific stiffness; idlers pass the tension on without loss.
 */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

export interface Spans {
  /** From the driving pulley (near anchor) straight to the carriage, m, above 0. */
  readonly first: number;
  /** The other way round, m, above 0. */
  readonly second: number;
}

/** Where a carriage can stand. */
export interface BeltTravel {
  /** Free belt between the two places where it is held, m: a loop less what lies on the driving pulley, or the distance between two anchors. */
  readonly freeLength: number;
  /** First span at the near end of the travel, m, above 0. */
  readonly nearest: number;
  /** m, zero or above; the far end must leave some second span. */
  readonly travel: number;
}

/**
 * The two spans where the carriage stands at a distance from the driving pulley or the near anchor.
 *
 * Formula: L1 = x, L2 = L - x.
 *
 * @param freeLength - L, m, above 0
 * @param position - x, m, above 0 and below L
 * @returns both spans
 * @throws RangeError outside the stated domains
 *
 * Source: geometry.
 * Checked against: test/mechanics/belt-spans.test.ts.
 */
export function spansAt(freeLength: number, position: number): Spans {
  requirePositive('freeLength', freeLength);
  requirePositive('position', position);
  if (!(position < freeLength)) throw new RangeError('spansAt: the carriage must stand before the end of the belt');
  return { first: position, second: freeLength - position };
}

/** Throws RangeError unless both ends of the travel leave some of both spans. */
export function requireTravel({ freeLength, nearest, travel }: BeltTravel): void {
  requirePositive('nearest', nearest);
  requireNotNegative('travel', travel);
  if (!(nearest + travel < freeLength)) throw new RangeError('belt: the travel is longer than the belt allows');
}

/**
 * Stiffness with which one span holds.
 *
 * Formula: k = c/L.
 *
 * @param specificStiffness - c = E A of the whole belt, N (force for a unit strain), above 0
 * @param length - L, m, above 0
 * @returns N/m
 * @throws RangeError for values that are not positive
 *
 * Source: bar in tension.
 * Checked against: test/mechanics/belt-spans.test.ts.
 */
export function spanStiffness(specificStiffness: number, length: number): number {
  requirePositive('specificStiffness', specificStiffness);
  requirePositive('length', length);
  return specificStiffness / length;
}

/**
 * Stiffness of a carriage between two taut spans, the driving pulley held.
 *
 * Formula: k = c (1/L1 + 1/L2); least at L1 = L2, where k = 4 c/L.
 *
 * @param specificStiffness - c, N, above 0
 * @param spans - both, m
 * @returns N/m; the give of the teeth is not in it
 * @throws RangeError outside the stated domains
 *
 * Source: two springs that pull on one body from both sides.
 * Checked against: a loop of springs solved as a linear system (test/independent/belts.test.ts).
 */
export function tautStiffness(specificStiffness: number, { first, second }: Spans): number {
  return spanStiffness(specificStiffness, first) + spanStiffness(specificStiffness, second);
}

/**
 * Where in its travel a carriage stands softest: nearest to the place of equal spans.
 *
 * Formula: x = L/2, held to the travel. A loop round a driving pulley and a far idler has L/2 beyond the idler's axis, so there it is always
 * the end far from the motor, never mid-travel; between two anchors it is the middle.
 *
 * @param travel - see {@link BeltTravel}
 * @returns x from the driving pulley or near anchor, m
 * @throws RangeError when the travel leaves no belt
 *
 * Source: derived; k is convex in x with its least value at L/2.
 * Checked against: search over the travel on a loop of springs (test/independent/belts.test.ts).
 */
export function softestPosition(travel: BeltTravel): number {
  requireTravel(travel);
  return Math.min(Math.max(travel.freeLength / 2, travel.nearest), travel.nearest + travel.travel);
}

/** The span that gets tighter under a force: the first pulls the carriage towards the driving pulley, the second away from it. */
export type TightSpan = 'first' | 'second';

/**
 * The share of a driving force by which the tight span tightens, both spans taut.
 *
 * Formula: L_other/(L1 + L2); the other span loses the rest, L_tight/(L1 + L2).
 *
 * @param spans - both, m
 * @param tight - which span pulls
 * @returns share, between 0 and 1; close to 1 for a short span, which so takes nearly all of the force. With equal spans one half.
 * @throws RangeError for spans that are not positive
 *
 * Source: statics of two springs in parallel.
 * Checked against: a loop of springs solved as a linear system (test/independent/belts.test.ts).
 */
export function tightShare({ first, second }: Spans, tight: TightSpan): number {
  requirePositive('first span', first);
  requirePositive('second span', second);
  return (tight === 'first' ? second : first) / (first + second);
}

export interface LoadedSpans {
  /** Tension of the pulling span, N. */
  readonly tight: number;
  /** Tension of the other one, N; 0 when it hangs slack. */
  readonly slack: number;
  /** How far the carriage gives way against the driving pulley, m. */
  readonly give: number;
  readonly isSlack: boolean;
}

/**
 * Tensions and give of a carriage that a force drives through its belt.
 *
 * Formula: both taut: T_t = T0 + F s, T_s = T0 - F (1 - s), give F/(k1 + k2). From F (1 - s) = T0 on the other span is slack:
 * T_t = F, T_s = 0, give (F - T0)/k_t.
 *
 * @param specificStiffness - c, N, above 0
 * @param spans - both, m
 * @param tension - T0 in each span at rest without a force, N, zero or above
 * @param force - F on the carriage from the belt, N, zero or above
 * @param tight - which span pulls
 * @returns see {@link LoadedSpans}
 * @throws RangeError outside the stated domains
 *
 * Source: statics of two pretensioned springs, of which a belt can only pull.
 * Checked against: a loop of springs that let go when pushed (test/independent/belts.test.ts).
 */
export function loadedSpans(specificStiffness: number, spans: Spans, tension: number, force: number, tight: TightSpan): LoadedSpans {
  requireNotNegative('tension', tension);
  requireNotNegative('force', force);
  const share = tightShare(spans, tight);
  const slack = tension - force * (1 - share);
  if (slack >= 0) return { tight: tension + force * share, slack, give: force / tautStiffness(specificStiffness, spans), isSlack: false };
  const pulling = spanStiffness(specificStiffness, spans[tight]);
  return { tight: force, slack: 0, give: (force - tension) / pulling, isSlack: true };
}

/** Largest forces that the belt puts on the carriage in a move, N, zero or above. */
export interface DrivingForces {
  /** Towards the driving pulley: the first span pulls. */
  readonly towards: number;
  /** Away from it: the second span pulls. */
  readonly away: number;
}

/** The ends of the travel, where shares are extreme, and who pulls. */
function extremes(travel: BeltTravel, { towards, away }: DrivingForces): readonly { readonly spans: Spans; readonly force: number; readonly tight: TightSpan }[] {
  requireTravel(travel);
  requireNotNegative('force towards the driving pulley', towards);
  requireNotNegative('force away from it', away);
  return [travel.nearest, travel.nearest + travel.travel].flatMap((position) => {
    const spans = spansAt(travel.freeLength, position);
    return [{ spans, force: towards, tight: 'first' as const }, { spans, force: away, tight: 'second' as const }];
  });
}

/**
 * Tension at rest that keeps both spans taut wherever the carriage stands.
 *
 * Formula: T0 = max F L_tight/(L1 + L2) over both directions and both ends of the travel. Only with equal spans that is F/2; close to the
 * driving pulley, pushed away from it, nearly all of F is needed.
 *
 * @param travel - see {@link BeltTravel}
 * @param forces - see {@link DrivingForces}
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: derived: the slack span must not fall below zero. The rule "half of the peak force" of the trade is its value for equal spans.
 * Checked against: a loop of springs solved as a linear system (test/independent/belts.test.ts).
 */
export function tensionNeeded(travel: BeltTravel, forces: DrivingForces): number {
  return Math.max(...extremes(travel, forces).map(({ spans, force, tight }) => force * (1 - tightShare(spans, tight))));
}

/**
 * Largest and smallest tension that a belt sees in a move.
 *
 * Formula: {@link loadedSpans} at both ends of the travel in both directions.
 *
 * @param travel - see {@link BeltTravel}
 * @param tension - T0 at rest, N, zero or above
 * @param forces - see {@link DrivingForces}
 * @returns both in N
 * @throws RangeError outside the stated domains
 *
 * Source: statics.
 * Checked against: test/mechanics/belt-spans.test.ts.
 */
export function tensionRange(travel: BeltTravel, tension: number, forces: DrivingForces): { readonly most: number; readonly least: number } {
  // The tensions do not depend on the specific stiffness, since both spans have the same.
  const loaded = extremes(travel, forces).map(({ spans, force, tight }) => loadedSpans(1, spans, tension, force, tight));
  return { most: Math.max(...loaded.map((each) => each.tight)), least: Math.min(...loaded.map((each) => each.slack)) };
}

/**
 * Largest pull of a belt on the shaft of its driving pulley.
 *
 * Formula: {@link beltShaftLoad} of both spans, at the worse end of the travel and in the worse direction.
 *
 * @param travel - see {@link BeltTravel}
 * @param tension - T0 at rest, N, zero or above
 * @param forces - see {@link DrivingForces}
 * @param wrap - θ on the driving pulley, rad, 0 to 2π
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: statics.
 * Checked against: test/mechanics/belt-spans.test.ts.
 */
export function mostShaftLoad(travel: BeltTravel, tension: number, forces: DrivingForces, wrap: number): number {
  return Math.max(...extremes(travel, forces).map(({ spans, force, tight }) => {
    const loaded = loadedSpans(1, spans, tension, force, tight);
    return beltShaftLoad(loaded.tight, loaded.slack, wrap);
  }));
}

/**
 * Pull of both spans on the shaft that they lie round.
 *
 * Formula: R = sqrt(T1² + T2² - 2 T1 T2 cos θ); at half a turn T1 + T2.
 *
 * @param tight - T1, N, zero or above
 * @param slack - T2, N, zero or above
 * @param wrap - θ, rad, 0 to 2π
 * @returns N
 * @throws RangeError outside the stated domains
 *
 * Source: sum of two forces as vectors.
 * Checked against: components added by hand (test/mechanics/belt-spans.test.ts).
 */
export function beltShaftLoad(tight: number, slack: number, wrap: number): number {
  requireNotNegative('tight', tight);
  requireNotNegative('slack', slack);
  requireFinite('wrap', wrap);
  if (wrap < 0 || wrap > 2 * Math.PI) throw new RangeError('beltShaftLoad: the wrap must lie between nothing and a full turn');
  return Math.sqrt(Math.max(0, tight ** 2 + slack ** 2 - 2 * tight * slack * Math.cos(wrap)));
}
