/** Belt and gear reductions between a motor and what it drives, in both directions of power. */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';

/** One stage of a reduction. */
export interface ReductionStage {
  /** i, turns of the fast side per turn of the slow side, > 0 (below 1 it speeds up). */
  readonly ratio: number;
  /** η, share of power that arrives when the fast side drives, 0 < η ≤ 1. */
  readonly efficiency: number;
  /** η_r, share that arrives when the slow side drives; ≤ 1; zero or negative: the stage locks. */
  readonly reverseEfficiency: number;
  /** Inertia that turns with the fast side (its pulley or gear), kg·m², ≥ 0. */
  readonly fastInertia: number;
  /** Inertia that turns with the slow side, kg·m², ≥ 0. */
  readonly slowInertia: number;
  /** Play at the slow side, whole width, rad, ≥ 0. */
  readonly backlash: number;
}

/** Throws RangeError unless the stage is one that can exist. */
export function requireStage(stage: ReductionStage): void {
  requirePositive('ratio', stage.ratio);
  requirePositive('efficiency', stage.efficiency);
  requireFinite('reverse efficiency', stage.reverseEfficiency);
  if (stage.efficiency > 1 || stage.reverseEfficiency > 1) throw new RangeError('an efficiency must not exceed 1');
  requireNotNegative('inertia of the fast side', stage.fastInertia);
  requireNotNegative('inertia of the slow side', stage.slowInertia);
  requireNotNegative('backlash', stage.backlash);
}

/**
 * Ratio of a pair of toothed wheels or pulleys.
 *
 * Formula: i = z_driven / z_driving.
 * @param drivingTeeth teeth on the motor side, > 0.
 * @param drivenTeeth teeth on the driven side, > 0.
 * @returns i.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: hand calculation (test/mechanics/reduction).
 */
export function ratioFromTeeth(drivingTeeth: number, drivenTeeth: number): number {
  requirePositive('driving teeth', drivingTeeth);
  requirePositive('driven teeth', drivenTeeth);
  return drivenTeeth / drivingTeeth;
}

/**
 * Ratio of all stages together.
 *
 * Formula: i = Π i_k.
 * @param stages from the motor on.
 * @returns i; 1 without stages.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: hand calculation (test/mechanics/reduction).
 */
export function totalRatio(stages: readonly ReductionStage[]): number {
  return stages.reduce((product, stage) => {
    requireStage(stage);
    return product * stage.ratio;
  }, 1);
}

/**
 * Efficiency of all stages when the motor drives.
 *
 * Formula: η = Π η_k.
 * @param stages from the motor on.
 * @returns η; 1 without stages.
 * Outside the domain: RangeError.
 * Source: definition.
 * Checked against: hand calculation (test/mechanics/reduction).
 */
export function totalEfficiency(stages: readonly ReductionStage[]): number {
  return stages.reduce((product, stage) => {
    requireStage(stage);
    return product * stage.efficiency;
  }, 1);
}

/**
 * Efficiency when the slow side drives, from the efficiency forwards, for gears and screws whose loss is friction in the mesh.
 *
 * Formula: η_r ≈ 2 − 1/η.
 * @param efficiency η forwards, 0 < η ≤ 1.
 * @returns η_r; zero or negative below η = 0.5: it locks. For a thread it is too low by 2 sin²φ/(cos²λ − sin²φ), about 2 μ²: use
 * the thread's own formula where holding hangs on it.
 * Outside the domain: RangeError.
 * Source: Niemann and Winter, Maschinenelemente, vol. III (worm gears), from memory: equal loss torque in both directions.
 * Checked against: a thread's exact efficiencies (test/mechanics/reduction).
 */
export function reverseEfficiency(efficiency: number): number {
  requirePositive('efficiency', efficiency);
  if (efficiency > 1) throw new RangeError('an efficiency must not exceed 1');
  return 2 - 1 / efficiency;
}

