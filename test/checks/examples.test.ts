import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import { severityRank } from '../../server/src/checks/judge.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { example } from '../support/cursor.ts';

const analysed = (path: string) => {
  const document = readDocument(`file:///${path}`, example(path));
  return { document, analysis: analyse(document, []) };
};
const findingsOf = (path: string) => analysed(path).analysis.findings;
const grave = (path: string) => findingsOf(path).filter(({ severity }) => severityRank(severity) <= severityRank('warning'));

const draft = 'large-format-printer/first-draft.machine.yaml';
const mended = 'large-format-printer/mended.machine.yaml';
const inch = 'inch-router/bench-router.machine.yaml';

describe('the first draft of the large-format printer', () => {
  // By hand, 13.45 kg on two screws Tr8x8(P2), greased POM (µ 0.125): F2 = 13.45 · 9.80665/2 + (3 + 0.01 · 131.9)/2 + 13.45 · 0.5/2 = 71.5 N.
  // Holding: needs friction 0.353, POM has at most 0.20. Whirl: 4.30e7 · 5.5²/7/640² = 454 rpm, runs at 60/8 · 60 = 450. Nut of 6 mm, c 0.5: 2 · 71.5/(π · 7 · 6 · 0.5) = 2.17 MPa of 2.
  // Margin: 0.42/√2 · 1/1.5 = 0.198 N·m over 71.5 · 3.5 mm · 0.517 = 0.129 N·m and 0.004 for thrust bearing and inertia: 1.49.
  it.each([
    ['drops-unpowered', 'error'],
    ['screw-whirls', 'warning'],
    ['nut-overpressed-in-motion', 'warning'],
    ['motor-margin-thin', 'warning'],
  ])('%s, for certain', (check, severity) => {
    const found = findingsOf(draft).filter((finding) => finding.check === check);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ severity, certain: true });
  });

  it('has one error only: that the load drops', () => {
    expect(findingsOf(draft).filter(({ severity }) => severity === 'error').map(({ check }) => check)).toEqual(['drops-unpowered']);
  });
});

describe('the same machine, mended', () => {
  it('has no error and no warning, and keeps the cautions that must stay', () => {
    expect(grave(mended)).toEqual([]);
    const cautions = findingsOf(mended).flatMap(({ cautions: list }) => list);
    for (const caution of ['pinch-point', 'mains-voltage', 'hot-surface']) expect(cautions).toContain(caution);
  });
  it('says little else', () => {
    expect(findingsOf(mended).filter(({ severity }) => severity === 'information').map(({ check }) => check).sort()).toEqual(['heater-on-mains', 'hot-surface', 'pinch-point']);
  });
  it('moves the same masses over the same travel as the draft', () => {
    const masses = (path: string): string => /^masses:[^]*?^\n/m.exec(example(path))?.[0] ?? '';
    expect(masses(mended)).toBe(masses(draft));
    expect(example(mended)).toContain('travel: 600 mm');
  });
});

describe('the bench router', () => {
  it('has no error and no warning, and at most two informations', () => {
    expect(grave(inch)).toEqual([]);
    expect(findingsOf(inch).filter(({ severity }) => severity === 'information').length).toBeLessThanOrEqual(2);
  });
  it('is in inch units wherever the trade has them', () => {
    expect(example(inch)).not.toMatch(/\d\s*(mm|cm|kg|N)\b/);
  });
});

describe.each([draft, mended, inch])('%s', (path) => {
  it('has no slip in its text', () => {
    const { document, analysis } = analysed(path);
    expect(document.problems).toEqual([]);
    expect(analysis.problems).toEqual([]);
  });
});
