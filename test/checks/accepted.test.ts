import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';
import { analyse, type KeptResults } from '../../server/src/checks/analysis.ts';
import { applyEdits } from '../../server/src/language/spans.ts';
import { Snapshots } from '../../server/src/services/snapshot.ts';
import { accepted, entry, found, liftAccepting, snapshotIn, tooFast, tooFastAt } from '../support/accepting.ts';
import { machineUri } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const today = '2026-11-25';
const of = (text: string, day: string | undefined = today) => {
  const snapshot = snapshotIn(text, day === undefined ? {} : { today: day });
  return { snapshot, diagnostic: snapshot.diagnostics.find(({ code }) => code === tooFast) };
};

describe('a finding that is accepted', () => {
  it('stays visible as information, with the reason, who, and how grave it would be', () => {
    const { diagnostic, snapshot } = of(liftAccepting(accepted(entry())));
    expect(diagnostic).toMatchObject({ severity: 'information', accepted: { reason: 'it turns for a minute a day', by: 'R. Okafor', until: '2027-06-30', originally: 'warning' } });
    expect(diagnostic?.message).toMatch(/200 rpm.*\(accepted: it turns for a minute a day\)$/);
    expect(diagnostic?.related[0]?.message).toBe('accepted by R. Okafor until 2027-06-30: it turns for a minute a day');
    const reason = diagnostic?.related[0]?.span;
    expect(snapshot.document.text.slice(reason?.start, reason?.end)).toBe('it turns for a minute a day');
    expect(found(snapshot).filter((one) => !one.endsWith('information'))).toEqual([]);
  });

  it.each([tooFastAt, 'axes/lift/drive/screw', 'axes/lift/drive', 'axes/lift', 'axes'])('at %s, its place or a map around it', (at) => {
    expect(of(liftAccepting(accepted(entry({ at })))).diagnostic?.severity).toBe('information');
  });

  it('without a name and a last day', () => {
    expect(of(liftAccepting(accepted(entry({ by: '', until: '' })))).diagnostic?.related[0]?.message).toBe('accepted: it turns for a minute a day');
  });

  it('keeps its cautions', () => {
    // No brake, and a thread that does not hold by itself: it comes down when the power goes.
    const { diagnostics } = snapshotIn(`${yamlOf(machineWith('lift', { brake: null, 'screw.size': 'Tr12x6(P3)', 'motor.detent-torque': null }))}${accepted(entry({ check: 'drops-unpowered', at: 'axes/lift' }), entry({ check: 'may-creep-unpowered', at: 'axes/lift' }))}`);
    const drops = diagnostics.filter(({ code }) => ['drops-unpowered', 'may-creep-unpowered'].includes(code));
    expect(drops.length).toBeGreaterThan(0);
    for (const one of drops) {
      expect(one.severity).toBe('information');
      expect(one.message).toContain('\nCaution: ');
    }
  });

  it('has a message within 240 characters, however long the reason is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 600 }), fc.constantFrom('x', 'ab ', '🛠 ', 'é'), (length, unit) => {
        const { diagnostic } = of(liftAccepting(accepted(entry({ reason: JSON.stringify(`a${unit.repeat(length)}`) }))));
        expect(diagnostic?.accepted).toBeDefined();
        expect(diagnostic?.message.length).toBeLessThanOrEqual(240);
        expect(diagnostic?.message).not.toMatch(/\p{Surrogate}/u);
        for (const { message } of diagnostic?.related ?? []) expect(message.length).toBeLessThanOrEqual(240);
      }),
      { numRuns: 25 },
    );
  });

  it('is the one at that place only', () => {
    const other = liftAccepting(accepted(entry({ at: 'axes/lift/drive/nut' })));
    expect(of(other).diagnostic?.severity).toBe('warning');
    expect(found(of(other).snapshot)).toContain('accepted-nothing information');
  });
});

describe('the last day', () => {
  const text = liftAccepting(accepted(entry({ until: '2026-11-25' })));

  it('still counts', () => expect(of(text, '2026-11-25').diagnostic?.severity).toBe('information'));

  it('once over, brings the finding back as it was, and says whose acceptance has ended', () => {
    const { diagnostic, snapshot } = of(text, '2026-11-26');
    expect(diagnostic?.severity).toBe('warning');
    expect(diagnostic?.accepted).toBeUndefined();
    expect(diagnostic?.related[0]?.message).toBe('acceptance by R. Okafor ended on 2026-11-25');
    expect(found(snapshot)).not.toContain('accepted-nothing information');
  });

  it('does not matter where no day is told', () => expect(snapshotIn(text).diagnostics.find(({ code }) => code === tooFast)?.severity).toBe('information'));

  it('of one entry gives way to another that still holds', () => {
    const both = liftAccepting(accepted(entry({ until: '2020-01-31' }), entry({ until: '2027-01-31', reason: 'seen again' })));
    expect(of(both).diagnostic?.accepted?.reason).toBe('seen again');
  });
});

