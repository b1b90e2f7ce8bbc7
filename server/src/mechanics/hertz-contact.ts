/** Contact of two bodies that touch at a point. */
import { requirePositive, requireFinite } from './require-argument.ts';
import { threshold } from './bisection.ts';

/** Elastic constants of both bodies. */
export interface ContactMaterials {
  /** Pa. */
  readonly youngsModulus: readonly [number, number];
  readonly poissonRatio: readonly [number, number];
}

export interface PointContact {
  /** Longer half axis of the touching area, m. */
  readonly longHalf: number;
  /** Shorter half axis, m. */
  readonly shortHalf: number;
  /** Greatest pressure, Pa. */
  readonly peakPressure: number;
  /** How much the bodies come closer, m. */
  readonly approach: number;
  /** dN/dδ, N/m. */
  readonly stiffness: number;
}

/**
 * E* of two bodies.
 *
 * Formula: 1/E* = (1 − ν₁²)/E₁ + (1 − ν₂²)/E₂.
 *
 * @returns Pa
 * @throws RangeError for a modulus that is not above 0
 *
 * Source: Johnson, Contact Mechanics, chapter 4 (from memory).
 * Checked against: test/published/hertz.test.ts.
 */
export function contactModulus({ youngsModulus, poissonRatio }: ContactMaterials): number {
  const part = (i: 0 | 1): number => {
    requirePositive('youngsModulus', youngsModulus[i]);
    requireFinite('poissonRatio', poissonRatio[i]);
    return (1 - poissonRatio[i] ** 2) / youngsModulus[i];
  };
  return 1 / (part(0) + part(1));
}

/**
 * Contact under a load, whatever the curvatures.
 *
 * Formula: A + B = ½ Σ 1/R, B − A = ½ √(d₁² + d₂² + 2 d₁ d₂ cos 2θ), d = 1/R′ − 1/R″; k = b/a from B/A = (E/k² − K)/(K − E) with complete elliptic integrals of modulus √(1 − k²);
 * a³ = 3 N E/(2π E* (A + B) k²), p₀ = 3 N/(2π a b), δ = 3 N K/(2π E* a); δ ∝ N^⅔, so the stiffness is 3 N/(2 δ).
 *
 * @param load - N, above 0
 * @param curvatures - principal curvatures 1/R of either body, 1/m: positive for a ball, 0 for a flat, negative for a groove
 * @param angle - between the planes of the first curvatures, rad
 * @param materials - elastic constants
 * @returns contact
 * @throws RangeError when the bodies do not touch at a point
 *
 * Source: Johnson, Contact Mechanics, section 4.2 (from memory); complete elliptic integrals by the arithmetic-geometric mean.
 * Checked against: Boresi and Schmidt, example 17.1, and two spheres (test/published/hertz.test.ts).
 */
export function pointContact(load: number, curvatures: readonly [readonly [number, number], readonly [number, number]], angle: number, materials: ContactMaterials): PointContact {
  requirePositive('load', load);
  const modulus = contactModulus(materials);
  const [[a1, b1], [a2, b2]] = curvatures;
  const sum = (a1 + b1 + a2 + b2) / 2;
  const difference = 0.5 * Math.sqrt(Math.max(0, (a1 - b1) ** 2 + (a2 - b2) ** 2 + 2 * (a1 - b1) * (a2 - b2) * Math.cos(2 * angle)));
  const weak = (sum - difference) / 2;
  const strong = (sum + difference) / 2;
  if (!(weak > 1e-9 * strong && strong > 0)) throw new RangeError('the bodies touch along a line or not at all');
  // k' = b/a, short over long half axis: strong/weak falls from infinity to 1 as k' rises to 1.
  const ratio = (k: number): number => {
    const { first, second } = elliptic(k);
    return (second / k ** 2 - first) / (first - second);
  };
  const k = strong / weak < 1 + 1e-9 ? 1 : threshold((value) => ratio(value) < strong / weak, 1e-6, 1 - 1e-9);
  const { first, second } = elliptic(k);
  // Weak curvature lies along the long half axis a: a³ = 3 N E(e)/(2π E* (A + B) k²).
  const longHalf = Math.cbrt((3 * load * second) / (2 * Math.PI * modulus * sum * k ** 2));
  const shortHalf = k * longHalf;
  const approach = (3 * load * first) / (2 * Math.PI * modulus * longHalf);
  return { longHalf, shortHalf, peakPressure: (3 * load) / (2 * Math.PI * longHalf * shortHalf), approach, stiffness: (3 * load) / (2 * approach) };
}

/** Complete elliptic integrals of both kinds with modulus √(1 − k²), by the arithmetic-geometric mean. */
function elliptic(k: number): { readonly first: number; readonly second: number } {
  let [a, g, power, sum] = [1, k, 0.5, (1 - k * k) / 2];
  while (Math.abs(a - g) > 1e-15 * a) {
    const c = (a - g) / 2;
    [a, g] = [(a + g) / 2, Math.sqrt(a * g)];
    power *= 2;
    sum += power * c * c;
  }
  const first = Math.PI / (2 * a);
  return { first, second: first * (1 - sum) };
}
