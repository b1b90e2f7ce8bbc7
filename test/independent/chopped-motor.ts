/**
 * A two-phase hybrid stepping motor on a bridge that really switches, written for the tests alone. Where `two-phase-motor.ts` applies
 * the mean voltage of each chopping period, here a full bridge puts + V or − V across each winding, and what regulates the current is
 * either a band around the wanted current or a comparison at each tick of a clock.
 *
 * Each winding: ± V = R i + L di/dt + e, e_a = −k ω sin(N θ), e_b = k ω cos(N θ); torque k (−i_a sin N θ + i_b cos N θ).
 */
import type { SimulatedMotor } from './two-phase-motor.ts';

export type Regulation =
  /** Switches when the current leaves the band, A to either side of what is wanted. */
  | { readonly kind: 'band'; readonly half: number }
  /** Compares once every period of the clock, s. */
  | { readonly kind: 'clock'; readonly period: number };

/** Mean torque over the last electrical periods, for one load angle (electrical rad ahead of the back-EMF), and the swing of the current. */
export function choppedTorque(motor: SimulatedMotor, speed: number, advance: number, regulation: Regulation): number {
  const { torqueConstant: k, resistance: R, inductance: L, polePairs: N, voltage: V, peakCurrent } = motor;
  const electrical = N * speed;
  const period = (2 * Math.PI) / electrical;
  const dt = Math.min(1e-6, period / 400);
  const settle = Math.ceil((6 * L) / R / period);
  const measured = Math.max(1, Math.ceil(2e-3 / period));
  const perPeriod = Math.round(period / dt);
  const h = period / perPeriod;
  const ticks = regulation.kind === 'clock' ? Math.max(1, Math.round(regulation.period / h)) : 1;
  let [a, b, upA, upB, sum] = [0, 0, true, true, 0];
  for (let n = 0; n < (settle + measured) * perPeriod; n++) {
    const angle = ((n % perPeriod) * 2 * Math.PI) / perPeriod;
    const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
    const wantedA = -peakCurrent * Math.sin(angle + advance);
    const wantedB = peakCurrent * Math.cos(angle + advance);
    if (regulation.kind === 'clock') {
      if (n % ticks === 0) [upA, upB] = [wantedA > a, wantedB > b];
    } else {
      if (a > wantedA + regulation.half) upA = false;
      else if (a < wantedA - regulation.half) upA = true;
      if (b > wantedB + regulation.half) upB = false;
      else if (b < wantedB - regulation.half) upB = true;
    }
    a += (((upA ? V : -V) - R * a + k * speed * sin) / L) * h;
    b += (((upB ? V : -V) - R * b - k * speed * cos) / L) * h;
    if (n >= settle * perPeriod) sum += k * (-a * sin + b * cos);
  }
  return sum / (measured * perPeriod);
}

/** Pull-out torque: the most that any load angle gives. */
export function choppedPullOut(motor: SimulatedMotor, speed: number, regulation: Regulation): number {
  let [best, bestAngle] = [-Infinity, 0];
  const consider = (angle: number): void => {
    const torque = choppedTorque(motor, speed, angle, regulation);
    if (torque > best) [best, bestAngle] = [torque, angle];
  };
  for (let angle = -0.2; angle <= 2.1; angle += 0.2) consider(angle);
  for (const step of [0.1, 0.05, 0.025]) {
    const centre = bestAngle;
    consider(centre - step);
    consider(centre + step);
  }
  return best;
}