describe('an entry that is wrong', () => {
  it.each([
    ['a check that there is not', { check: 'screw-to-fast-for-its-maker' }, 'check-unknown error', `Did you mean "${tooFast}"?`],
    ['a problem of the text', { check: 'unit-missing' }, 'not-acceptable error', 'Mend it'],
    ['a place that there is not', { at: 'axes/lft/drive' }, 'accepted-nowhere warning', 'Did you mean "lift"?'],
    ['no reason but what held its place', { reason: 'why' }, 'reason-not-told warning', 'Write why'],
    ['the same with blanks around it', { reason: '" why "' }, 'reason-not-told warning', 'Write why'],
    ['a day that there is not', { until: '2027-02-29' }, 'date-impossible error', 'that month has 28 days'],
    ['a month that there is not', { until: '2027-13-01' }, 'date-impossible error', 'twelve months'],
  ])('%s is told, and accepts nothing', (_, parts, told, says) => {
    const { snapshot, diagnostic } = of(liftAccepting(accepted(entry(parts))));
    expect(found(snapshot)).toContain(told);
    expect(snapshot.diagnostics.find(({ code }) => told.startsWith(code))?.message).toContain(says);
    expect(diagnostic?.severity).toBe('warning');
  });

  it('the 29th of February of a leap year is a day (Gregorian calendar)', () => {
    expect(of(liftAccepting(accepted(entry({ until: '2028-02-29' })))).diagnostic?.severity).toBe('information');
  });

  it.each([['an empty reason', { reason: '""' }], ['a day of another form', { until: '30.06.2027' }]])('%s is reported with the text, and accepts nothing', (_, parts) => {
    const { snapshot, diagnostic } = of(liftAccepting(accepted(entry(parts))));
    expect(found(snapshot)).toContain('value-out-of-form error');
    expect(diagnostic?.severity).toBe('warning');
  });

  it.each(['check', 'at', 'reason'])('without %s is reported with the text, and accepts nothing', (key) => {
    const { snapshot, diagnostic } = of(liftAccepting(accepted(entry({ [key]: '' }))));
    expect(found(snapshot)).toContain('entry-missing error');
    expect(diagnostic?.severity).toBe('warning');
  });

  it('has fixes that cure it: the nearest check, the nearest place', () => {
    for (const parts of [{ check: 'screw-to-fast-for-its-maker' }, { at: 'axes/lift/drive/scrw/speed-limit' }]) {
      const { snapshot } = of(liftAccepting(accepted(entry(parts))));
      const [fix] = snapshot.diagnostics.find(({ code }) => ['check-unknown', 'accepted-nowhere'].includes(code))?.fixes ?? [];
      expect(of(applyEdits(snapshot.document.text, fix?.edits ?? [])).diagnostic?.severity).toBe('information');
    }
  });
});

describe('an entry that nothing needs', () => {
  const text = (list: string): string => liftAccepting(list, { 'screw.speed-limit': '300 rpm' });
  const stale = (written: string) => snapshotIn(written, { today }).diagnostics.filter(({ code }) => code === 'accepted-nothing');
  const removed = (written: string): string => applyEdits(written, stale(written)[0]?.fixes.at(-1)?.edits ?? []);

  it('is reported, faded, whether it has ended or not', () => {
    expect(stale(text(accepted(entry())))).toMatchObject([{ severity: 'information', unnecessary: true }]);
    expect(stale(text(accepted(entry({ until: '2020-01-01' }))))).toHaveLength(1);
  });

  it('can be removed: the last one with its key, one of several alone', () => {
    expect(removed(text(accepted(entry())))).toBe(text(''));
    const pinch = entry({ check: 'pinch-point', at: 'axes/lift' });
    expect(removed(text(accepted(entry(), pinch)))).toBe(text(accepted(pinch)));
    expect(removed(text(accepted(pinch, entry())))).toBe(text(accepted(pinch)));
    expect(removed(text(accepted(pinch, '  # a remark between\n', entry())))).toBe(text(accepted(pinch, '  # a remark between\n')));
    const flow = `accepted: [{ check: pinch-point, at: axes/lift, reason: guarded }, { check: ${tooFast}, at: axes, reason: old }]\n`;
    expect(removed(text(flow))).toBe(text('accepted: [{ check: pinch-point, at: axes/lift, reason: guarded }]\n'));
    const crlf = text(accepted(pinch, entry())).replace(/\n/g, '\r\n');
    expect(removed(crlf)).toBe(text(accepted(pinch)).replace(/\n/g, '\r\n'));
  });

  it('says where a finding of its check stands instead', () => {
    const [one] = stale(liftAccepting(accepted(entry({ at: 'axes/lift/motion' }))));
    expect(one?.message).toContain(`One stands at "${tooFastAt}"`);
    expect(one?.message.length).toBeLessThanOrEqual(240);
  });
});

