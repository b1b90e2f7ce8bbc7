import { requireNotNegative, requirePositive } from './require-argument.ts';
import { lowestFrequency, type LateralSupport, type LowestFrequency } from './shaft-on-supports.ts';
import { firstVibrationRoot, supportOf, type EndPair, type ShaftEnd } from './shaft-ends.ts';

/**
 * Critical (whirling) speed of a slender shaft: the rotation at which its own bow grows without bound.
 *
 * Formula: omega = beta²/L² sqrt(E I / m).
 *
 * @param ends - arrangement of the ends
 * @param length - free length L between the ends, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @param massPerLength - m, kg/m, above 0
 * @returns angular speed in rad/s; only for slender shafts, see {@link slenderExcess}
 * @throws RangeError for values that are not positive
 *
 * Source: Timoshenko, Vibration Problems in Engineering, transverse vibration of bars; Machinery's Handbook, critical speed of shafts (both from memory).
 * Checked against: test/published/whirl.test.ts, Machinery's Handbook constant; test/independent/whirl.test.ts.
 */
export function whirlSpeed(ends: EndPair, length: number, bendingStiffness: number, massPerLength: number): number {
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  requirePositive('massPerLength', massPerLength);
  return (firstVibrationRoot(ends) / length) ** 2 * Math.sqrt(bendingStiffness / massPerLength);
}

/**
 * The free length at which a shaft whirls at a given speed: what shortening must reach.
 *
 * Formula: L = beta (E I / m)^(1/4) / sqrt(omega).
 *
 * @param ends - arrangement of the ends
 * @param angularSpeed - omega, rad/s, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @param massPerLength - m, kg/m, above 0
 * @returns length in m
 * @throws RangeError for values that are not positive
 *
 * Source: {@link whirlSpeed} solved for the length.
 * Checked against: test/mechanics/whirl.test.ts.
 */
export function whirlLength(ends: EndPair, angularSpeed: number, bendingStiffness: number, massPerLength: number): number {
  requirePositive('angularSpeed', angularSpeed);
  requirePositive('bendingStiffness', bendingStiffness);
  requirePositive('massPerLength', massPerLength);
  return (firstVibrationRoot(ends) * (bendingStiffness / massPerLength) ** 0.25) / Math.sqrt(angularSpeed);
}

/** How the nut holds the screw sideways: not at all, as a knife edge, or also against tilt (a long or double nut). */
export type NutHold = 'none' | 'knife edge' | 'against tilt';

export interface ScrewInBearings {
  /** Left (drive) end: an ideal condition, or a support with its own tilt stiffness in N·m/rad. */
  readonly left: ShaftEnd | LateralSupport;
  readonly right: ShaftEnd | LateralSupport;
  /** Between the ends, m, above 0. */
  readonly length: number;
  /** E I, N·m², above 0. */
  readonly bendingStiffness: number;
  /** m, kg/m, above 0. */
  readonly massPerLength: number;
  /** Tension in the stretch from the left end to the nut, N; negative for compression. Default 0. Without a nut: over the whole length. */
  readonly tensionLeftOfNut?: number;
  /** Tension in the stretch from the nut to the right end, N; negative for compression. Default 0. */
  readonly tensionRightOfNut?: number;
  /** 1/(kappa G A), 1/N; default 0, the slender beam. */
  readonly shearFlexibility?: number;
  /** Rotary inertia as in the solver, kg·m; default 0. */
  readonly rotaryInertia?: number;
}

/**
 * Critical speed of a screw whose nut supports it sideways at one place of the travel.
 *
 * Formula: lowest root of the frequency determinant of a beam on three supports, each stretch with its own axial force.
 *
 * @param screw - see {@link ScrewInBearings}
 * @param nut - how the nut holds the screw
 * @param nutPosition - x from the left end, m, from 0 to the length; within 0.1 % of an end the nut merges with that end
 * @returns angular speed in rad/s, `buckled` when the axial load alone bends the screw out, `mechanism` when nothing holds it
 * @throws RangeError for a position outside the length or values that are not positive
 *
 * Source: Timoshenko, Vibration Problems in Engineering, beams on several supports (from memory); solved by {@link lowestFrequency}.
 * Checked against: test/independent/whirl.test.ts.
 */
