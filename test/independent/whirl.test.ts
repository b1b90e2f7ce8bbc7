/** Whirl by the exact determinant against our own beam finite elements, over many arrangements. */
import { describe, expect, test } from 'vitest';
import { bucklingLoadWithNut } from '../../server/src/mechanics/column-buckling.ts';
import { firstVibrationRoot, type EndPair, type ShaftEnd } from '../../server/src/mechanics/shaft-ends.ts';
import { axialLoadFactor, slenderExcess, whirlOverTravel, whirlSpeed, whirlWithNut, type NutHold } from '../../server/src/mechanics/whirl.ts';
import { beamFrequency, type BeamModel } from './beam-elements.ts';

// An 8 mm screw 0.6 m long: numbers of that order keep the elements well conditioned.
const length = 0.6;
const bending = 9.3;
const mass = 0.3;

type Support = BeamModel['supports'][number];
const endAt = (end: ShaftEnd, at: number): Support => ({ at, lateral: end === 'free' ? 0 : Infinity, tilt: end === 'fixed' ? Infinity : 0 });
const nutAt = (nut: NutHold, at: number): Support => ({ at, lateral: nut === 'none' ? 0 : Infinity, tilt: nut === 'against tilt' ? Infinity : 0 });
const model = (supports: readonly Support[], more: Partial<BeamModel> = {}): BeamModel => ({
  length, elements: 24, bendingStiffness: () => bending, massPerLength: mass, supports, ...more,
});
const screw = { length, bendingStiffness: bending, massPerLength: mass };
const frequency = (result: { readonly kind: string; readonly angularFrequency?: number }): number => {
  if (result.angularFrequency === undefined) throw new Error(`no frequency but ${result.kind}`);
  return result.angularFrequency;
};

const ENDS: readonly (readonly [ShaftEnd, ShaftEnd])[] = [
  ['fixed', 'free'], ['supported', 'supported'], ['fixed', 'supported'], ['supported', 'fixed'], ['fixed', 'fixed'],
];

describe.each(ENDS)('%s-%s', (left, right) => {
  const ends = [endAt(left, 0), endAt(right, length)];

  test('without a nut: within 1e-5', () => {
    const exact = frequency(whirlWithNut({ ...screw, left, right }, 'none', length / 2));
    expect(Math.abs(exact / beamFrequency(model(ends)) - 1)).toBeLessThan(1e-5);
  });

  test.each([0.03, 0.1, 0.2, 0.3, 0.5, 0.65, 0.8, 0.9, 0.98])('nut at %f of the length, knife edge and against tilt: within 5e-4', (share) => {
    for (const nut of ['knife edge', 'against tilt'] as const) {
      const exact = frequency(whirlWithNut({ ...screw, left, right }, nut, share * length));
      const elements = beamFrequency(model([...ends, nutAt(nut, share * length)]));
      expect(Math.abs(exact / elements - 1)).toBeLessThan(5e-4);
    }
  });

  test.each([-0.9, -0.5, -0.1, 0.3, 2])('axial force of %f buckling loads between the left end and the nut: within 5e-4', (loads) => {
    const position = 0.7 * length;
    const critical = bucklingLoadWithNut(left, right, length, position, bending, 'knife edge');
    const tension = loads * critical;
    const exact = frequency(whirlWithNut({ ...screw, left, right, tensionLeftOfNut: tension }, 'knife edge', position));
    const elements = beamFrequency(model([...ends, nutAt('knife edge', position)], { axialForce: (x) => (x < position ? tension : 0) }));
    expect(Math.abs(exact / elements - 1)).toBeLessThan(5e-4);
  });

  test.each([0.5, 2, 5, 20, 100])('left block with a tilt stiffness of %f E I/L: within 1e-4', (q) => {
    if (left !== 'supported' && right !== 'supported') return;
    const tilt = (q * bending) / length;
    const exact = frequency(whirlWithNut({ ...screw, left: { lateral: 'held', tiltStiffness: tilt }, right: right === 'free' ? 'supported' : right }, 'none', length / 2));
    const elements = beamFrequency(model([{ at: 0, lateral: Infinity, tilt }, endAt(right === 'free' ? 'supported' : right, length)]));
    expect(Math.abs(exact / elements - 1)).toBeLessThan(1e-4);
  });

  test('the frequency over the travel is lowest at an end of the travel', () => {
    for (const [from, to] of [[0.05, 0.6], [0.2, 0.95], [0.3, 0.7], [0.02, 0.98]] as const) {
      const worst = frequency(whirlOverTravel({ ...screw, left, right }, 'knife edge', from * length, to * length).result);
      const lowest = Math.min(...Array.from({ length: 25 }, (_, i) =>
        beamFrequency(model([...ends, nutAt('knife edge', (from + ((to - from) * i) / 24) * length)]))));
      expect(Math.abs(worst / lowest - 1)).toBeLessThan(5e-4);
    }
  });
});

