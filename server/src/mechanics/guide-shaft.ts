/** A guide shaft or rail that bends under forces across it: deflection, slope, moment and reactions at every place. */
import { Matrix, solve } from 'ml-matrix';
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { endPair, type ShaftEnd } from './shaft-ends.ts';

/** How an end of a guide shaft is held: an ideal condition, or held sideways with a tilt stiffness of its own. */
export type GuideShaftEnd = ShaftEnd | { /** N·m/rad, 0 (supported) to `Infinity` (fixed). */ readonly tiltStiffness: number };

/** A support between the ends. */
export interface MiddleSupport {
  /** x from the left end, m, above 0 and below the length. */
  readonly at: number;
  /** N/m, above 0; left out: rigid. */
  readonly stiffness?: number | undefined;
}

/** A shaft between its ends. */
export interface GuideShaft {
  readonly left: GuideShaftEnd;
  readonly right: GuideShaftEnd;
  /** L between the places where it is held, m, above 0. */
  readonly length: number;
  /** E I, N·m², above 0. */
  readonly bendingStiffness: number;
  /** Even load, its own weight, N/m; positive in the direction in which deflections count. Default 0. */
  readonly loadPerLength?: number | undefined;
  /** 1/(kappa G A), 1/N, 0 or above; default 0, the slender beam. */
  readonly shearFlexibility?: number | undefined;
  readonly middleSupports?: readonly MiddleSupport[] | undefined;
}

/** A force across the shaft. */
export interface ShaftLoad {
  /** x from the left end, m, 0 to the length. */
  readonly at: number;
  /** N, positive in the direction in which deflections count. */
  readonly force: number;
}

/** What a shaft does at one place. */
export interface ShaftPoint {
  /** m, positive in the direction of the forces. */
  readonly deflection: number;
  /** Turn of the cross-section, rad, positive where the deflection grows towards the right end. What a bearing feels. */
  readonly slope: number;
  /** Bending moment, N·m, positive where the loaded side is pressed and the far side stretched. */
  readonly moment: number;
}

/** A shaft under its loads. */
export interface BentShaft {
  /** The state at x, m from the left end, 0 to the length. */
  readonly at: (x: number) => ShaftPoint;
  /** With which the supports hold against the loads, N: left end, middle supports in their order, right end. */
  readonly reactions: readonly number[];
  /** Places between which the moment has no kink, m: ends, loads and supports, rising. */
  readonly places: readonly number[];
}

interface Start { readonly y: number; readonly phi: number; readonly m: number; readonly v: number }

/**
 * Deflection, slope, bending moment and reactions of a straight shaft under forces across it and its own weight.
 *
 * Formula: E I phi''' = q, y' = phi - V/(kappa G A), integrated from the left end: y = y0 + phi0 x + m0 x²/2EI + v0 (x³/6EI - s x)
 * + sum F (<x-a>³/6EI - s <x-a>) + q (x⁴/24EI - s x²/2), s = 1/(kappa G A); two of the four start values follow from the left end, two from the
 * right one; forces of middle supports from their deflection being R/k.
 *
 * @param shaft - see {@link GuideShaft}; fixed and supported ends are the bounds of a real clamp (four times apart under a force in the middle)
 * @param loads - forces; may be empty
 * @returns the bent shaft; small deflections only, L/d above about 10 without `shearFlexibility`
 * @throws RangeError outside the stated domains, and for ends that leave the shaft free to swing (`endPair` says `mechanism`)
 *
 * Source: Euler-Bernoulli and Timoshenko beam by the method of initial parameters, for instance Young and Budynas, Roark's Formulas for Stress and Strain,
 * chapter 8 (from memory).
 * Checked against: test/published/guide-shafts.test.ts (Bansal 12.1, 12.4, 12.5, 13.1; Levinson 13.6, 13.8; Boresi and Schmidt 5.6);
 * test/independent/guide-shafts.test.ts (beam elements).
 */
