import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../server/src/language/spans.ts';
import { acceptanceEdits, usualEnd } from '../../server/src/services/accept.ts';
import { fixAll, fixesAt } from '../../server/src/services/fixes.ts';
import { accepted, entry, found, liftAccepting, snapshotIn, tooFast, tooFastAt } from '../support/accepting.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const today = '2026-11-25';
const offers = (text: string) => fixesAt(snapshotIn(text, { today }), { start: 0, end: text.length }).filter(({ kind }) => kind === 'accept');

/** The text after a finding is accepted with these words. */
function after(text: string, words?: Parameters<typeof acceptanceEdits>[2], code = tooFast): string {
  const snapshot = snapshotIn(text, { today });
  const diagnostic = snapshot.diagnostics.find((one) => one.code === code);
  if (!diagnostic) throw new Error(`There is no ${code}.`);
  const edits = acceptanceEdits(diagnostic, snapshot, words);
  if (!edits) throw new Error('There is no edit.');
  return applyEdits(text, edits);
}

const words = { reason: 'it turns for a minute a day', by: 'R. Okafor', until: '2027-06-30' };

describe('accepting a finding', () => {
  it('writes the section at the end of the text, and the finding is information then', () => {
    const text = after(liftAccepting(), words);
    expect(text).toBe(liftAccepting(accepted(entry())));
    expect(snapshotIn(text, { today }).diagnostics.find(({ code }) => code === tooFast)).toMatchObject({ severity: 'information', accepted: words });
  });

  it('sets it apart where sections stand apart', () => {
    const spaced = liftAccepting().replace('\naxes:', '\n\naxes:');
    expect(after(spaced, words)).toBe(`${spaced}\n${accepted(entry())}`);
  });

  it.each([
    ['behind the entries that are there', accepted(entry({ check: 'pinch-point', at: 'axes/lift' })), accepted(entry({ check: 'pinch-point', at: 'axes/lift' }), entry())],
    ['as deep as they are', `accepted:\n- check: pinch-point\n  at: axes/lift\n  reason: guarded\n`, `accepted:\n- check: pinch-point\n  at: axes/lift\n  reason: guarded\n${entry().replace(/^ {2}/gm, '')}`],
    ['below a key that stands alone', 'accepted:\n', accepted(entry())],
    ['in brackets', 'accepted: []\n', `accepted: [{ check: ${tooFast}, at: ${tooFastAt}, reason: it turns for a minute a day, by: R. Okafor, until: 2027-06-30 }]\n`],
    ['in braces like the others', 'accepted:\n  - { check: pinch-point, at: axes/lift, reason: guarded }\n', `accepted:\n  - { check: pinch-point, at: axes/lift, reason: guarded }\n  - { check: ${tooFast}, at: ${tooFastAt}, reason: it turns for a minute a day, by: R. Okafor, until: 2027-06-30 }\n`],
  ])('writes %s', (_, before, wanted) => expect(after(liftAccepting(before), words)).toBe(liftAccepting(wanted)));

  it('writes in the middle of a text where the section is there', () => {
    const list = accepted(entry({ check: 'pinch-point', at: 'axes/lift' }));
    const text = liftAccepting().replace('masses:', `${list}# bodies\nmasses:`);
    expect(after(text, words)).toBe(text.replace(list, `${list}${entry()}`));
  });

  it('keeps the line ends, and a text without a last one', () => {
    const crlf = liftAccepting().replace(/\n/g, '\r\n');
    expect(after(crlf, words)).toBe(liftAccepting(accepted(entry())).replace(/\n/g, '\r\n'));
    expect(after(liftAccepting().trimEnd(), words)).toBe(liftAccepting(accepted(entry())).trimEnd());
  });

  it('keeps a remark behind the last entry where it is', () => {
    const remark = `${liftAccepting().trimEnd()} # a full step\n`;
    expect(after(remark, words)).toBe(`${remark}${accepted(entry())}`);
  });

  it('writes any reason so that it reads back', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ maxLength: 60 }), fc.constantFrom('why: because', '# no', '"', "it's", '- x', '[a, b]', 'yes', '2027', 'a\nb', '\t', '{', 'é 🛠')), fc.string({ maxLength: 20 }), (reason, by) => {
        const told = reason.replace(/\s+/g, ' ').trim();
        const snapshot = snapshotIn(liftAccepting(), { today });
        const diagnostic = snapshot.diagnostics.find(({ code }) => code === tooFast);
        const edits = diagnostic && acceptanceEdits(diagnostic, snapshot, { reason, by });
        if (!edits) return;
        const written = snapshotIn(applyEdits(liftAccepting(), edits), { today }).diagnostics.find(({ code }) => code === tooFast);
        // The placeholder is no reason.
        expect(written?.accepted?.reason).toBe(told === 'why' ? undefined : told);
      }),
      { numRuns: 60 },
    );
  });

  it('does not write an empty reason', () => expect(() => after(liftAccepting(), { reason: ' \n' })).toThrow('no edit'));

  it('does not write where something else stands', () => {
    for (const text of [liftAccepting('accepted: everything\n'), liftAccepting('accepted: { check: x }\n')]) expect(offers(text)).toEqual([]);
  });

  it('works for every finding where it stands: of the machine, of a drive, of a part', () => {
    for (const [base, changes] of [['lift', { 'screw.speed-limit': '100 rpm' }], ['lift', { 'motor.current': '0.4 A' }], ['belt', {}]] as const) {
      const snapshot = snapshotIn(yamlOf(machineWith(base, changes)), { today });
      for (const diagnostic of snapshot.diagnostics.filter(({ finding }) => finding)) {
        const edits = acceptanceEdits(diagnostic, snapshot, words);
        expect(edits, diagnostic.code).toBeDefined();
        const again = snapshotIn(applyEdits(snapshot.document.text, edits ?? []), { today });
        expect(again.diagnostics.find(({ code, span }) => code === diagnostic.code && span.start === diagnostic.span.start)?.accepted, diagnostic.code).toBeDefined();
      }
    }
  });
});

