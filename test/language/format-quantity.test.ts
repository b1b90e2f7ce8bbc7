import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convert, convertFromSi, formatQuantity, unitSymbol } from '../../server/src/language/format-quantity.ts';
import { kindDetails, quantityKindNames, type QuantityKind } from '../../server/src/language/quantity-kinds.ts';
import { readQuantity } from '../../server/src/language/read-quantity.ts';

describe('values in the customary unit', () => {
  it.each<[number, QuantityKind, string]>([
    [0.42, 'length', '420 mm'], [0.00005, 'length', '0.05 mm'], [0.000005, 'length', '5 µm'], [12.5, 'length', '12.5 m'], [0.395, 'length', '395 mm'], [0, 'length', '0 mm'], [-0.01, 'position', '-10 mm'],
    [20_000, 'distance', '20 km'], [6.2, 'mass', '6.2 kg'], [0.05, 'mass', '50 g'], [0.35, 'mass', '0.35 kg'], [0.015, 'speed', '15 mm/s'], [2, 'speed', '2 m/s'], [0.2, 'acceleration', '200 mm/s²'], [1.5, 'acceleration', '1.5 m/s²'],
    [79.9, 'rotational-speed', '763 rpm'], [Math.PI / 100, 'angle', '1.8°'], [0.42, 'torque', '0.42 N·m'], [0.015, 'torque', '15 N·mm'], [40, 'force', '40 N'], [12_345, 'force', '12.3 kN'], [9_000, 'force', '9000 N'], [5e6, 'pressure', '5 MPa'], [2.06e11, 'pressure', '206 GPa'],
    [1.8, 'resistance', '1.8 Ω'], [0.0036, 'inductance', '3.6 mH'], [0.001, 'capacitance', '1000 µF'], [5.4e-6, 'rotational-inertia', '54 g·cm²'], [200_000, 'step-rate', '200 kHz'], [293.15, 'temperature', '20 °C'], [233.15, 'temperature', '-40 °C'], [6e7, 'stiffness', '60 N/µm'], [50_000, 'stiffness', '50 N/mm'],
    [2.3e-5, 'expansion', '23 µm/(m·K)'], [0.12, 'ratio', '0.12'], [2.5, 'ratio', '2.5'], [4, 'count', '4'], [14.5, 'money', '14.50'], [1e8, 'revolutions', '1 × 10⁸ rev'], [7.2e6, 'life-time', '2000 h'], [0.25, 'time', '250 ms'], [90, 'time', '90 s'], [1e-16, 'specific-wear', '1 × 10⁻⁷ mm³/(N·m)'],
    [0.33333, 'ratio', '0.333'], [2 / 3, 'length', '667 mm'], [1234.5, 'ratio', '1230'], [Number.NaN, 'length', '–'], [Number.POSITIVE_INFINITY, 'force', '–'], [4 * 0.025, 'length', '100 mm'], [3 * 0.1, 'mass', '0.3 kg'],
  ])('%f as %s is %s', (si, kind, text) => {
    expect(formatQuantity(si, kind)).toBe(text);
  });

  it.each<[number, QuantityKind, string, string]>([
    [0.42, 'length', 'in', '16.5 in'], [0.42, 'length', '"', '16.5 in'], [0.00635, 'length', 'in', '0.25 in'], [0.2, 'acceleration', 'mm/s^2', '200 mm/s²'], [0.42, 'torque', 'Nm', '0.42 N·m'], [0.042369, 'torque', 'oz·in', '6 oz·in'], [0.5, 'ratio', '%', '50 %'], [0.12, 'ratio', '', '0.12'],
    [293.15, 'temperature', '°F', '68 °F'], [157.08, 'rotational-speed', 'min⁻¹', '1500 min⁻¹'], [157.08, 'rotational-speed', 'rev/s', '25 rev/s'], [14.5, 'money', '€', '14.50 EUR'], [14.5, 'money', 'USD', '14.50 USD'], [200_000, 'step-rate', 'steps/s', '200000 steps/s'],
    // A unit that does not fit is passed over.
    [0.42, 'length', 'kg', '420 mm'], [0.42, 'length', '', '420 mm'], [0.42, 'length', 'constructor', '420 mm'],
  ])('%f as %s in %s is %s', (si, kind, unit, text) => {
    expect(formatQuantity(si, kind, { unit })).toBe(text);
  });

  it.each([[0.123456, 2, '0.12'], [0.123456, 5, '0.12346'], [0.999, 2, '1']])('%f with %i digits is %s', (si, digits, text) => {
    expect(formatQuantity(si, 'ratio', { digits })).toBe(text);
  });
});

