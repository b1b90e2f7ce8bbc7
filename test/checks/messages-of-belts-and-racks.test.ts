import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allChecks, findingsOf } from '../../server/src/checks/registry.ts';
import { evaluate } from '../support/evaluate.ts';

/** Findings about belts that hang, racks and reductions on many machines: whole sentences, short enough, and no hole where a value is missing. */
const HANGING = ['drops-unpowered', 'may-creep-unpowered', 'held-by-friction-alone', 'holding-unknown', 'broken-belt-drops'];
const OURS = [
  ...HANGING, 'counterbalance-stores-energy', 'reduction-overloaded', 'reduction-error-over-accuracy', 'rack-tooth-overstressed', 'pinion-undercut', 'rack-play-over-accuracy', 'rack-error-over-accuracy',
  'pinion-spring-too-weak', 'two-transmissions', 'drive-gives-too-much', 'lowering-returns-energy', 'motor-overruns-going-down',
];
const checks = allChecks().filter(({ id }) => OURS.includes(id));
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });

const common = {
  'axis.direction': fc.constantFrom('vertical', 'vertical', 'horizontal', '33.3°'),
  'axis.accuracy': maybe(fc.constantFrom('0.0123 mm', '0.0004 in', '1 mm')),
  'axis.catcher': maybe(fc.constantFrom('latch', 'mechanical-stop')),
  'axis.people-below': maybe(fc.constantFrom('possible', 'guarded')),
  'axis.process-force': fc.constantFrom('0 N', '50 N to 500 N', '3456.7 N'),
  'mass.mass': fc.constantFrom('0.1234 kg', '12.345 kg ± 0.2 kg', '400 kg'),
  'motion.speed': maybe(fc.constantFrom('400 mm/s')),
  'guides.friction-force': maybe(fc.constantFrom('0.5 N', '60 N', '12 N ± 11 N')),
  'motor.detent-torque': maybe(fc.constantFrom('0.3 N·m')),
  'drive.units': fc.constantFrom(1, 2, 3),
  'drive.motors': maybe(fc.constantFrom('shared')),
  'drive.reduction': maybe(
    fc.constantFrom(
      [{ kind: 'worm', ratio: 20, efficiency: '30 %' }],
      [{ kind: 'spur', ratio: 3, 'torque-rating': '50 N·mm', 'position-error': '0.3°', backlash: '1.2°' }],
      [{ kind: 'belt', profile: 'AT3', 'driving-teeth': 20, 'driven-teeth': 60, width: '10 mm', 'center-distance': '60 mm' }, { kind: 'planetary', ratio: 3 }],
    ),
  ),
  brake: maybe(fc.constantFrom({ 'holding-torque': '10 N·mm' }, { 'holding-torque': '5 N·m', at: 'motor' }, { 'holding-force': '123.4 N', at: 'rail' }, { at: 'rail' })),
  counterbalance: maybe(fc.constantFrom({ force: '30 N' }, { force: '5000 N', mass: '500 kg', kind: 'weight' }, { force: '100 N', kind: 'gas-spring' }, { force: '20 N', kind: 'spring', rate: '1 N/mm' })),
};
const belts = fc.record({ ...common, 'belt.profile': maybe(fc.constantFrom('T5', 'AT10')), 'belt.breaking-force': maybe(fc.constantFrom('200 N', '5 kN')), 'pulley.teeth': maybe(fc.constantFrom(12, 40)), rack: maybe(fc.constantFrom({ module: '1 mm' })) });
const racks = fc.record({
  ...common,
  'rack.module': maybe(fc.constantFrom('0.8 mm', '1.25 mm')),
  'rack.helix-angle': maybe(fc.constantFrom('19.53°')),
  'rack.material': maybe(fc.constantFrom('pom', 'brass', 'steel')),
  'rack.preload': maybe(fc.constantFrom('5 N', '500 N')),
  'rack.pitch-error': maybe(fc.constantFrom('0.0123 mm')),
  'pinion.teeth': maybe(fc.constantFrom(6, 13, 16, 40)),
  'pinion.material': maybe(fc.constantFrom('hardened-steel', 'pom')),
});

describe('messages about belts that hang, racks and reductions', () => {
  it('are whole sentences of at most 240 characters, without holes; whatever may come down carries its caution', () => {
    const seen = new Set<string>();
    const look = (base: string, draft: Readonly<Record<string, unknown>>): void => {
      for (const { check, message, cautions } of findingsOf(evaluate(base, draft), checks)) {
        seen.add(check);
        expect(message.length, message).toBeLessThanOrEqual(240);
        expect(message, message).not.toMatch(/unknown|undefined|NaN|Infinity|–|fault of the tool|\s\s|\.\.|!/);
        expect(message, message).not.toMatch(/thread|ball screw|lead\b/);
        expect(message, message).toMatch(/^[A-Z].*\.$/u);
        if (HANGING.includes(check)) expect(cautions).toContain('gravity-load');
      }
    };
    fc.assert(fc.property(belts, (draft) => look('belt-lift', draft)), { numRuns: 250, seed: 1730 });
    fc.assert(fc.property(racks, (draft) => look('rack', draft)), { numRuns: 250, seed: 53 });
    // The generator reaches every check; otherwise this test would look at nothing.
    expect([...seen].sort()).toEqual([...OURS].sort());
  }, 60_000);
});
