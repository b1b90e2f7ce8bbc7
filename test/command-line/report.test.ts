import { describe, expect, it } from 'vitest';
import { fileReport } from '../../server/src/command-line/check-report.ts';
import { findingLinesOf } from '../../server/src/command-line/check-lines.ts';
import type { FindingRow } from '../../server/src/command-line/findings.ts';
import { SourceLines } from '../../server/src/command-line/source-lines.ts';
import { columnsOf, styleOf, wantsColor } from '../../server/src/command-line/style.ts';
import { tableLines } from '../../server/src/command-line/table.ts';
import { summarize } from '../../server/src/command-line/summary.ts';
import { Snapshots } from '../../server/src/services/snapshot.ts';

/** A file with given findings, whatever the checks would say. */
function file(text: string, findings: readonly (Partial<FindingRow> & { readonly at: string })[]) {
  const lines = new SourceLines(text);
  const snapshot = new Snapshots(() => undefined).take('file:///work/heron.machine.yaml', text);
  return {
    machine: { path: 'heron.machine.yaml', snapshot, lines },
    findings: findings.map(({ at, ...finding }): FindingRow => {
      const start = text.indexOf(at);
      const span = { start, end: start + at.length };
      return { code: 'screw-whips', severity: 'error', message: 'It whips.', cautions: [], related: [], fixes: [], entry: '', span, start: lines.placeOf(span.start), end: lines.placeOf(span.end), ...finding };
    }),
  };
}

const text = 'machine: Hérön 😀\r\nmasses:\r\n  lift: { mass: 4.20 kg }  # µ\r\n';
const gravity = 'Gravity-loaded axis: a load that is not held mechanically can fall when power is lost. Support it before working beneath it.';
const where = { path: 'heron.machine.yaml', start: { line: 1, column: 10 }, end: { line: 1, column: 15 } };

describe('the report for people', () => {
  it('shows a finding with its place, what led to it, its cautions and its cures', () => {
    const report = fileReport(
      file(text, [
        {
          at: '4.20 kg',
          message: 'Screw turns at 900 rpm, 118 % of the 763 rpm at which it starts to whirl: it will whip. Support the far end, or slow the axis.',
          related: [{ ...where, message: 'Name: Hérön' }, { ...where, path: 'stock.parts.yaml', message: 'Root diameter: 8.5 mm' }],
          cautions: [gravity],
          fixes: [{ kind: 'remedy', title: 'Support the far end: whirl at 41 % instead of 118 %', changes: [] }],
        },
        { at: 'lift', severity: 'hint', code: 'could-be-better', message: 'Short.', cautions: [gravity] },
      ]),
      { columns: 60, style: styleOf(false) },
    );
    expect(report).toBe(`heron.machine.yaml

  error  screw-whips  3:17
  Screw turns at 900 rpm, 118 % of the 763 rpm at which it
  starts to whirl: it will whip. Support the far end, or
  slow the axis.
     3 |   lift: { mass: 4.20 kg }  # µ
       |                 ^^^^^^^
    line 1: Name: Hérön
    stock.parts.yaml:1: Root diameter: 8.5 mm
    caution: Gravity-loaded axis: a load that is not held
      mechanically can fall when power is lost. Support it
      before working beneath it.
    fix: Support the far end: whirl at 41 % instead of 118 %

  hint  could-be-better  3:3
  Short.
     3 |   lift: { mass: 4.20 kg }  # µ
       |   ^^^^
    caution: Gravity-loaded axis, as above.
`);
  });

  it('colours with escapes of its own only', () => {
    const report = fileReport(file(text, [{ at: '4.20 kg', message: 'a\u001b[31mb' }]), { columns: 60, style: styleOf(true) });
    expect(report).toContain('\u001b[31merror\u001b[0m');
    expect(report).toContain('\u001b[31m^^^^^^^\u001b[0m');
    expect(report).toContain('a␛[31mb');
  });

  it('keeps to the width', () => {
    for (const columns of [40, 60, 80, 120]) {
      const report = fileReport(file(text, [{ at: '4.20 kg', message: 'word '.repeat(60), cautions: [gravity] }]), { columns, style: styleOf(false) });
      for (const line of report.split('\n')) expect(line.length, `${columns}: ${line}`).toBeLessThanOrEqual(columns);
    }
  });
});

it('one line a finding holds everything that people need', () => {
  expect(findingLinesOf(file(text, [{ at: '4.20 kg', cautions: [gravity] }]))).toBe(`heron.machine.yaml:3:17: error: It whips. Caution: ${gravity} [screw-whips]\n`);
});

describe('colour', () => {
  it.each([
    ['a terminal is coloured', {}, 'auto', true, true],
    ['a file is not', {}, 'auto', false, false],
    ['the switch asks for it', {}, 'always', false, true],
    ['the switch forbids it', {}, 'never', true, false],
    ['FORCE_COLOR goes before the switch', { FORCE_COLOR: '1' }, 'never', false, true],
    ['FORCE_COLOR may forbid too', { FORCE_COLOR: '0' }, 'always', true, false],
    ['NO_COLOR goes before everything', { NO_COLOR: '1', FORCE_COLOR: '1' }, 'always', true, false],
    ['an empty NO_COLOR says nothing (no-color.org)', { NO_COLOR: '' }, 'auto', true, true],
    ['a dumb terminal has none', { TERM: 'dumb' }, 'auto', true, false],
  ] as const)('%s', (_, env, choice, isTerminal, expected) => {
    expect(wantsColor(env, choice, isTerminal)).toBe(expected);
  });

  it('and width: of the terminal, of COLUMNS, else 80, within reason', () => {
    expect(columnsOf({}, 100)).toBe(100);
    expect(columnsOf({ COLUMNS: '64' }, undefined)).toBe(64);
    expect(columnsOf({}, undefined)).toBe(80);
    expect(columnsOf({ COLUMNS: 'wide' }, undefined)).toBe(80);
    expect(columnsOf({}, 10)).toBe(40);
    expect(columnsOf({}, 500)).toBe(120);
  });
});

describe('a table', () => {
  const columns = [{ title: 'figure' }, { title: 'value', gives: true }, { title: 'limit' }];

  it('is aligned by cells, and leaves empty columns out', () => {
    expect(tableLines(columns, [['Wärme 鋼', '1 K', ''], ['n', '763 rpm', '']], 2, 40)).toEqual(['  figure    value', '  Wärme 鋼  1 K', '  n         763 rpm']);
  });

  it('breaks the column that gives way', () => {
    expect(tableLines(columns, [['a', 'one two three four', 'x']], 0, 32)).toEqual(['figure  value              limit', 'a       one two three      x', '        four']);
  });
});

describe('the last line', () => {
  const some = (...severities: FindingRow['severity'][]) => [{ ...file(text, severities.map((severity) => ({ at: 'lift', severity }))) }];
  it.each([
    [some(), 'error', 'No findings in 1 file. Exit status 0: no finding is an error.'],
    [some('warning', 'warning'), 'error', '2 warnings in 1 file. Exit status 0: no finding is an error.'],
    [some('warning', 'error'), 'error', '1 error and 1 warning in 1 file. Exit status 1: at least one finding is an error.'],
    [some('warning'), 'warning', '1 warning in 1 file. Exit status 1: at least one finding is a warning or graver.'],
    [some('information', 'hint', 'hint'), 'warning', '1 information and 2 hints in 1 file. Exit status 0: no finding is a warning or graver.'],
  ] as const)('%#', (files, failOn, sentence) => {
    expect(summarize(files, { failures: [], unmatched: [] }, failOn, false).sentence).toBe(sentence);
  });
});
