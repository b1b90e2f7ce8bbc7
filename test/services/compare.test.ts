import { describe, expect, it } from 'vitest';
import { compareMachines, machineState, type Comparison } from '../../server/src/services/compare/comparison.ts';
import { comparisonMarkdown } from '../../server/src/services/compare/comparison-markdown.ts';
import { gainedText, relativeText, usedText, valueText, worseLine } from '../../server/src/services/compare/change-texts.ts';
import { worseningsOf } from '../../server/src/services/compare/worsening.ts';
import { Snapshots } from '../../server/src/services/snapshot.ts';
import { example, machineUri, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));
const compared = (before: string | undefined, after: string | undefined): Comparison =>
  compareMachines(before === undefined ? undefined : machineState(snapshotOf(before)), after === undefined ? undefined : machineState(snapshotOf(after)));

const figure = ({ figures }: Comparison, id: string) => {
  const found = figures.find((change) => change.id === id);
  if (!found) throw new Error(`${id} did not change.`);
  return found;
};

const refused = { failOn: 'warning' } as const;

describe('a comparison of figures', () => {
  it('tells before, after, relative change and margin: 140 rpm and 175 rpm of 200 allowed', () => {
    // A lead of 3 mm: 7 mm/s is 140 rpm, 8.75 mm/s is 175 rpm, a quarter more; 70 % and 87.5 % of the limit: hand calculation.
    const change = figure(compared(lift({ 'screw.speed-limit': '200 rpm', 'motion.speed': '7 mm/s' }), lift({ 'screw.speed-limit': '200 rpm', 'motion.speed': '8.75 mm/s' })), 'screw.turning-speed');
    expect(change).toMatchObject({ change: 'changed', subject: 'axes/lift/drive' });
    expect(change.relative).toBeCloseTo(0.25, 9);
    expect(change.margin).toMatchObject({ check: 'screw-too-fast-for-its-maker', limit: 'at most 200 rpm', stateBefore: 'kept', stateAfter: 'kept' });
    expect(change.margin?.usedBefore).toBeCloseTo(0.7, 9);
    expect(change.margin?.usedAfter).toBeCloseTo(0.875, 9);
    expect(change.margin?.gained).toBeCloseTo(-0.175, 9);
    expect([valueText(change.before, change.after), valueText(change.after), relativeText(change)]).toEqual(['140 rpm', '175 rpm', '+25 %']);
    expect(change.margin && [usedText(change.margin), gainedText(change.margin)]).toEqual(['70 → 88 %', '−18']);
  });

  it('is empty for the same text, and for one that differs in comments and layout only', () => {
    const text = lift();
    expect(compared(text, text)).toMatchObject({ state: 'unchanged', figures: [], findings: [] });
    expect(compared(text, `# a remark\n${text.replace('speed: 10 mm/s', 'speed:   1 cm/s')}`)).toMatchObject({ state: 'unchanged', figures: [], findings: [] });
  });

  it('tells a changed limit where the value is the same', () => {
    const change = figure(compared(lift({ 'screw.speed-limit': '400 rpm' }), lift({ 'screw.speed-limit': '250 rpm' })), 'screw.turning-speed');
    expect(change.relative).toBe(0);
    expect(change.margin?.gained).toBeCloseTo(0.5 - 0.8, 9); // 200 rpm of 400, then of 250
  });

  it('tells what is new and what is gone, one the mirror of the other', () => {
    const [bare, braked] = [lift({ brake: null }), lift()];
    const [added, removed] = [compared(bare, braked), compared(braked, bare)];
    const ids = (comparison: Comparison, change: string) => comparison.figures.filter((one) => one.change === change).map(({ id }) => id);
    expect(ids(added, 'new').length).toBeGreaterThan(0);
    expect(ids(added, 'new')).toEqual(ids(removed, 'gone'));
    expect(ids(removed, 'new')).toEqual(ids(added, 'gone'));
    expect(added.figures).toHaveLength(removed.figures.length);
  });

  it('puts both values into one unit, and leaves shares of temperatures and of verdicts out', () => {
    // Steps a second: 3200 / 3 mm × 5 mm/s is 5.33 thousand, × 15 mm/s is 16 kHz, whose customary units differ: hand calculation.
    const comparison = compared(lift({ 'motion.speed': '5 mm/s' }), lift({ 'motion.speed': '15 mm/s' }));
    const rate = figure(comparison, 'motor.step-rate');
    expect([valueText(rate.before, rate.after), valueText(rate.after)]).toEqual(['5.33 kHz', '16 kHz']);
    for (const { relative, after } of comparison.figures) if (after?.quantity === 'temperature') expect(relative).toBeUndefined();
    expect(figure(compared(lift({ brake: null, 'screw.size': 'Tr12x12(P3)' }), lift()), 'drive.holding-verdict').relative).toBeUndefined();
  });
});

