import { describe, expect, test } from 'vitest';
import { MOTOR_FLANGES, motorFlange } from '../../server/src/catalogue/motor-flanges.ts';
import { thermalResistanceBound } from '../../server/src/mechanics/motor-heat.ts';

describe.each(MOTOR_FLANGES)('size $size', (row) => {
  test('carries its source', () => expect(row.source.length).toBeGreaterThan(10));
  test('the square of the holes is the bolt circle over √2, within 0.1 mm (geometry)', () => {
    expect(Math.abs(row.holeSquare * Math.SQRT2 - row.boltCircle)).toBeLessThan(0.1e-3);
  });
  test('every range rises, the pilot fits between the holes and the holes on the face', () => {
    for (const range of [row.flange, row.length, row.holdingTorque, row.detentTorque, row.rotorInertia, row.current, row.resistance, row.inductance, row.radialShaftLoad, row.axialShaftLoad]) {
      expect(range[0]).toBeLessThanOrEqual(range[1]);
      expect(range[0]).toBeGreaterThan(0);
    }
    expect(row.pilotDiameter).toBeLessThan(row.boltCircle);
    expect(row.holeSquare).toBeLessThan(row.flange[0]);
  });
});

// Bolt circles of NEMA ICS 16-2001 as quoted: 1.725, 2.625 and 3.875 in. The square is printed as 1.22, 1.854 and 2.744 in.
test.each([[17, 1.725, 1.22], [23, 2.625, 1.854], [34, 3.875, 2.744]])('size %i: bolt circle %f in, hole square %f in', (size, circle, square) => {
  const row = motorFlange(`NEMA ${size}`);
  expect((row?.boltCircle ?? NaN) / 0.0254).toBeCloseTo(circle, 9);
  // A printed 2.744 in for size 34 is 0.1 mm more than the circle gives.
  expect(Math.abs((row?.holeSquare ?? NaN) / 0.0254 - square)).toBeLessThan(0.0045);
});

test('names are read as people write them, others are refused', () => {
  for (const text of ['NEMA 17', 'nema17', 'NEMA-17', '17']) expect(motorFlange(text)?.size).toBe(17);
  for (const text of ['NEMA 16', 'NEMA 170', '', 'frame', 'NEMA 18']) expect(motorFlange(text)).toBeUndefined();
});

// Four sheets in the engineering notes: size, holding torque N·m, current A, resistance Ω, inductance mH, inertia g·cm².
test.each([[17, 0.57, 2, 1.7, 3.6, 82], [23, 1.236, 2.8, 1.1, 3, 300], [34, 4.41, 4.2, 0.45, 4, 1400]])(
  'a sheet of size %i lies in the usual ranges', (size, torque, current, resistance, inductance, inertia) => {
    const row = motorFlange(String(size))!;
    const inside = (value: number, range: readonly [number, number]): void => {
      expect(value).toBeGreaterThanOrEqual(range[0]);
      expect(value).toBeLessThanOrEqual(range[1]);
    };
    inside(torque, row.holdingTorque);
    inside(current, row.current);
    inside(resistance, row.resistance);
    inside(inductance * 1e-3, row.inductance);
    inside(inertia * 1e-7, row.rotorInertia);
    expect(thermalResistanceBound(current, resistance)).toBeGreaterThan(1);
  },
);