export function whirlWithNut(screw: ScrewInBearings, nut: NutHold, nutPosition: number): LowestFrequency {
  const { length, bendingStiffness, massPerLength, tensionLeftOfNut = 0, tensionRightOfNut = 0, shearFlexibility = 0, rotaryInertia = 0 } = screw;
  if (!(nutPosition >= 0) || nutPosition > length) throw new RangeError('whirl: the nut must stand between the ends');
  const common = { bendingStiffness, massPerLength, shearFlexibility, rotaryInertia };
  const left = asSupport(screw.left);
  const right = asSupport(screw.right);
  const share = nutPosition / length;
  if (nut === 'none' && tensionLeftOfNut === tensionRightOfNut) {
    return lowestFrequency({ ...common, stretches: [{ length, axialForce: tensionLeftOfNut }], supports: [left, right] });
  }
  const middle: LateralSupport = { lateral: nut === 'none' ? 'free' : 'held', tiltStiffness: nut === 'against tilt' ? Infinity : 0 };
  if (share < MERGED) return lowestFrequency({ ...common, stretches: [{ length, axialForce: tensionRightOfNut }], supports: [firmer(left, middle), right] });
  if (share > 1 - MERGED) return lowestFrequency({ ...common, stretches: [{ length, axialForce: tensionLeftOfNut }], supports: [left, firmer(right, middle)] });
  return lowestFrequency({
    ...common,
    stretches: [{ length: nutPosition, axialForce: tensionLeftOfNut }, { length: length - nutPosition, axialForce: tensionRightOfNut }],
    supports: [left, middle, right],
  });
}

/**
 * The lowest critical speed over the nut's travel, and where the nut stands then.
 *
 * Formula: the frequency of a beam rises to one maximum as an added support moves along it, so the lowest value is at an end of the travel.
 *
 * @param screw - see {@link ScrewInBearings}; tensions as they are with the nut at either end of the travel
 * @param nut - how the nut holds the screw
 * @param from - nut position at one end of the travel, m from the left end
 * @param to - nut position at the other end, m from the left end
 * @returns the worse of both ends with its nut position in m and the longest unsupported stretch in m
 * @throws RangeError as {@link whirlWithNut}
 *
 * Source: Courant and Hilbert, Methods of Mathematical Physics, effect of a constraint on eigenvalues (from memory); confirmed with finite elements in our tests.
 * Checked against: test/independent/whirl.test.ts.
 */
export function whirlOverTravel(screw: ScrewInBearings, nut: NutHold, from: number, to: number): WhirlOverTravel {
  const candidates = [from, to].map((nutPosition): WhirlOverTravel => ({
    result: whirlWithNut(screw, nut, nutPosition),
    nutPosition,
    longestStretch: nut === 'none' ? screw.length : Math.max(nutPosition, screw.length - nutPosition),
  }));
  const rank = (candidate: WhirlOverTravel): number => (candidate.result.kind === 'frequency' ? candidate.result.angularFrequency : 0);
  return candidates.reduce((worst, candidate) => (rank(candidate) < rank(worst) ? candidate : worst));
}

export interface WhirlOverTravel {
  readonly result: LowestFrequency;
  readonly nutPosition: number;
  readonly longestStretch: number;
}

