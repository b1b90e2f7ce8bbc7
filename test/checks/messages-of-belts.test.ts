import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allChecks, findingsOf } from '../../server/src/checks/registry.ts';
import { evaluate } from '../support/evaluate.ts';

/** Findings about tension, teeth, pulleys and shafts of belts on many machines: whole sentences of the agreed length, understandable by their head alone. */
const OURS = [
  'belt-goes-slack', 'belt-overtensioned', 'belt-teeth-few', 'belt-teeth-overloaded', 'belt-error-over-accuracy', 'belt-strum-unclear', 'belt-too-short-for-travel', 'pulley-too-small', 'idler-too-small',
  'motor-shaft-bent-by-belt',
];
const checks = allChecks().filter(({ id }) => OURS.includes(id));
const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });

const machines = fc.record({
  'axis.direction': fc.constantFrom('vertical', 'horizontal', '33.3°'),
  'axis.travel': fc.constantFrom('12.5 mm', '500 mm', '612.3 mm', '25 in', '900 mm'),
  'axis.accuracy': maybe(fc.constantFrom('0.0123 mm', '0.004 in', '0.1 mm', '1 mm')),
  'axis.process-force': fc.constantFrom('0 N', '50 N to 500 N', '3456.7 N'),
  'mass.mass': fc.constantFrom('0.1234 kg', '12.345 kg ± 0.2 kg', '90 kg'),
  'motion.acceleration': maybe(fc.constantFrom('0.5 m/s²', '2 m/s² ± 1 m/s²', '30 m/s²')),
  'guides.friction-force': maybe(fc.constantFrom('0 N', '0.5 N', '12 N ± 11 N')),
  'drive.units': fc.constantFrom(1, 2),
  'drive.motor-position': maybe(fc.constantFrom('above', 'below')),
  'drive.reduction': maybe(fc.constantFrom([{ kind: 'belt', ratio: 3 }])),
  'drive.shaft-support': maybe(fc.constantFrom('motor', 'outboard')),
  'belt.profile': maybe(fc.constantFrom('T2.5', 'T5', 'AT10', 'MXL', 'H', 'curvilinear 2 mm', 'curvilinear 8 mm')),
  'belt.width': fc.constantFrom('6 mm', '10 mm', '1 in', '50 mm'),
  'belt.cord': maybe(fc.constantFrom('glass', 'steel', 'aramid', 'reinforced-steel')),
  'belt.body': maybe(fc.constantFrom('rubber', 'polyurethane')),
  'belt.arrangement': maybe(fc.constantFrom('loop', 'anchored-ends')),
  'belt.center-distance': fc.constantFrom('140 mm', '700 mm', '40 in'),
  'belt.nearest-distance': fc.constantFrom('35.7 mm', '80 mm'),
  'belt.tension': maybe(fc.constantFrom('0.9 N', '5 N', '60 N', '12.34 lbf', '400 N ± 200 N', '9 kN')),
  'belt.tension-limit': maybe(fc.constantFrom('23.45 lbf')),
  'belt.breaking-force': maybe(fc.constantFrom('200 N')),
  'belt.backlash': maybe(fc.constantFrom('0.4 mm')),
  'pulley.teeth': fc.constantFrom(8, 12, 18, 20, 40),
  'pulley.wrap': maybe(fc.constantFrom('35°', '100°', '180°', '150° ± 50°')),
  'pulley.overhang': maybe(fc.constantFrom('9.5 mm', '40 mm')),
  'pulley.eccentricity': maybe(fc.constantFrom('0.123 mm')),
  idlers: maybe(fc.constantFrom({ diameter: '9.5 mm', side: 'back' }, { teeth: 12 }, { diameter: '0.75 in' }, { diameter: '20 mm', side: 'back' })),
  'motor.radial-load-limit': maybe(fc.constantFrom('31.4 N')),
});

/** Up to the first stop that is followed by a blank: what a list shows. */
const head = (message: string): string => /^.*?(?=[:.;] )/.exec(message)?.[0] ?? message;

describe('messages about belts', () => {
  it('read well on many machines', () => {
    const seen = new Set<string>();
    fc.assert(fc.property(machines, (draft) => {
      for (const { check, message, certain, severity } of findingsOf(evaluate('belt', draft), checks)) {
        seen.add(check);
        expect(message.length, `${check}: ${message}`).toBeLessThanOrEqual(240);
        expect(head(message).length, `${check}: ${message}`).toBeLessThanOrEqual(100);
        expect(message, `${check}: ${message}`).not.toMatch(/unknown|undefined|NaN|Infinity|–|fault of the tool|\s\s|\.\.|!|\bsafe\b/);
        expect(message, `${check}: ${message}`).toMatch(/^[A-Z].*\.$/u);
        for (const [, share] of message.matchAll(/(\d+(?:\.\d+)?) % of/g)) expect(Number(share), `${check}: ${message}`).toBeLessThan(1000);
        if (!certain && severity !== 'hint') expect(message, `${check}: ${message}`).toMatch(/\b(may|up to|at worst|can)\b/);
      }
    }), { numRuns: 800, seed: 13050 });
    // The generator reaches every check; otherwise this test would look at nothing.
    expect([...seen].sort()).toEqual([...OURS].sort());
  }, 60_000);
});
