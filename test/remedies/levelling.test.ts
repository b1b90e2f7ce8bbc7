import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analysedAfter, analyseText, cures, name, type Analysed } from './support.ts';

const bed = (levelling: Readonly<Record<string, unknown>>, changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('bed', { levelling: { 'moved-by': 'own-motors', ...levelling }, ...changes }));
function titles(text: string, check: string): readonly string[] {
  const analysed = analyseText(text);
  const finding = analysed.analysis.findings.find((one) => one.check === check);
  if (!finding) throw new Error(`no ${check} among ${analysed.analysis.findings.map(name).join()}`);
  return cures(finding, analysed).map(({ title }) => title);
}

describe('the cures of levelling', () => {
  // By hand: the bolted carriage repeats both tilts of the three nuts and, beside the fork, the turn: 3 redundant. Under a ball it holds x and y alone.
  it('free the tilt by another joint', () => {
    expect(titles(bed({}, { 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } }), 'levelling-fights-guides')).toContain('Fit a carriage under a ball at left rail: exactly constrained');
  });
  it('let a nut that stands still be a lift too', () => {
    const four = { 'supports.screw 4': { joint: 'nut-decoupled', at: ['150 mm', '100 mm'] } };
    expect(titles(bed({ lifts: ['screw 1', 'screw 2', 'screw 3'] }, four), 'levelling-fights-guides')).toContain('Level by screw 4 too: free to tilt, one lift more to set');
  });
  it('do not, where heights were measured at three', () => {
    const four = { 'supports.screw 4': { joint: 'nut-decoupled', at: ['150 mm', '100 mm'] } };
    expect(titles(bed({ lifts: ['screw 1', 'screw 2', 'screw 3'], heights: ['0 mm', '0.1 mm', '0 mm'] }, four), 'levelling-fights-guides').join()).not.toContain('Level by');
  });
  // Full step of Tr12x3: 15 µm; 2 microsteps to it are 7.5 µm of a third of 20 µm = 6.7 µm, 4 are 3.75 µm.
  it('take finer steps', () => {
    const coarse = bed({}, { 'controller.microsteps': 2, 'axis.layer-height': '20 µm' });
    expect(titles(coarse, 'levelling-too-coarse').join('\n')).toMatch(/^Send 4 microsteps to the full step: /m);
  });
  it('hold the screws', () => {
    const found = titles(bed({}, { brake: null, 'screw.size': 'Tr8x8(P2)', 'motor.detent-torque': '1 N·mm' }), 'levelling-lost-unpowered');
    expect(found.some((title) => /brake.*: level is kept$/.test(title)), found.join('\n')).toBe(true);
  });
});

/** Beds of all sorts, levelled in all sorts of ways; invented. */
const LONG = 'the one behind at the left which was added only later on';
const joint = fc.constantFrom('rail-carriage', 'carriage-on-ball', 'two-bushings', 'one-bushing', 'self-aligning-bushing');
const nut = fc.constantFrom('nut-rigid', 'nut-sliding-plate', 'nut-decoupled');
const at = (x: number, y: number) => [`${x} mm`, `${y} mm`];
const heights = fc.array(fc.integer({ min: -300, max: 300 }).map((n) => `${n / 100} mm`), { minLength: 3, maxLength: 3 });
const beds = fc.record({ rail: joint, first: nut, others: nut, heights: fc.option(heights, { nil: undefined }), range: fc.option(fc.constantFrom('0.4 mm', '2 mm ± 20 %'), { nil: undefined }), steepest: fc.constantFrom('0.1°', '0.5° ± 10 %', '2°'), brake: fc.boolean() }).map((one) => {
  const levelling = Object.fromEntries(Object.entries({ heights: one.heights, range: one.range, steepest: one.steepest }).filter(([, value]) => value !== undefined));
  return bed(levelling, {
    [`supports.${LONG}`]: { joint: one.rail, at: at(-50, 100) }, 'supports.left rail': null,
    'supports.screw 1': { joint: one.first, at: at(0, 0) }, 'supports.screw 2': { joint: one.others, at: at(300, 0) }, 'supports.screw 3': { joint: one.others, at: at(150, 300) },
    'axis.layer-height': '20 µm', ...(one.brake ? {} : { brake: null, 'screw.size': 'Tr8x8(P2)' }),
  });
});

describe('levelling of all sorts', () => {
  it('has messages of the agreed length and cures that cure', () => {
    fc.assert(fc.property(beds, (text) => {
      const before: Analysed = analyseText(text);
      expect([...before.documents.main.problems, ...before.analysis.problems].filter(({ severity }) => severity === 'error')).toEqual([]);
      for (const finding of before.analysis.findings.filter(({ check }) => check.startsWith('levelling-'))) {
        expect([...finding.message].length, finding.message).toBeLessThanOrEqual(240);
        expect(finding.message, finding.message).not.toMatch(/NaN|undefined|unknown|Infinity|\s\s|!/);
        if (!finding.certain) expect(finding.message).toMatch(/\bmay\b|as measured/i);
        for (const cure of cures(finding, before)) {
          const after = analysedAfter(cure, before);
          expect(after.analysis.findings.filter(({ check }) => check === finding.check).map(name), `${cure.title} leaves ${finding.check}`).toEqual([]);
          expect(cure.title.length, cure.title).toBeLessThanOrEqual(100);
        }
      }
    }), { numRuns: 10 });
  }, 120_000);
});