/**
 * How an axial load changes the critical speed of a loaded shaft.
 *
 * Formula: omega/omega_1 = sqrt(1 - F/F_cr), F compression positive; exact for supported ends, within 3.5 % for the others between F = -F_cr and 0.75 F_cr.
 *
 * @param compression - F, N; negative for tension
 * @param bucklingLoad - F_cr of the same length and ends, N, above 0
 * @returns factor on the critical speed, or `buckled` from F = F_cr on
 * @throws RangeError when the buckling load is not positive
 *
 * Source: Timoshenko, Vibration Problems in Engineering, effect of axial forces on lateral vibration (from memory).
 * Checked against: test/independent/whirl.test.ts.
 */
export function axialLoadFactor(compression: number, bucklingLoad: number): number | 'buckled' {
  requirePositive('bucklingLoad', bucklingLoad);
  const share = compression / bucklingLoad;
  return share >= 1 ? 'buckled' : Math.sqrt(1 - share);
}

/**
 * By how much the slender formula is too high for a thick, short shaft in forward synchronous whirl or in plain vibration.
 *
 * Formula: omega_slender/omega_exact - 1 with shear flexibility 1/(kappa G A), kappa = 6(1+nu)²/(7+12nu+4nu²),
 * and rotary inertia rho I (vibration) or -rho I (forward whirl: gyroscopic moment included), per radius of gyration d/4.
 *
 * @param ends - arrangement of the ends
 * @param lengthInDiameters - L/d, 4 or more, d the bending diameter; below 4 a beam is no longer the right picture
 * @param poissonRatio - nu, 0 to 0.5, default 0.3 (steel)
 * @param motion - `whirl` (default) or `vibration`
 * @returns excess as a fraction (0.027 at 12 diameters between fixed ends in whirl, 0.032 in vibration; 0.026 by solid
 * finite elements in vibration, whose bonded end faces also keep the rod from contracting), or `too short`
 * @throws RangeError when L/d is not positive or nu is outside its domain
 *
 * Source: Timoshenko, Philosophical Magazine 41 (1921); shear coefficient of a circle: J. R. Hutchinson, Journal of Applied Mechanics 68 (2001) (both from memory);
 * gyroscopic moment of a round section: Den Hartog, Mechanical Vibrations, chapter 6 (from memory).
 * Checked against: test/independent/solid-rod.test.ts, test/independent/whirl.test.ts.
 */
export function slenderExcess(ends: EndPair, lengthInDiameters: number, poissonRatio = 0.3, motion: 'whirl' | 'vibration' = 'whirl'): number | 'too short' {
  requirePositive('lengthInDiameters', lengthInDiameters);
  if (!(poissonRatio >= 0) || poissonRatio > 0.5) throw new RangeError('slenderExcess: the Poisson ratio must be between 0 and 0.5');
  if (lengthInDiameters < 4) return 'too short';
  // Slender enough, the excess falls with the square of the length: one exact solution then serves all lengths, within 0.2 % of the excess.
  if (lengthInDiameters <= FAR) return exactExcess(ends, lengthInDiameters, poissonRatio, motion);
  const key = `${ends} ${poissonRatio} ${motion}`;
  let atFar = excessAtFar.get(key);
  if (atFar === undefined) {
    atFar = exactExcess(ends, FAR, poissonRatio, motion);
    excessAtFar.set(key, atFar);
  }
  return atFar * (FAR / lengthInDiameters) ** 2;
}

const FAR = 20;
/** Remembered results of a pure function; at most a handful of keys. */
const excessAtFar = new Map<string, number>();

function exactExcess(ends: EndPair, lengthInDiameters: number, nu: number, motion: 'whirl' | 'vibration'): number {
  const gyration = (1 / (4 * lengthInDiameters)) ** 2;
  const shearCoefficient = (6 * (1 + nu) ** 2) / (7 + 12 * nu + 4 * nu * nu);
  const [left, right] = ends.split('-') as [ShaftEnd, ShaftEnd];
  const exact = lowestFrequency({
    bendingStiffness: 1,
    massPerLength: 1,
    stretches: [{ length: 1, axialForce: 0 }],
    supports: [supportOf(left), supportOf(right)],
    shearFlexibility: (gyration * 2 * (1 + nu)) / shearCoefficient,
    rotaryInertia: motion === 'whirl' ? -gyration : gyration,
  });
  if (exact.kind !== 'frequency') throw new RangeError('slenderExcess: an end pair always holds a shaft');
  return firstVibrationRoot(ends) ** 2 / exact.angularFrequency - 1;
}

