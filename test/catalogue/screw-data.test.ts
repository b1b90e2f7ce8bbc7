/** Every row of the ball-screw, grade, material and stiffness tables, both ends, and one beyond. */
import { describe, expect, test } from 'vitest';
import ballScrews from '../../server/src/catalogue/data/ball-screws.json';
import grades from '../../server/src/catalogue/data/lead-accuracy-grades.json';
import materials from '../../server/src/catalogue/data/materials.json';
import stiffnesses from '../../server/src/catalogue/data/support-stiffness.json';
import {
  BALL_SCREW_SIZES, ballScrewOfDiameter, ballScrewSize, isCommonBallScrew, isPreferredBallScrew, nextPreferredDiameter, nextPreferredLead, nextThickerBallScrew,
} from '../../server/src/catalogue/ball-screws.ts';
import { LEAD_ACCURACY_GRADES, leadAccuracyGrade } from '../../server/src/catalogue/lead-accuracy-grades.ts';
import { MATERIALS, material } from '../../server/src/catalogue/materials.ts';
import { nextStifferPart, PART_STIFFNESSES, partStiffness } from '../../server/src/catalogue/support-stiffness.ts';

const rising = (range: { low: number; nominal: number; high: number }): boolean => range.low > 0 && range.low <= range.nominal && range.nominal <= range.high;

describe('ball screws', () => {
  test.each(BALL_SCREW_SIZES)('$nominalDiameter x $lead', (size) => {
    expect(size.source.length).toBeGreaterThan(10);
    for (const range of [size.ballDiameter, size.rootDiameter, size.dynamicRating, size.staticRating]) expect(rising(range)).toBe(true);
    // Millimetres and kilonewtons became metres and newtons.
    expect(size.rootDiameter.high).toBeLessThan(size.nominalDiameter);
    expect(size.rootDiameter.low).toBeGreaterThan(0.7 * size.nominalDiameter);
    expect(size.ballDiameter.high).toBeLessThan(size.lead);
    expect(size.dynamicRating.low).toBeGreaterThanOrEqual(1500);
    expect(size.staticRating.low).toBeGreaterThan(size.dynamicRating.low);
    expect(ballScrewSize(size.nominalDiameter, size.lead)).toBe(size);
    expect(isPreferredBallScrew(size.nominalDiameter, size.lead)).toBe(true);
    expect(isCommonBallScrew(size.nominalDiameter, size.lead)).toBe(true);
  });
  test('ends and beyond', () => {
    expect(ballScrews.sizes.length).toBe(BALL_SCREW_SIZES.length);
    expect(nextThickerBallScrew(0.016, 0.005)).toBe(ballScrewSize(0.02, 0.005));
    expect(nextThickerBallScrew(0.012, 0.004)).toBe(ballScrewSize(0.016, 0.005));
    expect(nextThickerBallScrew(0.006, 0.002)).toBe(ballScrewSize(0.008, 0.002));
    expect(nextThickerBallScrew(0.032, 0.005)).toBeUndefined();
    expect(ballScrewSize(0.017, 0.005)).toBeUndefined();
    expect(ballScrewOfDiameter(0.016, 0.016)).toBe(ballScrewSize(0.016, 0.01));
    expect(ballScrewOfDiameter(0.017, 0.005)).toBeUndefined();
    expect(nextPreferredDiameter(0.005)).toBe(0.006);
    expect(nextPreferredDiameter(0.05)).toBe(0.063);
    expect(nextPreferredDiameter(0.063)).toBeUndefined();
    expect(nextPreferredLead(0.002)).toBe(0.0025);
    expect(nextPreferredLead(0.04)).toBeUndefined();
    expect(isCommonBallScrew(0.016, 0.007)).toBe(false);
    expect(isPreferredBallScrew(0.016, 0.007)).toBe(false);
  });
  test.each(ballScrews.common)('common $nominal_diameter_mm x $lead_mm', (row) => {
    expect(row.source.length).toBeGreaterThan(10);
    expect(row.lead_mm).toBeLessThanOrEqual(row.nominal_diameter_mm);
  });
});

describe('lead accuracy grades', () => {
  test.each(LEAD_ACCURACY_GRADES)('$grade', (grade) => {
    expect(grade.source.length).toBeGreaterThan(10);
    expect(leadAccuracyGrade(grade.grade.toUpperCase())).toBe(grade);
    if (grade.values.kind !== 'positioning') return;
    const bands = grade.values.bands;
    expect(bands[0]?.upTo).toBeCloseTo(0.315, 12);
    for (let i = 1; i < bands.length; i++) {
      const [before, after] = [bands[i - 1], bands[i]] as [(typeof bands)[number], (typeof bands)[number]];
      expect(after.upTo).toBeGreaterThan(before.upTo);
      expect(after.meanTravel).toBeGreaterThanOrEqual(before.meanTravel);
      // Far from in proportion: ten times the travel, less than five times the deviation.
      expect(after.meanTravel / after.upTo).toBeLessThan(before.meanTravel / before.upTo);
      if (after.variation !== undefined && before.variation !== undefined) expect(after.variation).toBeGreaterThanOrEqual(before.variation);
    }
  });
  test('every row is loaded; a letter of one standard with the number of the other is unknown', () => {
    expect(LEAD_ACCURACY_GRADES.length).toBe(grades.grades.length);
    expect(leadAccuracyGrade('P10')).toBeUndefined();
    expect(leadAccuracyGrade('C3')).toBeUndefined();
  });
});

describe('materials', () => {
  test.each(MATERIALS)('$name', (one) => {
    expect(one.source.length).toBeGreaterThan(10);
    expect(material(one.name)).toBe(one);
    for (const range of [one.youngsModulus, one.shearModulus, one.density, one.poissonRatio, one.yieldStrength]) expect(rising(range)).toBe(true);
    expect(one.expansion.high).toBeGreaterThan(one.expansion.low);
    expect(one.density.low).toBeGreaterThan(1000);
    expect(one.density.high).toBeLessThan(9000);
    // Isotropic materials: E = 2 G (1 + nu) within the ranges (theory of elasticity).
    if (one.name !== 'carbon-fibre') {
      const shear = one.youngsModulus.nominal / (2 * (1 + one.poissonRatio.nominal));
      expect(Math.abs(one.shearModulus.nominal / shear - 1)).toBeLessThan(0.06);
    }
  });
  test('beyond', () => {
    expect(MATERIALS.length).toBe(materials.materials.length);
    expect(material('unobtainium')).toBeUndefined();
  });
});

describe('stiffnesses', () => {
  test.each(PART_STIFFNESSES)('$part', (one) => {
    expect(one.stiffness.source.length).toBeGreaterThan(10);
    expect(one.stiffness.weak).toBe(true);
    expect(rising(one.stiffness)).toBe(true);
    expect(partStiffness(one.part)).toBe(one);
    const next = nextStifferPart(one.part);
    if (next !== undefined) {
      expect(next.kind).toBe(one.kind);
      expect(next.stiffness.low).toBeGreaterThan(one.stiffness.low);
    }
  });
  test('beyond', () => {
    expect(PART_STIFFNESSES.length).toBe(stiffnesses.parts.length);
    expect(partStiffness('felt')).toBeUndefined();
    expect(nextStifferPart('felt')).toBeUndefined();
    expect(nextStifferPart('stiff-coupling-torsion')).toBeUndefined();
  });
});
