import { bucklingFactor, type LateralSupport } from './shaft-on-supports.ts';
import { firstBucklingRoot, supportOf, type EndPair, type ShaftEnd } from './shaft-ends.ts';
import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * End fixity: how many times the load of a column with supported ends it bears.
 *
 * Formula: N = (u/pi)², u the first root of the buckling equation.
 *
 * @param ends - arrangement of the ends
 * @returns N: 0.25 fixed-free, 1 supported, 2.046 fixed-supported, 4 fixed-fixed
 *
 * Source: Timoshenko and Gere, Theory of Elastic Stability, section 2.1 to 2.2 (from memory).
 * Checked against: test/published/column-buckling.test.ts, test/independent/buckling.test.ts.
 */
export function endFixityFactor(ends: EndPair): number {
  return (firstBucklingRoot(ends) / Math.PI) ** 2;
}

/**
 * Euler's critical load of a slender column.
 *
 * Formula: F = N pi² E I/L².
 *
 * @param endFixity - N, above 0
 * @param length - L, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @returns force in N; too high below the transition slenderness
 * @throws RangeError for values that are not positive
 *
 * Source: Timoshenko and Gere, Theory of Elastic Stability, section 2.1 (from memory).
 * Checked against: test/published/column-buckling.test.ts, Gere, example 11.1; Hibbeler, example 13.5.
 */
export function eulerLoad(endFixity: number, length: number, bendingStiffness: number): number {
  requirePositive('endFixity', endFixity);
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  return (endFixity * Math.PI ** 2 * bendingStiffness) / length ** 2;
}

/** A straight column of one section. */
export interface Column {
  /** N, above 0; see {@link endFixityFactor}. */
  readonly endFixity: number;
  /** L, m, above 0. */
  readonly length: number;
  /** A, m², above 0. */
  readonly area: number;
  /** I, m⁴, above 0. */
  readonly secondMoment: number;
  /** E, Pa, above 0. */
  readonly youngsModulus: number;
  /** R_e, Pa, above 0. */
  readonly yieldStrength: number;
}

export interface CriticalLoad {
  /** Load at which the column gives way, N. */
  readonly load: number;
  /** Which law governs: Euler's for slender columns, Johnson's parabola for short ones. */
  readonly regime: 'euler' | 'johnson';
  /** L/k, k the radius of gyration; dimensionless. */
  readonly slenderness: number;
  /** Slenderness at which the laws meet; dimensionless. */
  readonly transition: number;
}

/**
 * Critical load of a column of any slenderness: Euler with Johnson's transition to short columns.
 *
 * Formula: s = L/k, k = sqrt(I/A), s1 = sqrt(2 pi² N E/R_e); above s1 F = N pi² E A/s², below F = A R_e (1 - R_e s²/(4 pi² N E)).
 *
 * @param column - see {@link Column}
 * @returns load in N with the law that governs
 * @throws RangeError for values that are not positive
 *
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, sections 4-12 and 4-13 and equation 8-9.
 * Checked against: test/published/column-buckling.test.ts, Wentzell, example 3.6.
 */
export function criticalColumnLoad(column: Column): CriticalLoad {
  requireColumn(column);
  const { endFixity, length, area, secondMoment, youngsModulus, yieldStrength } = column;
  const slenderness = length / Math.sqrt(secondMoment / area);
  const transition = Math.sqrt((2 * Math.PI ** 2 * endFixity * youngsModulus) / yieldStrength);
  if (slenderness >= transition) {
    return { load: eulerLoad(endFixity, length, youngsModulus * secondMoment), regime: 'euler', slenderness, transition };
  }
  return { load: area * yieldStrength * (1 - 0.5 * (slenderness / transition) ** 2), regime: 'johnson', slenderness, transition };
}

/**
 * The alternative of Rankine and Gordon, one formula for all slendernesses.
 *
 * Formula: F = A sigma_c/(1 + a s²/N); with a = sigma_c/(pi² E) it runs below both Euler and the crushing load.
 *
 * @param column - see {@link Column}; the yield strength is taken as sigma_c
 * @param rankineConstant - a, dimensionless, above 0; left out: sigma_c/(pi² E)
 * @returns load in N
 * @throws RangeError for values that are not positive
 *
 * Source: Rankine-Gordon formula, any textbook on strength of materials; Bhavikatti, Strength of Materials, section 9.9.
 * Checked against: test/published/column-buckling.test.ts, Bhavikatti, example 9.9.5.
 */
export function rankineLoad(column: Column, rankineConstant?: number): number {
  requireColumn(column);
  const { endFixity, length, area, secondMoment, youngsModulus, yieldStrength } = column;
  const constant = rankineConstant ?? yieldStrength / (Math.PI ** 2 * youngsModulus);
  requirePositive('rankineConstant', constant);
  return (area * yieldStrength) / (1 + (constant * length ** 2 * area) / (secondMoment * endFixity));
}

export type ScrewBuckling =
  /** The load pulls: a screw that hangs from its fixed bearing cannot buckle. */
  | { readonly kind: 'in tension' }
  /** No axial force at all: nothing to buckle under. */
  | { readonly kind: 'unloaded' }
  /** `safety` is critical load over compression, above 0. */
  | (CriticalLoad & { readonly kind: 'in compression'; readonly safety: number });

/**
 * Buckling of the stretch of a screw between its axially fixed bearing and the nut.
 *
 * Formula: {@link criticalColumnLoad} over the compression; I = pi d3_min^4/64 from the smallest root diameter.
 *
 * @param compression - largest force that pushes that stretch together, N; negative pulls
 * @param column - length from the fixed bearing to the nut where it is farthest; section from the smallest root diameter
 * @returns the verdict in its type: in tension, unloaded, or in compression with load, law and safety
 * @throws RangeError for values that are not finite or not positive
 *
 * Source: Budynas and Nisbett, section 8-2; length and sign: statics of the screw.
 * Checked against: test/mechanics/column-buckling.test.ts.
 */
