/**
 * A gravity-loaded axis on a drive that always runs back: belt, rack, or anything without a thread that locks.
 * People may be under it: wherever the answer is in doubt, the worse one is given. All forces are along the axis, for the share of one drive.
 */
import { requireFinite, requireNotNegative, requirePositive } from './require-argument.ts';
import { HOLDING_FACTOR, type HoldingVerdict } from './unpowered-holding.ts';

/** What the verdict rests on. */
export type FreeRunningHolder = 'brake' | 'balance' | 'reduction' | 'detent' | 'guides' | 'several' | 'nothing';

/** Share of the measured guide friction that is counted as holding: it is least when it is needed, newly oiled and shaken. */
export const COUNTED_FRICTION = 0.5;

/** From how many times the load the counted guide friction alone holds. */
export const FRICTION_FACTOR = 2;

export interface FreeRunningSituation {
  /** Load left after any counterbalance, in N; above 0 it runs down, below 0 up. */
  readonly load: number;
  /** Lowest believable friction of the guides on this drive, in N, 0 or above. Half of it is counted. */
  readonly guideFriction: number;
  /** Lowest believable detent of the motor through the reduction, in N along the axis, 0 or above. */
  readonly detentForce: number;
  /** Force of a brake that closes without power, in N along the axis, 0 or above. */
  readonly brakeForce: number;
  /** Whether a stage of the reduction cannot be driven backwards even at its best believable efficiency. */
  readonly reductionLocks: boolean;
}

export interface FreeRunningHolding {
  readonly verdict: HoldingVerdict;
  readonly holder: FreeRunningHolder;
  /** What holds over the load; Infinity when nothing pulls. Of a brake or the guides alone: theirs over the load. */
  readonly factor: number;
  /** Friction or a detent carries the verdict, and vibration can take it away. */
  readonly vibrationCaveat: boolean;
}

/**
 * The verdict on one drive that runs back: holds, may creep, or drops.
 *
 * Formula, in this order: no load left: holds. Brake from 1.5 |F|: holds. Half the guide friction from 2 |F|: holds, by friction. A reduction that locks: may creep. Else (brake + detent + half the guide friction)/|F|: from 1 may creep, below drops.
 * A detent never earns "holds". Losses of belt, teeth and reduction are not counted.
 * @param situation forces in N along the axis; domains as in `FreeRunningSituation`.
 * @returns verdict, holder and factor.
 * @throws RangeError when a force that cannot be negative is, or a number is not finite.
 * Source: statics; the factors 1.5 and 2 and the half are common practice, no published source.
 * Checked against: test/mechanics/free-running-drive.test.ts (hand calculations).
 */
export function judgeFreeRunningHolding(situation: FreeRunningSituation): FreeRunningHolding {
  const { load, guideFriction, detentForce, brakeForce, reductionLocks } = situation;
  requireFinite('load', load);
  for (const [name, value] of Object.entries({ guideFriction, detentForce, brakeForce })) requireNotNegative(name, value);
  const pull = Math.abs(load);
  if (pull === 0) return { verdict: 'holds', holder: 'balance', factor: Infinity, vibrationCaveat: false };
  const guides = COUNTED_FRICTION * guideFriction;
  if (brakeForce / pull >= HOLDING_FACTOR) return { verdict: 'holds', holder: 'brake', factor: brakeForce / pull, vibrationCaveat: false };
  if (guides / pull >= FRICTION_FACTOR) return { verdict: 'holds', holder: 'guides', factor: guides / pull, vibrationCaveat: true };
  const factor = (brakeForce + detentForce + guides) / pull;
  if (reductionLocks) return { verdict: 'may-creep', holder: 'reduction', factor: Math.max(1, factor), vibrationCaveat: true };
  if (factor < 1) return { verdict: 'drops', holder: 'nothing', factor, vibrationCaveat: false };
  const alone = ([['brake', brakeForce], ['detent', detentForce], ['guides', guides]] as const).find(([, force]) => force >= pull);
  return { verdict: 'may-creep', holder: alone?.[0] ?? 'several', factor, vibrationCaveat: alone?.[0] !== 'brake' };
}

/**
 * Torque at the motor that the load puts there, through a drive that runs back.
 *
 * Formula: T = F r η_r / i, with r = p/(2π) for a travel p per turn of the shaft.
 * @param load F in N along the axis.
 * @param radius r in m of travel per rad of the shaft, above 0.
 * @param ratio i, motor turns per turn of the shaft, above 0.
 * @param reverseEfficiency η_r of belt or rack and reduction together, at most 1; 1 for the cautious side, 0 or below where it locks.
 * @returns T in N·m with the sign of the load; 0 where it locks.
 * @throws RangeError when a value is outside its domain.
 * Source: work balance over one turn.
 * Checked against: test/independent/run-back-fall.test.ts (work over one turn); 1 kg on 20 teeth of 2 mm by hand.
 */
