import { describe, expect, it } from 'vitest';
import { example } from '../support/cursor.ts';
import { analysedAfter, analyseText, cures, grave, name, textAfter } from '../remedies/support.ts';

const jams = analyseText(example('hot-bed/jams-when-hot.machine.yaml'));
const exact = analyseText(example('hot-bed/exact.machine.yaml'));

const findingOf = (check: string) => {
  const found = jams.analysis.findings.find((finding) => finding.check === check);
  if (!found) throw new Error(`Nothing is found of ${check}.`);
  return found;
};

const comments = (text: string): readonly string[] => text.split('\n').flatMap((line) => /#.*$/.exec(line)?.[0] ?? []);

describe('the bed that jams when hot', () => {
  it('is found: it jams, and its supports fight', () => {
    expect(grave(jams.analysis).map(name).sort()).toEqual(['growth-jams (error)', 'supports-redundant (warning)']);
  });
  // By hand: aluminium 23 to 24e-6 from 18 to 26 °C up to 75 °C, steel 11 to 12.4e-6 up to 30 °C, at the worst 24e-6 · 57 − 11e-6 · 12 = 0.1236 % of 400 mm = 0.494 mm.
  it('says in one sentence what grows, by how much, and which two hold on', () => {
    expect(findingOf('growth-jams').message).toContain('the part outgrows the frame by 0.494 mm, but left rail and right rail both hold on');
  });
  // By hand: two carriages of 5 and three nuts of 4 and a thread on rank 6: 19 with the drives held.
  it('is cured by an offered change that tells the new count', () => {
    const titles = cures(findingOf('growth-jams'), jams).map(({ title }) => title);
    expect(titles.some((title) => title.endsWith(': exactly constrained'))).toBe(true);
    expect(titles.some((title) => title.endsWith('redundant instead of 19'))).toBe(true);
  });
  it.each(['growth-jams', 'supports-redundant'])('has every cure of %s keep comments and order, and leave the design quiet where it is exact', (check) => {
    const offered = cures(findingOf(check), jams);
    expect(offered.length).toBeGreaterThan(0);
    for (const cure of offered) {
      expect(comments(textAfter(cure, jams))).toEqual(comments(jams.documents.main.text));
      const after = analysedAfter(cure, jams);
      expect(after.analysis.findings.map((finding) => finding.check)).not.toContain(check);
      if (cure.title.endsWith('exactly constrained')) expect(grave(after.analysis)).toEqual([]);
    }
  });
});

describe('the same bed, exactly constrained', () => {
  it('has no error and no warning, and no slip in its text', () => {
    expect(grave(exact.analysis)).toEqual([]);
    for (const { documents, analysis } of [jams, exact]) expect([...documents.main.problems, ...analysis.problems]).toEqual([]);
  });
  it('differs in its joints and comments alone', () => {
    const bare = (text: string): string => text.replace(/ *#.*$/gm, '').replace(/^ *(?:left rail|right rail|screw \d): .*$/gm, '').replace(/\n+/g, '\n').trim();
    expect(bare(exact.documents.main.text)).toBe(bare(jams.documents.main.text));
  });
});
