import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { severityRank } from '../../server/src/checks/judge.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { beltMachines, crossedMachines, gantryMachines, rackMachines } from './random-belts-and-racks.ts';
import { ballMachines, slidingMachines } from './random-machines.ts';
import { again, analysedAfter, analyseText, cures, name } from './support.ts';

/** Entries that are varied together; wide enough that most machines have several findings. Invented values. */
const variation = fc.record({
  'screw.size': fc.constantFrom('Tr8x8(P2)', 'Tr8x1.5', 'Tr8x2', 'Tr10x2', 'Tr12x3', 'Tr12x6(P3)', 'Tr16x4'),
  'screw.end-supports': fc.constantFrom('fixed-free', 'supported-supported', 'fixed-supported', 'fixed-fixed'),
  'screw.unsupported-length': fc.integer({ min: 320, max: 1200 }).map((mm) => `${mm} mm`),
  'axis.travel': fc.integer({ min: 100, max: 300 }).map((mm) => `${mm} mm`),
  'motion.speed': fc.integer({ min: 2, max: 120 }).map((mm) => `${mm} mm/s`),
  'motion.acceleration': fc.integer({ min: 50, max: 4000 }).map((mm) => `${mm} mm/s²`),
  'mass.mass': fc.integer({ min: 1, max: 60 }).map((kg) => `${kg} kg ± 5 %`),
  'nut.material': fc.constantFrom('bronze', 'brass', 'pom', 'filled-polymer'),
  'nut.length': fc.integer({ min: 8, max: 40 }).map((mm) => `${mm} mm`),
  'drive.units': fc.integer({ min: 1, max: 4 }),
  'drive.motor-position': fc.constantFrom('above', 'below'),
  'drive.current-setting': fc.integer({ min: 5, max: 25 }).map((tenths) => `${tenths / 10} A`),
  'controller.microsteps': fc.constantFrom(1, 8, 16, 64, 256),
  'axis.accuracy': fc.constantFrom('0.01 mm', '0.05 mm', '0.2 mm'),
  'axis.layer-height': fc.constantFrom('0.2 mm', '0.25 mm', '0.33 mm'),
});

/** Carries every remedy of every finding out and analyses the text afresh, with nothing kept from the proof. */
function provesItself(text: string): void {
  const before = analyseText(text);
  for (const finding of before.analysis.findings) {
    const offered = cures(finding, before);
    expect(offered.length).toBeLessThanOrEqual(6);
    for (const cure of offered) {
      const after = analysedAfter(cure, before);
      // A latch catches what still lets go: what is left of the finding says so, and is no more than information.
      const caught = cure.remedies.includes('fit-a-latch');
      const left = after.analysis.findings.filter((other) => other.check === finding.check && other.subject === finding.subject && !(caught && severityRank(other.severity) >= severityRank('information')));
      expect(left.map(name), `${cure.title} leaves ${finding.check}`).toEqual([]);
      const worst = Math.max(severityRank(finding.severity), severityRank('warning'));
      const fresh = after.analysis.findings.filter(
        (other) =>
          severityRank(other.severity) <= worst &&
          !before.analysis.findings.some((old) => old.check === other.check && old.subject === other.subject && severityRank(old.severity) <= severityRank(other.severity)),
      );
      expect(fresh.map(name), `${cure.title} brings new findings`).toEqual([]);
      expect(after.documents.main.problems.length, `${cure.title} spoils the text`).toBeLessThanOrEqual(before.documents.main.problems.length);
      expect(cure.title.length, cure.title).toBeLessThanOrEqual(100);
      expect([...again(cure, after).values()], `${cure.title}, done twice`).toEqual([after.documents.main.text]);
    }
  }
}

describe('every remedy offered', () => {
  it('cures its finding and brings no new one, on plausible sliding screws', () => {
    fc.assert(fc.property(slidingMachines, provesItself), { numRuns: 5 });
  }, 120_000);
  it('cures its finding and brings no new one, on plausible ball screws', () => {
    fc.assert(fc.property(ballMachines, provesItself), { numRuns: 5 });
  }, 120_000);
  it.each([['belts', beltMachines], ['racks', rackMachines], ['crossed belts', crossedMachines], ['gantries', gantryMachines]] as const)('cures its finding and brings no new one, on plausible %s', (_, drawn) => {
    fc.assert(fc.property(drawn, provesItself), { numRuns: 3 });
  }, 120_000);
  it('cures its finding and brings no new one, on machines that nobody would build', () => {
    fc.assert(fc.property(variation, (changes) => provesItself(yamlOf(machineWith('lift', changes)))), { numRuns: 5 });
  }, 120_000);
});