describe('beside a limit', () => {
  it.each<[number, number, string]>([
    // Never rounded across: 99.6 % is not "100 %".
    [0.9996, 1, '99.96 %'], [1.0004, 1, '100.04 %'], [0.996, 1, '99.6 %'], [1, 1, '100 %'], [1.18, 1, '118 %'], [0.79999, 0.8, '79.999 %'], [0.3, 0.8, '30 %'],
  ])('%f beside %f is %s', (si, besides, text) => {
    expect(formatQuantity(si, 'ratio', { unit: '%', besides })).toBe(text);
  });

  it('stays on its side for any two values', () => {
    const sizes = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(sizes, fc.double({ min: -1e-3, max: 1e-3, noNaN: true }), fc.constantFrom<QuantityKind>('ratio', 'length', 'torque', 'rotational-speed'), (si, part, kind) => {
        const limit = si * (1 + part);
        const reading = readQuantity(formatQuantity(si, kind, { besides: limit }), kind);
        const shown = reading.ok ? reading.quantity.nominal : Number.NaN;
        if (Math.abs(part) > 1e-9) expect(Math.sign(shown - limit)).toBe(Math.sign(si - limit));
      }),
      { numRuns: 1_000 },
    );
  });
});

describe('what is shown', () => {
  it('reads back within its rounding, in every kind', () => {
    const kinds = fc.constantFrom(...quantityKindNames.filter((kind) => kind !== 'money' && kind !== 'count' && kindDetails(kind).maximum === undefined));
    fc.assert(
      fc.property(kinds, fc.double({ min: -6, max: 6, noNaN: true }), (kind, exponent) => {
        const si = kind === 'temperature' ? 200 + 10 ** (exponent / 3) : 10 ** exponent;
        const text = formatQuantity(si, kind);
        const reading = readQuantity(text, kind);
        expect(reading.ok, `${text} as ${kind}`).toBe(true);
        // Three digits: half a unit in the third, at worst 0.5 %; of a temperature the number on its scale.
        const room = kind === 'temperature' ? 0.5 : 0.005 * si;
        if (reading.ok) expect(Math.abs(reading.quantity.nominal - si), text).toBeLessThanOrEqual(room * (1 + 1e-9));
      }),
      { numRuns: 3_000 },
    );
  });

  it('contains ordinary blanks only', () => {
    for (const kind of quantityKindNames) expect(formatQuantity(1.5, kind)).not.toMatch(/[\u00a0\u202f\u2009]/);
  });

  it('has units in the usual spelling', () => {
    expect(unitSymbol('mm/s^2', 'acceleration')).toBe('mm/s²');
    expect(unitSymbol('nonsense', 'length')).toBe('nonsense');
    expect(kindDetails('torque').units).toContain('N·m');
  });
});

describe('conversion', () => {
  it.each<[number, string, string, QuantityKind, number]>([
    // By hand: 1 in = 25.4 mm; 300 rpm = 5 rev/s; 20 °C = 68 °F.
    [1, 'in', 'mm', 'length', 25.4], [300, 'rpm', 'rev/s', 'rotational-speed', 5], [20, '°C', '°F', 'temperature', 68], [68, '°F', '°C', 'temperature', 20], [1, 'N·m', 'N·mm', 'torque', 1000],
  ])('%f %s in %s', (value, from, to, kind, expected) => {
    expect(convert(value, from, to, kind)).toBeCloseTo(expected, 10);
  });

  it('is undefined where a unit does not fit', () => {
    expect(convert(1, 'mm', 'kg', 'length')).toBeUndefined();
    expect(convert(1, 'kg', 'mm', 'length')).toBeUndefined();
    expect(convertFromSi(1, 'kg', 'length')).toBeUndefined();
    expect(convertFromSi(0.5, '', 'ratio')).toBe(0.5);
  });
});
