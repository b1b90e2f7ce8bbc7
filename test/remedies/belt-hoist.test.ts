import { describe, expect, it } from 'vitest';
import { example } from '../support/cursor.ts';
import { analysedAfter, analyseText, cures, grave, inOrder, name, textAfter, type Analysed } from './support.ts';

const draft = analyseText(example('belt-hoist/first-draft.machine.yaml'));

const findingOf = (analysed: Analysed, check: string) => {
  const found = analysed.analysis.findings.find((finding) => finding.check === check);
  if (!found) throw new Error(`Nothing is found of ${check}.`);
  return found;
};

/** Numbers stand as #: they are the business of the figures, and no expected number comes from our own program. */
const masked = (title: string): string => title.replace(/(?<![A-Za-z])\d+(?:\.\d+)?/g, '#');

/** No more fixes than a person takes in one sitting. */
const FEW = 6;

function mended(from: Analysed): { readonly left: Analysed; readonly taken: readonly string[] } {
  let left = from;
  const taken: string[] = [];
  while (taken.length <= FEW) {
    const [gravest] = inOrder(grave(left.analysis));
    const [first] = gravest ? cures(gravest, left) : [];
    if (!first) break;
    taken.push(first.title);
    left = analysedAfter(first, left);
  }
  return { left, taken };
}

describe('the hoist on a belt', () => {
  it('drops, and has at least three proven remedies for it', () => {
    const titles = cures(findingOf(draft, 'drops-unpowered'), draft).map(({ title }) => masked(title));
    expect(titles.length).toBeGreaterThanOrEqual(3);
    // On the rail, at the motor, at the pulley; the last two do nothing when the belt breaks, and say so.
    expect(titles.slice(0, 3)).toEqual([
      'Clamp the rail by a spring-applied brake of # N: #× the load held with power off',
      'Fit a # N·m brake at the motor: #× the load held with power off, a broken belt still drops it',
      'Fit a # N·m brake at the pulley: #× the load held with power off, a broken belt still drops it',
    ]);
  });
  it('falls when its belt breaks, and a brake at the motor does not count as a cure of that', () => {
    const titles = cures(findingOf(draft, 'broken-belt-drops'), draft).map(({ title }) => title);
    expect(titles.some((title) => title.startsWith('Clamp the rail'))).toBe(true);
    expect(titles.some((title) => title.startsWith('Hang it on a second belt'))).toBe(true);
    expect(titles.filter((title) => / brake at the (?:motor|pulley)/.test(title))).toEqual([]);
  });
  it('is still told to fall where only a latch catches it, as information', () => {
    const latch = cures(findingOf(draft, 'drops-unpowered'), draft).find(({ remedies }) => remedies.includes('fit-a-latch'));
    const after = latch && analysedAfter(latch, draft);
    expect(after && findingOf(after, 'drops-unpowered').severity).toBe('information');
  });
  it('tells the note of the belt where the tension is to be set', () => {
    const [tighten] = cures(findingOf(draft, 'belt-goes-slack'), draft);
    expect(masked(tighten?.title ?? '')).toBe('Tighten the belt to # N: #× the tension needed, strum # Hz');
  });
  it('is free of errors and warnings after few fixes, the first one each time, with every comment kept', () => {
    const { left, taken } = mended(draft);
    expect(grave(left.analysis).map(name), taken.join(' | ')).toEqual([]);
    expect(taken.length).toBeLessThanOrEqual(FEW);
    const comments = (text: string): readonly string[] => text.match(/(?:(?<=\s)|^)#[^\r\n]*/gm) ?? [];
    expect(comments(left.documents.main.text)).toEqual(comments(draft.documents.main.text));
  });
  it('can be mended from every first step that is offered for the drop', () => {
    const drop = findingOf(draft, 'drops-unpowered');
    for (const cure of cures(drop, draft)) {
      const { left, taken } = mended(analyseText(textAfter(cure, draft)));
      expect(grave(left.analysis).map(name), [cure.title, ...taken].join(' | ')).toEqual([]);
    }
  }, 30_000);
});

describe('the examples that are mended', () => {
  it.each(['belt-hoist/mended.machine.yaml', 'crossed-belt-table/cutting-table.machine.yaml', 'large-format-printer/mended.machine.yaml', 'inch-router/bench-router.machine.yaml'])('have no error and no warning: %s', (path) => {
    const { documents, analysis } = analyseText(example(path));
    expect([...documents.main.problems, ...analysis.problems].map(({ message }) => message)).toEqual([]);
    expect(grave(analysis).map(name)).toEqual([]);
  });
});
