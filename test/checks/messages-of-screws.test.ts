import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allChecks, findingsOf } from '../../server/src/checks/registry.ts';
import { evaluate } from '../support/evaluate.ts';

/** Findings about screws and nuts on many machines: whole sentences, short enough, and no hole where a value is missing. */
const OURS = [
  'drops-unpowered', 'may-creep-unpowered', 'held-by-friction-alone', 'holding-unknown', 'screw-size-contradicted', 'screw-size-ambiguous', 'lead-not-whole-pitches',
  'nut-does-not-fit', 'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats', 'nut-wears-out', 'nut-play-too-large', 'nut-spring-too-weak',
  'nut-preload-drags', 'weight-closes-play', 'screw-overstressed', 'screw-inefficient', 'thrust-face-takes-torque',
];

const checks = allChecks().filter(({ id }) => OURS.includes(id));

const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });

const changes = fc.record({
  'screw.size': maybe(fc.constantFrom('Tr8x8(P2)', 'Tr8x8', 'Tr8x6', 'T8', 'Tr8x7(P2)', 'Tr12x3 LH', 'Tr20x20(P4)', 'Tr8x1.5', '1605', 'nonsense é')),
  'screw.lead': maybe(fc.constantFrom('4 mm', '0.333333 in')),
  'nut.material': maybe(fc.constantFrom('bronze', 'pom', 'filled-polymer', 'steel')),
  'nut.lubrication': maybe(fc.constantFrom('dry', 'grease')),
  'nut.friction': maybe(fc.constantFrom('0.02 to 0.30', '0.12')),
  'nut.design': maybe(fc.constantFrom('plain', 'spring-loaded', 'ball')),
  'nut.preload': maybe(fc.constantFrom('5 N', '500 N')),
  'nut.size': maybe(fc.constantFrom('Tr8x4(P2)', '2005', 'Tr12x3')),
  'nut.length': maybe(fc.constantFrom('3.333 mm', '30 mm')),
  'nut.backlash': maybe(fc.constantFrom('0.123456 mm', '0 mm')),
  'mass.mass': fc.constantFrom('0.1234 kg', '12.345 kg ± 0.2 kg', '400 kg'),
  'axis.direction': fc.constantFrom('vertical', 'horizontal', '33.3°'),
  'axis.accuracy': maybe(fc.constantFrom('0.0123 mm', '1 mm')),
  'axis.catcher': maybe(fc.constantFrom('latch', 'mechanical-stop')),
  'axis.people-below': maybe(fc.constantFrom('possible', 'guarded')),
  'motion.speed': maybe(fc.constantFrom('12.345 mm/s', '200 mm/s')),
  'motion.duty': maybe(fc.constantFrom('100 %', '3 %')),
  'motion.distance-per-year': maybe(fc.constantFrom('1234.5 km')),
  'motor.holding-torque': fc.constantFrom('0.4 N·m', '12 N·m'),
  'thrust-bearing': maybe(fc.constantFrom({ design: 'plain' }, { design: 'plain', friction: 0.3 }, { design: 'ball-thrust' })),
  brake: maybe(fc.constantFrom({ 'holding-torque': '10 N·mm' }, { 'holding-torque': '5 N·m', at: 'motor' })),
  counterbalance: maybe(fc.constantFrom({ force: '30 N' }, { force: '500 N', mass: '50 kg' })),
});

describe('messages about screws and nuts', () => {
  it('are whole sentences of at most 240 characters, without holes', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(changes, (draft) => {
        for (const finding of findingsOf(evaluate('lift', draft), checks)) {
          seen.add(finding.check);
          const { message } = finding;
          expect(message.length, message).toBeLessThanOrEqual(240);
          expect(message, message).not.toMatch(/unknown|undefined|NaN|Infinity|–|fault of the tool|\s\s|\.\.|!/);
          expect(message, message).toMatch(/^[A-Z].*\.$/u);
        }
      }),
      { numRuns: 300, seed: 2904 },
    );
    // The generator reaches every check; otherwise this test would look at nothing.
    expect([...seen].sort()).toEqual([...OURS].sort());
  }, 30_000);

  it('a load that may come down always carries its caution', () => {
    fc.assert(
      fc.property(changes, (draft) => {
        for (const finding of findingsOf(evaluate('lift', draft), checks).filter(({ check }) => ['drops-unpowered', 'may-creep-unpowered', 'held-by-friction-alone', 'holding-unknown'].includes(check))) {
          expect(finding.cautions).toContain('gravity-load');
        }
      }),
      { numRuns: 100, seed: 2904 },
    );
  }, 30_000);
});
