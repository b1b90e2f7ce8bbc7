import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import type { Finding } from '../../server/src/checks/judge.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

/** Messages of all findings on many machines of all sorts: whole sentences of the agreed length, understandable by their head alone, without absurd numbers. */

const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });
const millimetres = (min: number, max: number, unit = 'mm'): fc.Arbitrary<string> => fc.integer({ min, max }).map((value) => `${value} ${unit}`);

/** Invented values, wide on purpose: most machines have several faults. */
const common = {
  'axis.travel': millimetres(60, 900),
  'mass.mass': fc.constantFrom('1.3 kg', '4 kg ± 5 %', '17 kg', '35 kg', '0 kg to 60 kg'),
  'axis.direction': fc.constantFrom('vertical', 'horizontal', '35°'),
  'axis.accuracy': maybe(fc.constantFrom('0.02 mm', '0.1 mm', '0.3 mm')),
  'axis.layer-height': maybe(fc.constantFrom('0.2 mm', '0.25 mm')),
  'axis.people-below': maybe(fc.constantFrom('possible', 'guarded')),
  'axis.catcher': maybe(fc.constantFrom('latch', 'mechanical-stop')),
  'axis.life': maybe(fc.constantFrom('2000 h', '40000 h')),
  'axis.resolution': maybe(fc.constantFrom('0.001 mm')),
  'axis.process-force': maybe(fc.constantFrom('0 N to 60 N')),
  'motion.speed': millimetres(2, 250, 'mm/s'),
  'motion.acceleration': maybe(millimetres(20, 4000, 'mm/s²')),
  'motion.duty': maybe(fc.constantFrom('3 %', '100 %')),
  'motion.distance-per-year': maybe(fc.constantFrom('500 km')),
  'guides.friction-force': maybe(fc.constantFrom('3 N', '25 N')),
  'drive.units': maybe(fc.constantFrom(1, 3)),
  'drive.motors': maybe(fc.constantFrom('shared')),
  'drive.motor-position': maybe(fc.constantFrom('above', 'below')),
  'drive.current-setting': maybe(fc.constantFrom('0.4 A', '1.5 A', '4 A')),
  'drive.current-setting-as': maybe(fc.constantFrom('peak', 'rms')),
  'drive.reduction': maybe(fc.constantFrom([{ kind: 'belt', ratio: '2' }], [{ kind: 'worm', ratio: '10', 'torque-rating': '0.5 N·m' }])),
  'screw.unsupported-length': millimetres(60, 1500),
  'screw.end-supports': maybe(fc.constantFrom('fixed-free', 'supported-free', 'fixed-fixed', 'supported-supported')),
  'screw.thrust-end': maybe(fc.constantFrom('both', 'far')),
  'screw.thrust-bearing': maybe(fc.constantFrom({ design: 'none' }, { design: 'plain' }, { design: 'deep-groove', 'load-limit': '50 N' })),
  coupling: maybe(fc.constantFrom({ form: 'beam', bores: ['5 mm', '8 mm'] }, { form: 'jaw', 'torque-rating': '0.2 N·m', 'parallel-offset': '0.5 mm' }, { form: 'rigid', bores: ['8 mm', '8 mm'] })),
  brake: maybe(fc.constantFrom({ 'holding-torque': '0.05 N·m', at: 'motor' }, { 'holding-torque': '2 N·m' })),
  counterbalance: maybe(fc.constantFrom({ force: '60 N', mass: '6 kg' })),
  conditions: maybe(fc.constantFrom({ 'machine-temperature': '70 °C', 'frame-material': 'aluminium' })),
  'supply.voltage': fc.constantFrom('12 V', '24 V', '48 V'),
  'supply.current': maybe(fc.constantFrom('0.5 A', '10 A')),
  'supply.capacitance': maybe(fc.constantFrom('1000 µF')),
  'supply.voltage-limit': maybe(fc.constantFrom('52 V')),
  'controller.microsteps': fc.constantFrom(1, 16, 256),
  'controller.step-rate': fc.constantFrom('20 kHz', '200 kHz'),
  'motor.rotor-inertia': maybe(fc.constantFrom('68 g·cm²')),
  'motor.holding-torque': fc.constantFrom('0.2 N·m', '0.45 N·m', '4 N·m'),
} as const;

const sliding = fc.record({
  ...common,
  'screw.size': fc.constantFrom('Tr8x8(P2)', 'Tr8x2', 'Tr8x8', 'Tr10x2', 'Tr12x3', 'Tr16x4', 'Tr20x4'),
  'screw.grade': maybe(fc.constantFrom('rolled', 'ground')),
  'nut.material': fc.constantFrom('bronze', 'pom', 'filled-polymer', 'cast-iron'),
  'nut.lubrication': maybe(fc.constantFrom('dry', 'grease')),
  'nut.length': maybe(millimetres(3, 40)),
  'nut.design': maybe(fc.constantFrom('plain', 'spring-loaded')),
  'nut.preload': maybe(fc.constantFrom('10 N', '300 N')),
});
const ball = fc.record({
  ...common,
  'screw.size': fc.constantFrom('1204', '1605', '2010', '2510', '1203'),
  'screw.grade': maybe(fc.constantFrom('T10', 'T7', 'P5')),
  'nut.design': fc.constantFrom('ball', 'preloaded-ball'),
  'nut.preload': maybe(fc.constantFrom('40 N', '3 kN')),
  'nut.dynamic-rating': maybe(fc.constantFrom('300 N', '9 kN')),
  'nut.static-rating': maybe(fc.constantFrom('200 N', '15 kN')),
});

const findingsOf = (base: string, changes: Readonly<Record<string, unknown>>): readonly Finding[] =>
  analyse(readDocument('file:///test.machine.yaml', yamlOf(machineWith(base, changes))), []).findings;

/** Up to the first stop that is followed by a blank: what a list shows. */
const head = (message: string): string => /^.*?(?=[:.;] )/.exec(message)?.[0] ?? message;

function reads(finding: Finding): void {
  const { check, message, certain, severity } = finding;
  expect(message.length, `${check}: ${message}`).toBeLessThanOrEqual(240);
  expect(head(message).length, `${check}: ${message}`).toBeLessThanOrEqual(100);
  expect(message, `${check}: ${message}`).not.toMatch(/unknown|undefined|NaN|Infinity|–|fault of the tool|\s\s|\.\.|!|\bsafe\b/);
  expect(message, `${check}: ${message}`).toMatch(/^[A-Z].*[.?]$/u);
  // Beyond ten times a limit a percentage is no longer read.
  for (const [, share] of message.matchAll(/(\d+(?:\.\d+)?) % of/g)) expect(Number(share), `${check}: ${message}`).toBeLessThan(1000);
  if (!certain && severity !== 'hint') expect(message, `${check}: ${message}`).toMatch(/\b(may|up to|at worst|can)\b/);
}

describe('every message', () => {
  it.each([['lift', sliding], ['ball-lift', ball]] as const)('reads well, on a %s', (base, changes) => {
    fc.assert(fc.property(changes as fc.Arbitrary<Record<string, unknown>>, (draft) => findingsOf(base, draft).forEach(reads)), { numRuns: 250, seed: 3408 });
  }, 60_000);
});
