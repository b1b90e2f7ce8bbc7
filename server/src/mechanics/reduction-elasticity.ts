/** Give and error of a reduction in any number of stages, seen at its output. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** The belt of one stage. */
export interface StageBelt {
  /** c_sp = E A of the whole belt, N per unit of strain, above 0. */
  readonly specificStiffness: number;
  /** C between the shafts, m, above the difference of the radii. */
  readonly centerDistance: number;
  /** Pitch radius of the driving pulley, m, above 0. */
  readonly drivingRadius: number;
  /** Pitch radius of the driven pulley, m, above 0. */
  readonly drivenRadius: number;
  /** Whether both spans are taut; a slack span carries nothing. */
  readonly bothTaut: boolean;
}

/**
 * Length of each free span of an open belt.
 *
 * Formula: L = √(C² − (r₂ − r₁)²).
 * @param belt see `StageBelt`.
 * @returns L in m.
 * @throws RangeError when a value is outside its domain.
 * Source: geometry of the common tangent.
 * Checked against: test/mechanics/reduction-elasticity.test.ts.
 */
export function freeSpan({ centerDistance, drivingRadius, drivenRadius }: Pick<StageBelt, 'centerDistance' | 'drivingRadius' | 'drivenRadius'>): number {
  requirePositive('drivingRadius', drivingRadius);
  requirePositive('drivenRadius', drivenRadius);
  requirePositive('centerDistance', centerDistance);
  const difference = Math.abs(drivenRadius - drivingRadius);
  if (centerDistance <= difference) throw new RangeError('centerDistance must be larger than the difference of the radii');
  return Math.sqrt(centerDistance ** 2 - difference ** 2);
}

/**
 * Torsional stiffness of a belt stage at its driven pulley, the driving one held.
 *
 * Formula: k = s c_sp r₂²/L, with s = 2 while both spans are taut, 1 with a slack span.
 * @param belt see `StageBelt`; belt on the pulleys taken as held by its teeth, which are left out.
 * @returns k in N·m/rad.
 * @throws RangeError when a value is outside its domain.
 * Source: two springs c_sp/L side by side on the radius r₂.
 * Checked against: test/mechanics/reduction-elasticity.test.ts.
 */
export function beltStageStiffness(belt: StageBelt): number {
  requirePositive('specificStiffness', belt.specificStiffness);
  return ((belt.bothTaut ? 2 : 1) * belt.specificStiffness * belt.drivenRadius ** 2) / freeSpan(belt);
}

/** A stage as a spring or an error, at its own slow side. */
export interface StageAtOutput<V extends string> {
  /** i, turns of its fast side per turn of its slow side, above 0. */
  readonly ratio: number;
  readonly values: Readonly<Record<V, number>>;
}

/**
 * Stiffness of all stages in series, seen at the last slow shaft, the motor held.
 *
 * Formula: 1/k = Σ 1/(k_j Π i²), the product over the stages after j: a spring before a ratio counts with its square.
 * @param stages from the motor on, k_j at the slow side of each, N·m/rad, above 0, `Infinity` for a rigid one.
 * @returns k in N·m/rad; `Infinity` without stages.
 * @throws RangeError when a value is outside its domain.
 * Source: springs in series, energy kept through a ratio.
 * Checked against: test/mechanics/reduction-elasticity.test.ts (a unit torque followed stage by stage).
 */
export function stiffnessAtOutput(stages: readonly StageAtOutput<'stiffness'>[]): number {
  let give = 0;
  for (const { ratio, values } of stages) {
    requirePositive('ratio', ratio);
    if (!(values.stiffness > 0)) throw new RangeError(`stiffness must be greater than zero, got ${values.stiffness}`);
    give = give / ratio ** 2 + 1 / values.stiffness;
  }
  return 1 / give;
}

/**
 * Position error of all stages, seen at the last slow shaft, all at their worst at once.
 *
 * Formula: Σ ε_j / Π i, the product over the stages after j.
 * @param stages from the motor on, ε_j at the slow side of each, rad, 0 or above.
 * @returns error in rad, to either side; 0 without stages.
 * @throws RangeError when a value is outside its domain.
 * Source: kinematics.
 * Checked against: test/mechanics/reduction-elasticity.test.ts.
 */
export function errorAtOutput(stages: readonly StageAtOutput<'error'>[]): number {
  let error = 0;
  for (const { ratio, values } of stages) {
    requirePositive('ratio', ratio);
    requireNotNegative('error', values.error);
    error = error / ratio + values.error;
  }
  return error;
}
