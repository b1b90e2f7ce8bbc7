/** A carriage on a toothed belt with its motor: what swings, and at which frequency, wherever the carriage stands. */
import { requireNotNegative, requirePositive } from './require-argument.ts';
import { between, inertiaAlongAxis, lagUnderUnitAcceleration, toGround, vibrationModes, type Modes, type Part, type Spring } from './spring-mass-chain.ts';

/** How the motor holds its rotor. */
export type RotorHold =
  /** A stepping motor: spring between field and rotor. */
  | { readonly kind: 'magnetic'; /** N·m/rad at the motor, above 0. */ readonly stiffness: number }
  /** A servo far above the bandwidth of its loop: nothing holds the rotor. The highest that the frequency can be. */
  | { readonly kind: 'free' }
  /** A servo far below it: the rotor does not move. The lowest that the frequency can be. */
  | { readonly kind: 'clamped' };

/** One belt with its motor and its share of the mass. */
export interface BeltAxis {
  /** `loop`: the belt runs round the driving pulley and idlers, the carriage is clamped to it. `anchored-ends`: both ends are fixed, and the motor rides on the carriage. */
  readonly arrangement: 'loop' | 'anchored-ends';
  /** E A of the belt, N (force per unit strain), above 0. */
  readonly specificStiffness: number;
  /** Free belt, m, above every position of the carriage. Loop: from clamp round to clamp, less what lies on the driving pulley. Anchored: from anchor to anchor. */
  readonly freeLength: number;
  /** Loop: from the driving pulley to the first idler, m, above every position of the carriage. Left out: the idlers divide the far run evenly. */
  readonly centerDistance?: number;
  /** kg/m, 0 or above; half of each span moves with the part at each of its ends. Left out: none. */
  readonly massPerLength?: number;
  /** Share of the moved mass that this belt carries, kg, above 0; the motor included where it rides. */
  readonly carriageMass: number;
  /** Pitch radius of the driving pulley, m, above 0. */
  readonly pulleyRadius: number;
  /** What turns with the driving pulley, kg·m², 0 or above. */
  readonly pulleyInertia: number;
  /** J/r² of each idler, kg, 0 or above; in a loop from the carriage round to the driving pulley. */
  readonly idlerMasses?: readonly number[];
  /** Turns of the motor for a turn of the pulley, above 0. Left out: 1. */
  readonly ratio?: number;
  /** Torsion stiffness between motor and pulley at the pulley's shaft (belts or gears of a reduction, coupling), N·m/rad. Left out: rigid. */
  readonly reductionStiffness?: number;
  /** J of the rotor and what turns with it, kg·m², 0 or above. */
  readonly rotorInertia: number;
  readonly hold: RotorHold;
}

/** Names of the parts, as they stand in `shape` and the like. */
const CARRIAGE = 'carriage';
const ROTOR = 'motor';
const PULLEY = 'driving pulley';
const MAGNETIC = 'magnetic spring of the motor';
const REDUCTION = 'reduction';
const NEAR = 'short run of the belt';
const FAR = 'run over the idlers';
const BOTH = 'belt';

/**
 * Modes of a belt axis with the carriage at one place.
 *
 * Formula: springs E A/L of each stretch of belt between carriage, pulley and idlers; magnetic spring k i²/r², reduction k/r²;
 * masses J/r², J i²/r². Both runs of the belt taut; no damping.
 *
 * @param axis - see `BeltAxis`
 * @param position - belt from the carriage to the driving pulley the short way (anchored: from one anchor to the pulley), m,
 *   above 0 and below the free length, and below the centre distance where one is given and there are idlers
 * @param count - how many modes, as for `vibrationModes`
 * @returns modes, the lowest first; `floating` is 1 with a free rotor
 * @throws RangeError outside the stated domains
 *
 * Source: springs and masses in a row, Rao, Mechanical Vibrations, chapter 6 (from memory).
 * Checked against: test/mechanics/belt-axis-modes.test.ts, test/independent/spring-mass-chain.test.ts.
 */
export function beltAxisModes(axis: BeltAxis, position: number, count = Infinity): Modes {
  const { parts, springs } = systemOf(axis, position);
  return vibrationModes(parts, springs, count);
}

