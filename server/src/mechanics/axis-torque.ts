/**
 * From the masses of an axis to the torque at its motor, phase by phase, with the sign that tells who drives whom.
 *
 * Sign convention: positive is along the axis, upwards on a vertical one; a positive torque is one that pushes in that direction.
 * The moving mass enters as a force; it is not counted again as an inertia.
 */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { fastSideTorque, inertiaAtInput, requireStage, totalRatio } from './reduction.ts';
import type { ReductionStage } from './reduction.ts';

/** Direction of travel: +1 along the axis (up), −1 against it, 0 at rest. */
export type Direction = 1 | 0 | -1;

/** What the load asks of all drives of an axis together. */
export interface AxisLoad {
  /** m, everything that travels, kg, > 0. */
  readonly mass: number;
  /** Slope of the axis to the horizontal, rad, −π/2 to π/2; π/2 for vertical. */
  readonly slope: number;
  /** g, m/s², ≥ 0. */
  readonly gravity: number;
  /** Friction of guides and seals, N, ≥ 0: against the motion. */
  readonly friction: number;
  /** Force of the process on the axis, N, positive when it pushes against +. */
  readonly process: number;
  /** Force of a counterbalance, N, positive when it lifts. A counterbalancing mass belongs to `mass` too. */
  readonly counterbalance: number;
}

/**
 * Force that the drives of an axis must put out in one phase.
 *
 * Formula: F = m (a + g sin β) + F_friction · direction + F_process − F_counterbalance.
 * @param load see `AxisLoad`.
 * @param direction of travel; at rest friction is left out, which is the safe side for holding.
 * @param acceleration a with its sign, m/s²: braking on the way up is negative, braking on the way down positive.
 * @returns F, N, positive upwards; negative when the drives must hold or push downwards.
 * Outside the domain: RangeError for a mass ≤ 0, negative friction, a slope beyond ± 90°.
 * Source: Newton's second law; Gupta and Singhal, Electric Drives (companion examples), chapter 3.
 * Checked against: Khurmi and Gupta, example 3.4 (test/published/reductions).
 */
export function driveForce(load: AxisLoad, direction: Direction, acceleration: number): number {
  requirePositive('mass', load.mass);
  requireNotNegative('gravity', load.gravity);
  requireNotNegative('friction', load.friction);
  requireFinite('process force', load.process);
  requireFinite('counterbalance', load.counterbalance);
  requireFinite('acceleration', acceleration);
  if (!(Math.abs(load.slope) <= Math.PI / 2 + 1e-12)) throw new RangeError(`slope must lie within ± π/2, got ${load.slope}`);
  return load.mass * (acceleration + load.gravity * Math.sin(load.slope)) + load.friction * direction + load.process - load.counterbalance;
}

/** One drive of an axis, from the motor shaft to the nut (or belt), each value for this one drive. */
export interface DriveChain {
  /** p, travel per turn of the screw or output pulley, m, > 0. */
  readonly travelPerTurn: number;
  /** η of screw and nut when the screw drives, 0 < η ≤ 1, collar friction included. */
  readonly efficiency: number;
  /** η_r when the load drives, ≤ 1; zero or negative: the thread locks. */
  readonly reverseEfficiency: number;
  /** Torque of preload, seals and bearings at the screw, against the turning, N·m, ≥ 0. */
  readonly dragTorque: number;
  /** Inertia that turns with the screw: screw, coupling when it sits there, kg·m², ≥ 0. */
  readonly screwInertia: number;
  /** Stages of reduction, from the motor on; empty when the motor drives the screw directly. */
  readonly stages: readonly ReductionStage[];
  /** Inertia that turns with the motor: rotor, coupling when it sits there, kg·m², ≥ 0. */
  readonly motorInertia: number;
}

function requireChain(chain: DriveChain): void {
  requirePositive('travel per turn', chain.travelPerTurn);
  requirePositive('efficiency', chain.efficiency);
  requireFinite('reverse efficiency', chain.reverseEfficiency);
  if (chain.efficiency > 1 || chain.reverseEfficiency > 1) throw new RangeError('an efficiency must not exceed 1');
  requireNotNegative('drag torque', chain.dragTorque);
  requireNotNegative('inertia of the screw', chain.screwInertia);
  requireNotNegative('inertia of the motor', chain.motorInertia);
  chain.stages.forEach(requireStage);
}