/**
 * Torque on the fast side of a stage for a torque on its slow side.
 *
 * Formula: T_fast = T_slow / (i η) when the motor drives, T_slow η_r / i when the load drives.
 * @param stage see `ReductionStage`.
 * @param slowTorque T_slow that the stage must put out, N·m, positive in the positive direction of turning.
 * @param direction of turning: +1 or −1; 0 at rest, where friction helps to hold (as when the load drives).
 * @returns T_fast, N·m, same sign convention, without the stage's own inertia. A negative η_r reverses the sign: the motor must
 * push what would otherwise lock. At rest a locking stage leaves zero.
 * Outside the domain: RangeError.
 * Source: power balance; Dubey, Fundamentals of Electrical Drives, section 2.3 (motoring); Bevan, Theory of Machines (driven backwards).
 * Checked against: Dubey, example 2.1; Khurmi and Gupta, examples 3.4 and 3.13 (test/published/reductions).
 */
export function fastSideTorque(stage: ReductionStage, slowTorque: number, direction: 1 | 0 | -1): number {
  requireStage(stage);
  requireFinite('torque', slowTorque);
  if (direction !== 0 && slowTorque * direction > 0) return slowTorque / (stage.ratio * stage.efficiency);
  const reverse = direction === 0 ? Math.max(0, stage.reverseEfficiency) : stage.reverseEfficiency;
  return (slowTorque * reverse) / stage.ratio;
}

/**
 * Play of all stages, seen at the last slow shaft.
 *
 * Formula: Σ b_k / (i_{k+1} · … · i_n).
 * @param stages from the motor on.
 * @returns whole width, rad at the output. The play of the last stage is not divided by its own ratio.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: hand calculation (test/mechanics/reduction).
 */
export function backlashAtOutput(stages: readonly ReductionStage[]): number {
  let play = 0;
  for (const stage of stages) {
    requireStage(stage);
    play = play / stage.ratio + stage.backlash;
  }
  return play;
}

/**
 * Inertia at the fast shaft of a chain, losses left out.
 *
 * Formula: J' = J_fast + (J_slow + J_behind) / i², stage by stage from the load.
 * @param stages from the motor on.
 * @param outputInertia inertia at the last slow shaft, kg·m², ≥ 0.
 * @returns J', kg·m², with the wheels of the stages.
 * Outside the domain: RangeError.
 * Source: equal kinetic energy; Dubey, Fundamentals of Electrical Drives, section 2.3.
 * Checked against: Dubey, example 2.1; Gupta and Singhal, example 3.9 (test/published/reductions).
 */
export function inertiaAtInput(stages: readonly ReductionStage[], outputInertia: number): number {
  requireNotNegative('inertia at the output', outputInertia);
  return stages.reduceRight((behind, stage) => {
    requireStage(stage);
    return stage.fastInertia + (stage.slowInertia + behind) / stage.ratio ** 2;
  }, outputInertia);
}

/**
 * Ratio that accelerates a load quickest with a motor of constant torque.
 *
 * Formula: i = T_L/T_M + √((T_L/T_M)² + J_L/J_M); without load torque √(J_L/J_M).
 * @param motorInertia J_M, kg·m², > 0.
 * @param loadInertia J_L at the slow shaft, kg·m², > 0.
 * @param motorTorque T_M, N·m, > 0.
 * @param loadTorque T_L at the slow shaft, steady, N·m, ≥ 0; 0 by default.
 * @returns i. For a stepping motor beyond its corner the torque falls with i and the optimum does not hold.
 * Outside the domain: RangeError.
 * Source: Khurmi and Gupta, Theory of Machines, section 3 (no load torque); derived with load torque.
 * Checked against: Khurmi and Gupta, example 3.14; a search over ratios (test/published/reductions, test/mechanics/reduction).
 */
export function bestRatio(motorInertia: number, loadInertia: number, motorTorque: number, loadTorque = 0): number {
  requirePositive('motor inertia', motorInertia);
  requirePositive('load inertia', loadInertia);
  requirePositive('motor torque', motorTorque);
  requireNotNegative('load torque', loadTorque);
  const share = loadTorque / motorTorque;
  return share + Math.sqrt(share ** 2 + loadInertia / motorInertia);
}
