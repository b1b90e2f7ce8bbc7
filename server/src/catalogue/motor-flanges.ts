import data from './data/motor-flanges.json' with { type: 'json' };

/** Low and high end of what is usual, SI. */
export type UsualRange = readonly [low: number, high: number];

/** A standard mounting face of a stepping motor, and what usually sits behind it. Lengths in m. */
export interface MotorFlange {
  /** 17, 23, 24, 34: tenths of an inch of the face, roughly. */
  readonly size: number;
  readonly flange: UsualRange;
  /** Side of the square of the four mounting holes. */
  readonly holeSquare: number;
  readonly boltCircle: number;
  readonly pilotDiameter: number;
  readonly usualShafts: readonly number[];
  readonly length: UsualRange;
  /** N·m, both phases on. */
  readonly holdingTorque: UsualRange;
  /** N·m. */
  readonly detentTorque: UsualRange;
  /** kg·m². */
  readonly rotorInertia: UsualRange;
  /** A. */
  readonly current: UsualRange;
  /** Ω. */
  readonly resistance: UsualRange;
  /** H. */
  readonly inductance: UsualRange;
  /** N, at the middle of the shaft. */
  readonly radialShaftLoad: UsualRange;
  /** N. */
  readonly axialShaftLoad: UsualRange;
  readonly source: string;
  /** All but the face itself rests on memory. */
  readonly weak: boolean;
}

const scaled = (range: readonly number[], unit = 1): UsualRange => [(range[0] ?? Number.NaN) * unit, (range[1] ?? Number.NaN) * unit];

const MILLIMETRE = 1e-3;
const INCH = 0.0254;
const GRAM_SQUARE_CENTIMETRE = 1e-7;

/** All sizes, smallest first. */
export const MOTOR_FLANGES: readonly MotorFlange[] = data.rows.map((row) => ({
  size: row.size,
  flange: scaled(row.flange_mm, MILLIMETRE),
  holeSquare: row.hole_square_mm * MILLIMETRE,
  boltCircle: row.bolt_circle_in * INCH,
  pilotDiameter: row.pilot_mm * MILLIMETRE,
  usualShafts: row.usual_shafts_mm.map((diameter) => diameter * MILLIMETRE),
  length: scaled(row.length_mm, MILLIMETRE),
  holdingTorque: scaled(row.holding_torque_Nm),
  detentTorque: scaled(row.detent_torque_Nm),
  rotorInertia: scaled(row.rotor_inertia_gcm2, GRAM_SQUARE_CENTIMETRE),
  current: scaled(row.current_A),
  resistance: scaled(row.resistance_ohm),
  inductance: scaled(row.inductance_mH, 1e-3),
  radialShaftLoad: scaled(row.radial_shaft_load_N),
  axialShaftLoad: scaled(row.axial_shaft_load_N),
  source: row.source,
  weak: row.weak,
}));

/** The face named by a text such as `NEMA 17`, `nema17` or `17`; undefined for any other. */
export function motorFlange(frame: string): MotorFlange | undefined {
  const number = /^\s*(?:nema)?[\s-]*(\d{2})\s*$/i.exec(frame)?.[1];
  return number === undefined ? undefined : MOTOR_FLANGES.find((row) => row.size === Number(number));
}