describe('a comparison of findings', () => {
  const slow = lift({ 'screw.speed-limit': '250 rpm' });
  const fast = lift({ 'screw.speed-limit': '150 rpm' });
  const code = 'screw-too-fast-for-its-maker';
  const of = ({ findings }: Comparison) => findings.filter(({ before, after }) => (after ?? before)?.code === code).map(({ change }) => change);

  it('tells new, gone and changed ones', () => {
    expect(of(compared(slow, fast))).toEqual(['new']);
    expect(of(compared(fast, slow))).toEqual(['gone']);
    expect(of(compared(fast, lift({ 'screw.speed-limit': '140 rpm' })))).toEqual(['changed']);
  });

  it('tells graver and milder ones', () => {
    // 200 rpm; 180 to 220 may break a limit of 210, which counts one severity less.
    const may = lift({ 'screw.speed-limit': '210 rpm', 'motion.speed': '10 mm/s ± 10 %' });
    expect(of(compared(may, fast))).toEqual(['graver']);
    expect(of(compared(fast, may))).toEqual(['milder']);
  });

  it('is not misled by a place that moves', () => {
    // The rest current is half unless it is written; once it is, the finding stands there.
    const draft = example('belt-hoist/first-draft.machine.yaml');
    const written = draft.replace('      current-setting: 2 A\n', '      current-setting: 2 A\n      rest-current: 45 %\n');
    const changes = compared(draft, written).findings.filter(({ before, after }) => (after ?? before)?.code === 'rest-current-too-low');
    expect(changes).toMatchObject([{ change: 'changed', before: { place: 'axes/dip/drive' }, after: { place: 'axes/dip/drive/rest-current' } }]);
  });

  it('knows problems of the text', () => {
    const slip = slow.replace('travel: 300 mm', 'travel: 300');
    const findings = compared(slow, slip).findings.filter(({ after }) => after?.code === 'unit-missing');
    expect(findings).toMatchObject([{ change: 'new', after: { severity: 'error', subject: '', place: 'axes/lift/travel' } }]);
  });
});

describe('what got worse', () => {
  const before = lift({ 'screw.speed-limit': '250 rpm' });
  const after = lift({ 'screw.speed-limit': '150 rpm' });
  const entry = (until = '2030-01-01'): string => `accepted:\n  - { check: screw-too-fast-for-its-maker, at: axes/lift/drive/screw, reason: short moves only, by: R. Okafor, until: ${until} }\n`;

  it('is refused from the severity on that is named', () => {
    const comparison = compared(before, after);
    const of = (failOn: 'error' | 'warning'): boolean | undefined => worseningsOf(comparison, { failOn }).find((one) => one.kind === 'finding' && one.finding.code === 'screw-too-fast-for-its-maker')?.refused;
    expect(of('warning')).toBe(true);
    expect(of('error')).toBe(false);
    expect(worseningsOf(compared(after, before), refused)).toEqual([]);
  });

  it('is none where the description accepts it with a reason, and is again when the day is over', () => {
    expect(worseningsOf(compared(before, after + entry()), refused).filter((one) => one.refused)).toEqual([]);
    const on = (text: string) => machineState(new Snapshots(() => undefined, { today: () => '2030-01-02' }).take(machineUri, text));
    expect(worseningsOf(compareMachines(on(before), on(after + entry())), refused).filter((one) => one.refused)).toHaveLength(1);
    expect(compared(after, after + entry()).findings.map(({ change }) => change)).toContain('accepted');
    expect(compared(after, after + entry()).accepted.new).toMatchObject([{ check: 'screw-too-fast-for-its-maker', by: 'R. Okafor' }]);
    // To take the entry out again is worse than to leave it.
    expect(worseningsOf(compared(after + entry(), after), refused).filter((one) => one.refused)).toHaveLength(1);
  });

  it('counts margins only where a loss is limited, to the last part', () => {
    // 200 rpm of 400 and of 320: 50 % and 62.5 % used, 12.5 points lost: hand calculation.
    const comparison = compared(lift({ 'screw.speed-limit': '400 rpm' }), lift({ 'screw.speed-limit': '320 rpm' }));
    const of = (marginLoss?: number) => worseningsOf(comparison, { failOn: 'warning', ...(marginLoss === undefined ? {} : { marginLoss }) });
    expect(of()).toMatchObject([{ kind: 'margin', refused: false, lost: expect.closeTo(0.125, 9) as number }]);
    expect(of(0.13)[0]?.refused).toBe(false);
    expect(of(0.125)[0]?.refused).toBe(false);
    expect(of(0.12)[0]?.refused).toBe(true);
  });

  it('leads with the worst', () => {
    const worse = worseningsOf(compared(example('belt-hoist/mended.machine.yaml'), example('belt-hoist/first-draft.machine.yaml')), refused);
    const severities = worse.flatMap((one) => (one.kind === 'finding' ? [one.finding.severity] : []));
    expect(severities.slice(0, 3)).toEqual(['error', 'error', 'error']);
    const flags = worse.map((one) => one.refused);
    expect(flags).toEqual([...flags].sort((a, b) => Number(b) - Number(a)));
    const [first] = worse;
    expect(first && worseLine(first)).toMatchObject({ what: 'error', where: expect.stringContaining('axis dip') as string });
  });

  it('is everything that is found in a file that was not there, and nothing in one that is gone', () => {
    const added = compared(undefined, after);
    expect(added.state).toBe('new');
    expect(added.figures.every(({ change }) => change === 'new')).toBe(true);
    expect(worseningsOf(added, refused).some((one) => one.refused)).toBe(true);
    const gone = compared(after, undefined);
    expect(gone.state).toBe('gone');
    expect(worseningsOf(gone, refused)).toEqual([]);
  });
});