describe('the fix', () => {
  it('is offered for every finding of a check, the last of those that change something, never preferred', () => {
    const text = liftAccepting();
    const all = fixesAt(snapshotIn(text, { today }), { start: 0, end: text.length });
    expect(all.filter(({ kind }) => kind === 'accept').map(({ diagnostic }) => diagnostic.code).sort()).toEqual(['pinch-point', tooFast]);
    expect(all.map(({ kind }) => kind)).toEqual([...all.map(({ kind }) => kind)].sort((a, b) => ['remedy', 'accept', 'explain'].indexOf(a) - ['remedy', 'accept', 'explain'].indexOf(b)));
    expect(all.filter(({ kind, isPreferred }) => kind === 'accept' && isPreferred)).toEqual([]);
  });

  it('is not offered for problems of the text, nor for what is accepted, nor in a part list', () => {
    expect(offers(liftAccepting().replace('travel: 300 mm', 'travel: 300')).map(({ diagnostic }) => diagnostic.code)).not.toContain('unit-missing');
    expect(offers(liftAccepting(accepted(entry()))).map(({ diagnostic }) => diagnostic.code)).toEqual(['pinch-point']);
    const list = snapshotIn('description-version: 1\nparts:\n  p: { kind: nut, mass: 9000 kg }\n', { today }, 'file:///work/a.parts.yaml');
    expect(fixesAt(list, { start: 0, end: 200 }, ['accept'])).toEqual([]);
  });

  it('holds the place of the reason by a word that accepts nothing and is reported', () => {
    const text = after(liftAccepting());
    expect(text).toContain('    reason: why\n    until: 2027-05-25\n');
    const snapshot = snapshotIn(text, { today });
    expect(found(snapshot)).toContain('reason-not-told warning');
    expect(snapshot.diagnostics.find(({ code }) => code === tooFast)?.severity).toBe('warning');
  });

  it('is never part of mending all', () => expect(fixAll(snapshotIn(liftAccepting(), { today }))).toEqual([]));
});

describe('half a year from a day', () => {
  // The calendar: February has 28 or 29 days, April, June, September and November have 30.
  it.each([['2026-11-25', '2027-05-25'], ['2026-08-31', '2027-02-28'], ['2027-08-31', '2028-02-29'], ['2026-05-31', '2026-11-30'], ['2026-06-30', '2026-12-30'], ['2026-01-01', '2026-07-01']])('%s is %s', (day, end) => expect(usualEnd(day)).toBe(end));
  it('of no day is none', () => expect(usualEnd(undefined)).toBeUndefined());
});
