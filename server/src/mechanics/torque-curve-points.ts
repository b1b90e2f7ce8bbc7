/** A torque curve that the person gives as points, which goes before every estimate. */
import { requireNotNegative, requirePositive } from './require-argument.ts';

/** One point of a measured or printed torque curve. */
export interface TorquePoint {
  /** ω, rad/s, ≥ 0. */
  readonly speed: number;
  /** T, N·m, ≥ 0. */
  readonly torque: number;
}

/** Torque read off given points, or why there is none. */
export type TorqueRead =
  | { readonly kind: 'within'; /** N·m. */ readonly torque: number }
  | { readonly kind: 'beyond-the-points'; /** Last speed that the points cover at this voltage, rad/s. */ readonly lastSpeed: number };

/**
 * Torque at a speed from given points, carried to another supply voltage.
 *
 * Formula: linear between points at ω · V_points / V; the first point's torque below the first point.
 * @param points at least one, speeds strictly rising.
 * @param speed ω of the motor shaft, rad/s, ≥ 0.
 * @param voltageOfPoints supply voltage at which the points were taken, V, > 0; omit to use them as they are.
 * @param voltage supply voltage of this machine, V, > 0; omit to use the points as they are.
 * @returns the torque; or `beyond-the-points`: nothing is extrapolated.
 * Outside the domain: RangeError for no points, for speeds that do not rise, for negative torque.
 * Source: above the corner ω and V enter the voltage equation as ω L I / V and k ω / V, so speed scales with voltage once R I ≪ V;
 * below the corner the curve is flat and the scaling does nothing.
 * Checked against: the voltage-limited model itself at two voltages (test/mechanics/torque-curve-points).
 */
export function torqueFromPoints(points: readonly TorquePoint[], speed: number, voltageOfPoints?: number, voltage?: number): TorqueRead {
  requirePoints(points);
  requireNotNegative('speed', speed);
  const stretch = voltageStretch(voltageOfPoints, voltage);
  const readAt = speed / stretch;
  const first = points[0]!;
  if (readAt <= first.speed) return { kind: 'within', torque: first.torque };
  for (let i = 1; i < points.length; i++) {
    const left = points[i - 1]!;
    const right = points[i]!;
    if (readAt <= right.speed) {
      const share = (readAt - left.speed) / (right.speed - left.speed);
      return { kind: 'within', torque: left.torque + share * (right.torque - left.torque) };
    }
  }
  return { kind: 'beyond-the-points', lastSpeed: points[points.length - 1]!.speed * stretch };
}

function voltageStretch(voltageOfPoints: number | undefined, voltage: number | undefined): number {
  if (voltageOfPoints === undefined || voltage === undefined) return 1;
  requirePositive('voltage of the points', voltageOfPoints);
  requirePositive('voltage', voltage);
  return voltage / voltageOfPoints;
}

function requirePoints(points: readonly TorquePoint[]): void {
  if (points.length === 0) throw new RangeError('a torque curve needs at least one point');
  points.forEach((point, i) => {
    requireNotNegative('speed of a point', point.speed);
    requireNotNegative('torque of a point', point.torque);
    const before = points[i - 1];
    if (before && before.speed >= point.speed) throw new RangeError('the speeds of a torque curve must rise');
  });
}
