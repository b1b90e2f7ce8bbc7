import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analysedAfter, analyseText, cures, grave, name } from './support.ts';

const ABOUT_SUPPORTS = new Set(['under-constrained', 'supports-redundant', 'growth-jams', 'misalignment-jams', 'support-lifts-off', 'support-share-small', 'joint-overloaded', 'jam-outpulls-drive', 'float-too-small']);

/** Beds of all sorts; invented. Names as long as they may be, to see that messages and titles bear them. */
const LONG = 'the one behind at the left which was added only later on';
const place = (x: number, y: number) => fc.tuple(fc.integer({ min: x - 40, max: x + 40 }), fc.integer({ min: y - 40, max: y + 40 })).map(([a, b]) => [`${a} mm`, `${b} mm`]);
const more = fc.record({ offset: fc.constantFrom('0.05 mm', '0.3 mm'), 'load-limit': fc.constantFrom('15 N', '5 kN'), stiffness: fc.constantFrom('0.5 N/µm', '80 N/µm ± 20 %'), float: fc.constantFrom('0.05 mm', '1 mm') }, { requiredKeys: [] });
const guide = (x: number, y: number) => fc.record({ joint: fc.constantFrom('rail-carriage', 'carriage-on-ball', 'wheel-carriage', 'one-bushing', 'two-bushings', 'self-aligning-bushing', 'fork'), at: place(x, y), across: fc.constantFrom('x', 'y'), more })
  .map(({ more: rest, ...support }) => ({ ...support, ...rest }));
const nut = (x: number, y: number) => fc.record({ joint: fc.constantFrom('nut-rigid', 'nut-sliding-plate', 'nut-decoupled'), at: place(x, y), more }).map(({ more: rest, ...support }) => ({ ...support, ...rest }));
const beds = fc.record({
  supports: fc.record({ 'left rail': guide(-50, 100), [LONG]: guide(350, 100), 'screw 1': nut(0, 0), 'screw 2': nut(300, 0), 'screw 3': nut(150, 300) }),
  'mass.at': place(150, 60),
  'carried-part.temperature': fc.constantFrom('20 °C', '70 °C', '5 °C'),
  'carried-part.stiffness': fc.constantFrom('0.3 N/µm', '5 N/µm'),
}).map((changes) => yamlOf(machineWith('bed', changes)));

describe('a fork that points the wrong way', () => {
  // By hand: the carriage under a ball holds x and y; a fork across y, 400 mm beside it along x, holds the turn, one across x holds x again and leaves the turn free.
  it('is turned, before anything is bought', () => {
    const wrong = analyseText(yamlOf(machineWith('bed', { 'supports.right shaft': { joint: 'fork', at: ['350 mm', '100 mm'], across: 'x' } })));
    for (const check of ['under-constrained', 'supports-redundant', 'growth-jams']) {
      const finding = wrong.analysis.findings.find((one) => one.check === check);
      const [first, ...others] = finding ? cures(finding, wrong) : [];
      expect(first?.title, check).toBe('Turn the fork at right shaft (across: y): exactly constrained');
      // A layout that leaves a motion free is not called exact.
      for (const { title } of others) expect(title).not.toMatch(/^Fit a fork at left rail: exactly/);
      expect(first && grave(analysedAfter(first, wrong).analysis).map(name)).toEqual([]);
    }
  });
});

describe('supports of all sorts', () => {
  it('have messages of the agreed length and cures that cure', () => {
    fc.assert(fc.property(beds, (text) => {
      const before = analyseText(text);
      expect(before.documents.main.problems).toEqual([]);
      for (const finding of before.analysis.findings.filter(({ check }) => ABOUT_SUPPORTS.has(check))) {
        expect([...finding.message].length, finding.message).toBeLessThanOrEqual(240);
        expect(finding.message, finding.message).not.toMatch(/NaN|undefined|unknown|Infinity|\s\s|!/);
        if (!finding.certain) expect(finding.message).toMatch(/\b(may|up to|can)\b/i);
        for (const cure of cures(finding, before)) {
          const after = analysedAfter(cure, before);
          expect(after.analysis.findings.filter(({ check }) => check === finding.check).map(name), `${cure.title} leaves ${finding.check}`).toEqual([]);
          expect(cure.title.length, cure.title).toBeLessThanOrEqual(100);
          expect(after.documents.main.problems, cure.title).toEqual([]);
        }
      }
    }), { numRuns: 12 });
  }, 120_000);
});

describe('the cures of supports', () => {
  const titles = (changes: Readonly<Record<string, unknown>>, check: string): readonly string[] => {
    const analysed = analyseText(yamlOf(machineWith('bed', changes)));
    const finding = analysed.analysis.findings.find((one) => one.check === check);
    return finding ? cures(finding, analysed).map(({ title }) => title) : [];
  };
  // By hand: the bolted nut repeats two shifts and, with the drives held, both tilts: 4.
  it('let the nut float that fights, and tell the count', () => {
    expect(titles({ 'supports.screw 1': { joint: 'nut-rigid', at: ['0 mm', '0 mm'] } }, 'growth-jams')).toContain('Fit a floating nut at screw 1: exactly constrained');
    expect(titles({ 'supports.screw 1': { joint: 'nut-rigid', at: ['0 mm', '0 mm'] } }, 'growth-jams')).toContain('Fit a sliding nut at screw 1: 2 redundant instead of 4');
  });
  // The layout of cases.yaml of jam-outpulls-drive: 5 + 5 + 1 on rank 6, 5 redundant; with a fork for a carriage 5 + 1 + 1, 1 redundant.
  it('let one carriage go that stops the drive', () => {
    const rail = (x: string, more: object = {}) => ({ joint: 'rail-carriage', at: [x, '100 mm'], 'tilt-stiffness': '1000 N·m/rad', ...more });
    const stops = {
      'drive.units': 1, 'supports.screw 2': null, 'supports.screw 3': null, 'carried-part.temperature': '20 °C', 'carried-part.stiffness': '1000 N/µm',
      'guides.friction': '0.4', 'guides.guided-length': '50 mm', 'supports.left rail': rail('-50 mm', { tilt: '0.01 rad' }), 'supports.right shaft': rail('350 mm'),
    };
    expect(titles(stops, 'jam-outpulls-drive')).toContain('Fit a fork at right shaft: 1 redundant instead of 5');
  });
  // By hand: a tenth of the weight on the third nut needs the centre of gravity at y = 30 mm, 15 mm further in.
  it('shift the load as far as is needed', () => {
    expect(titles({ 'mass.at': ['150 mm', '15 mm'] }, 'support-share-small')[0]).toMatch(/^Shift what it carries by 1[5-7] mm /);
  });
  it('leave nothing grave of a bed that was only loose', () => {
    const loose = analyseText(yamlOf(machineWith('bed', { 'supports.right shaft': null })));
    const finding = loose.analysis.findings.find((one) => one.check === 'under-constrained');
    const [first] = finding ? cures(finding, loose) : [];
    expect(first && grave(analysedAfter(first, loose).analysis).map(name)).toEqual([]);
  });
});
