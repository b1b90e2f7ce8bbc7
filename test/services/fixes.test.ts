import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits, type TextEdit } from '../../server/src/language/spans.ts';
import { fixAll, fixesAt, type Fix } from '../../server/src/services/fixes.ts';
import { page } from '../../server/src/services/pages.ts';
import { machineUri, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));
const everywhere = (text: string): { readonly start: number; readonly end: number } => ({ start: 0, end: text.length });

/** The text after a fix that changes the machine's own file. */
function fixed(text: string, { changes }: Pick<Fix, 'changes'>): string {
  return applyEdits(text, changes.find(({ uri }) => uri === machineUri)?.edits ?? []);
}

describe('fixes of the language', () => {
  const text = lift().replace('mass: 4 kg', 'mass: 4,5 kg');

  it('cure the diagnostic at once', () => {
    const snapshot = snapshotOf(text);
    const at = text.indexOf('4,5');
    const [fix] = fixesAt(snapshot, { start: at, end: at });
    expect(fix).toMatchObject({ kind: 'spelling', isPreferred: true });
    const after = snapshotOf(fixed(text, fix ?? { changes: [] }));
    expect(after.document.text).toContain('mass: 4.5 kg');
    expect(after.diagnostics.some(({ code }) => code === 'decimal-comma')).toBe(false);
  });
  it('are preferred only where there is a single one', () => {
    const wrong = lift().replace('travel: 300 mm', 'travel: 300');
    const fixes = fixesAt(snapshotOf(wrong), everywhere(wrong), ['spelling']).filter(({ diagnostic }) => diagnostic.code === 'unit-missing');
    expect(fixes.length).toBeGreaterThan(1);
    expect(fixes.some(({ isPreferred }) => isPreferred)).toBe(false);
  });
  it('offer the nearest name for one that leads nowhere', () => {
    const wrong = lift().replace('motor: lift-motor', 'motor: lift-moter');
    const fix = fixesAt(snapshotOf(wrong), everywhere(wrong), ['spelling']).find(({ diagnostic }) => diagnostic.code === 'unknown-name');
    expect(fixed(wrong, fix ?? { changes: [] })).toBe(lift());
  });
  it('are not offered away from their diagnostic', () => {
    expect(fixesAt(snapshotOf(text), { start: 0, end: 3 }).some(({ diagnostic }) => diagnostic.code === 'decimal-comma')).toBe(false);
  });
});

describe('proven changes of the design', () => {
  // A long thin screw, turned fast: it whirls; remarks and spacing must outlive the cure.
  const text = lift({ 'screw.size': 'Tr8x1.5', 'screw.unsupported-length': '900 mm', 'motion.speed': '60 mm/s' }).replace('size: Tr8x1.5', 'size:   Tr8x1.5   # what there was, Ø 8');
  const snapshot = snapshotOf(text);
  const fixes = fixesAt(snapshot, everywhere(text), ['remedy']);

  it('are offered for engineering findings, each with its result in the title', () => {
    expect(fixes.length).toBeGreaterThan(0);
    for (const { title, kind, diagnostic } of fixes) {
      expect(kind).toBe('remedy');
      expect(title).toMatch(/\d/);
      expect(diagnostic.finding).toBeDefined();
    }
  });
  it('give a text without the finding, with remarks kept', () => {
    for (const fix of fixes) {
      const after = snapshotOf(fixed(text, fix));
      expect(after.diagnostics.filter(({ code, finding }) => code === fix.diagnostic.code && finding?.subject === fix.diagnostic.finding?.subject), fix.title).toEqual([]);
      expect(after.document.text, fix.title).toContain('# what there was, Ø 8');
    }
  });
  it('touch only what they change', () => {
    for (const fix of fixes) {
      const edits = fix.changes.flatMap((change) => change.edits);
      expect(edits.reduce((sum, { span, text: inserted }) => sum + (span.end - span.start) + inserted.length, 0), fix.title).toBeLessThan(400);
    }
  });
  it('keep CR LF', () => {
    const crlf = text.replace(/\n/g, '\r\n');
    const [fix] = fixesAt(snapshotOf(crlf), everywhere(crlf), ['remedy']);
    expect(fix).toBeDefined();
    expect(fixed(crlf, fix ?? { changes: [] })).not.toMatch(/[^\r]\n/);
  });
  it('are preferred only where exactly one holds', () => {
    for (const { diagnostic } of fixes) {
      const same = fixes.filter((fix) => fix.diagnostic === diagnostic);
      expect(same.filter(({ isPreferred }) => isPreferred)).toHaveLength(same.length === 1 ? 1 : 0);
    }
  });
  it('are proven once a snapshot', () => {
    const [first] = fixesAt(snapshot, everywhere(text), ['remedy']);
    expect(fixesAt(snapshot, everywhere(text), ['remedy'])[0]).toEqual(first);
  });
});

describe('explanations', () => {
  it('lead to a page that is there, once for each code', () => {
    const text = lift({ 'screw.speed-limit': '100 rpm', 'axis.travel': '300' });
    const explained = fixesAt(snapshotOf(text), everywhere(text), ['explain']);
    expect(explained.length).toBeGreaterThan(1);
    expect(new Set(explained.map((fix) => fix.page)).size).toBe(explained.length);
    for (const fix of explained) {
      expect(fix.title).toMatch(/^Explain: \S/);
      expect(fix.changes).toEqual([]);
      expect(page(fix.page ?? ''), fix.page).toBeDefined();
    }
  });
});

describe('fixing all', () => {
  const mended = (text: string): string => applyEdits(text, fixAll(snapshotOf(text)));

  it('mends spelling and leaves the rest of the text as it is', () => {
    const text = lift().replace('mass: 4 kg', 'mass: 4,5 kg   # weighed').replace('duty: 5 %', 'duty:5 %');
    expect(mended(text)).toBe(lift().replace('mass: 4 kg', 'mass: 4.5 kg   # weighed'));
  });
  it('never guesses a unit or a name, and never changes the design', () => {
    for (const text of [lift().replace('travel: 300 mm', 'travel: 300'), lift().replace('lift-motor\n', 'lift-moter\n'), lift({ 'screw.unsupported-length': '2 m' }), lift().replace('material: bronze', 'material: bronz')]) {
      expect(mended(text)).toBe(text);
    }
  });
  it('does nothing more the second time, whatever is typed', () => {
    const text = lift();
    const slip = fc.constantFrom('5,5 mm', '1-2 mm', '\t', 'a:b', '- -x', '%', '@', ',', '\u200b', ' 3 , 4', '{', '"');
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(text.length), slip), { maxLength: 4 }), (slips) => {
        const typed = slips.reduce((current, [at, inserted]) => current.slice(0, at) + inserted + current.slice(at), text);
        const once = mended(typed);
        expect(mended(once)).toBe(once);
      }),
      { numRuns: 60 },
    );
  });
  it('gives edits that do not overlap', () => {
    const text = lift().replace(/(\d) /g, '$1,0 ');
    const edits: readonly TextEdit[] = [...fixAll(snapshotOf(text))].sort((a, b) => a.span.start - b.span.start);
    expect(edits.length).toBeGreaterThan(0);
    for (const [index, edit] of edits.entries()) expect(edit.span.start).toBeGreaterThanOrEqual(edits[index - 1]?.span.end ?? 0);
  });
});
