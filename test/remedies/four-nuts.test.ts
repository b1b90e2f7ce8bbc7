import { describe, expect, it } from 'vitest';
import { example } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analysedAfter, analyseText, cures, grave, inOrder, name, textAfter, type Analysed } from './support.ts';

const built = analyseText(example('four-nuts/as-built.machine.yaml'));
const mended = analyseText(example('four-nuts/mended.machine.yaml'));

const findingOf = (analysed: Analysed, check: string) => {
  const found = analysed.analysis.findings.find((finding) => finding.check === check);
  if (!found) throw new Error(`Nothing is found of ${check}.`);
  return found;
};
const boundsOf = (analysed: Analysed, id: string) => analysed.analysis.evaluations.find(({ subject }) => subject.kind === 'drive')?.bounds(id)?.nominal;
const comments = (text: string): readonly string[] => text.split('\n').flatMap((line) => /#.*$/.exec(line)?.[0] ?? []);

/** The first fix that is offered, again and again, until none is. */
function mendedByFirsts(start: Analysed): Analysed {
  let now = start;
  for (let step = 0; step < 6; step++) {
    const first = inOrder(now.analysis.findings).filter(({ severity }) => severity === 'error' || severity === 'warning').flatMap((finding) => cures(finding, now).slice(0, 1))[0];
    if (!first) return now;
    now = analysedAfter(first, now);
  }
  return now;
}

describe('four bolted nuts without a guide', () => {
  // Counted by hand before: each nut passes 2 forces and 2 couples, with its screw held the thread too. Held 4 · 5 = 20 of which 6 count: 14; running 4 · 4 = 16 of which 5 count: 11.
  it('hold the table 14 times too often, 11 times while they run, and leave it nothing', () => {
    expect([boundsOf(built, 'supports.redundant-held'), boundsOf(built, 'supports.redundant'), boundsOf(built, 'supports.freedoms-drives-held')]).toEqual([14, 11, 0]);
  });
  it('are found, and told with their names and what comes of it', () => {
    expect(grave(built.analysis).map(name).sort()).toEqual(['misalignment-jams (warning)', 'supports-redundant (warning)']);
    const { message } = findingOf(built, 'supports-redundant');
    expect(message).toContain('screw 1, screw 2, screw 3 and screw 4 all fix tilt about X and Y');
    expect(message).toContain('fight over place and tilt: it cannot be trued, it squeals and stops');
    expect([...message].length).toBeLessThanOrEqual(240);
  });
  // Three floating nuts hold the height and two tilts, a bushing two shifts, a fork the turn: 3 + 2 + 1 = 6 of 6.
  it.each(['supports-redundant', 'misalignment-jams'])('are cured of %s by guides and three lifts, with the count in the title', (check) => {
    const [first] = cures(findingOf(built, check), built);
    expect(first?.title).toBe('Lift by 3 floating nuts, not 4, guide by 2 shafts: exactly constrained instead of 14 redundant');
    const text = first ? textAfter(first, built) : '';
    expect(comments(text)).toEqual(comments(built.documents.main.text));
    expect(text).toContain('units: 3');
    expect(text).toMatch(/^ {6}guide shaft: \{ joint: self-aligning-bushing, at: \[.*\] \}$/m);
    expect(text).toMatch(/^ {6}second shaft: \{ joint: fork, at: \[.*\], across: y \}$/m);
    // The two at the rear become one in the middle of its side, so that each still carries; a fourth of the weight on the others.
    expect(text).toContain('at: [180 mm, 240 mm]');
    const after = first && analysedAfter(first, built);
    expect(after && boundsOf(after, 'supports.share-least')).toBeCloseTo(0.25, 6);
  });
  it('end with nothing grave, and exact, when the first fix is taken again and again', () => {
    const end = mendedByFirsts(built);
    expect(grave(end.analysis).map(name)).toEqual([]);
    expect([boundsOf(end, 'supports.redundant-held'), boundsOf(end, 'supports.freedoms-drives-held')]).toEqual([0, 0]);
    expect([...end.documents.main.problems, ...end.analysis.problems]).toEqual([]);
  });
});

describe('the same table, mended', () => {
  it('has no error and no warning, and no slip in its text', () => {
    expect(grave(mended.analysis).map(name)).toEqual([]);
    for (const { documents, analysis } of [built, mended]) expect([...documents.main.problems, ...analysis.problems]).toEqual([]);
    expect([boundsOf(mended, 'supports.redundant-held'), boundsOf(mended, 'supports.freedoms-drives-held')]).toEqual([0, 0]);
  });
  it('lifts the same masses over the same travel', () => {
    const masses = (text: string): string => /^masses:[^]*?^\n/m.exec(text)?.[0] ?? '';
    expect(masses(mended.documents.main.text)).toBe(masses(built.documents.main.text));
    expect(mended.documents.main.text).toContain('travel: 250 mm');
  });
});

describe('guides added to other beds', () => {
  const nuts = (kind: string, places: readonly (readonly [number, number])[]): Record<string, unknown> =>
    Object.fromEntries(places.map(([x, y], i) => [`supports.screw ${i + 1}`, { joint: kind, at: [`${x} mm`, `${y} mm`] }]));
  const bed = (changes: Record<string, unknown>): Analysed => analyseText(yamlOf(machineWith('bed', changes)));
  const noGuides = { 'supports.left rail': null, 'supports.right shaft': null };
  const titles = (analysed: Analysed, check: string): readonly string[] => cures(findingOf(analysed, check), analysed).map(({ title }) => title);

  // 15 of which 6 count: 9 redundant.
  it('three bolted nuts: nothing is moved or left out', () => {
    const three = bed({ ...noGuides, ...nuts('nut-rigid', [[0, 0], [300, 0], [150, 300]]) });
    expect(titles(three, 'growth-jams')).toContain('Lift by 3 floating nuts, guide by 2 shafts: exactly constrained instead of 9 redundant');
  });
  // 4 · 5 + 4 · 4 = 36 of which 6 count: 30.
  it('four bolted nuts and four shafts: two shafts go as well', () => {
    const shaft = (x: number, y: number) => ({ joint: 'two-bushings', at: [`${x} mm`, `${y} mm`] });
    const four = bed({
      'supports.left rail': shaft(-50, 0), 'supports.right shaft': shaft(350, 0), 'supports.third shaft': shaft(-50, 300), 'supports.fourth shaft': shaft(350, 300),
      ...nuts('nut-rigid', [[0, 0], [300, 0], [0, 300], [300, 300]]), 'drive.units': 4, 'mass.at': ['150 mm', '150 mm'],
    });
    expect(titles(four, 'supports-redundant')).toContain('Lift by 3 floating nuts, not 4, guide by 2 of 4 guides: exactly constrained instead of 30 redundant');
  });
  // 3 + 1 + 2 of the exact bed and one lift more: 1 redundant.
  it('a fourth floating nut goes, and the guides stay as they are', () => {
    const four = bed({ 'supports.screw 4': { joint: 'nut-decoupled', at: ['150 mm', '-100 mm'] }, 'drive.units': 4 });
    expect(titles(four, 'supports-redundant')).toContain('Lift by 3 floating nuts, not 4: exactly constrained instead of 1 redundant');
  });
  it('a written mounting of the nuts goes along', () => {
    const rigid = bed({ ...noGuides, ...nuts('nut-rigid', [[0, 0], [300, 0], [150, 300]]), 'nut.mounting': 'rigid' });
    const [first] = cures(findingOf(rigid, 'supports-redundant'), rigid);
    expect(first && textAfter(first, rigid)).toMatch(/mounting: decoupled/);
  });
  // Three floating nuts alone: x, y and the turn are free; 2 of a bushing and 1 of a fork.
  it('a bed on floating nuts alone gets the guides that it lacks', () => {
    const loose = bed(noGuides);
    expect(titles(loose, 'under-constrained')[0]).toBe('Add a shaft with a self-aligning bushing and a fork on a further shaft: exactly constrained');
  });
  it('a bed without its fork gets one', () => {
    expect(titles(bed({ 'supports.right shaft': null }), 'under-constrained')).toContain('Add a fork on a further shaft: exactly constrained');
  });
  it('a float that is too small is made as large as it has to be', () => {
    // 400 mm · 0.12 % = 0.48 mm, rounded up to 0.5 mm.
    const tight = bed({ 'supports.right shaft': { joint: 'fork', at: ['350 mm', '100 mm'], across: 'y', float: '0.2 mm' } });
    expect(titles(tight, 'float-too-small')[0]).toMatch(/^Let right shaft slide 0\.5 mm each way/);
  });
});
