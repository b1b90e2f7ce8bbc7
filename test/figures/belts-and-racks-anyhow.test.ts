import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scopeOf } from '../../server/src/figures/figure.ts';
import { evaluate } from '../support/evaluate.ts';

/** Whatever is written, a figure of a rack, a brake, a counterbalance or a fall has bounds that hold its nominal value, or a reason in plain words; none throws. */
const SCOPES = ['rack', 'pinion', 'counterbalance'];
const OURS = /^drive\.(holding|brake|fall|drop|broken|guide-friction|reduction|axial-stiffness|softest)|^motor\.(run-back|radial)|^belt\.pull-after/;

const maybe = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(arbitrary, { nil: null });
const common = {
  'axis.direction': fc.constantFrom('vertical', 'horizontal', '30°'),
  'axis.travel': fc.constantFrom('500 mm', '0 mm', '1 m ± 0.2 m'),
  'axis.accuracy': maybe(fc.constantFrom('0 mm', '0.05 mm')),
  'axis.process-force': fc.constantFrom('0 N', '-20 N to 80 N'),
  'mass.mass': fc.constantFrom('0 kg', '1 kg', '12 kg ± 3 kg'),
  'guides.friction-force': maybe(fc.constantFrom('0 N', '12 N ± 11 N', '-5 N')),
  'drive.units': fc.constantFrom(1, 2),
  'drive.motors': maybe(fc.constantFrom('shared')),
  'drive.shaft-support': maybe(fc.constantFrom('motor', 'outboard')),
  'drive.reduction': maybe(
    fc.constantFrom(
      [{ kind: 'worm', ratio: '20', efficiency: '30 % to 60 %' }],
      [{ kind: 'spur', ratio: '0', 'position-error': '-1°' }],
      [{ kind: 'spur', ratio: '3', 'torsional-stiffness': '0 N·m/rad', 'position-error': '0.1° to 0.3°' }],
      [{ kind: 'belt', profile: 'AT3', 'driving-teeth': 60, 'driven-teeth': 20, width: '10 mm', 'center-distance': '5 mm' }],
      [{ kind: 'belt', profile: 'AT3', 'driving-teeth': 20, 'driven-teeth': 60, width: '10 mm ± 2 mm', 'center-distance': '60 mm' }, { kind: 'planetary', ratio: '5', 'torsional-stiffness': '700 N·m/rad' }],
    ),
  ),
  brake: maybe(fc.constantFrom({ 'holding-torque': '0 N·m' }, { 'holding-torque': '60 N·mm ± 50 N·mm', at: 'motor' }, { 'holding-force': '20 N', at: 'rail' }, { at: 'rail' })),
  counterbalance: maybe(fc.constantFrom({ force: '0 N' }, { force: '9.81 N' }, { force: '60 N ± 60 N', kind: 'spring' }, { force: '10 N', kind: 'spring', rate: '1 N/mm' }, { force: '20 N', kind: 'gas-spring' })),
};
const racks = fc.record({
  ...common,
  'rack.module': maybe(fc.constantFrom('1 mm', '0 mm', '2 mm ± 0.1 mm')),
  'rack.pressure-angle': maybe(fc.constantFrom('20°', '14.5°', '0°', '80°')),
  'rack.helix-angle': maybe(fc.constantFrom('19.5°', '-10°', '0° to 60°')),
  'rack.face-width': maybe(fc.constantFrom('0 mm', '10 mm')),
  'rack.efficiency': maybe(fc.constantFrom('1 %', '100 %', '40 % to 90 %')),
  'rack.preload': maybe(fc.constantFrom('0 N', '50 N')),
  'rack.stiffness': maybe(fc.constantFrom('0 N/mm', '20 N/µm')),
  'pinion.teeth': maybe(fc.constantFrom(5, 14, 20)),
  'pinion.eccentricity': maybe(fc.constantFrom('0 mm', '-0.1 mm', '0.01 mm to 0.1 mm')),
  'pinion.stress-limit': maybe(fc.constantFrom('0 MPa', '150 MPa')),
  'pinion.overhang': maybe(fc.constantFrom('0 mm', '20 mm')),
});
const belts = fc.record({ ...common, 'belt.efficiency': maybe(fc.constantFrom('1 %', '100 %')), 'belt.breaking-force': maybe(fc.constantFrom('0 N', '90 N to 120 N')), 'pulley.teeth': maybe(fc.constantFrom(10, 40)) });

const look = (base: string, draft: Readonly<Record<string, unknown>>): void => {
  const evaluation = evaluate(base, draft);
  for (const { id } of evaluation.figures()) {
    if (!SCOPES.includes(scopeOf(id)) && !OURS.test(id)) continue;
    const result = evaluation.result(id);
    if (result.state === 'computed') {
      expect(Number.isFinite(result.nominal) && Number.isFinite(result.low) && Number.isFinite(result.high), `${id} ${JSON.stringify(result)}`).toBe(true);
      expect(result.low, id).toBeLessThanOrEqual(result.nominal);
      expect(result.high, id).toBeGreaterThanOrEqual(result.nominal);
    } else if (result.state === 'unable') {
      // The words of a guard that threw.
      expect(result.reason, `${id} ${JSON.stringify(draft)}`).not.toMatch(/must|Error|NaN|not a function/);
    }
  }
};

describe('figures of racks, brakes, counterbalances and falls', () => {
  it('are bounded or say why not, on any rack', () => {
    fc.assert(fc.property(racks, (draft) => look('rack', draft)), { numRuns: 200, seed: 6336 });
  }, 60_000);
  it('are bounded or say why not, on any hanging belt', () => {
    fc.assert(fc.property(belts, (draft) => look('belt-lift', draft)), { numRuns: 150, seed: 17396 });
  }, 60_000);
});
