/** Buckling by the exact determinant against our own beam finite elements. */
import { describe, expect, test } from 'vitest';
import { bucklingLoadWithNut, endFixityFactor, eulerLoad } from '../../server/src/mechanics/column-buckling.ts';
import { endPair, type ShaftEnd } from '../../server/src/mechanics/shaft-ends.ts';
import { beamBucklingFactor, type BeamModel } from './beam-elements.ts';

const length = 0.8;
const bending = 25;
type Support = BeamModel['supports'][number];
const endAt = (end: ShaftEnd, at: number): Support => ({ at, lateral: end === 'free' ? 0 : Infinity, tilt: end === 'fixed' ? Infinity : 0 });

/** Compressed by 1 N from the left end to `until`. */
const elementLoad = (supports: readonly Support[], until: number): number =>
  beamBucklingFactor({ length, elements: 30, bendingStiffness: () => bending, massPerLength: 1, supports, axialForce: (x) => (x < until ? -1 : 0) });

const ENDS: readonly (readonly [ShaftEnd, ShaftEnd])[] = [
  ['fixed', 'free'], ['supported', 'supported'], ['fixed', 'supported'], ['supported', 'fixed'], ['fixed', 'fixed'],
];

describe.each(ENDS)('%s-%s', (left, right) => {
  test('Euler over the whole length: within 1e-5', () => {
    const pair = endPair(left, right);
    if (pair === 'mechanism') throw new Error('these ends hold');
    const elements = elementLoad([endAt(left, 0), endAt(right, length)], length);
    expect(Math.abs(eulerLoad(endFixityFactor(pair), length, bending) / elements - 1)).toBeLessThan(1e-5);
  });

  test.each([0.15, 0.3, 0.5, 0.7, 0.9, 0.97])('compressed up to a nut at %f of the length: within 5e-4', (share) => {
    for (const nut of ['knife edge', 'against tilt', 'not guided'] as const) {
      const at = share * length;
      const support: Support = { at, lateral: nut === 'not guided' ? 0 : Infinity, tilt: nut === 'against tilt' ? Infinity : 0 };
      const exact = bucklingLoadWithNut(left, right, length, at, bending, nut);
      const elements = elementLoad([endAt(left, 0), support, endAt(right, length)], at);
      expect(Math.abs(exact / elements - 1)).toBeLessThan(5e-4);
      // The short rule of column and nut alone, nut as a free-to-tilt end, is on the safe side of a guided nut.
      if (nut !== 'not guided') {
        const pair = endPair(left, 'supported');
        if (pair !== 'mechanism') expect(eulerLoad(endFixityFactor(pair), at, bending)).toBeLessThan(exact * 1.0001);
      }
    }
  });
});

// q = k_t L/(E I) at one end, the other supported: factors that our second reading of the screws gives from its own finite elements.
test.each([[1, 1.18], [2, 1.31], [5, 1.55], [10, 1.73], [20, 1.87], [50, 1.97]])('bearing block of q = %f: %f times Euler', (q, factor) => {
  const tilt = (q * bending) / length;
  const exact = bucklingLoadWithNut({ lateral: 'held', tiltStiffness: tilt }, 'supported', length, length, bending, 'knife edge');
  const euler = eulerLoad(1, length, bending);
  expect(Math.abs(exact / euler - factor)).toBeLessThan(0.006);
  const elements = elementLoad([{ at: 0, lateral: Infinity, tilt }, endAt('supported', length)], length);
  expect(Math.abs(exact / elements - 1)).toBeLessThan(1e-5);
});

test('a screw that nothing keeps upright bears nothing', () => {
  expect(bucklingLoadWithNut('supported', 'free', length, length, bending, 'not guided')).toBe(0);
});
