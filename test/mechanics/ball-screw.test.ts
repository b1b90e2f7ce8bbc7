import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ballPass, ballScrewBackDrivingTorque, ballScrewDriveTorque, ballScrewEfficiency, ballScrewLeadAngle, ballsPerTurn, liftOffForce, parseBallScrewDesignation,
  preloadDragTorque, preloadedNutLoads, speedFactor,
} from '../../server/src/mechanics/ball-screw.ts';

describe('designation', () => {
  test.each([['1605', 16, 5], ['1204', 12, 4], ['802', 8, 2], ['0801', 8, 1], ['2510', 25, 10], [' 3205 ', 32, 5], ['1616', 16, 16]])('%s', (text, diameter, lead) => {
    const found = parseBallScrewDesignation(text);
    expect(found).toMatchObject({ kind: 'ball screw', doubts: [] });
    expect(found.kind === 'ball screw' && [found.nominalDiameter * 1000, found.lead * 1000].map((x) => Math.round(x * 1e9) / 1e9)).toEqual([diameter, lead]);
  });
  test('letters are skipped and told, a steep lead is doubted', () => {
    expect(parseBallScrewDesignation('AB1605')).toMatchObject({ kind: 'ball screw', doubts: ['the letters AB are not interpreted'] });
    expect(parseBallScrewDesignation('1220')).toMatchObject({ kind: 'ball screw', doubts: [expect.stringContaining('unusual')] });
  });
  test.each(['1600', '800', '0005', '16', '16055', 'Tr8x2', '', '16x5'])('%s is none', (text) => {
    expect(parseBallScrewDesignation(text).kind).toBe('not a ball screw designation');
  });
});

describe('torque and efficiency', () => {
  test('there and back loses eta times eta_r', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 1e4, noNaN: true }), fc.double({ min: 1e-3, max: 0.05, noNaN: true }), (force, lead) => {
      expect(ballScrewBackDrivingTorque(force, lead, 0.8) / ballScrewDriveTorque(force, lead, 0.9)).toBeCloseTo(0.72, 9);
      expect(ballScrewDriveTorque(2 * force, lead, 0.9) / ballScrewDriveTorque(force, lead, 0.9)).toBeCloseTo(2, 9);
    }));
  });
  // Table of our second reading of the screws (computed there from the same inclined plane): 12x4 0.97/0.97 at 0.003, 0.91/0.90 at 0.01.
  test('12 x 4', () => {
    const angle = ballScrewLeadAngle(4e-3, 12e-3);
    expect(ballScrewEfficiency(angle, 0.003).forward).toBeCloseTo(0.97, 2);
    expect(ballScrewEfficiency(angle, 0.01).forward).toBeCloseTo(0.91, 2);
    expect(ballScrewEfficiency(angle, 0.01).reverse).toBeCloseTo(0.905, 2);
    expect(ballScrewEfficiency(angle, 0).forward).toBeCloseTo(1, 12);
    expect(ballScrewEfficiency(angle, 0.2).reverse).toBe('locks');
  });
  // Hand calculation: 100 N, lead 5 mm, eta_r 0.8 … 0.9: 63.7 … 71.6 N·mm.
  test('back-driving, lead 5 mm', () => {
    expect(ballScrewBackDrivingTorque(100, 5e-3, 0.8) * 1000).toBeCloseTo(63.66, 2);
    expect(ballScrewBackDrivingTorque(100, 5e-3, 0.9) * 1000).toBeCloseTo(71.62, 2);
  });
  // Hand calculation 16 x 5, d_pw 16.5 mm: tan beta = 5/(pi 16.5) = 0.09646, k = 0.05/sqrt = 0.1610; 0.161 · 300 · 5/(2 pi) = 38.4 N·mm.
  test('preload drag', () => {
    expect(preloadDragTorque(300, 5e-3, ballScrewLeadAngle(5e-3, 16.5e-3)) * 1000).toBeCloseTo(38.43, 1);
    expect(preloadDragTorque(0, 5e-3, 0.1)).toBe(0);
  });
});

describe('preload', () => {
  test('balance, approach and limits', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 1e4, noNaN: true }), fc.double({ min: 0, max: 4, noNaN: true }), (preload, share) => {
      const force = share * preload;
      const { tight, slack } = preloadedNutLoads(force, preload);
      expect(tight - slack).toBeCloseTo(force, 6);
      if (force < liftOffForce(preload)) expect((tight ** (2 / 3) + slack ** (2 / 3)) / preload ** (2 / 3)).toBeCloseTo(2, 6);
      else expect(slack).toBe(0);
    }));
    expect(preloadedNutLoads(0, 10)).toEqual({ tight: 10, slack: 10 });
    expect(preloadedNutLoads(50, 0)).toEqual({ tight: 50, slack: 0 });
  });
  // The usual catalogue form F_p (1 + F/(2.83 F_p))^1.5 (from memory).
  test('close to the usual catalogue form', () => {
    for (const share of [0.5, 1, 1.5, 2, 2.5, 2.8]) {
      const usual = (1 + share / 2 ** 1.5) ** 1.5;
      expect(Math.abs(preloadedNutLoads(share, 1).tight / usual - 1)).toBeLessThan(0.03);
    }
  });
});

describe('balls', () => {
  // Hand calculation: Z = sqrt((pi d_pw)² + l²)/D_w; passing Z/2 (1 - D_w cos 45°/d_pw); period l over that.
  // 20.5 x 5, 3.175: 64.597/3.175 = 20.345; /2 · 0.89048 = 9.059; 0.552 mm. 12.4 x 4, 2.4: 39.161/2.4 = 16.317; /2 · 0.86314 = 7.042; 0.568 mm.
  // 25.5 x 5, 3.175: 80.266/3.175 = 25.281; /2 · 0.91196 = 11.528; 0.434 mm.
  test.each([[20.5, 5, 3.175, 9.059, 0.552], [12.4, 4, 2.4, 7.042, 0.568], [25.5, 5, 3.175, 11.528, 0.434]])('%f x %f', (circle, lead, ball, passing, period) => {
    const found = ballPass(circle / 1000, lead / 1000, ball / 1000);
    expect(found.ballsPerScrewTurn).toBeCloseTo(passing, 2);
    expect(found.period * 1000).toBeCloseTo(period, 3);
  });
  test('smaller balls, more of them', () => {
    expect(ballsPerTurn(0.016, 0.005, 0.002)).toBeGreaterThan(ballsPerTurn(0.016, 0.005, 0.003));
    expect(() => ballsPerTurn(0.001, 0.005, 0.003)).toThrow(RangeError);
  });
});

test('d n: 16 mm at 3125 rpm is 50 000 mm·rpm', () => {
  // 16 · 3125 = 50 000; 1 m·rad/s = 1000 · 60/(2 pi) mm·rpm.
  expect((speedFactor(0.016, (-3125 * 2 * Math.PI) / 60) * 1000 * 60) / (2 * Math.PI)).toBeCloseTo(50000, 6);
});