export function loadTorqueAtMotor(load: number, radius: number, ratio: number, reverseEfficiency = 1): number {
  requireFinite('load', load);
  requirePositive('radius', radius);
  requirePositive('ratio', ratio);
  requireEfficiency(reverseEfficiency);
  return (load * radius * Math.max(0, reverseEfficiency)) / ratio;
}

export interface FreeRunningFall {
  /** Everything that travels with this drive, a counterweight included, in kg, above 0. */
  readonly mass: number;
  /** Force that pulls it at rest, in N, above 0. */
  readonly pull: number;
  /** Friction of the guides while it moves, in N, 0 or above. */
  readonly friction: number;
  /** r, travel per rad of the shaft, m, above 0. */
  readonly radius: number;
  /** η_r of belt or rack when the load drives, at most 1. */
  readonly reverseEfficiency: number;
  /** What turns with the shaft, kg·m², 0 or above. */
  readonly shaftInertia: number;
  /** i, motor turns per turn of the shaft, above 0. */
  readonly ratio: number;
  /** η_i,r of the reduction when the load drives, at most 1. */
  readonly reductionEfficiency: number;
  /** Rotor and what turns with it, kg·m², 0 or above. */
  readonly motorInertia: number;
}

/**
 * Acceleration of an axis that runs back, with everything that turns coupled to it.
 *
 * Formula: a = (F − R) η η_i / (m η η_i + J_s η_i/r² + J_m i²/r²): the force that reaches belt or teeth is what the fall leaves, F − R − m a.
 * @param fall masses, forces, inertia of one drive; domains as in `FreeRunningFall`. A detent is nil on average once it turns, and is left out.
 * @returns a in m/s², 0 or above; 0 when it does not start or a stage locks.
 * @throws RangeError when a value is outside its domain.
 * Source: Newton's law of mass and rotor; reverse flow of power divides the inertia of the fast side by the efficiency (Khurmi and Gupta, Theory of Machines, example 3.13).
 * Checked against: Khurmi and Gupta, example 3.13 (test/published/racks.test.ts); integration in time and energy balance (test/independent/run-back-fall.test.ts).
 */
export function freeRunningFallAcceleration(fall: FreeRunningFall): number {
  for (const name of ['mass', 'pull', 'radius', 'ratio'] as const) requirePositive(name, fall[name]);
  for (const name of ['friction', 'shaftInertia', 'motorInertia'] as const) requireNotNegative(name, fall[name]);
  requireEfficiency(fall.reverseEfficiency);
  requireEfficiency(fall.reductionEfficiency);
  if (fall.reverseEfficiency <= 0 || fall.reductionEfficiency <= 0 || fall.pull <= fall.friction) return 0;
  const efficiency = fall.reverseEfficiency * fall.reductionEfficiency;
  const turning = (fall.shaftInertia * fall.reductionEfficiency + fall.motorInertia * fall.ratio ** 2) / fall.radius ** 2;
  return ((fall.pull - fall.friction) * efficiency) / (fall.mass * efficiency + turning);
}

/** What is left of an axis when one of its belts has broken. */
export interface BrokenBelt {
  /** Weight along the axis less a counterbalance that sits on the carriage, in N; sign as in `FreeRunningSituation`, for the whole axis. */
  readonly pull: number;
  /** Friction of all guides, in N, 0 or above. */
  readonly guideFriction: number;
  /** How many drives with a belt of their own the axis has, 1 or more. */
  readonly belts: number;
  /** Force of all brakes that grip the rail, in N, 0 or above. A brake at motor or shaft is cut off by the break. */
  readonly railBrakeForce: number;
}

export interface AfterBreak {
  /** `falls`: nothing is left that holds. `held`: something must still act: the other belts, or a rail brake that something closes. `rests`: nothing pulls. */
  readonly verdict: 'falls' | 'held' | 'rests';
  readonly holder: 'nothing' | 'rail-brake' | 'other-belts' | 'guides' | 'balance';
  /** What holds over what pulls; Infinity where nothing pulls. Of other belts their number. */
  readonly factor: number;
}

