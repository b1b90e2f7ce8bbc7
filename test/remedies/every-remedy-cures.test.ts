import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { severityRank } from '../../server/src/checks/judge.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analyseText, cures, name, textAfter } from './support.ts';

/** Entries that are varied together; wide enough that most machines have several findings. Invented values. */
const variation = fc.record({
  'screw.size': fc.constantFrom('Tr8x8(P2)', 'Tr8x1.5', 'Tr8x2', 'Tr10x2', 'Tr12x3', 'Tr12x6(P3)', 'Tr16x4'),
  'screw.end-supports': fc.constantFrom('fixed-free', 'supported-supported', 'fixed-supported', 'fixed-fixed'),
  'screw.unsupported-length': fc.integer({ min: 320, max: 1200 }).map((mm) => `${mm} mm`),
  'axis.travel': fc.integer({ min: 100, max: 300 }).map((mm) => `${mm} mm`),
  'motion.speed': fc.integer({ min: 2, max: 120 }).map((mm) => `${mm} mm/s`),
  'motion.acceleration': fc.integer({ min: 50, max: 4000 }).map((mm) => `${mm} mm/s²`),
  'motion.duty': fc.integer({ min: 1, max: 100 }).map((share) => `${share} %`),
  'mass.mass': fc.integer({ min: 1, max: 60 }).map((kg) => `${kg} kg ± 5 %`),
  'nut.material': fc.constantFrom('bronze', 'brass', 'pom', 'filled-polymer'),
  'nut.lubrication': fc.constantFrom('dry', 'grease'),
  'nut.length': fc.integer({ min: 8, max: 40 }).map((mm) => `${mm} mm`),
  'nut.mounting': fc.constantFrom('rigid', 'decoupled'),
  'drive.units': fc.integer({ min: 1, max: 4 }),
  'drive.motor-position': fc.constantFrom('above', 'below'),
  'drive.current-setting': fc.integer({ min: 5, max: 25 }).map((tenths) => `${tenths / 10} A`),
  'supply.voltage': fc.constantFrom('12 V', '24 V', '36 V', '48 V'),
  'controller.microsteps': fc.constantFrom(1, 8, 16, 64, 256),
  'axis.accuracy': fc.constantFrom('0.01 mm', '0.05 mm', '0.2 mm'),
  'axis.layer-height': fc.constantFrom('0.2 mm', '0.25 mm', '0.33 mm'),
});

const ballVariation = fc.record({
  'screw.size': fc.constantFrom('1204', '1605', '1610', '2005', '2510'),
  'screw.end-supports': fc.constantFrom('fixed-free', 'supported-supported', 'fixed-supported', 'fixed-fixed'),
  'screw.unsupported-length': fc.integer({ min: 320, max: 2000 }).map((mm) => `${mm} mm`),
  'motion.speed': fc.integer({ min: 5, max: 600 }).map((mm) => `${mm} mm/s`),
  'motion.acceleration': fc.integer({ min: 50, max: 8000 }).map((mm) => `${mm} mm/s²`),
  'mass.mass': fc.integer({ min: 1, max: 80 }).map((kg) => `${kg} kg`),
  'axis.accuracy': fc.constantFrom('0.01 mm', '0.05 mm', '0.2 mm'),
  'screw.grade': fc.constantFrom('T10', 'T7', 'P5', 'P3'),
  brake: fc.constantFrom(null, { 'holding-torque': '0.05 N·m', at: 'motor' }, { 'holding-torque': '1 N·m', at: 'screw' }),
});

function provesItself(base: string, changes: Readonly<Record<string, unknown>>): void {
  const analysed = analyseText(yamlOf(machineWith(base, changes)));
  const before = analysed.analysis.findings;
  for (const finding of before) {
    for (const cure of cures(finding, analysed)) {
      const after = analyseText(textAfter(cure)).analysis.findings;
      expect(after.filter((other) => other.check === finding.check).map(name), `${cure.title} leaves ${finding.check}`).toEqual([]);
      const fresh = after.filter(
        (other) => severityRank(other.severity) <= severityRank('warning') && !before.some((old) => old.check === other.check && severityRank(old.severity) <= severityRank(other.severity)),
      );
      expect(fresh.map(name), `${cure.title} brings new findings`).toEqual([]);
      expect(cure.title.length, cure.title).toBeLessThanOrEqual(130);
    }
  }
}

describe('every remedy offered', () => {
  it('cures its finding and brings no new error or warning, on sliding screws', () => {
    fc.assert(fc.property(variation, (changes) => provesItself('lift', changes)), { numRuns: 30 });
  }, 120_000);
  it('cures its finding and brings no new error or warning, on ball screws', () => {
    fc.assert(fc.property(ballVariation, (changes) => provesItself('ball-lift', changes)), { numRuns: 20 });
  }, 120_000);
  it('cures its finding on a level axis', () => {
    fc.assert(fc.property(ballVariation, (changes) => provesItself('router', { ...changes, brake: null })), { numRuns: 15 });
  }, 120_000);
});
