import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Evaluation } from '../../server/src/figures/evaluation.ts';
import type { Figure } from '../../server/src/figures/figure.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { entrySchema } from '../../server/src/machine/entry-schema.ts';
import type { InputValue } from '../../server/src/machine/values.ts';
import { machines } from '../remedies/random-machines.ts';
import { evaluate, figureOf, subjectsOf } from '../support/evaluate.ts';

const registry = allFigures();

const evaluationsOf = (text: string): readonly Evaluation[] => subjectsOf(text).map((subject) => new Evaluation(subject, registry));

/** Inputs that are a range, with the range. */
function uncertainInputs(evaluation: Evaluation): readonly (readonly [string, InputValue & { type: 'number' }])[] {
  const ids = new Set(registry.ofKind(evaluation.subject.kind).flatMap(({ id }) => registry.inputsUnder(id)));
  return [...ids].flatMap((id) => {
    const input = evaluation.input(id);
    return input.state === 'known' && input.value.type === 'number' && input.value.low < input.value.high ? [[id, input.value] as const] : [];
  });
}

/**
 * Figures with a kink or a step between their inputs: their farthest value can lie at a combination of ends to which no single end points,
 * which the search from one corner to the next does not always find. Their bounds hold what single ends do.
 */
const KINKED = new Set([
  'motor.rest-factor', 'drive.holding-factor', 'drive.holding-verdict', 'motor.lowering-margin', 'motor.stopping-torque', 'motor.starting-down-torque', 'motor.lowering-torque', 'screw.lowering-torque',
  'axis.smallest-real-move', 'motor.microsteps-before-moving', 'axis.speed-limit', 'axis.honest-speed', 'axis.torque-speed-limit', 'axis.shortest-move-time', 'axis.lag', 'axis.dead-band',
  'axis.motor-position-error', 'axis.motor-position-use', 'axis.start-speed', 'motor.start-speed', 'drive.softest-share', 'screw.bow-amplification',
]);

describe('bounds of every figure, on random machines', () => {
  it('hold the nominal value', () => {
    fc.assert(
      fc.property(machines, (text) => {
        for (const evaluation of evaluationsOf(text)) {
          for (const { id } of registry.ofKind(evaluation.subject.kind)) {
            const result = evaluation.result(id);
            if (result.state !== 'computed') continue;
            expect(result.low, id).toBeLessThanOrEqual(result.nominal);
            expect(result.nominal, id).toBeLessThanOrEqual(result.high);
            expect(Number.isFinite(result.low) && Number.isFinite(result.high), id).toBe(true);
          }
        }
      }),
      { numRuns: 40 },
    );
  }, 60_000);
  it('hold what comes out anywhere between the ends of the inputs, but for those with a kink', () => {
    fc.assert(
      fc.property(machines, fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }), (text, places) => {
        for (const evaluation of evaluationsOf(text)) {
          const taken = new Map(uncertainInputs(evaluation).map(([id, { low, high }], index) => {
            const value = low + (places[index % places.length] ?? 0) * (high - low);
            return [id, { type: 'number', nominal: value, low: value, high: value }] as const;
          }));
          const point = new Evaluation(evaluation.subject.withInputs(taken), registry);
          for (const { id } of registry.ofKind(evaluation.subject.kind)) {
            const [bounds, at] = [evaluation.result(id), point.result(id)];
            if (KINKED.has(id) || bounds.state !== 'computed' || at.state !== 'computed') continue;
            const slack = 1e-6 * Math.max(Math.abs(bounds.low), Math.abs(bounds.high), 1e-12);
            expect(at.nominal, `${id} above its low end`).toBeGreaterThanOrEqual(bounds.low - slack);
            expect(at.nominal, `${id} below its high end`).toBeLessThanOrEqual(bounds.high + slack);
          }
        }
      }),
      { numRuns: 15, seed: 15 },
    );
  }, 60_000);
});

/** A law of physics: how a figure grows with one entry, everything else staying. */
interface Law {
  readonly figure: string;
  readonly base: string;
  readonly entry: string;
  /** Number and unit of the entry that is scaled. */
  readonly from: number;
  readonly unit: string;
  readonly power: number;
  /** From where it follows. */
  readonly because: string;
  readonly with?: Readonly<Record<string, unknown>>;
  /** Relative, where the law holds nearly. */
  readonly within?: number;
}

const free = { 'guides.friction-force': '0 N', 'axis.process-force': '0 N' } as const;

