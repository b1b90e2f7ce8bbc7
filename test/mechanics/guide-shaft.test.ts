import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bendShaft, roundBendingStress, roundSecondMoment, roundShearFlexibility, supportedRailGive, type GuideShaft } from '../../server/src/mechanics/guide-shaft.ts';
import { carriageBetweenBounds, carriageOnShaft, carriageOverTravel } from '../../server/src/mechanics/guide-shaft-travel.ts';

const near = (value: number, expected: number, tolerance = 1e-9): void => {
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected) + 1e-15);
};

// Young and Budynas, Roark's Formulas, table 8.1 (from memory), as in the reference dossier, section 1.1.
describe('closed forms of one load', () => {
  const cases = fc.record({ L: fc.double({ min: 0.1, max: 3, noNaN: true }), share: fc.double({ min: 0.02, max: 0.98, noNaN: true }), P: fc.double({ min: 1, max: 1e4, noNaN: true }), EI: fc.double({ min: 1, max: 1e6, noNaN: true }) });
  test('supported ends: P a² b²/(3 E I L), slope P a b (b - a)/(3 E I L), ends P a b (L + b)/(6 E I L)', () => {
    fc.assert(fc.property(cases, ({ L, share, P, EI }) => {
      const [a, b] = [share * L, L - share * L];
      const bent = bendShaft({ left: 'supported', right: 'supported', length: L, bendingStiffness: EI }, [{ at: a, force: P }]);
      near(bent.at(a).deflection, (P * a * a * b * b) / (3 * EI * L));
      near(bent.at(0).slope, (P * a * b * (L + b)) / (6 * EI * L));
      near(bent.at(L).slope, -(P * a * b * (L + a)) / (6 * EI * L));
      expect(Math.abs(bent.at(a).slope - (P * a * b * (b - a)) / (3 * EI * L))).toBeLessThan((1e-9 * P * L * L) / EI);
      near(bent.at(a).moment, (P * a * b) / L);
      near(bent.reactions[0] as number, (P * b) / L);
      near(bent.reactions[1] as number, (P * a) / L);
    }));
  });
  test('clamped ends: P a³ b³/(3 E I L³), slope P a² b² (b - a)/(2 E I L³), moment at the left end P a b²/L²', () => {
    fc.assert(fc.property(cases, ({ L, share, P, EI }) => {
      const [a, b] = [share * L, L - share * L];
      const bent = bendShaft({ left: 'fixed', right: 'fixed', length: L, bendingStiffness: EI }, [{ at: a, force: P }]);
      near(bent.at(a).deflection, (P * a ** 3 * b ** 3) / (3 * EI * L ** 3), 1e-7);
      expect(Math.abs(bent.at(a).slope - (P * a * a * b * b * (b - a)) / (2 * EI * L ** 3))).toBeLessThan((1e-9 * P * L * L) / EI);
      near(bent.at(0).moment, (-P * a * b * b) / L ** 2, 1e-8);
    }));
  });
  test('clamped and supported: P a³ b² (4 L - a)/(12 E I L³), middle 7 P L³/(768 E I); turned round the same', () => {
    fc.assert(fc.property(cases, ({ L, share, P, EI }) => {
      const [a, b] = [share * L, L - share * L];
      const expected = (P * a ** 3 * b * b * (4 * L - a)) / (12 * EI * L ** 3);
      near(bendShaft({ left: 'fixed', right: 'supported', length: L, bendingStiffness: EI }, [{ at: a, force: P }]).at(a).deflection, expected, 1e-7);
      near(bendShaft({ left: 'supported', right: 'fixed', length: L, bendingStiffness: EI }, [{ at: b, force: P }]).at(b).deflection, expected, 1e-7);
    }));
    near(bendShaft({ left: 'fixed', right: 'supported', length: 2, bendingStiffness: 3 }, [{ at: 1, force: 5 }]).at(1).deflection, (7 * 5 * 8) / (768 * 3));
  });
  test('cantilever: P a³/(3 E I) at the load, P a² (3 L - a)/(6 E I) at the tip', () => {
    const bent = bendShaft({ left: 'free', right: 'fixed', length: 2, bendingStiffness: 3 }, [{ at: 0.5, force: 5 }]);
    near(bent.at(0.5).deflection, (5 * 1.5 ** 3) / 9);
    near(bent.at(0).deflection, (5 * 1.5 ** 2 * (6 - 1.5)) / 18);
    expect(bent.reactions[0]).toBeCloseTo(0, 12);
    near(bent.reactions[1] as number, 5);
  });
  test('own weight: 5 w L⁴/(384 E I) and w L⁴/(384 E I)', () => {
    const over = (end: 'supported' | 'fixed') => bendShaft({ left: end, right: end, length: 2, bendingStiffness: 3, loadPerLength: 7 }, []).at(1).deflection;
    near(over('supported'), (5 * 7 * 16) / (384 * 3));
    near(over('fixed'), (7 * 16) / (384 * 3));
  });
});

