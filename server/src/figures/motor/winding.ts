import { cornerSpeed, creditedPeakCurrent, pullOutCurve, torqueConstant, type StepperDrive, type TorqueRange } from '../../mechanics/stepper-torque.ts';
import { torqueFromPoints, type TorquePoint } from '../../mechanics/torque-curve-points.ts';
import { stepsFromAngle } from '../../mechanics/step-rate.ts';
import type { Source } from '../figure.ts';

/** What the torque estimate is made from. */
export const windingNeeds = {
  holding: 'motor.holding-torque',
  rated: 'motor.current',
  peak: 'motor.peak-current',
  resistance: 'motor.resistance',
  inductance: 'motor.inductance',
  stepAngle: 'motor.step-angle',
  voltage: 'supply.voltage',
} as const;

export type WindingValues = { readonly [alias in keyof typeof windingNeeds]: number };
type MaybeWinding = { readonly [alias in keyof typeof windingNeeds]: number | undefined };

export const stepperModel: Source = {
  title: 'two-phase synchronous machine with a voltage limit (Fitzgerald, Kingsley and Umans, Electric Machinery)',
  where: 'section 11.3; an estimate, checked against a simulation of the windings and not against measured motors: sheets scatter by about ± 35 %',
  weak: true,
};
export const staticTorqueCurve: Source = { title: 'sinusoidal static torque curve (Acarnley, Stepping Motors)', where: 'chapter 3' };

/** Rotor teeth from the step angle: a quarter of the full steps in a turn. */
export const polePairsOf = (stepAngle: number): number => stepsFromAngle(stepAngle) / 4;

/** The electrical side of the drive, or why the model does not fit it. */
export function stepperDriveOf(values: WindingValues): StepperDrive | string {
  const polePairs = polePairsOf(values.stepAngle);
  if (!Number.isInteger(polePairs)) return 'this step angle is not that of a two-phase motor, where four full steps make a whole part of a turn';
  return {
    torqueConstant: torqueConstant(values.holding, values.rated),
    peakCurrent: creditedPeakCurrent(values.peak, values.rated),
    resistance: values.resistance,
    inductance: values.inductance,
    polePairs,
    voltage: values.voltage,
  };
}

const pointsOf = (rows: readonly (readonly number[])[]): readonly TorquePoint[] => rows.map(([speed = 0, torque = 0]) => ({ speed, torque }));

/** Torque over speed: from given points where there are some, else from the estimate. Undefined where nothing is known. */
export interface TorqueOverSpeed {
  /** What to count on, N·m; undefined beyond given points. */
  readonly at: (speed: number) => number | undefined;
  /** The estimate with its bounds; undefined where it rests on given points. */
  readonly range?: (speed: number) => TorqueRange;
  /** Highest speed that given points speak for, rad/s. */
  readonly lastSpeed?: number;
}

/** Chooses the given points or the estimate; a string says why there is neither. */
export function torqueOverSpeed(
  winding: MaybeWinding,
  rows: readonly (readonly number[])[] | undefined,
  voltageOfPoints: number | undefined,
): TorqueOverSpeed | string {
  if (rows && rows.length > 0) {
    const points = pointsOf(rows);
    const read = (speed: number) => torqueFromPoints(points, speed, voltageOfPoints, winding.voltage);
    const beyond = read(Number.MAX_VALUE);
    return {
      at: (speed) => {
        const found = read(speed);
        return found.kind === 'within' ? found.torque : undefined;
      },
      ...(beyond.kind === 'beyond-the-points' ? { lastSpeed: beyond.lastSpeed } : {}),
    };
  }
  if (Object.values(winding).some((value) => value === undefined)) {
    return 'neither points of a torque curve nor all of holding torque, current, resistance, inductance and supply voltage are given';
  }
  const drive = stepperDriveOf(winding as WindingValues);
  if (typeof drive === 'string') return drive;
  const range = pullOutCurve(drive);
  return { at: (speed) => range(speed).design, range };
}

/** Corner speed of the drive; a string says why there is none. */
export function cornerOf(values: WindingValues): number | string {
  const drive = stepperDriveOf(values);
  if (typeof drive === 'string') return drive;
  const corner = cornerSpeed(drive);
  return corner.kind === 'corner' ? corner.speed : 'the supply cannot push the set current through the winding even at rest';
}

/** Highest speed at which the torque still reaches what is demanded, by halving; the torque never rises with speed. */
export function speedAtTorque(curve: TorqueOverSpeed, demanded: number): { readonly speed: number; readonly endOfPoints: boolean } | undefined {
  const enough = (speed: number): boolean => (curve.at(speed) ?? -1) >= demanded;
  if (!enough(0)) return undefined;
  if (curve.lastSpeed !== undefined && enough(curve.lastSpeed)) return { speed: curve.lastSpeed, endOfPoints: true };
  let low = 0;
  let high = curve.lastSpeed ?? 10;
  while (enough(high) && high < 1e5) [low, high] = [high, high * 2];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (enough(middle)) low = middle;
    else high = middle;
  }
  return { speed: low, endOfPoints: false };
}
