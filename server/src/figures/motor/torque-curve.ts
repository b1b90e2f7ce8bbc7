import { greatestBrushlessTorque, torquePerPeakAmpere, type BrushlessMotor } from '../../mechanics/brushless.ts';
import { greatestTorque, type LimitedTorque, type TorqueLimits } from '../../mechanics/dc-motor.ts';
import type { Source } from '../figure.ts';
import { torqueOverSpeed, windingNeeds, type TorqueOverSpeed } from './winding.ts';

/** What the torque of a DC or brushless motor follows from, besides its resistance, its inductance and the supply, which all motors have. */
export const servoNeeds = {
  constant: 'motor.torque-constant',
  noLoad: 'motor.no-load-current',
  polePairs: 'motor.pole-pairs',
  amplifier: 'drive.current-limit',
  peakTorque: 'motor.peak-torque',
} as const;

/** Everything that the torque of any kind of motor over its speed may follow from; `torqueCurve` takes what its kind needs. */
export const curveNeeds = { ...windingNeeds, ...servoNeeds, pointsVoltage: 'motor.torque-points-voltage' } as const;
export const curveChoices = { kind: 'motor.kind', constantAs: 'motor.torque-constant-as' } as const;
export const curveTables = { points: 'motor.torque-points' } as const;

export type CurveValues = { readonly [alias in keyof typeof curveNeeds]: number | undefined } & {
  readonly [alias in keyof typeof curveChoices]: string | undefined;
} & { readonly points: readonly (readonly number[])[] | undefined };

export const servoModel: Source = {
  title: 'V = R I + K ω, T = K (I − I₀) (Fitzgerald, Kingsley and Umans, Electric Machinery)',
  where: 'sections 7.7 and 11.3; checked against the circuit stepped in time; the winding is taken cold, a hot one has up to a third more resistance',
};

/** Torque over speed of a motor of any kind: from given points, from the estimate of a stepping motor, or from the data of a DC or brushless motor; a string says why there is none. */
export function torqueCurve(values: CurveValues): TorqueOverSpeed | string {
  const { points, pointsVoltage, kind, holding, rated, peak, resistance, inductance, stepAngle, voltage } = values;
  const isServo = kind === 'dc-motor' || kind === 'brushless';
  if (!isServo || (points && points.length > 0)) return torqueOverSpeed({ holding, rated, peak, resistance, inductance, stepAngle, voltage }, points, pointsVoltage);
  const limited = servoTorque(values);
  return typeof limited === 'string' ? limited : { at: (speed) => limited(speed).torque };
}

/** Greatest torque of a DC or brushless motor at a speed; a string says what is missing. */
export function servoTorque(values: CurveValues): ((speed: number) => LimitedTorque) | string {
  const { kind, constant, constantAs, resistance, inductance, noLoad, polePairs, amplifier, peakTorque, voltage } = values;
  if (constant === undefined || resistance === undefined || voltage === undefined) return 'torque constant, resistance and supply voltage are not all given';
  // The speed limit of the maker is a limit of life and not of torque: it has a check of its own.
  const limits: TorqueLimits = { current: amplifier ?? Infinity, torque: peakTorque ?? Infinity, speed: Infinity };
  if (kind !== 'brushless') return (speed) => greatestTorque({ torqueConstant: constant, resistance, noLoadCurrent: noLoad ?? 0 }, voltage, limits, speed);
  const meaning = constantAs === 'peak' ? 'peak' : 'rms';
  const perPeak = constant / torquePerPeakAmpere(constant, meaning);
  const motor: BrushlessMotor = {
    torquePerPeakAmpere: torquePerPeakAmpere(constant, meaning),
    // Between two terminals there are two phases in series.
    phaseResistance: resistance / 2,
    phaseInductance: polePairs === undefined ? 0 : (inductance ?? 0) / 2,
    polePairs: polePairs ?? 1,
    noLoadCurrent: (noLoad ?? 0) * perPeak,
  };
  return (speed) => greatestBrushlessTorque(motor, voltage, { ...limits, current: limits.current * perPeak }, speed);
}

/** Picks the inputs of the curve out of the values of a figure. */
export const curveValues = (values: CurveValues): CurveValues => ({
  holding: values.holding, rated: values.rated, peak: values.peak, resistance: values.resistance, inductance: values.inductance, stepAngle: values.stepAngle,
  voltage: values.voltage, constant: values.constant, noLoad: values.noLoad, polePairs: values.polePairs, amplifier: values.amplifier, peakTorque: values.peakTorque,
  pointsVoltage: values.pointsVoltage, kind: values.kind, constantAs: values.constantAs, points: values.points,
});