describe('two bearings', () => {
  // Reference dossier, section 1.1: each carries W, a from both ends.
  const [L, EI, a, W] = [0.8, 200, 0.3, 40];
  const carriage = { force: 2 * W, bearingDistance: L - 2 * a };
  test('supported: W a² (3 L - 4 a)/(6 E I) at the bearings, slope W a (L - 2 a)/(2 E I) there', () => {
    const state = carriageOnShaft({ left: 'supported', right: 'supported', length: L, bendingStiffness: EI }, carriage, L / 2);
    near(state.sag, (W * a * a * (3 * L - 4 * a)) / (6 * EI));
    expect(state.tilt).toBeCloseTo(0, 12);
    near(state.bearingAngle, (W * a * (L - 2 * a)) / (2 * EI));
    near(state.greatestMoment, W * a);
  });
  test('clamped: W a³ (2 L - 3 a)/(6 E I L), slope W a² (L - 2 a)/(2 E I L)', () => {
    const state = carriageOnShaft({ left: 'fixed', right: 'fixed', length: L, bendingStiffness: EI }, carriage, L / 2);
    near(state.sag, (W * a ** 3 * (2 * L - 3 * a)) / (6 * EI * L));
    near(state.bearingAngle, (W * a * a * (L - 2 * a)) / (2 * EI * L));
  });
  test('a moment presses the right bearing and frees the left one', () => {
    // 40 N and 10 N·m on bearings 0.2 m apart: 20 - 50 and 20 + 50 N, by hand.
    const shaft = { left: 'supported', right: 'supported', length: L, bendingStiffness: EI } as const;
    const state = carriageOnShaft(shaft, { force: 40, moment: 10, bearingDistance: 0.2 }, 0.4);
    const bent = bendShaft(shaft, [{ at: 0.3, force: -30 }, { at: 0.5, force: 70 }]);
    near(state.sag, (bent.at(0.3).deflection + bent.at(0.5).deflection) / 2);
    expect(state.tilt).toBeGreaterThan(0);
    expect(() => carriageOnShaft(shaft, { force: 40, moment: 10 }, 0.4)).toThrow(RangeError);
  });
});

describe('over the travel', () => {
  test('clamped ends lie below supported ones; in the middle four times', () => {
    const { supported, clamped } = carriageBetweenBounds({ length: 1, bendingStiffness: 100 }, { force: 10 }, 0.2, 0.8);
    near(supported.lowest.sag / clamped.lowest.sag, 4, 1e-6);
    expect(clamped.variation).toBeLessThan(supported.variation);
  });
  test('greatest moment of a load and own weight together: P L/4 + w L²/8 in the middle', () => {
    const { mostBent } = carriageOverTravel({ left: 'supported', right: 'supported', length: 1, bendingStiffness: 100, loadPerLength: 20 }, { force: 10 }, 0.1, 0.9);
    near(mostBent.greatestMoment, 10 / 4 + 20 / 8, 1e-9);
    expect(mostBent.position).toBeCloseTo(0.5, 3);
  });
  test('a load near the end: the weight alone bends the middle most', () => {
    // Beyond the load of 1 N at 0.01 m: M = 10 x - 10 x² + 0.01 (1 - x), greatest where 10 - 20 x - 0.01 = 0.
    const state = carriageOnShaft({ left: 'supported', right: 'supported', length: 1, bendingStiffness: 100, loadPerLength: 20 }, { force: 1 }, 0.01);
    const x = (10 - 0.01) / 20;
    near(state.greatestMoment, 10 * x - 10 * x * x + 0.01 * (1 - x), 1e-9);
  });
  test('a single place is a travel of nothing', () => {
    const over = carriageOverTravel({ left: 'supported', right: 'supported', length: 1, bendingStiffness: 100 }, { force: 10 }, 0.5, 0.5);
    expect(over.variation).toBe(0);
    near(over.lowest.sag, 10 / 4800);
    expect(() => carriageOverTravel({ left: 'supported', right: 'supported', length: 1, bendingStiffness: 100 }, { force: 10 }, 0.5, 0.4)).toThrow(RangeError);
  });
  test('firmer ends never sag more under the load (property; the compliance falls as springs are added)', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), fc.double({ min: 0, max: 1e4, noNaN: true }), fc.double({ min: 0.05, max: 0.95, noNaN: true }), (k, more, at) => {
      const sag = (tiltStiffness: number): number => bendShaft({ left: { tiltStiffness }, right: 'supported', length: 1, bendingStiffness: 100 }, [{ at, force: 10 }]).at(at).deflection;
      expect(sag(k + more)).toBeLessThanOrEqual(sag(k) * (1 + 1e-9));
    }));
  });
});