describe('a comparison of cost', () => {
  it('tells sums, their differences and the parts that differ', () => {
    // Two units: 2 × 14.50 = 29 EUR, then 2 × 19.90 = 39.80 EUR: 10.80 EUR more.
    const { cost } = compared(lift({ 'motor.price': '14.50 EUR' }), lift({ 'motor.price': '19.90 EUR' }));
    expect(cost.differences).toEqual([{ currency: 'EUR', nominal: 10.8, low: 10.8, high: 10.8 }]);
    expect(cost.parts).toMatchObject([{ change: 'changed', before: { id: 'parts/lift-motor' }, after: { pieces: 2, price: { nominal: 19.9 } } }]);
    expect(compared(lift({ brake: null }), lift()).cost.parts).toMatchObject([{ change: 'new', after: { title: 'Brake of lift', pieces: 2 } }]);
  });

  it('does not convert currencies', () => {
    const { differences } = compared(lift({ 'motor.price': '10 EUR' }), lift({ 'motor.price': '10 USD' })).cost;
    expect(differences.map(({ currency, nominal }) => [currency, nominal])).toEqual([['EUR', -20], ['USD', 20]]);
  });
});

describe('the review comment', () => {
  it('leads with what got worse, folds the tables away, and holds nothing of a text as markup', () => {
    const before = lift({ 'screw.speed-limit': '250 rpm' });
    const after = `${lift({ 'screw.speed-limit': '150 rpm' })}accepted:\n  - { check: screw-whirls, at: axes/lift, reason: "<b>|x|</b>", by: "@everyone" }\n`;
    const comparison = compared(before, after);
    const text = comparisonMarkdown('lift.machine.yaml', comparison, worseningsOf(comparison, refused));
    expect(text).toMatch(/^### lift\.machine\.yaml\n\n- \*\*Worse: warning\*\*, screw-too-fast-for-its-maker, axis lift: /);
    expect(text).not.toContain('<b>');
    expect(text).not.toMatch(/(?<!\\)@everyone/);
    expect((text.match(/<details>/g) ?? []).length).toBe((text.match(/<\/details>/g) ?? []).length);
    for (const table of text.split('\n\n').filter((block) => block.startsWith('|'))) {
      const widths = table.split('\n').map((line) => line.replace(/\\\|/g, '').split('|').length);
      expect(new Set(widths).size).toBe(1);
    }
  });
});

describe('any two descriptions', () => {
  it('can be compared, and mirrored comparisons agree', () => {
    const texts = ['', 'machine: [', '- 1\n', lift(), example('hot-bed/exact.machine.yaml'), example('crossed-belt-table/cutting-table.machine.yaml')];
    const states = texts.map((text) => machineState(snapshotOf(text)));
    for (const one of states) {
      for (const other of states) {
        const [there, back] = [compareMachines(one, other), compareMachines(other, one)];
        expect(there.figures).toHaveLength(back.figures.length);
        expect(there.findings).toHaveLength(back.findings.length);
        comparisonMarkdown('x', there, worseningsOf(there, refused));
        if (one === other) expect(there.state).toBe('unchanged');
      }
    }
  });
});
