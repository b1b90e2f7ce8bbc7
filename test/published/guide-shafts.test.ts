/** Bending of guide shafts against printed examples. Numbers of books as printed by open transcriptions of their solved examples; the printed pages were not opened. */
import { describe, expect, test } from 'vitest';
import { bendShaft, supportedRailGive } from '../../server/src/mechanics/guide-shaft.ts';
import { carriageOverTravel } from '../../server/src/mechanics/guide-shaft-travel.ts';

const within = (value: number, expected: number, tolerance: number): void => {
  expect(Math.abs(value / expected - 1)).toBeLessThan(tolerance);
};

describe('beams of textbooks', () => {
  test('Bansal, Strength of Materials, problem 12.1, p. 518: load in the middle, 13.736 mm, ends 0.3935°', () => {
    // The transcriber states that the printed slope is wrong; 0.3935° is the corrected one, and P L²/(16 E I) gives it.
    const bent = bendShaft({ left: 'supported', right: 'supported', length: 6, bendingStiffness: 210e9 * 78e-6 }, [{ at: 3, force: 50e3 }]);
    within(bent.at(3).deflection, 13.736e-3, 5e-5);
    within((bent.at(0).slope * 180) / Math.PI, 0.3935, 1e-4);
    within((-bent.at(6).slope * 180) / Math.PI, 0.3935, 1e-4);
    expect(bent.reactions[0]).toBeCloseTo(25e3, 6);
  });

  test('Bansal, problem 12.4, p. 526: load off the middle, 0.00035 rad at the left end, 0.6 mm under the load', () => {
    const shaft = { left: 'supported', right: 'supported', length: 5, bendingStiffness: 200e9 * 100e-6 } as const;
    const bent = bendShaft(shaft, [{ at: 3, force: 5e3 }]);
    within(bent.at(0).slope, 0.00035, 1e-6);
    within(bent.at(3).deflection, 0.6e-3, 1e-6);
    // The greatest deflection of the book, 0.6173 mm, lies between the left end and the load: where the slope is zero.
    let [low, high] = [0, 3];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (bent.at(middle).slope > 0) low = middle;
      else high = middle;
    }
    within(bent.at(low).deflection, 0.6173e-3, 1e-4);
  });

  test('Bansal, problem 12.5, p. 529: even load, 16.27 mm and 0.0104 rad (both cut, not rounded)', () => {
    const second = (0.2 * 0.3 ** 3) / 12;
    const bent = bendShaft({ left: 'supported', right: 'supported', length: 5, bendingStiffness: 10e9 * second, loadPerLength: 9e3 }, []);
    within(bent.at(2.5).deflection, 16.27e-3, 5e-4);
    within(bent.at(0).slope, 0.0104, 2e-3);
  });

  test('Bansal, problem 13.1, p. 557: cantilever, 10.71 mm and 0.005357 rad at its end', () => {
    const bent = bendShaft({ left: 'fixed', right: 'free', length: 3, bendingStiffness: 210e9 * 100e-6 }, [{ at: 3, force: 25e3 }]);
    within(bent.at(3).deflection, 10.71e-3, 5e-4);
    within(bent.at(3).slope, 0.005357, 5e-5);
    expect(bent.at(0).moment).toBeCloseTo(-75e3, 4);
  });

  test('Levinson, Statics and Strength of Materials, example 13.6, p. 329: clamped, load in the middle and even load over one half, E I y = 384 kip ft³', () => {
    // By symmetry half of the even load bends the middle half as much as all of it: the sum of a load over the left half and one over the right half.
    const shaft = { left: 'fixed', right: 'fixed', length: 16, bendingStiffness: 1 } as const;
    const load = bendShaft(shaft, [{ at: 8, force: 6 }]).at(8).deflection;
    const even = bendShaft({ ...shaft, loadPerLength: 3 }, []).at(8).deflection;
    within(load + even / 2, 384, 1e-12);
  });

  test('Levinson, example 13.8, p. 333: a spring under the middle of a beam takes 480 lb of 680', () => {
    // Pounds and inches. I = 1.728 in⁴, E = 30e6 psi, L = 72 in, k = 1000 lb/in.
    // Where the spring sits under a beam clamped at one end: E I = 51.84e6; a cantilever gives L³/(3 E I) = 1/417 in/lb and takes 200 of 680, the spring 480.
    const bent = bendShaft(
      { left: 'fixed', right: 'free', length: 72 * (1 + 1e-9), bendingStiffness: 30e6 * 1.728, middleSupports: [{ at: 72, stiffness: 1000 }] },
      [{ at: 72, force: 680 }],
    );
    within(bent.reactions[1] as number, 480, 1e-4);
  });

  test('Boresi and Schmidt, Advanced Mechanics of Materials, example 5.6, p. 166: leaving out shear costs 3.42 % at L/h = 5', () => {
    // The transcription gives only L/h, E, G and the answer. Equal loads in the middle and at the end of a cantilever of rectangular section (kappa = 1/1.2) fit
    // it: bending 7 P L³/(16 E I), shear 1.8 P L/(G A); E/G = 2.5806; 1.8·2.5806/(12·25)·16/7 = 0.035392, of the whole 3.418 %. The arrangement is our reading.
    const [L, h] = [1, 0.2];
    const bending = (200e9 * h ** 3) / 12;
    const shaft = { left: 'fixed', right: 'free', length: L, bendingStiffness: bending } as const;
    const loads = [{ at: L / 2, force: 1e3 }, { at: L, force: 1e3 }];
    const slender = bendShaft(shaft, loads).at(L).deflection;
    const whole = bendShaft({ ...shaft, shearFlexibility: 1.2 / (77.5e9 * h) }, loads).at(L).deflection;
    within(slender, (7 * 1e3) / (16 * bending), 1e-9);
    within((whole - slender) / whole, 0.0342, 2e-3);
  });

  test('handbook page of an extrusion supplier: 762 mm, 222.4 N, 0.21 mm (second moment of area from memory: consistency only)', () => {
    const bent = bendShaft({ left: 'supported', right: 'supported', length: 0.762, bendingStiffness: 70.3265e9 * 138e-9 }, [{ at: 0.381, force: 222.4 }]);
    within(bent.at(0.381).deflection, 0.21e-3, 0.01);
  });
});

