import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatQuantity } from '../../server/src/language/format-quantity.ts';
import { kindDetails, quantityKindNames, type QuantityKind } from '../../server/src/language/quantity-kinds.ts';
import { implausible } from '../../server/src/language/quantity-messages.ts';
import { readQuantity, type Quantity } from '../../server/src/language/read-quantity.ts';

function read(text: string, kind: QuantityKind): Quantity {
  const reading = readQuantity(text, kind);
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.quantity;
}

/** By hand: number × factor, in SI. Equal to a part in 10¹², which leaves room for binary fractions. */
function expectSi(actual: number, expected: number): void {
  expect(Math.abs(actual - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(expected)));
}

describe('numbers with units', () => {
  it.each([
    ['420 mm', 'length', 0.42], ['420mm', 'length', 0.42], ['0.42 m', 'length', 0.42], ['.42 m', 'length', 0.42], ['42. cm', 'length', 0.42], ['4.2e2 mm', 'length', 0.42], ['+420 mm', 'length', 0.42], ['  420   mm  ', 'length', 0.42],
    ['420\u00a0mm', 'length', 0.42], ['420\u202fmm', 'length', 0.42],
    ['1/4 in', 'length', 0.00635], ['1/4in', 'length', 0.00635], ['3/8"', 'length', 0.009525], ['1 1/2 in', 'length', 0.0381], ['1-1/2 in', 'length', 0.0381], ['12"', 'length', 0.3048], ['5 thou', 'length', 0.000127],
    ['-10 mm', 'position', -0.01], ['\u221210 mm', 'position', -0.01], ['-1 1/2 in', 'position', -0.0381],
    ['6.2 kg', 'mass', 6.2], ['350 g', 'mass', 0.35], ['1 lb', 'mass', 0.45359237], ['8 oz', 'mass', 0.226796185],
    ['15 mm/s', 'speed', 0.015], ['900 mm/min', 'speed', 0.015], ['200 mm/s²', 'acceleration', 0.2], ['1.5 m/s^2', 'acceleration', 1.5], ['0.1 g', 'acceleration', 0.980665], ['3 m/s³', 'jerk', 3],
    ['300 rpm', 'rotational-speed', 10 * Math.PI], ['5 rev/s', 'rotational-speed', 10 * Math.PI], ['1500 min⁻¹', 'rotational-speed', 50 * Math.PI], ['1.8°', 'angle', Math.PI / 100], ['1.8 deg', 'angle', Math.PI / 100], ['-30°', 'angle', -Math.PI / 6],
    ['0.42 N·m', 'torque', 0.42], ['420 N·mm', 'torque', 0.42], ['42 Ncm', 'torque', 0.42], ['0.4 kN', 'force', 400], ['40 N', 'force', 40], ['-5 N', 'force', -5],
    ['24 V', 'voltage', 24], ['1500 mA', 'current', 1.5], ['1.8 Ω', 'resistance', 1.8], ['1.8 ohm', 'resistance', 1.8], ['3.6 mH', 'inductance', 0.0036], ['1000 µF', 'capacitance', 0.001], ['54 g·cm²', 'rotational-inertia', 5.4e-6],
    ['200 kHz', 'step-rate', 200_000], ['200000 steps/s', 'step-rate', 200_000], ['20 °C', 'temperature', 293.15], ['68 °F', 'temperature', 293.15], ['293.15 K', 'temperature', 293.15], ['-40 °F', 'temperature', 233.15], ['5 °C', 'temperature-difference', 5],
    ['60 N/µm', 'stiffness', 6e7], ['60 N·m/rad', 'torsional-stiffness', 60], ['5 MPa', 'pressure', 5e6], ['5 N/mm²', 'pressure', 5e6], ['23 µm/(m·K)', 'expansion', 2.3e-5], ['23e-6 1/K', 'expansion', 2.3e-5], ['23 × 10⁻⁶ 1/K', 'expansion', 2.3e-5], ['2.3x10^-5 /K', 'expansion', 2.3e-5],
    ['0.12', 'ratio', 0.12], ['50 %', 'ratio', 0.5], ['50%', 'ratio', 0.5], ['4', 'count', 4], ['14.50 EUR', 'money', 14.5], ['€14.50', 'money', 14.5], ['$ 3', 'money', 3], ['2000 h', 'time', 7.2e6], ['2000 h', 'life-time', 7.2e6], ['20 km', 'distance', 20_000],
    ['6 K/W', 'thermal-resistance', 6], ['70000 mm·rpm', 'diameter-speed', (70 * 2 * Math.PI) / 60], ['1e-7 mm³/(N·m)', 'specific-wear', 1e-16], ['1e8 rev', 'revolutions', 1e8], ['0 mm', 'length', 0],
  ] as const)('%s as %s', (text, kind, si) => {
    const quantity = read(text, kind);
    expectSi(quantity.nominal, si);
    expect(quantity).toMatchObject({ low: quantity.nominal, high: quantity.nominal, stated: 'exact', kind });
  });

  it.each([
    ['420 mm', 'length', '420', 'mm'], ['  6.2 kg ± 0.2 kg', 'mass', '6.2', 'kg'], ['6.2 ± 0.2 kg', 'mass', '6.2', 'kg'], ['0 to 3 kg', 'mass', '0', 'kg'], ['1 1/2 in', 'length', '1 1/2', 'in'], ['1.8°', 'angle', '1.8', '°'], ['0.12', 'ratio', '0.12', ''],
    ['€14.50', 'money', '14.50', '€'], ['15 °C to 30 °C', 'temperature', '15', '°C'], ['5 mm/s^2', 'acceleration', '5', 'mm/s^2'], ['0.42\u00a0N·m', 'torque', '0.42', 'N·m'],
  ] as const)('marks number and unit of %j', (text, kind, number, unit) => {
    const { numberSpan, unitSpan, unit: written } = read(text, kind);
    expect(text.slice(numberSpan.start, numberSpan.end)).toBe(number);
    expect(text.slice(unitSpan.start, unitSpan.end)).toBe(unit);
    expect(written).toBe(unit);
  });
});

