import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeable } from '../../server/src/checks/adjusted-check.ts';
import { allChecks } from '../../server/src/checks/registry.ts';
import { applyEdits } from '../../server/src/language/spans.ts';
import { figuresOf } from '../../server/src/services/figures-table.ts';
import { fixesAt } from '../../server/src/services/fixes.ts';
import { Snapshots } from '../../server/src/services/snapshot.ts';
import { found, liftAccepting, settingsUri, snapshotIn, tooFast } from '../support/accepting.ts';
import { machineUri } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const lift = liftAccepting();
const severityOf = (settings: string, code = tooFast, text = lift): string | undefined => snapshotIn(text, { settings }).diagnostics.find((one) => one.code === code)?.severity;
/** What is said of the settings themselves. */
const about = (settings: string) => snapshotIn(settings, {}, settingsUri).diagnostics;

describe('gravity', () => {
  it.each(['error', 'warning', 'information', 'hint'])('can be %s for a check that rests on practice', (severity) => {
    expect(severityOf(`checks:\n  ${tooFast}: { severity: ${severity} }\n`)).toBe(severity);
  });

  it('can be off', () => {
    const settings = `checks:\n  ${tooFast}: { severity: off }\n`;
    expect(severityOf(settings)).toBeUndefined();
    expect(found(snapshotIn(lift, { settings }))).toContain('pinch-point information');
    expect(about(settings)).toEqual([]);
  });

  it('of what is uncertain counts one step lower', () => {
    // 10 to 20 mm/s around 15: nominally 300 rpm, within 320; at its end 400 rpm (hand calculation: v / 3 mm).
    const text = liftAccepting('', { 'screw.speed-limit': '320 rpm', 'motion.speed': '15 mm/s ± 5 mm/s' });
    expect(severityOf(`checks:\n  ${tooFast}: { severity: error }\n`, tooFast, text)).toBe('warning');
  });

  it('of a check without a figure', () => {
    const check = allChecks().find((one) => 'judge' in one && changeable(one) === 'all' && one.id === 'thrust-through-coupling');
    expect(check).toBeDefined();
    const text = yamlOf(machineWith('lift', { 'thrust-bearing.design': 'none', 'coupling.form': 'rigid', 'motor.axial-load-limit': '30 N' }));
    const before = snapshotIn(text).diagnostics.find(({ code }) => code === 'thrust-through-coupling');
    expect(before).toBeDefined();
    expect(severityOf('checks: { thrust-through-coupling: { severity: hint } }\n', 'thrust-through-coupling', text)).toBe('hint');
    expect(severityOf('checks: { thrust-through-coupling: { severity: off } }\n', 'thrust-through-coupling', text)).toBeUndefined();
  });
});

describe('what settings cannot change', () => {
  const fixed = allChecks().filter((check) => changeable(check) === 'none');

  it('is whatever concerns people, and every limit of a standard, a book or the mechanics', () => {
    for (const check of allChecks()) {
      const bases = 'judge' in check ? [check.basis] : check.limits.map(({ basis }) => basis);
      const isFixed = check.concernsPeople === true || bases.every((basis) => ['standard', 'book', 'follows from the mechanics'].includes(basis));
      if (isFixed) expect(fixed.map(({ id }) => id), check.id).toContain(check.id);
    }
    expect(fixed.map(({ id }) => id)).toEqual(expect.arrayContaining(['pinch-point', 'hot-surface', 'drops-unpowered', 'nut-wears-out', 'screw-size-contradicted']));
  });

  it.each(['severity: off', 'severity: hint', 'limit-factor: 3', 'limit: 5'])('has a problem at the entry, and judges as before (%s)', (change) => {
    for (const { id } of fixed) {
      const [problem, ...others] = about(`checks:\n  ${id}:\n    ${change}\n`);
      expect(others).toEqual([]);
      expect(problem, id).toMatchObject({ code: 'limit-not-changeable', severity: 'error' });
      expect(problem?.message).toContain('can only be accepted with a reason');
      expect(problem?.message.length).toBeLessThanOrEqual(240);
    }
    expect(severityOf(`checks:\n  pinch-point:\n    ${change}\n`, 'pinch-point')).toBe('information');
  });

  it('of a check with limits of both kinds stays, and only practice gives way', () => {
    for (const check of allChecks()) {
      if (changeable(check) !== 'some' || 'judge' in check) continue;
      const settings = snapshotIn(`checks: { ${check.id}: { severity: off } }\n`, {}, settingsUri).settings;
      const left = settings?.checks.find(({ id }) => id === check.id);
      const kept = check.limits.filter(({ basis }) => !['common practice', 'our threshold'].includes(basis));
      expect(left && 'limits' in left ? left.limits : [], check.id).toEqual(kept);
    }
  });
});

