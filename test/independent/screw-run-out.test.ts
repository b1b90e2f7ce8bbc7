/** Lateral stiffness at the nut: the beam table against our own beam finite elements. */
import { expect, test } from 'vitest';
import { lateralStiffness } from '../../server/src/mechanics/run-out.ts';
import type { EndPair, ShaftEnd } from '../../server/src/mechanics/shaft-ends.ts';
import { beamCompliance, type BeamModel } from './beam-elements.ts';

type Support = BeamModel['supports'][number];
const endAt = (end: ShaftEnd, at: number): Support => ({ at, lateral: end === 'free' ? 0 : Infinity, tilt: end === 'fixed' ? Infinity : 0 });

test.each<[EndPair, ShaftEnd, ShaftEnd]>([
  ['fixed-fixed', 'fixed', 'fixed'], ['fixed-supported', 'fixed', 'supported'], ['supported-supported', 'supported', 'supported'], ['fixed-free', 'fixed', 'free'],
])('%s', (pair, left, right) => {
  for (const share of [0.05, 0.2, 0.5, 0.75, 0.95]) {
    const length = 0.7;
    const compliance = beamCompliance(
      { length, elements: 20, bendingStiffness: () => 12, massPerLength: 1, supports: [endAt(left, 0), endAt(right, length)] },
      share * length,
    );
    expect(lateralStiffness(pair, length, share * length, 12) * compliance).toBeCloseTo(1, 6);
  }
});
