import { threshold } from './bisection.ts';

/**
 * The exact dynamic stiffness of a uniform shaft on several supports: the common ground of whirl and buckling.
 * One stretch of shaft runs from support to support; each stretch has its own axial force.
 * Coordinates at every support: lateral displacement w and cross-section tilt psi.
 */
export interface ShaftOnSupports {
  /** E I of the whole section, N·m², above 0. */
  readonly bendingStiffness: number;
  /** Mass per length, kg/m, above 0. */
  readonly massPerLength: number;
  /** Stretches in order from the left end; each has length (m, above 0) and axial force (N, tension positive). */
  readonly stretches: readonly Stretch[];
  /** One support more than there are stretches, in order from the left end. */
  readonly supports: readonly LateralSupport[];
  /** Shear flexibility 1/(kappa G A), 1/N, zero or above; 0 (the default) is the slender beam of Euler and Bernoulli. */
  readonly shearFlexibility?: number;
  /**
   * Rotary inertia per length, kg·m: rho I for a shaft that vibrates without turning, -rho I for a round shaft in
   * forward synchronous whirl (the gyroscopic moment 2 rho I acts against the rotary inertia rho I). Default 0.
   */
  readonly rotaryInertia?: number;
}

export interface Stretch {
  readonly length: number;
  readonly axialForce: number;
}

export interface LateralSupport {
  /** Whether the shaft is kept from moving sideways here. */
  readonly lateral: 'held' | 'free';
  /** Stiffness against tilt, N·m/rad, zero or above; `Infinity` for a clamped section. */
  readonly tiltStiffness: number;
}

export type LowestFrequency =
  | { readonly kind: 'frequency'; readonly angularFrequency: number }
  /** The axial load alone already makes the shaft unstable: there is no vibration about the straight shape. */
  | { readonly kind: 'buckled' }
  /** The supports leave the shaft free to move as a rigid body. */
  | { readonly kind: 'mechanism' };

/**
 * The lowest angular frequency at which a shaft on supports vibrates sideways, or whirls in step with its rotation.
 *
 * Formula: EI(1+cT) s^4 + (c EI m w² - T + J w²(1+cT)) s² - m w²(1 - c J w²) = 0 gives the exact shapes of each stretch
 * (c shear flexibility, T tension, J rotary inertia); frequencies are counted by the negative pivots of the assembled stiffness.
 *
 * @param shaft - see {@link ShaftOnSupports}
 * @returns angular frequency in rad/s, or `buckled`, or `mechanism`
 * @throws RangeError for lengths, stiffnesses or masses that are not positive, or a wrong number of supports
 *
 * Source: W. H. Wittrick and F. W. Williams, Quarterly Journal of Mechanics and Applied Mathematics 24 (1971), the counting rule (from memory);
 * S. Timoshenko, Vibration Problems in Engineering, the beam with shear and rotary inertia (from memory).
 * Checked against: test/independent/whirl.test.ts (own finite elements), test/independent/solid-rod.test.ts (general-purpose solver).
 */
export function lowestFrequency(shaft: ShaftOnSupports): LowestFrequency {
  const scaled = dimensionless(shaft);
  if (modesBelow(scaled, PRACTICALLY_ZERO) > 0) {
    const unloaded = { ...scaled, stretches: scaled.stretches.map((stretch) => ({ ...stretch, axialForce: 0 })) };
    return { kind: modesBelow(unloaded, PRACTICALLY_ZERO) > 0 ? 'mechanism' : 'buckled' };
  }
  let high = 4;
  while (modesBelow(scaled, high) === 0) {
    high *= 2;
    if (high > 1e9) throw new RangeError('lowestFrequency: no vibration found; the shaft is clamped along its whole length');
  }
  const frequency = threshold((value) => modesBelow(scaled, value) > 0, PRACTICALLY_ZERO, high);
  return { kind: 'frequency', angularFrequency: frequency * frequencyUnit(shaft) };
}