describe('middle supports', () => {
  test('three supports, even load: 3/8, 10/8, 3/8 of w L each span (any book on continuous beams)', () => {
    const bent = bendShaft({ left: 'supported', right: 'supported', length: 2, bendingStiffness: 5, loadPerLength: 8, middleSupports: [{ at: 1 }] }, []);
    near(bent.reactions[0] as number, 3);
    near(bent.reactions[1] as number, 10);
    near(bent.reactions[2] as number, 3);
    expect(bent.at(1).deflection).toBeCloseTo(0, 12);
    near(bent.at(1).moment, -1);
  });
  test('a very soft middle support does nothing', () => {
    const shaft = { left: 'supported', right: 'supported', length: 1, bendingStiffness: 100 } as const;
    near(bendShaft({ ...shaft, middleSupports: [{ at: 0.4, stiffness: 1e-9 }] }, [{ at: 0.5, force: 10 }]).at(0.5).deflection, 10 / 4800, 1e-6);
  });
});

test('reactions and loads balance, wherever they are (property)', () => {
  const place = fc.double({ min: 0, max: 1, noNaN: true });
  const ends = fc.constantFrom(['supported', 'supported'], ['fixed', 'supported'], ['fixed', 'fixed'], ['fixed', 'free'], ['free', 'fixed']) as fc.Arbitrary<readonly [GuideShaft['left'], GuideShaft['right']]>;
  fc.assert(fc.property(ends, fc.array(fc.record({ at: place, force: fc.double({ min: -100, max: 100, noNaN: true }) }), { maxLength: 4 }), fc.double({ min: -50, max: 50, noNaN: true }), ([left, right], loads, q) => {
    const bent = bendShaft({ left, right, length: 1, bendingStiffness: 10, loadPerLength: q }, loads);
    const sum = bent.reactions.reduce((total, r) => total + r, 0);
    expect(sum).toBeCloseTo(loads.reduce((total, { force }) => total + force, q), 8);
  }));
});

test('section: I of 12 mm is pi·12⁴/64 = 1017.9 mm⁴; a tube less its bore; stress 32 M/(pi d³)', () => {
  near(roundSecondMoment(12e-3), (Math.PI * 12 ** 4 * 1e-12) / 64);
  near(roundSecondMoment(12e-3, 6e-3), (Math.PI * (12 ** 4 - 6 ** 4) * 1e-12) / 64);
  near(roundBendingStress(-5, 12e-3), (32 * 5) / (Math.PI * 12e-3 ** 3));
  // kappa at nu = 0.3: 6·1.69/(7 + 3.6 + 0.36) = 0.92518; G = E/2.6; A = 78.54 mm².
  near(roundShearFlexibility(10e-3, 206e9), 2.6 / (0.925182 * 206e9 * 78.5398e-6), 1e-5);
});

test('what a caller cannot mean throws', () => {
  const shaft: GuideShaft = { left: 'supported', right: 'supported', length: 1, bendingStiffness: 1 };
  expect(() => bendShaft({ ...shaft, left: 'free' }, [])).toThrow(RangeError);
  expect(() => bendShaft({ ...shaft, left: { tiltStiffness: -1 } }, [])).toThrow(RangeError);
  expect(() => bendShaft(shaft, [{ at: 1.1, force: 1 }])).toThrow(RangeError);
  expect(() => bendShaft({ ...shaft, middleSupports: [{ at: 1 }] }, [])).toThrow(RangeError);
  expect(() => bendShaft({ ...shaft, middleSupports: [{ at: 0.5, stiffness: 0 }] }, [])).toThrow(RangeError);
  expect(() => bendShaft(shaft, []).at(2)).toThrow(RangeError);
  expect(() => roundSecondMoment(1, 1)).toThrow(RangeError);
  expect(() => roundShearFlexibility(1, 1, 0.6)).toThrow(RangeError);
  expect(() => supportedRailGive(1, 0, 1)).toThrow(RangeError);
});