describe('limits', () => {
  it('that a description holds are moved by a factor: 200 rpm are within twice 100 rpm, and not within 1.9 times', () => {
    expect(severityOf(`checks:\n  ${tooFast}: { limit-factor: 2 }\n`)).toBeUndefined();
    expect(severityOf(`checks:\n  ${tooFast}: { limit-factor: 1.9 }\n`)).toBe('warning');
    expect(about(`checks:\n  ${tooFast}: { limit-factor: 2 }\n`)).toEqual([]);
  });

  it('move in the tables of figures as well', () => {
    const rows = figuresOf(snapshotIn(lift, { settings: `checks:\n  ${tooFast}: { limit-factor: 1.5 }\n` }));
    const [limit] = rows.find(({ id }) => id === 'screw.turning-speed')?.limits ?? [];
    expect(limit).toMatchObject({ check: tooFast, text: 'at most 150 rpm', state: 'broken' });
    const told = snapshotIn(lift, { settings: `checks:\n  ${tooFast}: { limit-factor: 1.5 }\n` }).diagnostics.find(({ code }) => code === tooFast);
    expect(told?.message).toContain('200 rpm, 133 % of the 150 rpm');
  });

  it('of a figure are set as a quantity of its kind', () => {
    // A ratio of inertias: whatever it is here, it is within a million and beyond a millionth.
    const text = yamlOf(machineWith('lift', { 'mass.mass': '40 kg' }));
    expect(severityOf('checks: { inertia-ratio-high: { limit: 1000000 } }\n', 'inertia-ratio-high', text)).toBeUndefined();
    expect(severityOf('checks: { screw-inefficient: { limit: 99 % } }\n', 'screw-inefficient', text)).toBeDefined();
    expect(severityOf('checks: { screw-inefficient: { limit: 0.1 % } }\n', 'screw-inefficient', text)).toBeUndefined();
  });

  it.each([
    [`${tooFast}: { limit: 200 rpm }`, 'its limit is written in the description'],
    ['thrust-through-coupling: { limit: 3 }', 'it compares no figure with a limit'],
    ['screw-inefficient: { limit: 40 mm }', 'is no limit for "screw-inefficient"'],
    ['screw-inefficient: { limit: much }', 'is no limit for "screw-inefficient"'],
    ['screw-inefficient: { limit: -40 % }', 'is no limit for "screw-inefficient"'],
  ])('that cannot be are told: %s', (written, says) => {
    const problem = about(`checks:\n  ${written}\n`).find(({ code }) => code === 'limit-not-understood');
    expect(problem?.message).toContain(says);
    expect(problem?.message.length).toBeLessThanOrEqual(240);
  });

  it('a factor that is none is told, and moves nothing', () => {
    for (const factor of ['0', '-1', 'much', '2 mm']) {
      expect(about(`checks:\n  ${tooFast}: { limit-factor: ${factor} }\n`).length, factor).toBeGreaterThan(0);
      expect(severityOf(`checks:\n  ${tooFast}: { limit-factor: ${factor} }\n`)).toBe('warning');
    }
  });

  it('hold for remedies too: what is proven is proven by the limits that hold', () => {
    const snapshot = snapshotIn(lift, { settings: `checks:\n  ${tooFast}: { limit-factor: 1.5 }\n` });
    const fixes = fixesAt(snapshot, { start: 0, end: lift.length }, ['remedy']).filter(({ diagnostic }) => diagnostic.code === tooFast);
    expect(fixes.length).toBeGreaterThan(0);
    const slower = fixes.map(({ changes }) => applyEdits(lift, changes[0]?.edits ?? [])).flatMap((text) => /speed: ([\d.]+) mm\/s\n/.exec(text)?.[1] ?? []).map(Number).filter((speed) => speed < 10);
    // 150 rpm with a lead of 3 mm are 7.5 mm/s (hand calculation): not slowed to the 5 mm/s of 100 rpm.
    for (const speed of slower) expect(speed).toBeGreaterThan(5);
    expect(slower.length).toBeGreaterThan(0);
  });
});

describe('units', () => {
  const text = (settings: string) => figuresOf(snapshotIn(lift, { settings }));

  it('in which figures are shown', () => {
    const inches = text('units: { length: in, force: lbf, rotational-speed: rps }\n');
    // 200 rpm are 3.33 turns a second: hand calculation.
    expect(inches.find(({ id }) => id === 'screw.turning-speed')).toMatchObject({ text: '3.33 rps', unit: 'rps' });
    expect(inches.find(({ id }) => id === 'screw.turning-speed')?.value?.nominal).toBeCloseTo((200 * 2 * Math.PI) / 60, 9);
    const message = snapshotIn(lift, { settings: 'units: { force: lbf }\n' }).diagnostics.find(({ code }) => code === 'pinch-point')?.message;
    // 618 N / 4.448 N/lbf is 139 lbf (exact definition of the pound-force, ISO 80000-4).
    expect(message).toContain('139 lbf');
  });

  it('that measure something else are told, with those that fit', () => {
    const [problem] = about('units: { length: N }\n');
    expect(problem).toMatchObject({ code: 'display-unit-unfit', severity: 'error' });
    expect(problem?.message).toContain('mm, µm');
    expect(text('units: { length: N }\n')).toEqual(text(''));
  });
});

