/** A brushless motor against its three windings: power summed over the phases, and a bridge that switches, stepped in time. */
import { describe, expect, test } from 'vitest';
import { greatestBrushlessTorque, peakLineBackEmf, torqueConstantFromLineBackEmf, torquePerPeakAmpere } from '../../server/src/mechanics/brushless.ts';

const third = (2 * Math.PI) / 3;

test('constants from the power of the three phases', () => {
  // Peak back-EMF of a phase 0.04 V·s/rad, currents of 3 A peak in phase with it.
  const [phaseEmf, current, polePairs, speed] = [0.04, 3, 4, 100];
  let [power, squares, highest] = [0, 0, 0];
  const instants = 3600;
  for (let i = 0; i < instants; i++) {
    const angle = (polePairs * 2 * Math.PI * i) / instants;
    const emf = [0, 1, 2].map((phase) => phaseEmf * speed * Math.sin(angle - phase * third));
    power += emf.reduce((sum, e, phase) => sum + e * current * Math.sin(angle - phase * third), 0) / instants;
    const line = emf[0]! - emf[1]!;
    squares += line ** 2 / instants;
    highest = Math.max(highest, line);
  }
  const perPeak = power / speed / current;
  expect(torquePerPeakAmpere(torqueConstantFromLineBackEmf(Math.sqrt(squares) / speed), 'rms')).toBeCloseTo(perPeak, 9);
  expect(peakLineBackEmf(perPeak)).toBeCloseTo(highest / speed, 5);
});

const motor = { torquePerPeakAmpere: 0.06, phaseResistance: 0.2, phaseInductance: 0.15e-3, polePairs: 4, noLoadCurrent: 0 };

/** Mean torque of a star winding on a bridge whose legs switch each phase up or down towards its wanted current, once every 4 µs. */
function bridge(speed: number, voltage: number, wanted: number, advance: number): number {
  const electrical = motor.polePairs * speed;
  const phaseEmf = ((2 / 3) * motor.torquePerPeakAmpere) * speed;
  const dt = 1e-6;
  const period = (2 * Math.PI) / electrical;
  const settle = 8 * (motor.phaseInductance / motor.phaseResistance);
  const turns = Math.ceil(settle / period) + 2;
  const steps = Math.round((turns * period) / dt);
  const lastStart = Math.round(((turns - 2) * period) / dt);
  const current = [0, 0, 0];
  let leg = [0, 0, 0];
  let [torque, counted] = [0, 0];
  for (let n = 0; n < steps; n++) {
    const angle = electrical * n * dt;
    const shape = [0, 1, 2].map((phase) => Math.sin(angle - phase * third));
    if (n % 4 === 0) leg = current.map((i, phase) => (wanted * Math.sin(angle + advance - phase * third) > i ? voltage / 2 : -voltage / 2));
    const neutral = (leg[0]! + leg[1]! + leg[2]!) / 3;
    for (let phase = 0; phase < 3; phase++) {
      current[phase]! += ((leg[phase]! - neutral - motor.phaseResistance * current[phase]! - phaseEmf * shape[phase]!) / motor.phaseInductance) * dt;
    }
    if (n >= lastStart) {
      torque += (2 / 3) * motor.torquePerPeakAmpere * (current[0]! * shape[0]! + current[1]! * shape[1]! + current[2]! * shape[2]!);
      counted++;
    }
  }
  return torque / counted;
}

describe('torque over speed from a switching bridge', () => {
  const voltage = 48;
  const limits = { current: 30, torque: Infinity, speed: Infinity };
  test.each([20, 100, 200, 400])('%f rad/s: the wanted current flows, and the torque is K i', (speed) => {
    expect(greatestBrushlessTorque(motor, voltage, limits, speed).limitedBy).toBe('current');
    // 2 %: the ripple of a comparator at 250 kHz, whose mean lags the wanted current a little.
    expect(Math.abs(bridge(speed, voltage, 30, 0) / (30 * 0.06) - 1)).toBeLessThan(0.02);
  });
  test.each([520, 560, 600])('%f rad/s: the formula stays below what the bridge can, and is no more than a six-step voltage explains', (speed) => {
    const design = greatestBrushlessTorque(motor, voltage, limits, speed);
    expect(design.limitedBy).toBe('voltage');
    let best = 0;
    for (let advance = -0.4; advance <= 0.9; advance += 0.1) best = Math.max(best, bridge(speed, voltage, 30, advance));
    // No credit for field weakening: the bridge that advances its currents gets more.
    expect(design.torque).toBeLessThan(best * 1.02);
    // With the currents held in phase with the back-EMF, a six-step voltage of 2/π in place of 1/√3 is the most there is.
    const sixStep = greatestBrushlessTorque(motor, voltage * (2 / Math.PI) * Math.sqrt(3), limits, speed).torque;
    expect(design.torque).toBeLessThanOrEqual(sixStep);
  });
});
