/** Racks, pinions and falls against printed examples. Those from memory say so; the books were not opened. */
import { describe, expect, test } from 'vitest';
import { freeRunningFallAcceleration, impactFactor } from '../../server/src/mechanics/free-running-drive.ts';
import { barthVelocityFactor, leastTeethWithoutUndercut, lewisFormFactor, lewisStress, toothForces, transversePressureAngle, type RackMesh } from '../../server/src/mechanics/rack-pinion.ts';
import { degrees } from '../mechanics/units.ts';

const INCH = 0.0254;
const POUND_FORCE = 4.4482216;
const KPSI = 6.894757e6;

const spur = (teeth: number, angle = 20): RackMesh => ({ module: INCH / 8, teeth, pressureAngle: degrees(angle), helixAngle: 0 });

test('Budynas and Nisbett, Shigley’s, example 14-1 (from memory): 16 teeth of 8 to the inch, 1.5 in wide, 628 ft/min, 8.57 kpsi carry 313 lbf', () => {
  const speed = 628 * 0.00508;
  expect(barthVelocityFactor(speed)).toBeCloseTo(1.52, 2);
  // Table 14-2: Y = 0.296.
  expect(lewisFormFactor(spur(16))).toBeCloseTo(0.296, 3);
  const stress = lewisStress(313 * POUND_FORCE, 1.5 * INCH, INCH / 8, 0.296, barthVelocityFactor(speed));
  expect(Math.abs(stress / (8.57 * KPSI) - 1)).toBeLessThan(5e-3);
});

test('Budynas and Nisbett, example 13-9 (from memory): 18 helical teeth, 20°, 30°, 40.4 lbf: 22.8°, 17.0 lbf, 23.3 lbf, 49.6 lbf', () => {
  const mesh: RackMesh = { module: INCH / 12, teeth: 18, pressureAngle: degrees(20), helixAngle: degrees(30) };
  expect((transversePressureAngle(mesh) * 180) / Math.PI).toBeCloseTo(22.8, 1);
  const forces = toothForces(mesh, 40.4);
  expect(Math.abs(forces.separating - 17)).toBeLessThan(0.05);
  expect(Math.abs(forces.axial - 23.3)).toBeLessThan(0.05);
  expect(Math.abs(forces.normal - 49.6)).toBeLessThan(0.1);
});

test.each([[20, 18], [14.5, 32], [25, 12]])('Budynas and Nisbett, section 13-7 (from memory): the smallest pinion that runs with a rack of %f° has %i teeth', (angle, teeth) => {
  expect(Math.ceil(leastTeethWithoutUndercut(degrees(angle), 0))).toBe(teeth);
});

describe('Lewis form factor of 20° teeth: table 14-2 against Buckingham’s 0.154 − 0.912/z (Khurmi and Gupta, chapter 28), both from memory', () => {
  // Two readings of the same teeth: the table is the lower one, by up to 7.6 % near 24 to 30 teeth, and so the cautious one.
  test.each([12, 14, 17, 20, 24, 30, 43, 60, 100, 300])('%i teeth', (teeth) => {
    expect(Math.abs(lewisFormFactor(spur(teeth)) / (Math.PI * (0.154 - 0.912 / teeth)) - 1)).toBeLessThan(0.08);
  });
});

test.each([[1, 0.231], [0.9, 0.216]])('Khurmi and Gupta, Theory of Machines, example 3.13, p. 50: 75 kg on a drum of 0.3 m drive a gear train backwards, efficiency %f', (efficiency, printed) => {
  const falls = freeRunningFallAcceleration({
    mass: 75, pull: 75 * 9.81, friction: 0, radius: 0.3, reverseEfficiency: 1, shaftInertia: 100, ratio: 6, reductionEfficiency: efficiency, motorInertia: 5,
  });
  expect(falls).toBeCloseTo(printed, 3);
});

test('Popov, Engineering Mechanics of Solids, example 10.13, p. 533: 15.3 kg from 75 mm on a beam, 71.7 times its weight; on two springs 24.17 times', () => {
  // By hand: 150 N on a beam of 50 mm by 50 mm by 1 m, 200 GPa: W L³/(48 E I) = 0.0300 mm. Two springs of 300 N/mm beneath add 0.25 mm.
  const weight = 15.3 * 9.81;
  const beam = (weight * 1) / (48 * 200e9 * (0.05 ** 4 / 12));
  expect(impactFactor(0.075, beam)).toBeCloseTo(71.7, 1);
  expect(Math.abs(impactFactor(0.075, beam + weight / 600e3) - 24.17)).toBeLessThan(0.02);
});