/** Torque at the motor and who drives whom. */
export interface MotorTorque {
  /** N·m at the motor shaft, positive in the direction that moves the axis along +. */
  readonly torque: number;
  /** N·m at the screw, before the reduction, rotor left out. */
  readonly screwTorque: number;
  /** `motor`: it pushes. `load`: the load turns the motor, which brakes. `neither`: nothing to do. At rest: `load` if it has to hold. */
  readonly driver: 'motor' | 'load' | 'neither';
}

/**
 * Torque that one motor must put out in one phase.
 *
 * Formula: screw T_s = F p/(2π η) when the screw drives, F p η_r/(2π) when the load drives, plus drag · direction, plus J_s α;
 * each stage as `fastSideTorque`, with the inertia of its wheels; plus J_m α at the motor. α = 2π a/p · i up to there.
 * @param chain see `DriveChain`.
 * @param force F that this one drive must put out, N, positive upwards (its share of `driveForce`).
 * @param direction of travel; at rest friction helps to hold: a locking screw leaves zero.
 * @param acceleration a with its sign, m/s².
 * @returns torque with its sign. With a locking screw going down, the load does not drive: the torque is negative and the motor pushes.
 * Outside the domain: RangeError.
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, section 8-2 (screw); power balance of each element.
 * Checked against: Dubey 2.1, Gupta ch. 1 ex. 3 and 4, Khurmi and Gupta 3.2, 3.4, 3.13 (test/published); energy balance
 * of a falling load (test/independent/falling-load).
 */
export function motorTorque(chain: DriveChain, force: number, direction: Direction, acceleration: number): MotorTorque {
  requireChain(chain);
  requireFinite('force', force);
  requireFinite('acceleration', acceleration);
  const perTurn = chain.travelPerTurn / (2 * Math.PI);
  let angular = acceleration / perTurn;
  const screwTorque = screwSideTorque(chain, force * perTurn, direction) + chain.dragTorque * direction + chain.screwInertia * angular;
  let torque = screwTorque;
  for (const stage of [...chain.stages].reverse()) {
    torque = fastSideTorque(stage, torque + stage.slowInertia * angular, direction);
    angular *= stage.ratio;
    torque += stage.fastInertia * angular;
  }
  torque += chain.motorInertia * angular;
  return { torque, screwTorque, driver: driverOf(torque, direction) };
}

function screwSideTorque(chain: DriveChain, idealTorque: number, direction: Direction): number {
  if (direction !== 0 && idealTorque * direction > 0) return idealTorque / chain.efficiency;
  return idealTorque * (direction === 0 ? Math.max(0, chain.reverseEfficiency) : chain.reverseEfficiency);
}

function driverOf(torque: number, direction: Direction): MotorTorque['driver'] {
  if (torque === 0) return 'neither';
  if (direction === 0) return 'load';
  return torque * direction > 0 ? 'motor' : 'load';
}

/**
 * Travel of the axis per turn of the motor.
 *
 * Formula: p_m = p / i.
 * @param chain see `DriveChain`.
 * @returns p_m, m.
 * Outside the domain: RangeError.
 * Source: kinematics.
 * Checked against: Groover, open-loop positioning example (test/published/steppers).
 */
export function travelPerMotorTurn(chain: DriveChain): number {
  requireChain(chain);
  return chain.travelPerTurn / totalRatio(chain.stages);
}

/**
 * Inertia that the motor sees besides its own rotor.
 *
 * Formula: J = wheels and screw through the stages + m (p/2π)² / i².
 * @param chain see `DriveChain`; `motorInertia` is left out.
 * @param mass share of the travelling mass that this drive moves, kg, ≥ 0.
 * @returns J, kg·m², losses left out.
 * Outside the domain: RangeError. Mass, not weight: newtons here make it ten times too large.
 * Source: equal kinetic energy; Dubey, Fundamentals of Electrical Drives, section 2.3.
 * Checked against: Gupta and Singhal, examples 3.6 and 3.7, and their 3.10 corrected (test/published/reductions).
 */
export function reflectedInertia(chain: DriveChain, mass: number): number {
  requireChain(chain);
  requireNotNegative('mass', mass);
  return inertiaAtInput(chain.stages, chain.screwInertia + mass * (chain.travelPerTurn / (2 * Math.PI)) ** 2);
}