/**
 * The factor by which the axial forces of a shaft must grow for it to buckle sideways.
 *
 * Formula: the smallest factor f for which the static stiffness with axial forces f T has a negative pivot.
 *
 * @param shaft - see {@link ShaftOnSupports}; at least one stretch in compression (negative axial force)
 * @returns f (dimensionless, above 0); `Infinity` when no stretch is compressed; 0 when the shaft is a mechanism without any load
 * @throws RangeError as {@link lowestFrequency}
 *
 * Source: S. Timoshenko and J. Gere, Theory of Elastic Stability, chapter 2 (from memory); counting as in {@link lowestFrequency}.
 * Checked against: test/independent/buckling.test.ts (own finite elements).
 */
export function bucklingFactor(shaft: ShaftOnSupports): number {
  const scaled = dimensionless(shaft);
  const mostCompressed = Math.min(...scaled.stretches.map((stretch) => stretch.axialForce));
  if (mostCompressed >= 0) return Infinity;
  const loaded = (factor: number): boolean => {
    const stretches = scaled.stretches.map((stretch) => ({ ...stretch, axialForce: stretch.axialForce * factor }));
    return modesBelow({ ...scaled, stretches }, PRACTICALLY_ZERO) > 0;
  };
  if (loaded(0)) return 0;
  let high = 1 / -mostCompressed;
  while (!loaded(high)) high *= 2;
  return threshold(loaded, 0, high);
}

/** Low enough that inertia changes a static result by less than 1e-7, high enough for the arithmetic. */
const PRACTICALLY_ZERO = 1e-3;

interface Scaled {
  readonly stretches: readonly Stretch[];
  readonly supports: readonly LateralSupport[];
  readonly shearFlexibility: number;
  readonly rotaryInertia: number;
}

function totalLength(shaft: ShaftOnSupports): number {
  return shaft.stretches.reduce((sum, stretch) => sum + stretch.length, 0);
}

/** sqrt(EI/m)/L², the unit in which frequencies are counted. */
function frequencyUnit(shaft: ShaftOnSupports): number {
  return Math.sqrt(shaft.bendingStiffness / shaft.massPerLength) / totalLength(shaft) ** 2;
}

function dimensionless(shaft: ShaftOnSupports): Scaled {
  const { bendingStiffness, massPerLength, stretches, supports, shearFlexibility = 0, rotaryInertia = 0 } = shaft;
  if (!(bendingStiffness > 0) || !(massPerLength > 0)) throw new RangeError('shaft: bending stiffness and mass must be above 0');
  if (stretches.length === 0 || stretches.some((stretch) => !(stretch.length > 0))) throw new RangeError('shaft: every stretch needs a length above 0');
  if (supports.length !== stretches.length + 1) throw new RangeError('shaft: one support more than stretches is needed');
  if (supports.some((support) => !(support.tiltStiffness >= 0)) || !(shearFlexibility >= 0)) throw new RangeError('shaft: stiffnesses cannot be negative');
  const length = totalLength(shaft);
  const force = bendingStiffness / length ** 2;
  return {
    stretches: stretches.map((stretch) => ({ length: stretch.length / length, axialForce: stretch.axialForce / force })),
    supports: supports.map((support) => ({ ...support, tiltStiffness: (support.tiltStiffness * length) / bendingStiffness })),
    shearFlexibility: shearFlexibility * force,
    rotaryInertia: rotaryInertia / (massPerLength * length ** 2),
  };
}

