/** Masses on springs: how they swing freely. All coordinates are lengths along one axis (a turning part is scaled to it by its lever). */
import { EigenvalueDecomposition, Matrix, SingularValueDecomposition, solve } from 'ml-matrix';
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** A part that moves. */
export interface Part {
  /** Plain name, as shown; one of its kind in a system. */
  readonly name: string;
  /** kg along the axis; a rotational inertia over the square of its travel per radian. 0 for a joint without mass worth counting. */
  readonly mass: number;
}

/** A spring between parts, or between a part and the ground. */
export interface Spring {
  readonly name: string;
  /** N/m, above 0 and finite. Join what is rigid into one part instead. */
  readonly stiffness: number;
  /** How much it stretches for each unit that a part moves: `{ carriage: 1, pulley: -1 }`; a part alone is held to the ground. */
  readonly stretch: Readonly<Record<string, number>>;
}

/** One way in which a system swings. */
export interface Mode {
  /** rad/s, above 0. */
  readonly angularFrequency: number;
  /** How far each part moves, the farthest 1 (sign: together or against each other). */
  readonly shape: Readonly<Record<string, number>>;
  /** Share of each part in the kinetic energy, 0 to 1, adding up to 1. */
  readonly motionShares: Readonly<Record<string, number>>;
  /** Share of each spring in the elastic energy, 0 to 1, adding up to 1: stiffening it by 1 % raises the frequency by half its share of 1 %. */
  readonly giveShares: Readonly<Record<string, number>>;
  /** The part with the largest share in the motion. */
  readonly movesMost: string;
  /** The spring with the largest share in the give. */
  readonly givesMost: string;
  /**
   * For each part: how much of the swing that a lone mass of the same frequency would make under a common acceleration this mode gives it.
   * The values of one part over all modes add up to 1 when nothing floats.
   */
  readonly participation: Readonly<Record<string, number>>;
}

export interface Modes {
  /** From the lowest up. */
  readonly modes: readonly Mode[];
  /** Independent ways in which the parts move without stretching any spring; 0 when everything is held. */
  readonly floating: number;
}

/** A spring between two parts. */
export const between = (name: string, stiffness: number, one: string, other: string): Spring => ({ name, stiffness, stretch: { [one]: 1, [other]: -1 } });

/** A spring from a part to the ground. */
export const toGround = (name: string, stiffness: number, part: string): Spring => ({ name, stiffness, stretch: { [part]: 1 } });

/**
 * A rotational inertia as it is felt along the axis.
 *
 * Formula: m = J/(travel per radian)².
 *
 * @param inertia - J, kg·m², 0 or above
 * @param travelPerRadian - travel of the axis per radian of the part, m/rad, above 0 (the radius of a pulley; l/2π of a screw)
 * @returns kg
 * @throws RangeError outside the stated domains
 *
 * Source: equal kinetic energy, ½ J ω² = ½ m v².
 * Checked against: Gupta and Singhal, example 3.6 (test/published/vibration.test.ts).
 */
export function inertiaAlongAxis(inertia: number, travelPerRadian: number): number {
  requireNotNegative('inertia', inertia);
  requirePositive('travel per radian', travelPerRadian);
  return inertia / travelPerRadian ** 2;
}

/**
 * Free undamped modes of parts and springs.
 *
 * Formula: K φ = ω² M φ, with K the sum of k b bᵀ over the springs (b: stretch per unit of each part), solved as the symmetric
 * eigenvalue problem M^-½ K M^-½. Parts without mass follow the others and are condensed exactly: K_rr − K_rm K_mm⁻¹ K_mr.
 *
 * @param parts - at least one with mass; names differ
 * @param springs - each stretches with at least one of the parts
 * @param count - how many modes to return, 1 or above; left out: all
 * @returns the modes with a frequency, the lowest first, and how many ways of moving stretch nothing
 * @throws RangeError for: no mass; a negative mass; a stiffness that is not positive and finite; a spring on an unknown part;
 *   a part that no spring reaches; parts without mass that are not held by the others
 *
 * Source: Rao, Mechanical Vibrations, chapter 6 (from memory).
 * Checked against: test/published/vibration.test.ts, test/independent/spring-mass-chain.test.ts.
 */