describe('values that say how sure they are', () => {
  it.each([
    ['0.12 ± 0.03', 'ratio', 0.12, 0.09, 0.15, 'plus-minus'], ['0.12 +/- 0.03', 'ratio', 0.12, 0.09, 0.15, 'plus-minus'], ['0.12 +- 0.03', 'ratio', 0.12, 0.09, 0.15, 'plus-minus'], ['0.12±0.03', 'ratio', 0.12, 0.09, 0.15, 'plus-minus'],
    ['6.4 kg ± 5 %', 'mass', 6.4, 6.08, 6.72, 'percent'], ['6.2 kg ± 0.2 kg', 'mass', 6.2, 6, 6.4, 'plus-minus'], ['6.2 ± 0.2 kg', 'mass', 6.2, 6, 6.4, 'plus-minus'], ['6.2 kg ± 0.2', 'mass', 6.2, 6, 6.4, 'plus-minus'], ['6.2 kg ± 200 g', 'mass', 6.2, 6, 6.4, 'plus-minus'],
    ['0.08 to 0.15', 'ratio', 0.115, 0.08, 0.15, 'range'], ['0 kg to 3 kg', 'mass', 1.5, 0, 3, 'range'], ['0 to 3 kg', 'mass', 1.5, 0, 3, 'range'], ['0 kg to 3', 'mass', 1.5, 0, 3, 'range'], ['500 g to 3 kg', 'mass', 1.75, 0.5, 3, 'range'], ['5 TO 8 mm', 'length', 0.0065, 0.005, 0.008, 'range'],
    ['15 °C to 30 °C', 'temperature', 295.65, 288.15, 303.15, 'range'], ['40 °C ± 5 °C', 'temperature', 313.15, 308.15, 318.15, 'plus-minus'], ['40 °C ± 5 K', 'temperature', 313.15, 308.15, 318.15, 'plus-minus'], ['104 °F ± 9 °F', 'temperature', 313.15, 308.15, 318.15, 'plus-minus'],
    ['-10 mm to 10 mm', 'position', 0, -0.01, 0.01, 'range'], ['-10 mm ± 10 %', 'position', -0.01, -0.011, -0.009, 'percent'],
    // A tolerance in per cent of a value that is itself in per cent means points; of a bare ratio it means a share.
    ['5 % ± 1 %', 'ratio', 0.05, 0.04, 0.06, 'plus-minus'], ['0.12 ± 25 %', 'ratio', 0.12, 0.09, 0.15, 'percent'], ['3 kg to 3 kg', 'mass', 3, 3, 3, 'range'],
    ['1/4 in ± 1/64 in', 'length', 0.00635, 0.005953125, 0.006746875, 'plus-minus'],
  ] as const)('%s as %s', (text, kind, nominal, low, high, stated) => {
    const quantity = read(text, kind);
    expectSi(quantity.nominal, nominal);
    expectSi(quantity.low, low);
    expectSi(quantity.high, high);
    expect(quantity.stated).toBe(stated);
  });
});