/**
 * What the axis does after a belt has broken. Motor, its detent, a brake at the motor or at the pulley, and a reduction that locks hold nothing then.
 *
 * Formula, in this order: no pull: rests. Rail brake from 1.5 |P|: held. Another belt: held by it. Half the guide friction from 2 |P|: held. Else falls; the factor is (brake + half the friction)/|P|.
 * @param broken forces in N of the whole axis.
 * @returns verdict, holder and factor.
 * @throws RangeError when a value is outside its domain.
 * Source: statics; factors as in `judgeFreeRunningHolding`.
 * Checked against: test/mechanics/free-running-drive.test.ts.
 */
export function judgeBrokenBelt({ pull, guideFriction, belts, railBrakeForce }: BrokenBelt): AfterBreak {
  requireFinite('pull', pull);
  requireNotNegative('guideFriction', guideFriction);
  requireNotNegative('railBrakeForce', railBrakeForce);
  if (!(belts >= 1)) throw new RangeError(`belts must be at least 1, got ${belts}`);
  const size = Math.abs(pull);
  if (size === 0) return { verdict: 'rests', holder: 'balance', factor: Infinity };
  const guides = COUNTED_FRICTION * guideFriction;
  if (railBrakeForce / size >= HOLDING_FACTOR) return { verdict: 'held', holder: 'rail-brake', factor: railBrakeForce / size };
  if (belts > 1) return { verdict: 'held', holder: 'other-belts', factor: belts - 1 };
  if (guides / size >= FRICTION_FACTOR) return { verdict: 'held', holder: 'guides', factor: guides / size };
  return { verdict: 'falls', holder: 'nothing', factor: (railBrakeForce + guides) / size };
}

/**
 * Acceleration of a carriage that no belt holds any more.
 *
 * Formula: a = (P − R)/m.
 * @param pull P in N, 0 or above.
 * @param friction R of the guides in N, 0 or above.
 * @param mass m in kg, counterweight included, above 0.
 * @returns a in m/s², 0 when friction keeps it.
 * @throws RangeError when a value is outside its domain.
 * Source: Newton's law.
 * Checked against: test/mechanics/free-running-drive.test.ts.
 */
export function releasedAcceleration(pull: number, friction: number, mass: number): number {
  requireNotNegative('pull', pull);
  requireNotNegative('friction', friction);
  requirePositive('mass', mass);
  return Math.max(0, pull - friction) / mass;
}

/**
 * How much harder a falling mass hits than it rests.
 *
 * Formula: n = 1 + √(1 + 2 h/δ). With h = 0, a load put on at once, it is 2.
 * @param height h of the fall in m, 0 or above.
 * @param staticGive δ, how far the support gives under the resting load, m, above 0.
 * @returns n, peak force over weight; the mass of the support and losses left out.
 * @throws RangeError when a value is outside its domain.
 * Source: Popov, Engineering Mechanics of Solids, section 10 on dynamic loads.
 * Checked against: Popov, example 10.13 (test/published/racks.test.ts).
 */
export function impactFactor(height: number, staticGive: number): number {
  requireNotNegative('height', height);
  requirePositive('staticGive', staticGive);
  return 1 + Math.sqrt(1 + (2 * height) / staticGive);
}

/** Pull of one of the belts that are left, in N, without the tension at rest. */
export interface RemainingPull {
  readonly before: number;
  /** After the swing has died down. */
  readonly settled: number;
  /** At the first swing, undamped. */
  readonly peak: number;
}

/**
 * Pull of the belts that are left when one breaks under load.
 *
 * Formula: F/n before, F/(n − 1) after; peak F/(n − 1) + (F/(n − 1) − F/n), since the load comes on at once.
 * @param load F of the whole axis in N, 0 or above.
 * @param belts n before the break, a whole number of at least 2.
 * @returns pulls in N, shared equally; a carriage that racks shares worse.
 * @throws RangeError when a value is outside its domain.
 * Source: statics; a load put on at once swings as far beyond its new rest as it came from below (`impactFactor` with no height).
 * Checked against: test/mechanics/free-running-drive.test.ts.
 */
export function pullOfBeltsLeft(load: number, belts: number): RemainingPull {
  requireNotNegative('load', load);
  if (!(Number.isInteger(belts) && belts >= 2)) throw new RangeError(`belts must be a whole number of at least 2, got ${belts}`);
  const before = load / belts;
  const settled = load / (belts - 1);
  return { before, settled, peak: before + (settled - before) * impactFactor(0, 1) };
}

function requireEfficiency(value: number): void {
  requireFinite('efficiency', value);
  if (value > 1) throw new RangeError(`an efficiency must not exceed 1, got ${value}`);
}
