import { describe, expect, it } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analysedAfter, analyseText, cures } from './support.ts';

/** What is offered for a finding, with numbers as #; each carried out and analysed afresh. */
function offered(check: string, changes: Readonly<Record<string, unknown>>, base = 'framed'): readonly string[] {
  const before = analyseText(yamlOf(machineWith(base, changes)));
  const finding = before.analysis.findings.find((one) => one.check === check);
  if (!finding) throw new Error(`no ${check}: ${before.analysis.findings.map((one) => one.check).join()}`);
  return cures(finding, before).map((cure) => {
    expect(analysedAfter(cure, before).analysis.findings.filter((one) => one.check === check), cure.title).toEqual([]);
    return cure.title.replaceAll(/\d+(?:\.\d+)?/g, '#');
  });
}

const starts = (titles: readonly string[], beginnings: readonly string[]): void => {
  for (const beginning of beginnings) expect(titles.some((title) => title.startsWith(beginning)), `${beginning}\n${titles.join('\n')}`).toBe(true);
};

describe('frames', () => {
  it('without a brace in one direction get a diagonal or a panel there', () => {
    starts(offered('frame-unbraced', { 'frame-box.braced-y': 'none', 'frame-box.brace-area': '150 mm²', 'frame-box.brace-fastening': '0.5 to 1' }), ['Brace the box along y with a diagonal', 'Screw a steel sheet of # mm to the side along y']);
  });
  it('without any brace get panels both ways', () => {
    starts(offered('frame-unbraced', { 'frame-box.braced-x': 'none', 'frame-box.braced-y': null, 'frame-box.panel-material': null, 'frame-box.panel-thickness': null }), ['Screw a steel sheet of # mm to the side along x and y']);
  });
  it('that sway in spite of a panel of plywood get one of steel', () => {
    starts(offered('frame-sways-slowly', { 'frame-box.panel-material': 'plywood', 'frame-box.panel-thickness': '2 mm' }), ['Screw a steel sheet of # mm']);
  });
  it.each(['frame-tips', 'frame-walks'])('that move on their feet (%s) are accelerated less', (check) => {
    starts(offered(check, { 'frame-box.moving-mass': '10 kg', 'frame-box.acceleration': '16 m/s²' }), ['Slow the acceleration to # m/s²']);
  });
  it('whose gantry sags get a larger profile or clamped ends', () => {
    starts(offered('gantry-sag-over-tolerance', { 'frame-gantry.section': '20x40', 'frame-gantry.sag-tolerance': '0.05 mm' }), ['Take a gantry beam of # x # mm', 'Clamp the ends of the gantry']);
  });
  it('whose box rings get diagonals, a panel or a slower move', () => {
    starts(offered('frame-box-rings', { 'frame-box.braced-y': 'none', 'frame-box.acceleration': '2 m/s²', 'frame-box.brace-area': '150 mm²', 'frame-box.brace-fastening': '0.5 to 1', 'frame.tolerance': '0.05 mm' }), ['Brace the box along y', 'Screw a steel sheet of # mm']);
  });
  it('whose gantry rings get a larger profile, clamped ends or a slower move', () => {
    starts(offered('gantry-rings', { 'frame-gantry.section': '20x40', 'frame.acceleration': '3 m/s²', 'frame.tolerance': '0.1 mm' }), ['Take a gantry beam of', 'Clamp the ends of the gantry', 'Slow the acceleration to # m/s²']);
  });
});

describe('frames of members', () => {
  /** A portal in its own plane; a foot behind each column, so that struts find something to stand on. */
  const points = {
    'foot left': { at: ['0 mm', '0 mm', '0 mm'], held: 'placed' }, 'foot right': { at: ['600 mm', '0 mm', '0 mm'], held: 'placed' },
    'rear left': { at: ['0 mm', '300 mm', '0 mm'], held: 'placed' }, 'rear right': { at: ['600 mm', '300 mm', '0 mm'], held: 'placed' },
    'top left': { at: ['0 mm', '0 mm', '400 mm'] }, tool: { at: ['300 mm', '0 mm', '400 mm'], mass: '3 kg' }, 'top right': { at: ['600 mm', '0 mm', '400 mm'] },
  };
  const bars = {
    left: { from: 'foot left', to: 'top left' }, right: { from: 'foot right', to: 'top right' }, beam: { from: 'top left', to: 'top right' },
    'left rail': { from: 'foot left', to: 'rear left' }, 'right rail': { from: 'foot right', to: 'rear right' }, 'rear rail': { from: 'rear left', to: 'rear right' },
  };
  const soft = { 'frame.points': points, 'frame.members': bars, 'frame.joint': 'corner-bracket-both-sides' };
  it('that ring get diagonals', () => {
    starts(offered('frame-rings', { ...soft, 'frame.acceleration': '3 m/s²', 'frame.moving-mass': '2 kg', 'frame.tolerance': '0.1 mm' }, 'portal'), ['Add #']);
  });
  it('that sway get diagonals', () => {
    starts(offered('frame-unbraced-direction', soft, 'portal'), ['Add #']);
  });
  it('on pins get diagonals and brackets, since brackets alone let them sway', () => {
    starts(offered('frame-is-loose', { ...soft, 'frame.joint': 'pinned' }, 'portal'), ['Add # diagonals to top left and top right and put brackets on the corners']);
  });
  it('get their diagonals in the make of the member beside, under a name that is free', () => {
    const before = analyseText(yamlOf(machineWith('portal', { ...soft, 'frame.profile': null, 'frame.members': Object.fromEntries(Object.entries(bars).map(([title, bar]) => [title === 'left' ? 'diagonal 1' : title, { ...bar, profile: '40x40-light', notes: 'own' }])) })));
    const finding = before.analysis.findings.find((one) => one.check === 'frame-unbraced-direction');
    const added = finding ? cures(finding, before).find(({ remedies }) => remedies.includes('add-a-diagonal')) : undefined;
    expect(added?.changes[0]).toMatchObject({ place: { path: ['frame', 'members', 'diagonal 2'] }, value: { profile: '40x40-light' } });
    expect(added?.changes[0]?.value).not.toHaveProperty('notes');
  });
});
