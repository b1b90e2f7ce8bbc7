import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { completionsAt } from '../../server/src/services/completion.ts';
import { hoverAt } from '../../server/src/services/hover.ts';
import { inlayHints } from '../../server/src/services/inlay-hints.ts';
import { definitionAt, referencesAt } from '../../server/src/services/links.ts';
import { inside, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const bed = (levelling: Readonly<Record<string, unknown>>, changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('bed', { levelling: { 'moved-by': 'own-motors', ...levelling }, ...changes }));
const LIFTS = ['screw 2', 'screw 3', 'screw 1'];
const problems = (text: string) => {
  const document = readDocument('file:///test.machine.yaml', text);
  return analyse(document, []).problems.map((problem) => `${problem.code} at ${problem.place.path.slice(2).join('.')}: ${problem.message}`);
};

describe('the hover of levelling', () => {
  // Heights 0, 0.8, 0.3 mm by hand in test/figures/levelling.test.ts.
  it('shows the table, what each lift must do and in which order', () => {
    const text = bed({ range: '4 mm', heights: ['0 mm', '0.8 mm', '0.3 mm'] });
    const shown = (hoverAt(snapshotOf(text), inside(text, 'levelling:'))?.markdown ?? '').replace(/ /g, ' ');
    for (const piece of ['free to tilt', 'level is kept', '1.37°', '0.433 mm', 'screw 1 +0.367 mm, screw 2 −0.433 mm, screw 3 +0.0667 mm', 'in one go']) expect(shown.replaceAll('\\', '')).toContain(piece);
  });
  it('tells what to do above the table, and nothing where it is level or cannot be levelled', () => {
    const verdictOf = (text: string): string => (hoverAt(snapshotOf(text), inside(text, 'levelling:'))?.markdown ?? '').split('| Figure')[0]?.replace(/\u00a0/g, ' ').replaceAll('\\', '') ?? '';
    const measured = { heights: ['0 mm', '0.8 mm', '0.3 mm'] };
    expect(verdictOf(bed(measured))).toMatch(/\*\*To level it:\*\* .*screw 2 −0\.433 mm.*, in one go\.\n/);
    expect(verdictOf(bed({ heights: ['1 mm', '1 mm', '1 mm'] }))).not.toContain('To level it');
    expect(verdictOf(bed(measured, { 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } }))).not.toContain('To level it');
  });
  it('says who holds the tilt, and the hint says that it is held', () => {
    const text = bed({}, { 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } });
    expect(hoverAt(snapshotOf(text), inside(text, 'levelling:'))?.markdown).toContain('left rail fixes tilt about X and Y');
    expect(inlayHints(snapshotOf(text)).map((hint) => hint.text).some((hint) => hint.includes('tilt is held'))).toBe(true);
  });
});

describe('the names of lifts', () => {
  it('lead to their support, and back', () => {
    const text = bed({ lifts: LIFTS });
    const snapshot = snapshotOf(text);
    const found = definitionAt(snapshot, inside(text, 'screw 3', 'lifts:'));
    expect(text.slice(found?.span.start, (found?.span.end ?? 0) + 1)).toBe('screw 3:');
    expect(referencesAt(snapshot, inside(text, 'screw 3:'), false).map(({ span }) => span.start)).toEqual([text.indexOf('screw 3', text.indexOf('lifts:'))]);
  });
  it('are offered, but not twice', () => {
    const text = bed({ lifts: ['screw 1', 'screw 2', 'here'] });
    const labels = completionsAt(snapshotOf(text), text.indexOf('here')).map(({ label }) => label);
    expect(labels).toContain('screw 3');
    expect(labels).not.toContain('screw 1');
  });
  it('are offered with their joints, those that a drive moves first', () => {
    const text = bed({ lifts: ['here'] });
    const drafts = completionsAt(snapshotOf(text), text.indexOf('here'));
    expect(drafts.slice(0, 3).map(({ label, detail }) => [label, detail])).toEqual(['screw 1', 'screw 2', 'screw 3'].map((name) => [name, 'nut-decoupled']));
    expect(drafts.slice(3).map(({ label }) => label)).toEqual(expect.arrayContaining(['left rail', 'right shaft']));
  });
  it('that no support has are an error at the very name, with the nearest one', () => {
    expect(problems(bed({ lifts: ['screw 1', 'screw 2', 'scew 3'] }))).toEqual([expect.stringMatching(/^unknown-name at levelling\.lifts\.2: No support of this axis is called "scew 3"\. Did you mean "screw 3"/)]);
  });
  it('that stand there twice are an error at the second', () => {
    expect(problems(bed({ lifts: ['screw 1', 'screw 2', 'screw 1'] }))).toEqual(['lift-named-twice at levelling.lifts.2: The lift "screw 1" is named twice. Name each lift once.']);
  });
});

describe('what contradicts itself', () => {
  it('heights that are not one for each lift', () => {
    expect(problems(bed({ heights: ['0 mm', '1 mm', '0 mm', '1 mm'] }))).toEqual([expect.stringMatching(/^heights-miscounted at levelling\.heights: There are 3 lifts and 4 measured heights/)]);
    expect(problems(bed({ lifts: LIFTS, heights: ['0 mm', '1 mm', '0 mm'] }))).toEqual([]);
  });
  it('motors of their own, and one for all', () => {
    expect(problems(bed({}, { 'drive.motors': 'shared' }))).toEqual([expect.stringMatching(/^one-motor-for-all-lifts at levelling\.moved-by: /)]);
    expect(problems(bed({}, { 'drive.motors': 'one-each' }))).toEqual([]);
    expect(problems(bed({ 'moved-by': 'hand' }, { 'drive.motors': 'shared' }))).toEqual([]);
  });
});
