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
  it('of one that fights tells with whom', () => {
    expect(hover(bed({ 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } }), 'right shaft:')).toContain('Redundant: left rail and right shaft both fix shift along Y');
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
  it('escapes names', () => {
    const plan = planOf(evaluate('bed'));
    expect(planSvg({ ...(plan ?? { centre: undefined, polygon: [], alt: '' }), supports: [{ name: '<b>&', x: 0, y: 0, reaction: undefined, carries: false, holds: [] }] })).not.toContain('<b>');
  });
});
