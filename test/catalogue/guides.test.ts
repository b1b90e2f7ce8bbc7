import { describe, expect, test } from 'vitest';
import { BALL_BUSHING_RATINGS, BALL_BUSHING_SIZES, bushingRating, bushingsFor } from '../../server/src/catalogue/ball-bushings.ts';
import { GUIDE_KINDS, GUIDE_WHEELS, guideKind, guideWheel } from '../../server/src/catalogue/guide-kinds.ts';
import { GUIDE_SHAFT_MATERIALS, GUIDE_SHAFT_SIZES, GUIDE_SHAFT_SOURCES, guideShaftMaterial, nextThickerShaft } from '../../server/src/catalogue/guide-shafts.ts';
import { type HandbookRange } from '../../server/src/catalogue/nut-materials.ts';
import { nextLargerRail, profileRail, PROFILE_RAILS, RAIL_MOUNTING_SOURCE } from '../../server/src/catalogue/profile-rails.ts';

const rises = (range: HandbookRange): void => {
  expect(range.low).toBeGreaterThanOrEqual(0);
  expect(range.low).toBeLessThanOrEqual(range.nominal);
  expect(range.nominal).toBeLessThanOrEqual(range.high);
  expect(range.source).not.toBe('');
  expect(range.weak).toBe(true);
};

test('all ranges rise, name a source and are marked weak', () => {
  for (const row of GUIDE_SHAFT_MATERIALS) [row.modulus, row.density, row.yieldStress].forEach(rises);
  for (const row of BALL_BUSHING_RATINGS) [row.dynamicRating, row.staticRating].forEach(rises);
  for (const row of PROFILE_RAILS) [row.carriageLength, row.dynamicRating, row.staticRating, row.rollMoment, row.pitchMoment, row.yawMoment, row.stiffness].forEach(rises);
  for (const row of GUIDE_KINDS) [row.friction, row.sealDrag, row.misalignment].forEach(rises);
  for (const row of GUIDE_WHEELS) [row.diameter, row.load, row.stiffness].forEach(rises);
  for (const row of BALL_BUSHING_SIZES) expect([row.source === '', row.weak]).toEqual([false, true]);
  expect([GUIDE_SHAFT_SOURCES.diameters, GUIDE_SHAFT_SOURCES.tolerance, RAIL_MOUNTING_SOURCE]).not.toContain('');
});

describe('shafts', () => {
  // ISO 286-2, h6 (from memory): -8 µm above 3 to 6 mm, -9 to 10, -11 to 18, -13 to 30, -16 to 50; -6 up to 3.
  test.each([[3, 6], [6, 8], [8, 9], [10, 9], [12, 11], [16, 11], [20, 13], [25, 13], [40, 16]])('%i mm: h6 is -%i µm', (diameter, below) => {
    const size = GUIDE_SHAFT_SIZES.find((row) => Math.abs(row.diameter - diameter * 1e-3) < 1e-9);
    expect((size?.belowNominal ?? NaN) * 1e6).toBeCloseTo(below, 6);
  });
  test('sizes rise; beyond 12 mm comes 14 mm, beyond the last none', () => {
    GUIDE_SHAFT_SIZES.forEach((row, i) => expect(row.diameter).toBeGreaterThan(i === 0 ? 0 : (GUIDE_SHAFT_SIZES[i - 1]?.diameter ?? NaN)));
    expect(nextThickerShaft(12e-3)?.diameter).toBeCloseTo(14e-3, 12);
    expect(nextThickerShaft(1)).toBeUndefined();
    expect(guideShaftMaterial('bearing-steel')?.modulus.nominal).toBe(206e9);
    expect(guideShaftMaterial('wood')).toBeUndefined();
  });
});

describe('ball bushings', () => {
  test('each leaves a wall for its balls, and every one has a rating or is a size between', () => {
    for (const row of BALL_BUSHING_SIZES) {
      expect(row.outside).toBeGreaterThan(row.shaft * 1.2);
      expect(row.length).toBeGreaterThan(row.shaft);
    }
    for (const shaft of [8, 10, 12, 16, 20]) {
      expect(bushingsFor(shaft * 1e-3).length).toBeGreaterThan(0);
      expect(bushingRating(shaft * 1e-3)).toBeDefined();
    }
    expect(bushingsFor(9e-3)).toEqual([]);
    expect(bushingRating(9e-3)).toBeUndefined();
  });
  test('860 N at 20 mm (one page read in the reference dossier) lies in the range; ratings rise with the shaft', () => {
    const at20 = bushingRating(20e-3)?.dynamicRating;
    expect(at20?.low).toBeLessThanOrEqual(860);
    expect(at20?.high).toBeGreaterThanOrEqual(860);
    BALL_BUSHING_RATINGS.slice(1).forEach((row, i) => expect(row.dynamicRating.nominal).toBeGreaterThan(BALL_BUSHING_RATINGS[i]?.dynamicRating.nominal ?? NaN));
  });
});

describe('profile rails', () => {
  test('sizes of the reference dossier, in SI', () => {
    expect(profileRail('miniature', 9)?.dynamicRating).toMatchObject({ low: 1300, high: 2600 });
    expect(profileRail('standard', 15)?.dynamicRating).toMatchObject({ low: 8000, high: 14000 });
    expect(profileRail('standard', 20)?.stiffness.low).toBe(120e6);
    expect(profileRail('standard', 20)?.ratedTravel).toBe(100e3);
    expect(profileRail('standard', 15)?.parallelism?.plain).toBeCloseTo(20e-6, 12);
    expect(profileRail('miniature', 15)?.parallelism).toBeUndefined();
    expect(profileRail('miniature', 11)).toBeUndefined();
  });
  test('the next larger of a form', () => {
    expect(nextLargerRail('miniature', 9)?.size).toBe(12);
    expect(nextLargerRail('standard', 25)).toBeUndefined();
  });
  test('a static moment is that of C0 on a lever within the carriage', () => {
    // A moment M0 presses the elements as C0 does: M0/C0 is a lever shorter than half the carriage (pitch) or than the rail is wide (roll).
    for (const row of PROFILE_RAILS) {
      expect(row.pitchMoment.nominal / row.staticRating.nominal).toBeLessThan(row.carriageLength.high / 2);
      expect(row.rollMoment.nominal / row.staticRating.nominal).toBeLessThan(row.railWidth);
    }
  });
});

test('what rolls rubs less than what slides, and the trade\'s "2 to 1" (friction 0.25) is the worst polymer bushing', () => {
  const rolling = GUIDE_KINDS.filter((row) => row.rolls).map((row) => row.friction.high);
  const sliding = GUIDE_KINDS.filter((row) => !row.rolls).map((row) => row.friction.low);
  expect(Math.max(...rolling)).toBeLessThanOrEqual(Math.min(...sliding));
  expect(guideKind('polymer-bushing')?.friction.high).toBe(0.25);
  expect(guideKind('air')).toBeUndefined();
  expect(guideKind('self-aligning-ball-bushing')?.misalignment.nominal).toBeCloseTo((0.5 * Math.PI) / 180, 12);
  expect(guideWheel('polymer-vee')?.stiffness.nominal).toBe(0.5e6);
  expect(guideWheel('square')).toBeUndefined();
});