/**
 * The share of the critical speed up to which a screw may run.
 *
 * Formula: 0.8; 0.7 with a free end.
 *
 * @param ends - arrangement of the ends
 * @returns 0.8, or 0.7 for a screw with a free end; applied once, to a critical speed that does not hold such a factor already
 *
 * Source: common practice, widely printed, no published standard; the bow amplification of 2.8 at 0.8 and 2.0 at 0.7 is its reason.
 * Checked against: test/mechanics/whirl.test.ts.
 */
export function practicalWhirlShare(ends: EndPair): number {
  return ends === 'fixed-free' ? 0.7 : 0.8;
}

/**
 * How many times larger than at rest a screw's bow stands when it turns.
 *
 * Formula: 1/(1 - (n/n1)²).
 *
 * @param share - n/n1, zero or above
 * @returns amplification, 1 or above; `past critical` from n = n1 on, where the steady value says nothing about running up
 * @throws RangeError when the share is negative
 *
 * Source: Den Hartog, Mechanical Vibrations, chapter 6 (from memory).
 * Checked against: test/mechanics/whirl.test.ts.
 */
export function bowAmplification(share: number): number | 'past critical' {
  requireNotNegative('share', share);
  return share < 1 ? 1 / (1 - share * share) : 'past critical';
}

/**
 * How fixed a bearing block is for this screw: its tilt stiffness against the screw's own.
 *
 * Formula: q = k_t L / (E I); beta² of a shaft supported at the other end runs from 9.87 (q = 0) to 15.42 (q infinite); from q = 20 on it counts as fixed.
 *
 * @param tiltStiffness - k_t of the block, N·m/rad, zero or above
 * @param length - L, m, above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @returns q, dimensionless, and whether the end counts as fixed
 * @throws RangeError outside the stated domains
 *
 * Source: derived from beam theory; the limit 20 (87 % of the buckling load gained) is ours.
 * Checked against: test/mechanics/whirl.test.ts.
 */
export function endFixity(tiltStiffness: number, length: number, bendingStiffness: number): { readonly q: number; readonly countsAsFixed: boolean } {
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  requireNotNegative('tiltStiffness', tiltStiffness);
  const q = (tiltStiffness * length) / bendingStiffness;
  return { q, countsAsFixed: q >= 20 };
}

/**
 * Tilt stiffness of a block with two bearings.
 *
 * Formula: k_t = k_r s²/2, both bearings alike.
 *
 * @param radialStiffness - k_r of one bearing in its seat, N/m, above 0
 * @param spacing - s between the bearings, m, above 0
 * @returns tilt stiffness in N·m/rad
 * @throws RangeError for values that are not positive
 *
 * Source: statics of two springs, by hand: a tilt of 1 rad moves each by s/2, moment 2 · k_r · (s/2)².
 * Checked against: test/mechanics/whirl.test.ts.
 */
export function tiltStiffnessOfBearingPair(radialStiffness: number, spacing: number): number {
  requirePositive('radialStiffness', radialStiffness);
  requirePositive('spacing', spacing);
  return (radialStiffness * spacing * spacing) / 2;
}


const MERGED = 1e-3;

function asSupport(end: ShaftEnd | LateralSupport): LateralSupport {
  return typeof end === 'string' ? supportOf(end) : end;
}

function firmer(end: LateralSupport, nut: LateralSupport): LateralSupport {
  return {
    lateral: end.lateral === 'held' || nut.lateral === 'held' ? 'held' : 'free',
    tiltStiffness: Math.max(end.tiltStiffness, nut.tiltStiffness),
  };
}