export function bendShaft(shaft: GuideShaft, loads: readonly ShaftLoad[]): BentShaft {
  const { length, bendingStiffness, loadPerLength = 0, shearFlexibility = 0, middleSupports = [] } = shaft;
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  requireFinite('loadPerLength', loadPerLength);
  requireNotNegative('shearFlexibility', shearFlexibility);
  const left = endOf(shaft.left);
  const right = endOf(shaft.right);
  if (endPair(kindOf(shaft.left), kindOf(shaft.right)) === 'mechanism') throw new RangeError('bendShaft: the ends leave the shaft free to swing');
  for (const load of loads) {
    requireFinite('force', load.force);
    if (!(load.at >= 0 && load.at <= length)) throw new RangeError(`bendShaft: a force at ${load.at} m is off the shaft of ${length} m`);
  }
  for (const support of middleSupports) {
    if (!(support.at > 0 && support.at < length)) throw new RangeError('bendShaft: a middle support must stand between the ends');
    if (!((support.stiffness ?? Infinity) > 0)) throw new RangeError('bendShaft: the stiffness of a middle support must be above 0');
  }
  const beam = { length, bendingStiffness, shearFlexibility };

  let forces = loads;
  if (middleSupports.length > 0) {
    // Each support's force lowers the deflection at all supports: (G + 1/k) R = y without supports.
    const without = bendBetweenEnds(beam, left, right, loads, loadPerLength);
    const unit = middleSupports.map(({ at }) => bendBetweenEnds(beam, left, right, [{ at, force: 1 }], 0));
    const give = new Matrix(middleSupports.map((row, i) => middleSupports.map((_, j) => (unit[j] as Line)(row.at).y + (i === j ? 1 / (row.stiffness ?? Infinity) : 0))));
    const held = solve(give, Matrix.columnVector(middleSupports.map(({ at }) => without(at).y))).to1DArray();
    forces = [...loads, ...middleSupports.map(({ at }, i) => ({ at, force: -(held[i] as number) }))];
  }
  const line = bendBetweenEnds(beam, left, right, forces, loadPerLength);
  const middleForces = forces.slice(loads.length).map(({ force }) => -force);
  return {
    at: (x) => {
      if (!(x >= 0 && x <= length)) throw new RangeError(`bendShaft: ${x} m is off the shaft of ${length} m`);
      const { y, phi, m } = line(x);
      // y counts along the load: where the shaft sags under it, y'' is negative, and the loaded side is pressed.
      return { deflection: y, slope: phi, moment: -m };
    },
    // A force right on the left end goes into it; the shear beyond it does not know.
    reactions: [forces.reduce((sum, { at, force }) => (at === 0 ? sum + force : sum), 0) - line(0).v, ...middleForces, line(length).v],
    places: [...new Set([0, length, ...forces.map(({ at }) => at)])].sort((a, b) => a - b),
  };
}

type Line = (x: number) => Start;
interface Beam { readonly length: number; readonly bendingStiffness: number; readonly shearFlexibility: number }

interface End { readonly held: boolean; readonly tiltStiffness: number }

const endOf = (end: GuideShaftEnd): End => {
  if (typeof end === 'string') return { held: end !== 'free', tiltStiffness: end === 'fixed' ? Infinity : 0 };
  if (!(end.tiltStiffness >= 0)) throw new RangeError(`tiltStiffness must be zero or greater, got ${end.tiltStiffness}`);
  return { held: true, tiltStiffness: end.tiltStiffness };
};
const kindOf = (end: GuideShaftEnd): ShaftEnd => (typeof end === 'string' ? end : end.tiltStiffness > 0 ? 'fixed' : 'supported');

function bendBetweenEnds({ length, bendingStiffness, shearFlexibility }: Beam, left: End, right: End, loads: readonly ShaftLoad[], q: number): Line {
  const from = (start: Start, forces: readonly ShaftLoad[], even: number): Line => (x) => {
    let y = start.y + start.phi * x + (start.m * x * x) / (2 * bendingStiffness) + start.v * (x ** 3 / (6 * bendingStiffness) - shearFlexibility * x);
    let phi = start.phi + (start.m * x) / bendingStiffness + (start.v * x * x) / (2 * bendingStiffness);
    let m = start.m + start.v * x;
    let v = start.v;
    y += even * (x ** 4 / (24 * bendingStiffness) - (shearFlexibility * x * x) / 2);
    phi += (even * x ** 3) / (6 * bendingStiffness);
    m += (even * x * x) / 2;
    v += even * x;
    for (const { at, force } of forces) {
      const d = x - at;
      if (d < 0) continue;
      y += force * (d ** 3 / (6 * bendingStiffness) - shearFlexibility * d);
      phi += (force * d * d) / (2 * bendingStiffness);
      m += force * d;
      v += force;
    }
    return { y, phi, m, v };
  };
  // What the left end leaves open, as two directions of the size of the beam's own values, so that the small system is well conditioned.
  const k = bendingStiffness / length;
  const zero = { y: 0, phi: 0, m: 0, v: 0 };
  const directions: readonly [Start, Start] = [
    !left.held ? { ...zero, y: length } : { ...zero, v: k / length },
    left.tiltStiffness > k ? { ...zero, m: k, phi: k / left.tiltStiffness } : { ...zero, phi: 1, m: left.tiltStiffness },
  ];
  // Two residuals at the right end, both without unit.
  const residuals = ({ y, phi, m, v }: Start): readonly [number, number] => [
    right.held ? y / length : (v * length) / k,
    right.tiltStiffness > k ? phi + m / right.tiltStiffness : (m + right.tiltStiffness * phi) / k,
  ];
  const particular = residuals(from(zero, loads, q)(length));
  const [a, c] = residuals(from(directions[0], [], 0)(length));
  const [b, d] = residuals(from(directions[1], [], 0)(length));
  const determinant = a * d - b * c;
  const first = (-particular[0] * d + particular[1] * b) / determinant;
  const second = (-particular[1] * a + particular[0] * c) / determinant;
  const start: Start = {
    y: first * directions[0].y + second * directions[1].y,
    phi: first * directions[0].phi + second * directions[1].phi,
    m: first * directions[0].m + second * directions[1].m,
    v: first * directions[0].v + second * directions[1].v,
  };
  return from(start, loads, q);
}