/** How many natural frequencies lie below `frequency`: the negative pivots of the dynamic stiffness. */
function modesBelow(shaft: Scaled, frequency: number): number {
  const pieces: Stretch[] = [];
  const supports: LateralSupport[] = [];
  const between: LateralSupport = { lateral: 'free', tiltStiffness: 0 };
  shaft.stretches.forEach((stretch, index) => {
    supports.push(shaft.supports[index] as LateralSupport);
    // A piece whose wave argument b l stays below pi has no mode of its own between clamped ends, so pivots alone count.
    const count = Math.floor((waves(shaft, stretch.axialForce, frequency).b * stretch.length) / (0.9 * Math.PI)) + 1;
    for (let piece = 0; piece < count; piece++) {
      pieces.push({ length: stretch.length / count, axialForce: stretch.axialForce });
      if (piece > 0) supports.push(between);
    }
  });
  supports.push(shaft.supports.at(-1) as LateralSupport);

  let free = 0;
  const place = supports.map((support) => [
    support.lateral === 'held' ? -1 : free++,
    support.tiltStiffness === Infinity ? -1 : free++,
  ]).flat();
  const matrix = new Float64Array(free * free);
  pieces.forEach((piece, index) => {
    const stiffness = pieceStiffness(shaft, piece, frequency);
    for (let row = 0; row < 4; row++) {
      const i = place[2 * index + row] as number;
      if (i < 0) continue;
      for (let column = 0; column < 4; column++) {
        const j = place[2 * index + column] as number;
        if (j >= 0) matrix[i * free + j] = (matrix[i * free + j] as number) + (stiffness[4 * row + column] as number);
      }
    }
  });
  supports.forEach((support, index) => {
    const i = place[2 * index + 1] as number;
    if (i >= 0) matrix[i * free + i] = (matrix[i * free + i] as number) + support.tiltStiffness;
  });
  return negativePivots(matrix, free);
}

/** Exponents of the shape functions: exp(±a x) and sin, cos(b x). */
function waves(shaft: Scaled, tension: number, frequency: number): { a: number; b: number } {
  const { shearFlexibility: c, rotaryInertia: j } = shaft;
  const w2 = frequency * frequency;
  const stretching = 1 + c * tension;
  const linear = c * w2 - tension + j * w2 * stretching;
  const constant = -w2 * (1 - c * j * w2);
  const root = Math.sqrt(linear * linear - 4 * stretching * constant);
  // The larger root in size by the stable form, the other by the product of the roots.
  const larger = linear > 0 ? (-linear - root) / (2 * stretching) : (-linear + root) / (2 * stretching);
  const other = constant / stretching / larger;
  return { a: Math.sqrt(Math.max(larger, other)), b: Math.sqrt(-Math.min(larger, other)) };
}

