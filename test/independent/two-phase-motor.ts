/**
 * A two-phase hybrid stepping motor in the time domain, written for the tests alone and sharing no code with the estimate.
 *
 * Each winding: V = R i + L di/dt + e, e_a = −k ω sin(N θ), e_b = k ω cos(N θ); torque k (−i_a sin N θ + i_b cos N θ).
 * The chopper compares each current with its command once every chopping period and applies the mean voltage that would meet it,
 * as far as the supply reaches. The shaft turns at an even speed. No iron loss, no cogging, no saturation.
 */
export interface SimulatedMotor {
  readonly torqueConstant: number;
  readonly resistance: number;
  readonly inductance: number;
  readonly polePairs: number;
  readonly voltage: number;
  readonly peakCurrent: number;
}

/** Mean torque over one electrical period once the currents have settled, for one load angle (electrical rad ahead of the back-EMF). */
export function meanTorque(motor: SimulatedMotor, speed: number, advance: number, stepsPerPeriod = 240): number {
  const { torqueConstant: k, resistance: R, inductance: L, polePairs: N, voltage: V, peakCurrent } = motor;
  const electrical = N * speed;
  const dt = (2 * Math.PI) / electrical / stepsPerPeriod;
  const decay = Math.exp((-R * dt) / L);
  const gain = (1 - decay) / R;
  const settle = Math.ceil((7 * L) / R / (dt * stepsPerPeriod));
  let a = 0;
  let b = 0;
  let sum = 0;
  for (let period = 0; period <= settle; period++) {
    sum = 0;
    for (let i = 0; i < stepsPerPeriod; i++) {
      const middle = ((i + 0.5) * 2 * Math.PI) / stepsPerPeriod;
      const end = ((i + 1) * 2 * Math.PI) / stepsPerPeriod;
      const emfA = -k * speed * Math.sin(middle);
      const emfB = k * speed * Math.cos(middle);
      const wantedA = -peakCurrent * Math.sin(end + advance);
      const wantedB = peakCurrent * Math.cos(end + advance);
      const clip = (v: number): number => Math.max(-V, Math.min(V, v));
      const nextA = a * decay + gain * (clip((wantedA - a * decay) / gain + emfA) - emfA);
      const nextB = b * decay + gain * (clip((wantedB - b * decay) / gain + emfB) - emfB);
      sum += k * (-((a + nextA) / 2) * Math.sin(middle) + ((b + nextB) / 2) * Math.cos(middle));
      a = nextA;
      b = nextB;
    }
  }
  return sum / stepsPerPeriod;
}

/** Pull-out torque: the most that any load angle gives. */
export function simulatedPullOut(motor: SimulatedMotor, speed: number): number {
  let best = -Infinity;
  let bestAngle = 0;
  const consider = (angle: number): void => {
    const torque = meanTorque(motor, speed, angle);
    if (torque > best) [best, bestAngle] = [torque, angle];
  };
  const count = 24;
  for (let i = 0; i <= count; i++) consider((i * Math.PI) / 1.4 / count - 0.2);
  for (let step = Math.PI / 1.4 / count / 2; step > 0.005; step /= 2) {
    const centre = bestAngle;
    consider(centre - step);
    consider(centre + step);
  }
  return best;
}