describe('problems', () => {
  /** Text, kind, code, marked text, texts after each replacement. */
  it.each<[string, QuantityKind, string, string, readonly string[]]>([
    ['420', 'length', 'unit-missing', '420', ['420 mm', '420 µm', '420 cm', '420 in']], // 420 m is no length of such a machine
    ['1.8', 'angle', 'unit-missing', '1.8', ['1.8°', '1.8 rad', '1.8 mrad', '1.8 arcmin']],
    ['14.50', 'money', 'unit-missing', '14.50', ['14.50 EUR', '14.50 USD', '14.50 GBP', '14.50 CHF']],
    ['0 to 3', 'mass', 'unit-missing', '0', ['0 kg to 3', '0 g to 3', '0 t to 3', '0 lb to 3']],
    ['420 mn', 'length', 'unit-unknown', 'mn', ['420 mm', '420 m', '420 in']],
    ['420 MM', 'length', 'unit-unknown', 'MM', ['420 mm', '420 µm', '420 cm']],
    ['5 constructor', 'length', 'unit-unknown', 'constructor', []],
    ['5 __proto__', 'mass', 'unit-unknown', '__proto__', []],
    ['5 mm/sx', 'speed', 'unit-unknown', 'sx', ['5 mm/s']],
    ['40 C', 'temperature', 'unit-unknown', 'C', ['40 °C']],
    ['5 kg', 'force', 'unit-of-wrong-kind', 'kg', ['5 kgf']],
    ['5 lb', 'force', 'unit-of-wrong-kind', 'lb', ['5 lbf']],
    ['5 nm', 'torque', 'unit-of-wrong-kind', 'nm', ['5 N·m']],
    ['5 kg·cm', 'torque', 'unit-of-wrong-kind', 'kg·cm', ['5 kgf·cm']],
    ['5 N', 'mass', 'unit-of-wrong-kind', 'N', []],
    ['0.12 mm', 'ratio', 'unit-of-wrong-kind', 'mm', []],
    ['0.42 J', 'torque', 'unit-of-wrong-kind', 'J', []],
    ['6.2 kg ± 5 N', 'mass', 'unit-of-wrong-kind', 'N', []],
    ['23 µm/m K', 'expansion', 'unit-ambiguous', 'µm/m K', ['23 µm/(m K)']],
    ['1,5 mm', 'length', 'decimal-comma', '1,5', ['1.5 mm']],
    ['1,000 mm', 'length', 'decimal-comma', '1,000', ['1.000 mm', '1000 mm']],
    ['12,345,678 mm', 'length', 'decimal-comma', '12,345,678', ['12345678 mm']],
    ['1 000 mm', 'length', 'decimal-comma', '1 000', ['1000 mm']],
    ['1_000 mm', 'length', 'decimal-comma', '1_000', ['1000 mm']],
    ["1'000 mm", 'length', 'decimal-comma', "1'000", ['1000 mm']],
    ['0,12 ± 0,03', 'ratio', 'decimal-comma', '0,12', ['0.12 ± 0,03']],
    ['0.08-0.15', 'ratio', 'range-with-dash', '-', ['0.08 to 0.15']],
    ['0.08 - 0.15', 'ratio', 'range-with-dash', ' - ', ['0.08 to 0.15']],
    ['5–8 mm', 'length', 'range-with-dash', '–', ['5 to 8 mm']],
    ['5 mm … 8 mm', 'length', 'range-with-dash', ' … ', ['5 mm to 8 mm']],
    ['5..8 mm', 'length', 'range-with-dash', '..', ['5 to 8 mm']],
    ['3 kg to 1 kg', 'mass', 'range-reversed', '3 kg to 1 kg', ['1 kg to 3 kg']],
    ['3 to 1 kg', 'mass', 'range-reversed', '3 to 1 kg', ['1 to 3 kg']],
    ['NaN mm', 'length', 'not-a-number', 'NaN mm', []],
    ['Infinity mm', 'length', 'not-a-number', 'Infinity mm', []],
    ['mm', 'length', 'not-a-number', 'mm', []],
    ['', 'length', 'not-a-number', '', []],
    ['± 0.1 mm', 'length', 'not-a-number', '±', ['0.1 mm']],
    ['1/0 in', 'length', 'not-a-number', '1/0', []],
    ['1e999 mm', 'length', 'value-out-of-domain', '1e999 mm', []],
    ['-5 mm', 'length', 'value-out-of-domain', '-5 mm', []],
    ['-300 °C', 'temperature', 'value-out-of-domain', '-300 °C', []],
    ['10 mm ± 20 mm', 'length', 'value-out-of-domain', '10 mm ± 20 mm', []],
    ['4.5', 'count', 'value-out-of-domain', '4.5', []],
    ['40 °C ± 5 %', 'temperature', 'quantity-not-understood', '5 %', []],
    ['5 mm ± 1 mm ± 2 mm', 'length', 'quantity-not-understood', '±', []],
    ['3 to 4 to 5 mm', 'length', 'quantity-not-understood', 'to', []],
    ['5 mm ± -1 mm', 'length', 'quantity-not-understood', '-1', []],
    ['€14 x', 'money', 'quantity-not-understood', ' x', []],
    [`5 ${'m'.repeat(79)}`, 'length', 'quantity-too-long', `5 ${'m'.repeat(79)}`, []],
  ])('%j as %s: %s', (text, kind, code, marked, replaced) => {
    const reading = readQuantity(text, kind);
    expect(reading.ok).toBe(false);
    if (reading.ok) return;
    const { problem } = reading;
    expect(problem.code).toBe(code);
    expect(text.slice(problem.start, problem.end)).toBe(marked);
    expect(problem.replacements.map((one) => text.slice(0, one.start) + one.text + text.slice(one.end))).toEqual(replaced);
    expect(problem.message.length).toBeLessThanOrEqual(240);
  });

  it.each<[string, QuantityKind, string]>([
    ['420', 'length', 'No unit: a length needs one, such as mm, µm, cm or m. The tool never guesses it.'],
    ['1.8', 'angle', 'No unit: an angle needs one, such as °, rad, mrad or arcmin. The tool never guesses it.'],
    ['5 kg', 'force', '"kg" is a unit of mass, and a force is due here. Use N, kN, lbf or ozf.'],
    ['5 mn', 'mass', '"mn" is not a known unit. Did you mean "mg"?'],
    ['1,5 mm', 'length', 'Write decimals with a point and no separators between thousands: 1.5.'],
    ['-5 mm', 'length', 'A length cannot be negative. Check the sign.'],
    ['-1°C', 'temperature-difference', ''],
    ['3 kg to 1 kg', 'mass', 'A range goes from the smaller to the larger value: "1 kg to 3 kg".'],
    ['µm/m K', 'expansion', '"µm/m K" is not a number: a thermal expansion is due here, such as 12 µm/(m·K).'],
  ])('%j as %s reads: %s', (text, kind, message) => {
    const reading = readQuantity(text, kind);
    expect(reading.ok ? '' : reading.problem.message).toBe(message);
  });
});