/** Stiffness of one piece, row by row: forces on [w, psi at its left; w, psi at its right] for unit displacements of the same. */
function pieceStiffness(shaft: Scaled, piece: Stretch, frequency: number): Float64Array {
  const { shearFlexibility: c, rotaryInertia: j } = shaft;
  const tension = piece.axialForce;
  const l = piece.length;
  const w2 = frequency * frequency;
  const { a, b } = waves(shaft, tension, frequency);
  const stretching = 1 + c * tension;
  const tiltA = (stretching * a * a + c * w2) / a;
  const tiltB = (stretching * b * b - c * w2) / b;
  // Columns: shapes. Rows of `moves`: w and psi at both ends; rows of `forces`: end forces, from moment psi' and shear -psi'' - J w² psi + T w'.
  const moves = new Float64Array(16);
  const forces = new Float64Array(16);
  const column = (index: number, at0: Shape, atL: Shape): void => {
    moves[index] = at0.w;
    moves[4 + index] = at0.psi;
    moves[8 + index] = atL.w;
    moves[12 + index] = atL.psi;
    const shear = (shape: Shape): number => -shape.psi2 - j * w2 * shape.psi + tension * shape.w1;
    forces[index] = -shear(at0);
    forces[4 + index] = -at0.psi1;
    forces[8 + index] = shear(atL);
    forces[12 + index] = atL.psi1;
  };
  if (a * l < 2) {
    const even = (x: number): Shape => {
      const ch = Math.cosh(a * x);
      const sh = Math.sinh(a * x);
      return { w: ch, w1: a * sh, psi: tiltA * sh, psi1: tiltA * a * ch, psi2: tiltA * a * a * sh };
    };
    const odd = (x: number): Shape => {
      const ch = Math.cosh(a * x);
      const sh = Math.sinh(a * x);
      return { w: sh / a, w1: ch, psi: (tiltA / a) * ch, psi1: tiltA * sh, psi2: tiltA * a * ch };
    };
    column(0, even(0), even(l));
    column(1, odd(0), odd(l));
  } else {
    const falling = (x: number): Shape => {
      const e = Math.exp(-a * x);
      return { w: e, w1: -a * e, psi: -tiltA * e, psi1: tiltA * a * e, psi2: -tiltA * a * a * e };
    };
    const rising = (x: number): Shape => {
      const e = Math.exp(a * (x - l));
      return { w: e, w1: a * e, psi: tiltA * e, psi1: tiltA * a * e, psi2: tiltA * a * a * e };
    };
    column(0, falling(0), falling(l));
    column(1, rising(0), rising(l));
  }
  const cosine = (x: number): Shape => {
    const co = Math.cos(b * x);
    const si = Math.sin(b * x);
    return { w: co, w1: -b * si, psi: -tiltB * si, psi1: -tiltB * b * co, psi2: tiltB * b * b * si };
  };
  const sine = (x: number): Shape => {
    const co = Math.cos(b * x);
    const si = Math.sin(b * x);
    return { w: si / b, w1: co, psi: (tiltB / b) * co, psi1: -tiltB * si, psi2: -tiltB * b * co };
  };
  column(2, cosine(0), cosine(l));
  column(3, sine(0), sine(l));
  return divideRight(forces, moves);
}

interface Shape {
  readonly w: number;
  readonly w1: number;
  readonly psi: number;
  readonly psi1: number;
  readonly psi2: number;
}

/** forces · moves⁻¹ for 4 × 4 matrices, by elimination with column exchange. Overwrites both. */
function divideRight(forces: Float64Array, moves: Float64Array): Float64Array {
  const at = (matrix: Float64Array, row: number, column: number): number => matrix[4 * row + column] as number;
  const both = [moves, forces];
  for (let row = 0; row < 4; row++) {
    let best = row;
    for (let column = row + 1; column < 4; column++) {
      if (Math.abs(at(moves, row, column)) > Math.abs(at(moves, row, best))) best = column;
    }
    const pivot = at(moves, row, best);
    for (const matrix of both) {
      for (let r = 0; r < 4; r++) {
        const kept = at(matrix, r, row);
        matrix[4 * r + row] = at(matrix, r, best) / pivot;
        if (best !== row) matrix[4 * r + best] = kept;
      }
    }
    for (let column = 0; column < 4; column++) {
      if (column === row) continue;
      const factor = at(moves, row, column);
      for (const matrix of both) {
        for (let r = 0; r < 4; r++) matrix[4 * r + column] = at(matrix, r, column) - factor * at(matrix, r, row);
      }
    }
  }
  return forces;
}

/** Number of negative pivots of a symmetric matrix: by Sylvester's law the number of its negative eigenvalues. */
function negativePivots(matrix: Float64Array, size: number): number {
  let negative = 0;
  for (let k = 0; k < size; k++) {
    let pivot = matrix[k * size + k] as number;
    if (pivot === 0) pivot = Number.MIN_VALUE;
    if (pivot < 0) negative++;
    for (let row = k + 1; row < size; row++) {
      const factor = (matrix[row * size + k] as number) / pivot;
      if (factor === 0) continue;
      for (let column = k + 1; column < size; column++) {
        matrix[row * size + column] = (matrix[row * size + column] as number) - factor * (matrix[k * size + column] as number);
      }
    }
  }
  return negative;
}