export function vibrationModes(parts: readonly Part[], springs: readonly Spring[], count = Infinity): Modes {
  const heavy = parts.filter((part) => part.mass !== 0);
  const light = parts.filter((part) => part.mass === 0);
  if (heavy.length === 0) throw new RangeError('vibrationModes: at least one part with mass is needed');
  for (const part of heavy) requirePositive(`mass of ${part.name}`, part.mass);
  const ordered = [...heavy, ...light];
  const stretches = stretchMatrix(ordered, springs);
  const stiffness = stretches.clone().mulColumnVector(springs.map((spring) => spring.stiffness));
  const whole = stretches.transpose().mmul(stiffness);
  const size = heavy.length;
  const last = ordered.length - 1;

  let condensed = whole;
  /** What the parts without mass do for each unit that one with mass moves. */
  let follow: Matrix | undefined;
  if (light.length > 0) {
    const among = whole.subMatrix(size, last, size, last);
    if (rankOf(stretches.subMatrix(0, springs.length - 1, size, last)) < light.length) throw new RangeError('vibrationModes: a part without mass is not held by the others');
    follow = solve(among, whole.subMatrix(size, last, 0, size - 1)).mul(-1);
    condensed = Matrix.add(whole.subMatrix(0, size - 1, 0, size - 1), whole.subMatrix(0, size - 1, size, last).mmul(follow));
  }
  const floating = ordered.length - rankOf(stretches);

  const root = heavy.map((part) => 1 / Math.sqrt(part.mass));
  const scaled = condensed.clone().mulColumnVector(root).mulRowVector(root);
  const found = new EigenvalueDecomposition(scaled, { assumeSymmetric: true });
  const ranked = found.realEigenvalues.map((eigenvalue, index) => ({ eigenvalue, index })).sort((a, b) => a.eigenvalue - b.eigenvalue);
  const modes = ranked.slice(floating, floating + count).map(({ eigenvalue, index }) => {
    const moved = heavy.map((_, row) => found.eigenvectorMatrix.get(row, index) * (root[row] as number));
    if (follow) moved.push(...follow.mmul(Matrix.columnVector(moved)).to1DArray());
    return describe(ordered, springs, stretches, moved, Math.sqrt(eigenvalue));
  });
  return { modes, floating };
}

/**
 * How far each part lags behind when everything is accelerated evenly, the springs pulling it along.
 *
 * Formula: K x = M 1.
 *
 * @param parts - as for `vibrationModes`; none may float
 * @param springs - as for `vibrationModes`
 * @returns m for 1 m/s², by name of the part
 * @throws RangeError as `vibrationModes`, and where something floats
 *
 * Source: balance of forces.
 * Checked against: sums over all modes (test/mechanics/spring-mass-chain.test.ts).
 */
export function lagUnderUnitAcceleration(parts: readonly Part[], springs: readonly Spring[]): Readonly<Record<string, number>> {
  for (const part of parts) requireNotNegative(`mass of ${part.name}`, part.mass);
  const stretches = stretchMatrix(parts, springs);
  if (rankOf(stretches) < parts.length) throw new RangeError('lagUnderUnitAcceleration: something floats');
  const stiffness = stretches.clone().mulColumnVector(springs.map((spring) => spring.stiffness));
  const lag = solve(stretches.transpose().mmul(stiffness), Matrix.columnVector(parts.map((part) => part.mass)));
  return Object.fromEntries(parts.map((part, index) => [part.name, lag.get(index, 0)]));
}

/** Stretch of every spring (rows) per unit of every part (columns). */
function stretchMatrix(parts: readonly Part[], springs: readonly Spring[]): Matrix {
  if (springs.length === 0) throw new RangeError('vibrationModes: at least one spring is needed');
  const column = new Map(parts.map((part, index) => [part.name, index]));
  if (column.size < parts.length) throw new RangeError('vibrationModes: two parts have the same name');
  const stretches = Matrix.zeros(springs.length, parts.length);
  const reached = new Set<string>();
  springs.forEach((spring, row) => {
    requirePositive(`stiffness of ${spring.name}`, spring.stiffness);
    for (const [name, factor] of Object.entries(spring.stretch)) {
      const index = column.get(name);
      if (index === undefined) throw new RangeError(`vibrationModes: no part is called "${name}"`);
      stretches.set(row, index, factor);
      if (factor !== 0) reached.add(name);
    }
  });
  const loose = parts.find((part) => !reached.has(part.name));
  if (loose) throw new RangeError(`vibrationModes: no spring reaches "${loose.name}"`);
  return stretches;
}

/** Rank of a matrix whose entries are of the order of 1. */
const rankOf = (matrix: Matrix): number => new SingularValueDecomposition(matrix, { computeLeftSingularVectors: false, computeRightSingularVectors: false, autoTranspose: true }).rank;

function describe(parts: readonly Part[], springs: readonly Spring[], stretches: Matrix, moved: readonly number[], angularFrequency: number): Mode {
  const named = (values: readonly number[]): Readonly<Record<string, number>> => Object.fromEntries(parts.map((part, index) => [part.name, values[index] as number]));
  const farthest = moved.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
  const motion = shares(parts.map((part, index) => part.mass * (moved[index] as number) ** 2));
  const stretched = stretches.mmul(Matrix.columnVector([...moved])).to1DArray();
  const give = shares(springs.map((spring, row) => spring.stiffness * (stretched[row] as number) ** 2));
  // With φᵀMφ = 1, as the scaling makes it: φ_n · φᵀM1.
  const common = parts.reduce((sum, part, index) => sum + part.mass * (moved[index] as number), 0);
  return {
    angularFrequency,
    shape: named(moved.map((value) => value / farthest)),
    motionShares: named(motion),
    giveShares: Object.fromEntries(springs.map((spring, row) => [spring.name, give[row] as number])),
    movesMost: (parts[largest(motion)] as Part).name,
    givesMost: (springs[largest(give)] as Spring).name,
    participation: named(moved.map((value) => value * common)),
  };
}

function shares(values: readonly number[]): readonly number[] {
  const sum = values.reduce((total, value) => total + value, 0);
  return values.map((value) => value / sum);
}

const largest = (values: readonly number[]): number => values.reduce((best, value, index) => (value > (values[best] as number) ? index : best), 0);
