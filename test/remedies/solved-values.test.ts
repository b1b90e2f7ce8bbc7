import { describe, expect, it } from 'vitest';
import { severityRank } from '../../server/src/checks/judge.ts';
import { readQuantity } from '../../server/src/language/read-quantity.ts';
import { niceNumber, withArticle, writtenValue } from '../../server/src/remedies/nice-values.ts';
import { tryOut } from '../../server/src/remedies/prove.ts';
import { number, type RemedyContext } from '../../server/src/remedies/remedy.ts';
import { contextOf } from '../../server/src/remedies/context.ts';
import { example } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analyseText, cures, textAfter, type Analysed } from './support.ts';

const lift = (changes: Readonly<Record<string, unknown>>): Analysed => analyseText(yamlOf(machineWith('lift', changes)));

/** Machines of which each wants something to be lowered. */
const machines = [
  analyseText(example('large-format-printer/first-draft.machine.yaml')),
  lift({ 'screw.size': 'Tr8x1.5', 'screw.unsupported-length': '900 mm', 'motion.speed': '60 mm/s' }),
  lift({ 'drive.current-setting': '2.5 A', 'drive.current-setting-as': 'rms' }),
  lift({ 'motion.acceleration': '9 m/s²', 'mass.mass': '12 kg' }),
];

/** Kinds of remedies that lower one entry as far as it takes, to two digits. */
const lowering = new Map([['slow-the-axis', 'speed'], ['ease-the-ramp', 'acceleration'], ['less-current', 'current']] as const);

describe('a solved value', () => {
  const solved = machines.flatMap((before) => before.analysis.findings.flatMap((finding) => cures(finding, before).flatMap((cure) => {
    const quantity = cure.changes.length === 1 ? lowering.get(cure.remedies.join() as 'slow-the-axis') : undefined;
    const [change] = cure.changes;
    return quantity === undefined || !change || typeof change.value !== 'string' ? [] : [{ before, finding, cure, change, value: change.value, quantity }];
  })));

  it('is found for every kind of entry that is lowered', () => {
    expect(new Set(solved.map(({ quantity }) => quantity))).toEqual(new Set(lowering.values()));
  });
  it('goes no farther than it takes: an eighth less of the change would not do', () => {
    for (const { before, finding, cure, change, value, quantity } of solved) {
      const reading = readQuantity(value, quantity);
      expect(reading.ok, cure.title).toBe(true);
      const [, amount = '', unit = ''] = /^(\S+) (.+)$/.exec(value) ?? [];
      const trial = tryOut([{ ...change, value: `${Number(amount) * 1.125} ${unit}` }], finding, before.documents, before.analysis);
      expect(trial?.cured === true && trial.fresh.length === 0, `${cure.title} would do with less`).toBe(false);
    }
  });
});

describe('what is offered', () => {
  it('comes gentlest first', () => {
    for (const before of machines) {
      for (const finding of before.analysis.findings) {
        const costs = cures(finding, before).map(({ cost }) => cost);
        expect(costs).toEqual([...costs].sort((a, b) => a - b));
      }
    }
  });
  it('puts changes together only where no single one holds, and then says all of them', () => {
    for (const before of machines) {
      for (const finding of before.analysis.findings) {
        const offered = cures(finding, before);
        const several = offered.filter(({ remedies }) => remedies.length > 1);
        expect(several.length === 0 || several.length === offered.length).toBe(true);
        for (const { title } of several) expect(title).toMatch(/ and | in /);
      }
    }
  });
  it('is no cure that only leaves the question open', () => {
    // Without a speed there is no torque to judge; taking it away is not on offer, and would not be proven.
    const before = lift({ 'mass.mass': '60 kg', 'motion.speed': '100 mm/s' });
    const finding = before.analysis.findings.find(({ check }) => check === 'motor-cannot-lift');
    const place = before.analysis.evaluations.find(({ subject }) => subject.kind === 'drive')?.subject.placeOf('motion', 'speed');
    expect(finding && place).toBeDefined();
    if (!finding || !place) return;
    expect(tryOut([{ place, value: null }], finding, before.documents, before.analysis)?.cured).toBe(false);
  });
});