describe('part lists of a repository', () => {
  const lists = { 'stock.parts.yaml': 'description-version: 1\nparts:\n  lift-motor: { kind: stepper, frame: NEMA 17, holding-torque: 0.45 N·m, current: 1.5 A }\n' };
  const bare = lift.replace(/^parts:\n(?: .*\n)+/m, '');

  it('serve every machine', () => {
    expect(found(snapshotIn(bare, { lists }))).toContain('unknown-name error');
    expect(found(snapshotIn(bare, { lists, settings: 'part-lists: [stock.parts.yaml]\n' }))).not.toContain('unknown-name error');
  });

  it('that cannot be read are told in the settings', () => {
    expect(found(snapshotIn('part-lists: [gone.parts.yaml]\n', {}, settingsUri))).toEqual(['part-list-missing error']);
    expect(found(snapshotIn(lift, { settings: 'part-lists: [gone.parts.yaml]\n' }))).not.toContain('part-list-missing error');
  });
});

describe('the file', () => {
  it('may be empty', () => expect(about('')).toEqual([]));

  it.each([
    ['check: {}\n', 'key-unknown', 'checks'],
    ['checks: { screw-too-fast-for-its-makr: { severity: hint } }\n', 'check-unknown', tooFast],
    [`checks: { ${tooFast}: { severity: of } }\n`, 'value-not-in-list', '"off"'],
    [`checks: { ${tooFast}: off }\n`, 'value-of-wrong-type', 'severity'],
    ['fail-on: hints\n', 'value-not-in-list', 'error'],
    ['ignore: drafts/**\n', 'value-of-wrong-type', 'list'],
  ])('%s is told', (text, code, says) => expect(about(text).find((one) => one.code === code)?.message).toContain(says));

  it('is found by its name alone', () => {
    expect(snapshotIn('fail-on: warning\nignore: [a, "b/**"]\n', {}, settingsUri).settings).toMatchObject({ failOn: 'warning', ignore: ['a', 'b/**'] });
    expect(snapshotIn('fail-on: warning\n', {}, 'file:///work/not-axiswright.yaml').document.fileKind).toBe('machine');
  });

  it('that changes has everything judged anew, and what is kept of a machine is dropped', () => {
    let settings: string | undefined;
    const snapshots = new Snapshots((uri) => (uri === settingsUri ? settings : undefined), { settingsNear: () => [settingsUri] });
    const severities = [undefined, `checks: { ${tooFast}: { severity: hint } }\n`, `checks: { ${tooFast}: { severity: off } }\n`, undefined].map((text) => {
      settings = text;
      return snapshots.take(machineUri, lift).diagnostics.find(({ code }) => code === tooFast)?.severity;
    });
    expect(severities).toEqual(['warning', 'hint', undefined, 'warning']);
  });

  it('of the nearest folder counts, whole', () => {
    const texts = new Map([['file:///work/a/axiswright.yaml', `checks: { ${tooFast}: { severity: hint } }\n`], ['file:///work/axiswright.yaml', 'units: { force: lbf }\n']]);
    const snapshots = new Snapshots((uri) => texts.get(uri), { settingsNear: () => ['file:///work/a/b/axiswright.yaml', 'file:///work/a/axiswright.yaml', 'file:///work/axiswright.yaml'] });
    const snapshot = snapshots.take('file:///work/a/b/x.machine.yaml', lift);
    expect(snapshot.diagnostics.find(({ code }) => code === tooFast)?.severity).toBe('hint');
    expect(snapshot.diagnostics.find(({ code }) => code === 'pinch-point')?.message).toContain('618 N');
    expect(snapshot.watched).toContain('file:///work/a/b/axiswright.yaml');
  });

  it('may hold anything: nothing throws, and every message fits', () => {
    const word = fc.constantFrom('checks', 'units', 'ignore', 'part-lists', 'fail-on', tooFast, 'screw-inefficient', 'pinch-point', 'severity', 'limit', 'limit-factor', 'off', '40 %', 'length', 'in', '~', '[]', '{', '}', '- ', ': ', '\n', '\n  ', '\n    ', ', ', '"', '*a', '&a ', '1e999', '\u0000', 'é🛠', 'toString', '__proto__');
    fc.assert(
      fc.property(fc.array(word, { maxLength: 14 }), (words) => {
        const settings = words.join('');
        for (const { message } of about(settings)) expect(message.length).toBeLessThanOrEqual(240);
        expect(() => snapshotIn(lift, { settings })).not.toThrow();
      }),
      { numRuns: 80 },
    );
  });
});