describe('unusual sizes', () => {
  it.each<[string, QuantityKind, string | undefined]>([
    ['6400 kg', 'mass', '6400 kg is unusually large for a mass (0.1 g to 2000 kg is usual). Is the unit right?'],
    ['6.4 kg', 'mass', undefined],
    ['0 kg', 'mass', undefined],
    ['0.008 m/s²', 'acceleration', '0.008 m/s² is unusually small for an acceleration (10 mm/s² to 100 m/s² is usual). Is the unit right?'],
    ['420 m', 'length', '420 m is unusually large for a length (0.1 µm to 20 m is usual). Is the unit right?'],
    ['420 mm', 'length', undefined],
    ['20 °C', 'temperature', undefined],
    ['900 °C', 'temperature', '900 °C is unusually large for a temperature (-100 °C to 500 °C is usual). Is the unit right?'],
  ])('%s as %s', (text, kind, question) => {
    expect(implausible(read(text, kind))).toBe(question);
  });
});

describe('a share', () => {
  it.each([['15 %', 0.15], ['0.15', 0.15], ['100 %', 1], ['1', 1], ['99.5 % ± 0.5 %', 0.995]] as const)('%s', (text, nominal) => {
    expectSi(read(text, 'share').nominal, nominal);
  });

  it.each([
    ['20', 'A share cannot be more than 100 %. Write "20 %" if percent are meant.', ['20 %']],
    ['120 %', 'A share cannot be more than 100 %. Check the number and its unit.', []],
    ['150', 'A share cannot be more than 100 %. Check the number and its unit.', []],
    ['90 % ± 20 %', 'With its tolerance this share becomes more than 100 %. Check the tolerance.', []],
  ])('%s is more than the whole', (text, message, cures) => {
    const reading = readQuantity(text, 'share');
    expect(reading).toMatchObject({ ok: false, problem: { code: 'value-out-of-domain', message } });
    expect(reading.ok ? [] : reading.problem.replacements.map((one) => text.slice(0, one.start) + one.text + text.slice(one.end))).toEqual(cures);
  });
});