describe('the search for a value', () => {
  const before = lift({ 'screw.size': 'Tr8x1.5', 'screw.unsupported-length': '900 mm', 'motion.speed': '60 mm/s' });
  const finding = before.analysis.findings.find(({ check }) => check === 'screw-whirls');
  const evaluation = before.analysis.evaluations.find(({ subject }) => subject.id === finding?.subject);

  function context(watched: readonly string[] = []): RemedyContext {
    if (!finding || !evaluation) throw new Error('The machine was to whirl.');
    return contextOf(finding, evaluation, before.analysis.findings, new Set(watched));
  }

  it('stops where the check begins to pass', () => {
    const speed = context().solve('motion.speed', 0.001) ?? Number.NaN;
    expect(context().passes(context().tryWith({ 'motion.speed': number(speed) }))).toBe(true);
    expect(context().passes(context().tryWith({ 'motion.speed': number(1.02 * speed) }))).toBe(false);
  });
  it('finds nothing where even the farthest value fails', () => {
    expect(context().solve('motion.speed', 0.055)).toBeUndefined();
  });
  it('finds nothing for an entry that has no value', () => {
    expect(context().solve('axis.resolution', 1)).toBeUndefined();
  });
  it('leaves no lesser degree of the same danger: a motor that no longer stalls has torque to spare', () => {
    const weak = lift({ 'mass.mass': '20 kg', 'motion.speed': '100 mm/s' });
    const stalls = weak.analysis.findings.find(({ check }) => check === 'motor-cannot-lift');
    const drive = weak.analysis.evaluations.find(({ subject }) => subject.id === stalls?.subject);
    expect(stalls && drive).toBeDefined();
    if (!stalls || !drive) return;
    const search = contextOf(stalls, drive, weak.analysis.findings);
    const speed = search.solve('motion.speed', 0.005) ?? Number.NaN;
    // 1.5 is the margin of common practice, as motor-margin-thin declares it; at 1 the motor stalls.
    expect(search.tryWith({ 'motion.speed': number(speed) }).bounds('motor.torque-margin')?.low).toBeGreaterThanOrEqual(1.5);
  });
  it('has nothing new from a check that is watched', () => {
    const search = context(['ramp-looks-slipped', 'speed-never-reached']);
    const speed = search.solve('motion.speed', 0.0005) ?? Number.NaN;
    expect(search.passes(search.tryWith({ 'motion.speed': number(speed) }))).toBe(true);
  });
  it('takes the first candidate that passes', () => {
    const found = context().first([0.05, 0.01, 0.002], (speed) => ({ 'motion.speed': number(speed) }));
    expect(found).toBe([0.05, 0.01, 0.002].find((speed) => context().passes(context().tryWith({ 'motion.speed': number(speed) }))));
  });
  it('judges as gravely as the finding deserves', () => {
    expect(severityRank(finding?.severity ?? 'hint')).toBeLessThanOrEqual(severityRank('warning'));
  });
});

describe('values as they are written', () => {
  it.each([
    [0.0423, 'down', 'mm/s', '42 mm/s'],
    [0.0423, 'up', 'mm/s', '43 mm/s'],
    [0.042, 'down', 'mm/s', '42 mm/s'],
    [0.00999, 'up', 'mm/s', '10 mm/s'],
    [0.0254, 'down', 'in/min', '60 in/min'],
  ] as const)('%d m/s rounded %s in %s is %s', (si, direction, unit, text) => {
    expect(writtenValue(si, 'speed', unit, direction)).toBe(text);
  });
  it.each([
    [3.1, 'up', 3.5], [3.1, 'down', 3], [0.031, 'up', 0.035], [1200, 'down', 1200], [9.9, 'up', 10], [0, 'up', 0],
  ] as const)('%d as a size that is sold, %s, is %d', (value, direction, nice) => {
    expect(niceNumber(value, direction)).toBeCloseTo(nice, 12);
  });
  it.each([['4 N·m', 'a 4 N·m'], ['0.8 N·m', 'a 0.8 N·m'], ['8.8 N·m', 'an 8.8 N·m'], ['80 N', 'an 80 N'], ['11 N', 'an 11 N'], ['18 N', 'an 18 N'], ['110 N', 'a 110 N'], ['180 N', 'a 180 N']])('%s is called %s', (size, called) => {
    expect(withArticle(size)).toBe(called);
  });
});

describe('a motor with a larger face', () => {
  it('takes what the old shaft bears out of the text', () => {
    const before = analyseText(yamlOf(machineWith('belt', { 'mass.mass': '6 kg' })));
    const finding = before.analysis.findings.find(({ check }) => check === 'inertia-ratio-high');
    const larger = finding === undefined ? [] : cures(finding, before).filter(({ title }) => title.includes('size 34'));
    expect(before.documents.main.text).toContain('radial-load-limit');
    expect(larger.length).toBeGreaterThan(0);
    for (const proven of larger) expect(textAfter(proven, before)).not.toMatch(/radial-load-(limit|distance)/);
  });
});
