import { describe, expect, test } from 'vitest';
import { FRAME_JOINTS, frameJoint } from '../../server/src/catalogue/frame-joints.ts';
import { GUIDE_STIFFNESSES, guideStiffness } from '../../server/src/catalogue/guide-stiffness.ts';
import { PANEL_MATERIALS, panelMaterial } from '../../server/src/catalogue/panel-materials.ts';
import { SLOTTED_PROFILES, slottedProfile } from '../../server/src/catalogue/slotted-profiles.ts';
import { solidRectangle } from '../../server/src/mechanics/frame-sections.ts';

test('ranges rise, name their source; names are unique', () => {
  const ranges = [
    ...SLOTTED_PROFILES.flatMap((row) => [row.massPerLength, row.secondUpright, row.secondSideways, row.torsion]),
    ...FRAME_JOINTS.map((row) => row.stiffness), ...PANEL_MATERIALS.map((row) => row.shearModulus), ...GUIDE_STIFFNESSES.map((row) => row.stiffness),
  ];
  for (const range of ranges) {
    expect(range.low).toBeLessThanOrEqual(range.nominal);
    expect(range.nominal).toBeLessThan(range.high);
    expect(range.source).not.toBe('');
  }
  for (const rows of [SLOTTED_PROFILES, FRAME_JOINTS, PANEL_MATERIALS, GUIDE_STIFFNESSES]) expect(new Set(rows.map((row) => row.name)).size).toBe(rows.length);
});

describe.each(SLOTTED_PROFILES)('$name', (row) => {
  test('lighter and softer than a solid bar of its outline, heavier and stiffer than nothing', () => {
    const solid = solidRectangle(row.width, row.height);
    const share = row.massPerLength.nominal / (2700 * solid.area);
    // Slots and bores take away about half (common practice); the second moments shrink less, since what remains lies outside.
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThan(0.62);
    for (const [own, bar] of [[row.secondUpright, solid.secondUpright], [row.secondSideways, solid.secondSideways]] as const) {
      expect(own.high).toBeLessThan(0.85 * bar);
      expect(own.low).toBeGreaterThan(0.3 * bar);
    }
    expect(row.torsion.high).toBeLessThan(solid.torsion);
  });
});

test('units: a 40 x 40 heavy profile has 13 to 14 cm⁴; the trade handbook’s 13.9 cm⁴ lies within', () => {
  const profile = slottedProfile('40x40-heavy')!;
  expect(profile.secondUpright.low).toBeCloseTo(13e-8, 15);
  expect(profile.secondUpright.low).toBeLessThan(13.9e-8);
  expect(profile.secondUpright.high).toBeGreaterThan(13.9e-8);
  expect(profile.width).toBe(0.04);
});

test('stiffness rises from a pin over a bracket to a weld (common practice, no published source)', () => {
  const nominal = (name: string): number => frameJoint(name)!.stiffness.nominal;
  expect(nominal('pinned')).toBe(0);
  expect(nominal('corner-bracket')).toBeLessThan(nominal('corner-bracket-both-sides'));
  expect(nominal('corner-bracket-both-sides')).toBeLessThan(nominal('welded'));
  expect(guideStiffness('carriage')!.stiffness.low).toBe(80e6);
  expect(panelMaterial('aluminium')!.shearModulus.low).toBe(25.5e9);
  expect(panelMaterial('paper')).toBeUndefined();
});