describe('any quantity', () => {
  const kinds = fc.constantFrom(...quantityKindNames.filter((kind) => kindDetails(kind).units.length > 0 && kindDetails(kind).maximum === undefined && kind !== 'revolutions'));
  const sizes = fc.double({ min: 1e-6, max: 1e6, noNaN: true });

  it('in any unit of its kind reads back as what it was', () => {
    fc.assert(
      fc.property(kinds, fc.nat(), sizes, (kind, pick, size) => {
        const { units } = kindDetails(kind);
        const unit = units[pick % units.length] ?? '';
        const quantity = read(`${size} ${unit}`, kind);
        const back = read(formatQuantity(quantity.nominal, kind, { unit, digits: 9 }), kind);
        // Nine digits are kept; money has two decimals.
        const room = kind === 'money' ? 0.005 : 1e-8 * Math.abs(quantity.nominal) + 1e-6 * (kind === 'temperature' ? 1 : 0);
        expect(Math.abs(back.nominal - quantity.nominal)).toBeLessThanOrEqual(room);
      }),
      { numRuns: 2_000 },
    );
  });

  it('has bounds around its nominal value', () => {
    fc.assert(
      fc.property(kinds, fc.nat(), sizes, fc.double({ min: 0, max: 0.999, noNaN: true }), fc.constantFrom('±', 'percent', 'to'), (kind, pick, size, share, form) => {
        const { units } = kindDetails(kind);
        const unit = units[pick % units.length] ?? '';
        // Of a temperature a percentage is refused; of a percentage it means points, which may exceed it.
        if ((kind === 'temperature' || kind === 'ratio') && form === 'percent') return;
        const text = form === '±' ? `${size} ${unit} ± ${size * share} ${unit}` : form === 'percent' ? `${size} ${unit} ± ${share * 100} %` : `${size * share} ${unit} to ${size} ${unit}`;
        const { nominal, low, high } = read(text, kind);
        expect(low).toBeLessThanOrEqual(nominal);
        expect(high).toBeGreaterThanOrEqual(nominal);
      }),
      { numRuns: 2_000 },
    );
  });

  it('is read once: the same text gives the same object', () => {
    expect(readQuantity('7.25 mm', 'length')).toBe(readQuantity('7.25 mm', 'length'));
    expect(readQuantity('7.25 mm', 'position')).not.toBe(readQuantity('7.25 mm', 'length'));
  });
});
