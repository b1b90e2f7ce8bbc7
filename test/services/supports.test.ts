import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../server/src/services/hover.ts';
import { inlayHints } from '../../server/src/services/inlay-hints.ts';
import { planDataUri, planOf, planSvg } from '../../server/src/services/plan-drawing.ts';
import { example, inside, snapshotOf } from '../support/cursor.ts';
import { evaluate } from '../support/evaluate.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const bed = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('bed', changes));
const hover = (text: string, needle: string): string => (hoverAt(snapshotOf(text), inside(text, needle))?.markdown ?? '').replace(/ /g, ' ');

describe('the hover of supports', () => {
  it('shows the figures and a plan', () => {
    const shown = hover(example('hot-bed/exact.machine.yaml'), 'supports:');
    expect(shown).toContain('exactly constrained');
    expect(shown).toContain('](data:image/svg+xml;base64,');
  });
  // 6 kg · 9.80665 m/s² / 3 = 19.6 N.
  it('of one nut tells what it holds and carries', () => {
    const shown = hover(bed(), 'screw 1:');
    expect(shown).toContain('holds shift along Z while the drive holds');
    expect(shown).toContain('Carries 19.6 N at rest, 33 % of the weight');
  });
  // Third nut, share y/300 mm: 6 kg at y = 60 to 140 mm, lifted and lowered with 2 m/s²: 1.2 · (9.807 − 2) = 9.37 N, 2.8 · 11.807 = 33.1 N.
  it('of one nut tells what it carries in use', () => {
    const shown = hover(bed({ 'mass.area': ['10 mm', '80 mm'], 'motion.acceleration': '2 m/s²' }), 'screw 3:');
    expect(shown).toContain('In use at least 9.37 N with plate at 145, 60 mm, accelerating downwards; at most 33.1 N with plate at 145, 140 mm, accelerating upwards.');
  });
  it('of one that fights tells with whom', () => {
    expect(hover(bed({ 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } }), 'right shaft:')).toContain('Redundant: left rail and right shaft both fix shift along Y');
  });
  // Four bolted nuts: each holds X, Y, Z and the tilts about X and Y.
  it('of one that fights with several tells it in few lines', () => {
    const text = example('four-nuts/as-built.machine.yaml');
    const told = hover(text, 'screw 2:').split('\n').filter((line) => line.startsWith('Redundant'));
    expect(told[0]).toContain('Redundant: screw 1, screw 2, screw 3 and screw 4 all fix');
    expect(told.length).toBeLessThanOrEqual(4);
    expect(hover(text, 'screw 2:')).not.toContain('more.');
  });
  it('of one that is half written says what the word means', () => {
    expect(hover(bed({ 'supports.screw 1': { joint: 'nut-decoupled' } }), 'screw 1:')).toContain('Support');
  });
});

describe('the hint of supports', () => {
  it('says that it is exactly constrained, or how often not', () => {
    expect(inlayHints(snapshotOf(bed())).map(({ text }) => text)).toContain('exactly constrained');
    expect(inlayHints(snapshotOf(example('hot-bed/jams-when-hot.machine.yaml'))).map(({ text }) => text).some((text) => text.includes('19 redundant'))).toBe(true);
  });
});

describe('the plan', () => {
  it('has every support, its reaction, the centre of gravity and the polygon', () => {
    const plan = planOf(evaluate('bed'));
    if (!plan) throw new Error('no plan');
    expect(plan.polygon).toHaveLength(3);
    expect(plan.centre?.x).toBeCloseTo(0.15, 9);
    expect(plan.centre?.y).toBeCloseTo(0.1, 9);
    const svg = planSvg(plan);
    for (const text of ['left rail', 'right shaft', 'screw 1 19.6 N', 'centre of gravity', 'role="img"']) expect(svg).toContain(text);
    expect(planDataUri(plan)?.length ?? Infinity).toBeLessThan(9000);
  });
  it('has no polygon and no centre where masses have no place', () => {
    const plan = planOf(evaluate('bed', { 'mass.at': null }));
    expect(plan?.polygon).toEqual([]);
    expect(plan?.centre).toBeUndefined();
  });
  // As above at 0.2 m/s²: 1.2 · 9.607 = 11.5 N to 2.8 · 10.007 = 28.0 N.
  it('shows the area over which a mass may be, and what that makes of the reactions', () => {
    const plan = planOf(evaluate('bed', { 'mass.area': ['10 mm', '80 mm'] }));
    if (!plan) throw new Error('no plan');
    expect(plan.areas).toEqual([{ x: expect.closeTo(0.15, 9) as number, y: expect.closeTo(0.1, 9) as number, width: expect.closeTo(0.01, 9) as number, depth: expect.closeTo(0.08, 9) as number }]);
    expect(plan.alt.replace(/\s/g, ' ')).toContain('screw 3: 12 to 28 N');
    expect(planSvg(plan)).toContain('where a mass may be');
    expect(planDataUri(plan)?.length ?? Infinity).toBeLessThan(9000);
    expect(planSvg(planOf(evaluate('bed')) ?? plan)).not.toContain('where a mass may be');
  });
  it('escapes names', () => {
    const plan = planOf(evaluate('bed'));
    expect(planSvg({ ...(plan ?? { centre: undefined, areas: [], polygon: [], alt: '' }), supports: [{ name: '<b>&', x: 0, y: 0, reaction: undefined, range: undefined, carries: false, holds: [] }] })).not.toContain('<b>');
  });
});