// Reference dossier of this project, table of steel shafts between supported ends (E = 206 GPa, 7850 kg/m³): micrometres per 10 N in the middle, and under its own weight.
// Computed there independently of this program.
test.each([
  [8, 300, 136, 10], [8, 1000, 5030, 1217], [10, 500, 258, 49], [12, 400, 64, 14], [12, 800, 509, 222], [16, 600, 68, 39], [20, 1000, 129, 195],
])('steel shaft of %i mm, %i mm long: %f µm per 10 N, %f µm by itself', (d, L, perTen, own) => {
  const [diameter, length] = [d * 1e-3, L * 1e-3];
  const bendingStiffness = (206e9 * Math.PI * diameter ** 4) / 64;
  const shaft = { left: 'supported', right: 'supported', length, bendingStiffness } as const;
  expect(Math.abs(bendShaft(shaft, [{ at: length / 2, force: 10 }]).at(length / 2).deflection * 1e6 - perTen)).toBeLessThan(Math.max(0.006 * perTen, 0.5));
  const weight = 7850 * 9.81 * ((Math.PI * diameter ** 2) / 4);
  expect(Math.abs(bendShaft({ ...shaft, loadPerLength: weight }, []).at(length / 2).deflection * 1e6 - own)).toBeLessThan(Math.max(0.006 * own, 0.51));
});

test('Bansal, problem 12.4: over the travel the sag under the load itself is greatest in the middle, P L³/(48 E I)', () => {
  const shaft = { left: 'supported', right: 'supported', length: 5, bendingStiffness: 200e9 * 100e-6 } as const;
  const { lowest, highest, variation } = carriageOverTravel(shaft, { force: 5e3 }, 2, 4);
  expect(lowest.position).toBeCloseTo(2.5, 4);
  within(lowest.sag, (5e3 * 125) / (48 * 20e6), 1e-9);
  expect(highest.position).toBeCloseTo(4, 4);
  within(highest.sag, (5e3 * 16 * 1) / (3 * 20e6 * 5), 1e-6);
  within(variation, lowest.sag - highest.sag, 1e-12);
});

test('Hetényi, Beams on Elastic Foundation: P b/(2 k) for P = 1, k = 4 E I (b = 1): 1/(8 E I)', () => {
  const { deflection, reach } = supportedRailGive(1, 4 * 50, 50);
  within(deflection, 1 / 400, 1e-12);
  within(reach, Math.PI, 1e-12);
});