/**
 * Moment of inertia of a solid steel or other round bar about its axis.
 *
 * Formula: J = ρ π d⁴ L / 32.
 * @param diameter d, m, > 0; for a screw its mean diameter.
 * @param length L, m, > 0.
 * @param density ρ, kg/m³, > 0; 7850 for steel.
 * @returns J, kg·m².
 * Outside the domain: RangeError.
 * Source: Budynas and Nisbett, Shigley's Mechanical Engineering Design, table A-18.
 * Checked against: ½ m r², hand calculation (test/mechanics/axis-torque).
 */
export function roundBarInertia(diameter: number, length: number, density = 7850): number {
  requirePositive('diameter', diameter);
  requirePositive('length', length);
  requirePositive('density', density);
  return (density * Math.PI * diameter ** 4 * length) / 32;
}

/** An acceleration that the motor allows, or that it cannot even keep the axis moving. */
export type AccelerationAvailable =
  | { readonly kind: 'accelerates'; /** m/s², ≥ 0: the size of it. */ readonly acceleration: number }
  | { readonly kind: 'cannot' };

/**
 * Greatest acceleration or deceleration that a motor torque allows in a direction of travel.
 *
 * Formula: the a at which the torque of `motorTorque` for m (a + g sin β) … reaches the limit; found by halving.
 * @param chain see `DriveChain`.
 * @param load of the whole axis.
 * @param drives how many drives share the load equally, ≥ 1.
 * @param direction of travel, +1 or −1.
 * @param effect whether the axis gains or loses speed.
 * @param torque limit of each motor, N·m, ≥ 0, the same in both senses.
 * @returns size of a; `cannot` when the limit does not even keep the speed steady.
 * Outside the domain: RangeError. Capped at 1e6 m/s².
 * Source: Newton's second law through the chain.
 * Checked against: [2π η (T − …)/p − F]/(m + 4π² J η/p²) in closed form (test/mechanics/axis-torque).
 */
export function accelerationAvailable(
  chain: DriveChain, load: AxisLoad, drives: number, direction: 1 | -1, effect: 'gain' | 'lose', torque: number,
): AccelerationAvailable {
  requirePositive('drives', drives);
  requireNotNegative('torque', torque);
  const sense = effect === 'gain' ? direction : -direction;
  const within = (size: number): boolean => {
    const force = driveForce(load, direction, sense * size) / drives;
    return Math.abs(motorTorque(chain, force, direction, sense * size).torque) <= torque;
  };
  // The torque is piecewise linear and bends one way only, so what stays within the limit is one stretch that begins at zero.
  if (!within(0)) return { kind: 'cannot' };
  let low = 0;
  let high = 1;
  while (within(high)) {
    low = high;
    high *= 2;
    if (high > 1e6) return { kind: 'accelerates', acceleration: 1e6 };
  }
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (within(middle)) low = middle;
    else high = middle;
  }
  return { kind: 'accelerates', acceleration: low };
}

/**
 * Acceleration with which the load turns an unpowered, unbraked drive and runs down.
 *
 * Formula: the downward a at which the motor torque of `motorTorque` equals the detent and bearing torque that holds it back.
 * @param chain see `DriveChain`.
 * @param load of the whole axis.
 * @param drives how many drives share the load, ≥ 1.
 * @param holdingBack torque at each motor shaft against the turning, N·m, ≥ 0: what is left of detent once it turns is nil on
 * average, so 0 for a free fall.
 * @returns a, m/s², ≥ 0; `cannot` when it stays.
 * Outside the domain: RangeError.
 * Source: Newton's second law; reverse flow of power divides the inertia of the fast side by the efficiency.
 * Checked against: Khurmi and Gupta, example 3.13 (test/published/reductions); energy balance (test/independent/falling-load).
 */
export function runDownAcceleration(chain: DriveChain, load: AxisLoad, drives: number, holdingBack = 0): AccelerationAvailable {
  requirePositive('drives', drives);
  requireNotNegative('torque that holds back', holdingBack);
  // Positive: the load still pulls more than what holds it back.
  const surplus = (size: number): number => motorTorque(chain, driveForce(load, -1, -size) / drives, -1, -size).torque - holdingBack;
  if (!(surplus(0) > 0)) return { kind: 'cannot' };
  let low = 0;
  let high = load.gravity + (Math.abs(load.process) + Math.abs(load.counterbalance)) / load.mass;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  return { kind: 'accelerates', acceleration: low };
}