/**
 * Second moment of area of a round shaft, solid or tube.
 *
 * Formula: I = pi (D⁴ - d⁴)/64.
 *
 * @param diameter - D, m, above 0
 * @param bore - d, m, 0 (default) and below D
 * @returns m⁴
 * @throws RangeError outside the stated domains
 *
 * Source: geometry.
 * Checked against: test/mechanics/guide-shaft.test.ts.
 */
export function roundSecondMoment(diameter: number, bore = 0): number {
  requirePositive('diameter', diameter);
  requireNotNegative('bore', bore);
  if (bore >= diameter) throw new RangeError('the bore must be smaller than the shaft');
  return (Math.PI * (diameter ** 4 - bore ** 4)) / 64;
}

/**
 * Shear flexibility of a round solid shaft.
 *
 * Formula: s = 1/(kappa G A), kappa = 6 (1+nu)²/(7+12nu+4nu²).
 *
 * @param diameter - m, above 0
 * @param modulus - E, Pa, above 0
 * @param poissonRatio - nu, 0 to 0.5; default 0.3 (steel)
 * @returns 1/N
 * @throws RangeError outside the stated domains
 *
 * Source: J. R. Hutchinson, Journal of Applied Mechanics 68 (2001), shear coefficient of a circle (from memory).
 * Checked against: test/mechanics/guide-shaft.test.ts.
 */
export function roundShearFlexibility(diameter: number, modulus: number, poissonRatio = 0.3): number {
  requirePositive('diameter', diameter);
  requirePositive('modulus', modulus);
  requireNotNegative('poissonRatio', poissonRatio);
  if (poissonRatio > 0.5) throw new RangeError('the Poisson ratio must be at most 0.5');
  const coefficient = (6 * (1 + poissonRatio) ** 2) / (7 + 12 * poissonRatio + 4 * poissonRatio ** 2);
  return (2 * (1 + poissonRatio)) / (coefficient * modulus * ((Math.PI * diameter ** 2) / 4));
}

/**
 * Bending stress at the skin of a round shaft.
 *
 * Formula: sigma = M D/(2 I).
 *
 * @param moment - M, N·m; the size counts
 * @param diameter - D, m, above 0
 * @param bore - m, 0 (default) and below D
 * @returns Pa, 0 or above
 * @throws RangeError outside the stated domains
 *
 * Source: any book on strength of materials.
 * Checked against: test/mechanics/guide-shaft.test.ts.
 */
export function roundBendingStress(moment: number, diameter: number, bore = 0): number {
  requireFinite('moment', moment);
  return (Math.abs(moment) * diameter) / (2 * roundSecondMoment(diameter, bore));
}

/**
 * How far a shaft or rail that lies on its whole length gives under a carriage.
 *
 * Formula: y = F b/(2 k'), b = (k'/(4 E I))^(1/4); slope 0 there, and the bend has died out at about pi/b on either side.
 *
 * @param force - F, N
 * @param foundation - k', force per metre of rail that presses it down by a metre, N/m², above 0
 * @param bendingStiffness - E I, N·m², above 0
 * @returns deflection in m, and the distance pi/b in m that must be free of ends and of other carriages
 * @throws RangeError outside the stated domains
 *
 * Source: Hetényi, Beams on Elastic Foundation, infinite beam (from memory).
 * Checked against: test/independent/guide-shafts.test.ts (many springs under a beam).
 */
export function supportedRailGive(force: number, foundation: number, bendingStiffness: number): { readonly deflection: number; readonly reach: number } {
  requireFinite('force', force);
  requirePositive('foundation', foundation);
  requirePositive('bendingStiffness', bendingStiffness);
  const b = (foundation / (4 * bendingStiffness)) ** 0.25;
  return { deflection: (force * b) / (2 * foundation), reach: Math.PI / b };
}