export function screwBuckling(compression: number, column: Column): ScrewBuckling {
  if (!Number.isFinite(compression)) throw new RangeError(`compression must be a finite number, got ${compression}`);
  requireColumn(column);
  if (compression < 0) return { kind: 'in tension' };
  if (compression === 0) return { kind: 'unloaded' };
  const critical = criticalColumnLoad(column);
  return { kind: 'in compression', ...critical, safety: critical.load / compression };
}

/**
 * Elastic buckling load of a whole screw: compressed between the fixed bearing and the nut, carried on to the far support.
 *
 * Formula: lowest root of the stability determinant of a beam on three supports, only the left stretch compressed.
 *
 * @param left - the axially fixed end, as an ideal condition or with its own tilt stiffness (N·m/rad)
 * @param right - the far end
 * @param length - between the ends, m, above 0
 * @param nutPosition - from the left end, m, above 0 and at most the length
 * @param bendingStiffness - E I, N·m², above 0
 * @param nut - `knife edge`: kept from moving sideways by its guided load; `against tilt`: also kept from tilting; `not guided`: free to move
 * @returns force in N; 0 when nothing holds the screw upright
 * @throws RangeError outside the stated domains
 *
 * Source: Timoshenko and Gere, Theory of Elastic Stability, section 2.5, continuous struts (from memory).
 * Checked against: test/independent/buckling.test.ts.
 */
export function bucklingLoadWithNut(
  left: ShaftEnd | LateralSupport,
  right: ShaftEnd | LateralSupport,
  length: number,
  nutPosition: number,
  bendingStiffness: number,
  nut: 'knife edge' | 'against tilt' | 'not guided',
): number {
  requirePositive('length', length);
  requirePositive('nutPosition', nutPosition);
  if (nutPosition > length) throw new RangeError('bucklingLoadWithNut: the nut must stand between the ends');
  const end = (one: ShaftEnd | LateralSupport): LateralSupport => (typeof one === 'string' ? supportOf(one) : one);
  const middle: LateralSupport = { lateral: nut === 'not guided' ? 'free' : 'held', tiltStiffness: nut === 'against tilt' ? Infinity : 0 };
  const rest = length - nutPosition;
  const common = { bendingStiffness, massPerLength: 1 };
  if (rest < 1e-3 * length) {
    const far = end(right);
    const joined: LateralSupport = {
      lateral: far.lateral === 'held' || middle.lateral === 'held' ? 'held' : 'free',
      tiltStiffness: Math.max(far.tiltStiffness, middle.tiltStiffness),
    };
    return bucklingFactor({ ...common, stretches: [{ length, axialForce: -1 }], supports: [end(left), joined] });
  }
  return bucklingFactor({
    ...common,
    stretches: [{ length: nutPosition, axialForce: -1 }, { length: rest, axialForce: 0 }],
    supports: [end(left), middle, end(right)],
  });
}

/**
 * How many times larger a column's initial bow is under load.
 *
 * Formula: 1/(1 - F/F_cr).
 *
 * @param compression - F, N, zero or above
 * @param bucklingLoad - F_cr, N, above 0
 * @returns growth, 1 or above, or `buckled` from F = F_cr on
 * @throws RangeError outside the stated domains
 *
 * Source: Timoshenko and Gere, Theory of Elastic Stability, section 1.12, bars with initial curvature (from memory).
 * Checked against: test/mechanics/column-buckling.test.ts.
 */
export function bowGrowth(compression: number, bucklingLoad: number): number | 'buckled' {
  requireNotNegative('compression', compression);
  requirePositive('bucklingLoad', bucklingLoad);
  return compression >= bucklingLoad ? 'buckled' : 1 / (1 - compression / bucklingLoad);
}

/**
 * How much warmer than its frame a screw that is held axially at both ends may become before it buckles.
 *
 * Formula: dT = (F_cr/(E A) + F_cr/(k_e L))/alpha, F_cr Euler's load; with rigid ends dT = N pi² I/(A L² alpha).
 *
 * @param endFixity - N of the lateral ends, above 0
 * @param length - L between the axial bearings, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @param tensionStiffness - E A, N, above 0
 * @param expansion - alpha of the screw, 1/K, above 0
 * @param endStiffness - k_e, axial stiffness of both ends in series, N/m, above 0; `Infinity` (default) for rigid ones
 * @returns temperature difference screw minus frame (of steel like the screw), K
 * @throws RangeError outside the stated domains
 *
 * Source: blocked expansion set against Euler's load, by hand; Timoshenko and Gere, Theory of Elastic Stability.
 * Checked against: test/mechanics/column-buckling.test.ts.
 */
export function bucklingTemperature(
  endFixity: number,
  length: number,
  bendingStiffness: number,
  tensionStiffness: number,
  expansion: number,
  endStiffness = Infinity,
): number {
  requirePositive('tensionStiffness', tensionStiffness);
  requirePositive('expansion', expansion);
  if (!(endStiffness > 0)) throw new RangeError(`endStiffness must be greater than zero, got ${endStiffness}`);
  const load = eulerLoad(endFixity, length, bendingStiffness);
  return (load / tensionStiffness + load / endStiffness / length) / expansion;
}

function requireColumn(column: Column): void {
  for (const [name, value] of Object.entries(column)) requirePositive(name, value as number);
}
