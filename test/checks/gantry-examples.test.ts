import { describe, expect, it } from 'vitest';
import type { Finding } from '../../server/src/checks/judge.ts';
import { example } from '../support/cursor.ts';
import { analysedAfter, analyseText, cures, grave, name, textAfter, type Analysed } from '../remedies/support.ts';

const sways = analyseText(example('open-gantry/sways.machine.yaml'));
const braced = analyseText(example('open-gantry/braced.machine.yaml'));

const findingOf = (check: string): Finding => {
  const found = sways.analysis.findings.find((finding) => finding.check === check);
  if (!found) throw new Error(`Nothing is found of ${check}.`);
  return found;
};

const comments = (text: string): readonly string[] => text.split('\n').flatMap((line) => /#.*$/.exec(line)?.[0] ?? []);

describe('the open portal', () => {
  it('is found: it rings over its tolerance', () => {
    expect(grave(sways.analysis).map(name)).toEqual(['frame-rings (warning)']);
  });
  it('says along which direction, how far, and of what that is much', () => {
    expect(findingOf('frame-rings').message).toMatch(/^Frame lets the tool ring by .* mm along y after a jerk, up to \d+ % of the tolerance: moves leave waves\./);
  });
  it('takes the force of the axis that pushes hardest: 1.7 kg at 2.5 m/s² across, not 0.8 kg forth', () => {
    const machine = sways.analysis.evaluations.find(({ subject }) => subject.kind === 'machine');
    expect(machine?.bounds('frame.moving-mass')?.nominal).toBeCloseTo(1.7, 9);
    expect(machine?.bounds('frame.acceleration')?.nominal).toBeCloseTo(2.5, 9);
    expect(machine?.bounds('frame.tolerance')?.nominal).toBeCloseTo(0.0003, 12);
  });
  it('is cured by the first fix that is offered, and again, until nothing grave is left', () => {
    let now: Analysed = sways;
    for (let round = 0; round < 4 && grave(now.analysis).length > 0; round++) {
      const [finding] = grave(now.analysis);
      const [first] = finding ? cures(finding, now) : [];
      expect(first, finding?.message).toBeDefined();
      if (!first) return;
      expect(comments(textAfter(first, now))).toEqual(comments(now.documents.main.text));
      now = analysedAfter(first, now);
    }
    expect(grave(now.analysis)).toEqual([]);
    expect([...now.documents.main.problems, ...now.analysis.problems]).toEqual([]);
  });
  it('gets diagonals that leave the room between head and tray free', () => {
    const cure = cures(findingOf('frame-rings'), sways).find(({ remedies }) => remedies.includes('add-a-diagonal'));
    expect(cure?.title).toContain('diagonals to top left and top right');
    const text = cure ? textAfter(cure, sways) : '';
    // From foot to foot of the portal across its opening would be from left or right.
    expect(text).not.toMatch(/diagonal \d: \{ from: (?:left|right),/);
    expect(text).toContain('diagonal 1:');
  });
});

describe('the same portal, braced', () => {
  it('has no error and no warning, and no slip in its text', () => {
    expect(grave(braced.analysis)).toEqual([]);
    for (const { documents, analysis } of [sways, braced]) expect([...documents.main.problems, ...analysis.problems]).toEqual([]);
  });
  it('differs in struts, joints and comments alone', () => {
    const bare = (text: string): string => text.replace(/ *#.*$/gm, '').replace(/^ *(?:strut \d|joint): .*$/gm, '').replace(/\n+/g, '\n').trim();
    expect(bare(braced.documents.main.text)).toBe(bare(sways.documents.main.text));
  });
});