describe('problems that may be meant', () => {
  it('are accepted like findings', () => {
    const text = liftAccepting(accepted(entry({ check: 'magnitude-implausible', at: 'masses/plate/mass' })), { 'mass.mass': '9000 kg' });
    const plate = snapshotIn(text, { today }).diagnostics.find(({ code }) => code === 'magnitude-implausible');
    expect(plate?.accepted?.originally).toBeDefined();
    expect(plate?.message).toContain('(accepted: ');
    const unused = `${liftAccepting()}  spare:\n    kind: nut\n${accepted(entry({ check: 'unused-part', at: 'parts/spare' }))}`;
    // A hint stays a hint: to accept it makes it no graver.
    expect(snapshotIn(unused, { today }).diagnostics.find(({ code }) => code === 'unused-part')).toMatchObject({ severity: 'hint', accepted: { originally: 'hint' } });
  });
});

describe('findings on a part', () => {
  const described = (at: string, list: string): string => {
    const text = liftAccepting(accepted(entry({ at }))).replace(/ {6}screw:\n(?: {8}.*\n)+/, '      screw:\n        part: lead-screw\n');
    return `${text.replace('parts:', list === '' ? 'parts:\n  lead-screw: { kind: screw, size: Tr12x3, material: steel, grade: rolled, speed-limit: 100 rpm }' : 'parts:')}`;
  };
  const list = 'description-version: 1\nparts:\n  lead-screw: { kind: screw, size: Tr12x3, material: steel, grade: rolled, speed-limit: 100 rpm }\n';

  it.each(['parts/lead-screw/speed-limit', 'parts/lead-screw', 'axes/lift/drive/screw', 'axes/lift/drive/screw/speed-limit', 'axes/lift'])('of the same file are accepted at %s', (at) => {
    expect(of(described(at, '')).diagnostic?.severity).toBe('information');
  });

  it.each(['axes/lift/drive/screw', 'axes/lift/drive/screw/speed-limit', 'axes/lift/drive'])('of a list are accepted in the machine that suffers from it, at %s', (at) => {
    const text = described(at, 'elsewhere').replace('machine: Test lift', 'machine: Test lift\nuses: [stock.parts.yaml]');
    const { diagnostics } = snapshotIn(text, { today, lists: { 'stock.parts.yaml': list } });
    expect(diagnostics.find(({ code }) => code === tooFast)?.severity).toBe('information');
  });
});

describe('what is kept from one version to the next', () => {
  it('stays right when only what is accepted changes, or the day', () => {
    const kept: KeptResults = new Map();
    const read = (list: string) => readDocument(machineUri, liftAccepting(list));
    const before = analyse(read(''), [], kept, { today });
    const during = analyse(read(accepted(entry())), [], kept, { today });
    const after = analyse(read(accepted(entry())), [], kept, { today: '2030-01-01' });
    const severities = [before, during, after].map(({ findings }) => findings.find(({ check }) => check === tooFast)?.severity);
    expect(severities).toEqual(['warning', 'information', 'warning']);
    // The same evaluation throughout: nothing was computed again.
    expect(new Set([before, during, after].map(({ evaluations }) => evaluations.find(({ subject }) => subject.kind === 'drive'))).size).toBe(1);
    expect(after.findings).toEqual(analyse(read(accepted(entry())), [], undefined, { today: '2030-01-01' }).findings);
  });
});

describe('whatever is written under accepted', () => {
  it('nothing throws, and the same text gives the same findings', () => {
    const scalar = fc.constantFrom('', tooFast, tooFastAt, 'axes', '/', '//', '2027-06-30', '0000-00-00', '~', '[]', '{}', '*a', '&a x', '"', '- x', 'why', 'accepted', 'parts/lift-motor', 'machine');
    const item = fc.dictionary(fc.constantFrom('check', 'at', 'reason', 'by', 'until', 'else', '? x'), scalar, { maxKeys: 5 });
    fc.assert(
      fc.property(fc.array(item, { maxLength: 4 }), fc.constantFrom('', ' ~', ' x', ' {}', ' []', ' [x, {}]'), (items, head) => {
        const written = `accepted:${head}\n${items.map((parts) => Object.entries(parts).map(([key, value], index) => `  ${index === 0 ? '-' : ' '} ${key}: ${value}`).join('\n')).join('\n')}\n`;
        const text = liftAccepting(written);
        const snapshots = new Snapshots(() => undefined, { today: () => today });
        snapshots.take(machineUri, liftAccepting());
        expect(snapshots.take(machineUri, text).diagnostics).toEqual(snapshotIn(text, { today }).diagnostics);
      }),
      { numRuns: 60 },
    );
  });

  it('an entry that stands there twice accepts once and troubles nobody', () => {
    const { snapshot, diagnostic } = of(liftAccepting(accepted(entry(), entry())));
    expect(diagnostic?.severity).toBe('information');
    expect(found(snapshot).filter((one) => one.startsWith('accepted'))).toEqual([]);
  });
});
