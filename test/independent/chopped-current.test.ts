/** The range of the pull-out estimate against windings whose current is chopped by a bridge that switches between + V and − V. */
import { describe, expect, test } from 'vitest';
import { cornerSpeed, pullOutTorque, torqueConstant } from '../../server/src/mechanics/stepper-torque.ts';
import { choppedPullOut, choppedTorque, type Regulation } from './chopped-motor.ts';

/** Sheets of the engineering notes: holding torque N·m, rated current A, resistance Ω, inductance H. */
const motors = [
  { name: 'size 17, 24 V', holding: 0.57, rated: 2.0, resistance: 1.7, inductance: 3.6e-3, voltage: 24, factor: 1 },
  { name: 'size 17, 36 V, 1.41 times the rating', holding: 0.57, rated: 2.0, resistance: 1.7, inductance: 3.6e-3, voltage: 36, factor: Math.SQRT2 },
  { name: 'size 23, 48 V', holding: 1.236, rated: 2.8, resistance: 1.1, inductance: 3.0e-3, voltage: 48, factor: 1 },
  { name: 'size 34, 72 V', holding: 4.41, rated: 4.2, resistance: 0.45, inductance: 4.0e-3, voltage: 72, factor: 1 },
].map(({ name, holding, rated, factor, ...rest }) => ({ name, drive: { ...rest, torqueConstant: torqueConstant(holding, rated), peakCurrent: factor * rated, polePairs: 50 } }));

const regulations: readonly (readonly [string, (peak: number) => Regulation])[] = [
  ['a band of 2 % of the current', (peak) => ({ kind: 'band', half: 0.02 * peak })],
  // A slow comparator also holds less current than it is told, by about (V + e)/2L times its period; 5 µs keep that below 1 %.
  ['a clock of 200 kHz', () => ({ kind: 'clock', period: 5e-6 })],
];

describe.each(regulations)('chopped by %s', (_name, regulationOf) => {
  test.each(motors)('$name: between the design estimate and the upper bound', ({ drive }) => {
    for (const turns of [2, 6, 12, 24]) {
      const simulated = choppedPullOut(drive, turns * 2 * Math.PI, regulationOf(drive.peakCurrent));
      const range = pullOutTorque(drive, turns * 2 * Math.PI);
      // 2 %: the current swings about what is wanted, and lags it by up to a period of the clock.
      expect(range.design, `design at ${turns} rev/s`).toBeLessThanOrEqual(simulated * 1.02);
      expect(range.upper, `upper at ${turns} rev/s`).toBeGreaterThanOrEqual(simulated * 0.98);
    }
  });
  test.each(motors)('$name: in phase with the back-EMF the set current flows below the corner and not above', ({ drive }) => {
    const corner = cornerSpeed(drive);
    if (corner.kind !== 'corner') throw new Error('the supply of this motor does reach the current');
    const full = drive.torqueConstant * drive.peakCurrent;
    expect(choppedTorque(drive, corner.speed * 0.8, 0, regulationOf(drive.peakCurrent)) / full).toBeGreaterThan(0.98);
    expect(choppedTorque(drive, corner.speed * 1.4, 0, regulationOf(drive.peakCurrent)) / full).toBeLessThan(0.95);
  });
});
