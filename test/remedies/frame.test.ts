import { describe, expect, it } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analysedAfter, analyseText, cures } from './support.ts';

/** What is offered for a finding, with numbers as #; each carried out and analysed afresh. */
function offered(check: string, changes: Readonly<Record<string, unknown>>): readonly string[] {
  const before = analyseText(yamlOf(machineWith('framed', changes)));
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
});
