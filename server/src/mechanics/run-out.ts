import { type EndPair } from './shaft-ends.ts';
import { requireNotNegative, requirePositive } from './require-argument.ts';

/**
 * Lateral stiffness of a screw at the nut: the force that moves it sideways there, per metre.
 *
 * Formula: a = x, b = L - x from the left end. Supported: 3 E I L/(a² b²). Fixed (left)-supported: 12 E I L³/(a³ b² (3L + b)).
 * Fixed-fixed: 3 E I L³/(a³ b³). Fixed (left)-free: 3 E I/a³.
 *
 * @param ends - arrangement of the ends; for unlike ends the fixed one is the left one
 * @param length - L between the ends, m, above 0
 * @param nutPosition - x from the left end, m, 0 to L; 0, and L where that end is held, are rigid
 * @param bendingStiffness - E I, N·m², above 0
 * @returns stiffness in N/m, `Infinity` at an end that is held
 * @throws RangeError for a position outside the length or values that are not positive
 *
 * Source: beam tables, for instance Young and Budynas, Roark's Formulas for Stress and Strain, table 8.1 (from memory).
 * Checked against: test/independent/screw-run-out.test.ts.
 */
export function lateralStiffness(ends: EndPair, length: number, nutPosition: number, bendingStiffness: number): number {
  requirePositive('length', length);
  requirePositive('bendingStiffness', bendingStiffness);
  if (!(nutPosition >= 0) || nutPosition > length) throw new RangeError('lateralStiffness: the nut must stand between the ends');
  const a = nutPosition;
  const b = length - nutPosition;
  switch (ends) {
    case 'supported-supported':
      return (3 * bendingStiffness * length) / (a * a * b * b);
    case 'fixed-supported':
      return (12 * bendingStiffness * length ** 3) / (a ** 3 * b * b * (3 * length + b));
    case 'fixed-fixed':
      return (3 * bendingStiffness * length ** 3) / (a * b) ** 3;
    case 'fixed-free':
      return (3 * bendingStiffness) / a ** 3;
  }
}

export interface RunOutAtLoad {
  /** Side force between screw and guided load, N, amplitude. */
  readonly force: number;
  /** How far the guided load is pushed sideways, m, amplitude, once per turn. */
  readonly displacement: number;
}

/**
 * Side force and movement that an eccentric screw gives a load whose nut is bolted on rigidly.
 *
 * Formula: springs in series: displacement e k_s/(k_s + k_g), force e k_s k_g/(k_s + k_g).
 *
 * @param eccentricity - e of the screw's axis at the nut, half of the indicated run-out, m, zero or above
 * @param screwStiffness - k_s, lateral stiffness of the screw at the nut, N/m, above 0; may be `Infinity` (nut at a bearing)
 * @param guideStiffness - k_g, lateral stiffness of the guide at the nut, N/m, above 0
 * @returns amplitudes of force (N) and displacement (m); they turn with the screw, one cycle per lead of travel
 * @throws RangeError outside the stated domains
 *
 * Source: two springs in series, by hand.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function runOutOfRigidNut(eccentricity: number, screwStiffness: number, guideStiffness: number): RunOutAtLoad {
  requireNotNegative('eccentricity', eccentricity);
  requireStiffness('screwStiffness', screwStiffness);
  requireStiffness('guideStiffness', guideStiffness);
  const force = eccentricity / (1 / screwStiffness + 1 / guideStiffness);
  return { force, displacement: force / guideStiffness };
}

/**
 * Side force and movement when the nut may float sideways: through a soft element, or by sliding on a face under the axial load.
 *
 * Formula: F = min(e/(1/k_s + 1/k_d + 1/k_g), mu F_a); displacement F/k_g.
 *
 * @param eccentricity - e, m, zero or above
 * @param screwStiffness - k_s, N/m, above 0; may be `Infinity`
 * @param guideStiffness - k_g, N/m, above 0
 * @param decoupling - lateral stiffness k_d of the element (N/m, above 0, `Infinity` for a sliding face without its own spring),
 * and the force at which it slides, mu F_a (N, zero or above; left out when nothing slides)
 * @returns amplitudes of force (N) and displacement (m)
 * @throws RangeError outside the stated domains
 *
 * Source: three springs in series and a Coulomb limit, by hand.
 * Checked against: test/mechanics/screw-axis.test.ts.
 */
export function runOutOfDecoupledNut(
  eccentricity: number,
  screwStiffness: number,
  guideStiffness: number,
  decoupling: { readonly stiffness: number; readonly slidingForce?: number | undefined },
): RunOutAtLoad {
  requireNotNegative('eccentricity', eccentricity);
  requireStiffness('screwStiffness', screwStiffness);
  requireStiffness('guideStiffness', guideStiffness);
  requireStiffness('decoupling.stiffness', decoupling.stiffness);
  const slidingForce = decoupling.slidingForce ?? Infinity;
  if (!(slidingForce >= 0)) throw new RangeError('decoupling.slidingForce must be zero or greater');
  const elastic = eccentricity / (1 / screwStiffness + 1 / decoupling.stiffness + 1 / guideStiffness);
  const force = Math.min(elastic, slidingForce);
  return { force, displacement: force / guideStiffness };
}

/**
 * Run-out permitted where it is measured, from the value permitted at the support.
 *
 * Formula: t = t_table + (x/L) t_total.
 *
 * @param tableValue - permitted run-out beside the support, m, zero or above
 * @param totalRunOut - permitted total run-out of the screw over its length, m, zero or above
 * @param distance - x from the support to where it is measured, m, zero or above
 * @param length - L of the screw, m, above 0
 * @returns permitted run-out in m
 * @throws RangeError outside the stated domains
 *
 * Source: form tolerances of JIS B 1192 (as read on a page that quotes them; the standard was not opened).
 * Checked against: test/published/lead-accuracy.test.ts, form tolerances of JIS B 1192.
 */
export function permittedRunOut(tableValue: number, totalRunOut: number, distance: number, length: number): number {
  requireNotNegative('tableValue', tableValue);
  requireNotNegative('totalRunOut', totalRunOut);
  requireNotNegative('distance', distance);
  requirePositive('length', length);
  return tableValue + (distance / length) * totalRunOut;
}

function requireStiffness(name: string, value: number): void {
  if (!(value > 0)) throw new RangeError(`${name} must be greater than zero, got ${value}`);
}