describe('shear and rotary inertia', () => {
  // Forward whirl: rotary inertia counts negative; kappa of a round section with nu 0.3: 6·1.69/(7 + 3.6 + 0.36) = 0.9252.
  test.each<[EndPair, ShaftEnd, ShaftEnd]>([
    ['fixed-fixed', 'fixed', 'fixed'], ['fixed-supported', 'fixed', 'supported'], ['supported-supported', 'supported', 'supported'], ['fixed-free', 'fixed', 'free'],
  ])('%s: excess of the slender formula within 2e-4 of shear-flexible elements', (pair, left, right) => {
    for (const slenderness of [8, 12, 20, 40]) {
      for (const motion of ['whirl', 'vibration'] as const) {
        const d = 1;
        const E = 1;
        const area = (Math.PI * d * d) / 4;
        const second = (Math.PI * d ** 4) / 64;
        const elements = beamFrequency({
          length: slenderness * d, elements: 120, bendingStiffness: () => E * second, massPerLength: area,
          shearStiffness: (0.92518 * E * area) / 2.6, rotaryInertia: motion === 'whirl' ? -second : second,
          supports: [endAt(left, 0), endAt(right, slenderness * d)],
        });
        const slender = whirlSpeed(pair, slenderness * d, E * second, area);
        expect(Math.abs((slenderExcess(pair, slenderness, 0.3, motion) as number) - (slender / elements - 1))).toBeLessThan(2e-4);
      }
    }
  });
});

describe('simple forms', () => {
  test.each(ENDS)('%s-%s: sqrt(1 - F/Fcr) within 3.5 % of the elements from F = -Fcr to 0.75 Fcr', (left, right) => {
    const critical = bucklingLoadWithNut(left, right, length, length, bending, 'not guided');
    const bare = beamFrequency(model([endAt(left, 0), endAt(right, length)]));
    for (const share of [-1, -0.5, 0.25, 0.5, 0.75]) {
      const loaded = beamFrequency(model([endAt(left, 0), endAt(right, length)], { axialForce: () => -share * critical }));
      expect(Math.abs((axialLoadFactor(share * critical, critical) as number) / (loaded / bare) - 1)).toBeLessThan(0.035);
    }
  });

  // Factors of the nut position that our references give from a finite-element model of their authors (two independent ones agree).
  test.each([
    ['supported', 'supported', 0.1, 1.81], ['supported', 'supported', 0.2, 2.16], ['supported', 'supported', 0.3, 2.67], ['supported', 'supported', 0.5, 4],
    ['fixed', 'supported', 0.1, 1.18], ['fixed', 'supported', 0.2, 1.42], ['fixed', 'supported', 0.5, 2.99], ['fixed', 'supported', 0.9, 1.68],
    ['fixed', 'fixed', 0.1, 1.18], ['fixed', 'fixed', 0.5, 2.76], ['fixed', 'free', 0.1, 1.17], ['fixed', 'free', 0.3, 1.7], ['fixed', 'free', 0.5, 2.81],
  ] as const)('%s-%s, nut at %f: %f times', (left, right, share, factor) => {
    const pair = (right === 'free' ? 'fixed-free' : left === right ? `${left}-${right}` : 'fixed-supported') as EndPair;
    const bare = (firstVibrationRoot(pair) / length) ** 2 * Math.sqrt(bending / mass);
    const exact = frequency(whirlWithNut({ ...screw, left, right }, 'knife edge', share * length)) / bare;
    expect(Math.abs(exact - factor)).toBeLessThan(0.011);
  });
});

describe('stepped shaft', () => {
  // Ugural, Mechanical Design of Machine Components, example 9.6: ends I, middle half 2 I, load in the middle: 3 W L³/(256 E I).
  test('Ugural, example 9.6: deflection 3 W L³/(256 E I) by the elements', async () => {
    const { beamCompliance } = await import('./beam-elements.ts');
    const compliance = beamCompliance({
      length: 1, elements: 16, massPerLength: 1, bendingStiffness: (x) => 200e9 * (x > 0.25 && x < 0.75 ? 6e-7 : 3e-7),
      supports: [endAt('supported', 0), endAt('supported', 1)],
    }, 0.5);
    expect(compliance / (3 / (256 * 200e9 * 3e-7))).toBeCloseTo(1, 6);
  });
});