function systemOf(axis: BeltAxis, position: number): { readonly parts: readonly Part[]; readonly springs: readonly Spring[] } {
  const { specificStiffness: belt, freeLength, pulleyRadius: r, ratio = 1, hold, massPerLength = 0 } = axis;
  requirePositive('specific stiffness', belt);
  requirePositive('free length', freeLength);
  requirePositive('carriage mass', axis.carriageMass);
  requirePositive('pulley radius', r);
  requirePositive('ratio', ratio);
  requireNotNegative('pulley inertia', axis.pulleyInertia);
  requireNotNegative('rotor inertia', axis.rotorInertia);
  requireNotNegative('mass per length', massPerLength);
  requirePositive('position', position);
  if (position >= freeLength) throw new RangeError(`position must be below the free length ${freeLength}, got ${position}`);

  const lever = r / ratio;
  const rotor = inertiaAlongAxis(axis.rotorInertia, lever);
  let pulley = inertiaAlongAxis(axis.pulleyInertia, r);
  let carriage = axis.carriageMass;
  const parts: Part[] = [];
  const springs: Spring[] = [];
  const idlers = axis.idlerMasses ?? [];

  // From the ground to the pulley. What is rigid joins two parts into one; a clamped rotor is the ground.
  const stiffReduction = axis.reductionStiffness === undefined;
  const shaft = stiffReduction ? ROTOR : PULLEY;
  if (axis.reductionStiffness !== undefined) requirePositive('reduction stiffness', axis.reductionStiffness);
  const end = hold.kind === 'clamped' && stiffReduction ? undefined : shaft;
  const toShaft = (name: string, stiffness: number, part: string): Spring => (end === undefined ? toGround(name, stiffness, part) : between(name, stiffness, part, end));
  if (hold.kind === 'magnetic') springs.push(toGround(MAGNETIC, hold.stiffness / lever ** 2, ROTOR));
  if (!stiffReduction) {
    const stiffness = axis.reductionStiffness / r ** 2;
    springs.push(hold.kind === 'clamped' ? toGround(REDUCTION, stiffness, PULLEY) : between(REDUCTION, stiffness, PULLEY, ROTOR));
  }

  // The belt, half of whose mass goes to each end of a stretch; what lies on the pulley is counted with it by the caller.
  const withBelt = (length: number): number => (massPerLength * length) / 2;
  if (axis.arrangement === 'anchored-ends') {
    springs.push(toShaft(BOTH, belt * (1 / position + 1 / (freeLength - position)), CARRIAGE));
    // The idlers beside the riding pulley roll with it; the belt itself stands still.
    pulley += idlers.reduce((sum, mass) => sum + mass, 0);
  } else {
    springs.push(toShaft(NEAR, belt / position, CARRIAGE));
    carriage += withBelt(position);
    pulley += withBelt(position);
    if (idlers.length === 0) {
      springs.push(toShaft(FAR, belt / (freeLength - position), CARRIAGE));
      carriage += withBelt(freeLength - position);
      pulley += withBelt(freeLength - position);
    } else {
      const first = axis.centerDistance === undefined ? (freeLength - position) / (idlers.length + 1) : axis.centerDistance - position;
      if (!(first > 0)) throw new RangeError('the centre distance must be above the position');
      // The rest of the way back in even stretches.
      const rest = (freeLength - position - first) / idlers.length;
      if (!(rest > 0)) throw new RangeError('the belt must be longer than the centre distance');
      carriage += withBelt(first);
      springs.push(between(`${FAR}, to idler 1`, belt / first, CARRIAGE, idler(0)));
      idlers.forEach((mass, index) => {
        requireNotNegative('idler mass', mass);
        parts.push({ name: idler(index), mass: mass + withBelt(index === 0 ? first : rest) + withBelt(rest) });
        if (index + 1 < idlers.length) springs.push(between(`${FAR}, from idler ${index + 1}`, belt / rest, idler(index), idler(index + 1)));
      });
      springs.push(toShaft(`${FAR}, from idler ${idlers.length}`, belt / rest, idler(idlers.length - 1)));
      pulley += withBelt(rest);
    }
  }
  parts.push({ name: CARRIAGE, mass: carriage });
  if (hold.kind !== 'clamped') parts.push({ name: ROTOR, mass: rotor + (stiffReduction ? pulley : 0) });
  if (!stiffReduction) parts.push({ name: PULLEY, mass: pulley });
  return { parts, springs };
}

const idler = (index: number): string => `idler ${index + 1}`;

/**
 * How far the carriage lags behind its motor for each m/s² of acceleration.
 *
 * Formula: each spring stretches under all masses beyond it, K x = M 1.
 *
 * @param axis - see `BeltAxis`; the rotor must be held
 * @param position - as in `beltAxisModes`
 * @returns m for 1 m/s²
 * @throws RangeError outside the stated domains, and for a free rotor
 *
 * Source: static give of the springs under the inertia of the masses.
 * Checked against: springs in a row by hand (test/mechanics/belt-axis-modes.test.ts).
 */
export function beltAxisLag(axis: BeltAxis, position: number): number {
  const { parts, springs } = systemOf(axis, position);
  return lagUnderUnitAcceleration(parts, springs)[CARRIAGE] as number;
}

/**
 * Where in its travel a belt axis is softest, and where stiffest.
 *
 * Formula: softest nearest to half of the free belt, where both runs are equal; stiffest at the end of the travel farther from there.
 *
 * @param freeLength - of the belt, m, above 0
 * @param from - position at the near end of the travel, m, above 0
 * @param to - position at the far end, m, not below `from`, below the free length
 * @returns both positions, m
 * @throws RangeError outside the stated domains
 *
 * Source: 1/x + 1/(L − x) is least at L/2. Idlers and rotors shift the place of the lowest mode a little; its frequency by less than 0.1 ‰ in the cases tested.
 * Checked against: a fine scan of the modes (test/mechanics/belt-axis-modes.test.ts).
 */
export function softestAndStiffest(freeLength: number, from: number, to: number): { readonly softest: number; readonly stiffest: number } {
  requirePositive('near end', from);
  if (!(to >= from)) throw new RangeError(`the far end ${to} must not be nearer than ${from}`);
  if (!(freeLength > to)) throw new RangeError(`the belt ${freeLength} must be longer than the far end ${to}`);
  const middle = freeLength / 2;
  return { softest: Math.min(Math.max(middle, from), to), stiffest: Math.abs(from - middle) >= Math.abs(to - middle) ? from : to };
}