const laws: readonly Law[] = [
  { figure: 'drive.gravity-load', base: 'lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'F = m g' },
  { figure: 'drive.gravity-load', base: 'lift', entry: 'conditions.gravity', from: 4, unit: 'm/s²', power: 1, because: 'F = m g' },
  { figure: 'screw.cruising-torque', base: 'lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'friction and slope act on the load alone, without guide friction', with: free },
  { figure: 'screw.holding-torque', base: 'ball-lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'the torque at rest is that of the load, without guide friction', with: free },
  { figure: 'motor.holding-torque-needed', base: 'ball-lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'the torque at rest is that of the load', with: free },
  { figure: 'screw.run-down-torque', base: 'ball-lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'statics' },
  { figure: 'drive.drop-energy', base: 'ball-lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'E = m g h' },
  { figure: 'drive.drop-energy', base: 'ball-lift', entry: 'axis.travel', from: 200, unit: 'mm', power: 1, because: 'E = m g h' },
  { figure: 'screw.whirl-speed', base: 'router', entry: 'screw.unsupported-length', from: 700, unit: 'mm', power: -2, because: 'slender beam: n ~ 1/L²; push and shear left small', with: { ...free, 'screw.end-supports': 'supported-supported', 'motion.acceleration': '10 mm/s²' }, within: 0.02 },
  { figure: 'screw.buckling-load', base: 'router', entry: 'screw.unsupported-length', from: 1500, unit: 'mm', power: -2, because: 'Euler: F ~ 1/L² for a long column', with: { ...free, 'screw.end-supports': 'supported-supported' }, within: 0.02 },
  { figure: 'screw.axial-stiffness', base: 'lift', entry: 'screw.unsupported-length', from: 340, unit: 'mm', power: -1, because: 'k = E A / L' },
  { figure: 'screw.inertia', base: 'lift', entry: 'screw.length', from: 400, unit: 'mm', power: 1, because: 'J ~ L' },
  { figure: 'screw.turning-speed', base: 'lift', entry: 'motion.speed', from: 10, unit: 'mm/s', power: 1, because: 'n = v / l' },
  { figure: 'motor.step-rate', base: 'lift', entry: 'motion.speed', from: 10, unit: 'mm/s', power: 1, because: 'kinematics' },
  { figure: 'axis.distance-to-speed', base: 'lift', entry: 'motion.speed', from: 10, unit: 'mm/s', power: 2, because: 's = v² / 2a' },
  { figure: 'axis.distance-to-speed', base: 'lift', entry: 'motion.acceleration', from: 200, unit: 'mm/s²', power: -1, because: 's = v² / 2a' },
  { figure: 'nut.pressure', base: 'lift', entry: 'nut.length', from: 12, unit: 'mm', power: -1, because: 'p = F / A, and A ~ L' },
  { figure: 'nut.pressure', base: 'lift', entry: 'mass.mass', from: 4, unit: 'kg', power: 1, because: 'p = F / A', with: free },
  { figure: 'nut.play-growth', base: 'lift', entry: 'motion.distance-per-year', from: 5, unit: 'm', power: 1, because: 'wear law of Archard: depth ~ distance' },
  { figure: 'motor.copper-loss', base: 'lift', entry: 'drive.current-setting', from: 0.8, unit: 'A', power: 2, because: 'P = I² R' },
  { figure: 'motor.copper-loss', base: 'lift', entry: 'motor.resistance', from: 2, unit: 'Ω', power: 1, because: 'P = I² R' },
  { figure: 'motor.resistive-use', base: 'lift', entry: 'supply.voltage', from: 20, unit: 'V', power: -1, because: "Ohm's law" },
  { figure: 'drive.supply-current', base: 'lift', entry: 'supply.voltage', from: 20, unit: 'V', power: -1, because: 'P = V I at the same power' },
  { figure: 'motor.standing-torque', base: 'lift', entry: 'motor.holding-torque', from: 0.45, unit: 'N·m', power: 1, because: 'torque at the same current' },
  { figure: 'drive.push-force', base: 'lift', entry: 'motor.holding-torque', from: 0.45, unit: 'N·m', power: 1, because: 'power balance' },
  { figure: 'nut.life-turns', base: 'ball-lift', entry: 'nut.dynamic-rating', from: 9, unit: 'kN', power: 3, because: 'ISO 3408-5: L = (C/F)³' },
  { figure: 'nut.life-turns', base: 'ball-lift', entry: 'mass.mass', from: 4, unit: 'kg', power: -3, because: 'ISO 3408-5: L = (C/F)³, and F ~ m without friction', with: free },
  { figure: 'nut.static-safety', base: 'ball-lift', entry: 'nut.static-rating', from: 15, unit: 'kN', power: 1, because: 's = C₀ / F' },
  { figure: 'drive.axial-resonance', base: 'lift', entry: 'mass.mass', from: 4, unit: 'kg', power: -0.5, because: 'ω = √(k/m)' },
  { figure: 'drive.deflection', base: 'lift', entry: 'motion.acceleration', from: 200, unit: 'mm/s²', power: 1, because: 'x = m a / k without friction', with: free },
  { figure: 'screw.lead-deviation', base: 'ball-lift', entry: 'axis.travel', from: 200, unit: 'mm', power: 1, because: 'ISO 3408-3: transport grades grow with the travel' },
];

const close = (value: number, expected: number, within = 1e-6): void => {
  expect(Math.abs(value / expected - 1), `${value} instead of ${expected}`).toBeLessThanOrEqual(within);
};

describe('figures scale as physics says', () => {
  const at = (law: Law, times: number): number =>
    figureOf(evaluate(law.base, { ...law.with, [law.entry]: `${Number((law.from * times).toPrecision(12))} ${law.unit}` }), law.figure);

  it.each(laws)('$figure with $entry to the power $power ($because)', (law) => {
    close(at(law, 2) / at(law, 1), 2 ** law.power, law.within);
    fc.assert(fc.property(fc.double({ min: 0.6, max: 2.5, noNaN: true }), (times) => close(at(law, times) / at(law, 1), times ** law.power, law.within)), { numRuns: 4 });
  });
  it('half as much weight pulls along an axis at 30° as along a vertical one', () => {
    // sin 30° = 1/2
    close(figureOf(evaluate('lift', { 'axis.direction': '30°' }), 'drive.gravity-load'), figureOf(evaluate('lift'), 'drive.gravity-load') / 2, 1e-9);
  });
  it('units share the load', () => {
    close(figureOf(evaluate('lift', { 'drive.units': 4 }), 'drive.gravity-load'), figureOf(evaluate('lift', { 'drive.units': 2 }), 'drive.gravity-load') / 2, 1e-9);
  });
  it('a start more adds one pitch of travel to each turn', () => {
    const [one, two] = ['Tr8x2', 'Tr8x4(P2)'].map((size) => figureOf(evaluate('lift', { 'screw.size': size }), 'axis.travel-per-turn'));
    close((two ?? 0) / (one ?? 1), 2, 1e-9);
  });
  it('twice the microsteps are half as long and come twice as often', () => {
    const of = (figure: string, microsteps: number): number => figureOf(evaluate('lift', { 'controller.microsteps': microsteps }), figure);
    close(of('axis.microstep-travel', 32), of('axis.microstep-travel', 16) / 2, 1e-9);
    close(of('motor.step-rate', 32), 2 * of('motor.step-rate', 16), 1e-9);
  });
  it('a lossless reduction of 2 halves the torque and doubles the speed at the motor', () => {
    const reduction = { 'drive.reduction': [{ kind: 'belt', ratio: '2', efficiency: '100 %' }] };
    close(figureOf(evaluate('lift', reduction), 'motor.cruising-torque'), figureOf(evaluate('lift'), 'motor.cruising-torque') / 2, 1e-9);
    close(figureOf(evaluate('lift', reduction), 'motor.speed'), 2 * figureOf(evaluate('lift'), 'motor.speed'), 1e-9);
  });
  it('twice the warming grows the screw twice as much', () => {
    const growth = (machine: string): number => figureOf(evaluate('lift', { 'conditions.ambient-temperature': '20 °C', 'conditions.machine-temperature': machine }), 'screw.thermal-growth');
    close(growth('60 °C'), 2 * growth('40 °C'), 1e-9);
  });
});

/** Inputs that a figure cannot do without, directly or through figures that it cannot do without, each in the variant that holds for the machine. */
function mandatory(figure: Figure, of: Evaluation): readonly string[] {
  const needs = [...Object.values(figure.needs), ...Object.values(figure.choices ?? {})];
  return [...new Set(needs.flatMap((id) => { const inner = of.figure(id) ?? registry.get(id); return inner ? mandatory(inner, of) : [id]; }))];
}

describe('a figure whose entry is taken away', () => {
  const bases = ['lift', 'ball-lift', 'router', 'belt', 'belt-lift', 'rack'] as const;

  it.each(bases)('is missing and names the entry, in "%s"', (base) => {
    const whole = evaluate(base);
    let seen = 0;
    const entries = [...new Set(whole.figures().flatMap((figure) => mandatory(figure, whole)))].filter((id) => {
      const input = whole.input(id);
      return entrySchema(id) !== undefined && input.state === 'known' && (input.origin.from === 'here' || input.origin.from === 'part');
    });
    for (const entry of entries) {
      const without = evaluate(base, { [entry]: null });
      // Something stands in for it: a handbook, or the standard size.
      if (without.input(entry).state !== 'missing') continue;
      for (const figure of whole.figures()) {
        if (!mandatory(figure, whole).includes(entry) || whole.result(figure.id).state !== 'computed') continue;
        const result = without.result(figure.id);
        // A choice that decides whether a figure concerns the drive at all leaves it out.
        if (result.state === 'left-out') continue;
        seen++;
        expect(result.state, `${figure.id} without ${entry}`).toBe('missing');
        expect(result.state === 'missing' ? result.missing : [], `${figure.id} without ${entry}`).toContain(entry);
      }
    }
    expect(seen).toBeGreaterThan(50);
  });
  it('says all entries that it lacks at once', () => {
    const result = evaluate('lift', { 'motion.speed': null, 'screw.size': null }).result('screw.turning-speed');
    expect(result.state === 'missing' ? [...result.missing].sort() : result).toEqual(['motion.speed', 'screw.lead']);
  });
  it('is computed again once a handbook or the person speaks for it', () => {
    expect(evaluate('lift', { 'nut.friction': null }).result('screw.efficiency').state).toBe('computed');
    expect(evaluate('lift', { 'nut.material': null }).result('screw.efficiency')).toEqual({ state: 'missing', missing: ['nut.friction'] });
    expect(evaluate('lift', { 'nut.material': null, 'nut.friction': '0.15' }).result('screw.efficiency').state).toBe('computed');
  });
});
