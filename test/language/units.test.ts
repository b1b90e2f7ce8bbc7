import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
// @ts-expect-error The package has no types.
import untypedReferee from 'unitmath/dist/UnitMath.js';
import { readUnitOfKind } from '../../server/src/language/kind-units.ts';
import { kindDetails, quantityKindNames } from '../../server/src/language/quantity-kinds.ts';
import { prefixes, unitDefinitions } from '../../server/src/language/unit-table.ts';
import { nearestUnits, readUnit } from '../../server/src/language/units.ts';

/** An independent referee, with a table and a parser of its own. */
const referee = untypedReferee as (text: string) => { to(unit: string): { getValue(): number } };

function factor(text: string): number {
  const reading = readUnit(text);
  if (!reading.ok) throw new Error(`${text}: ${reading.code}`);
  return reading.unit.factor;
}

const dimension = (text: string): unknown => {
  const reading = readUnit(text);
  return reading.ok ? reading.unit.dimension : undefined;
};

/** Relative closeness to a factor that the source gives with seven digits. */
function expectSevenDigits(actual: number, source: number): void {
  expect(Math.abs(actual / source - 1), `${actual} against ${source}`).toBeLessThan(6e-7);
}

describe('factors', () => {
  // NIST Special Publication 811 (2008), appendix B.8, "Factors for units listed alphabetically"; literals as printed there.
  it.each([
    ['in', 2.54e-2, 'inch to metre'],
    ['ft', 3.048e-1, 'foot to metre'],
    ['mil', 2.54e-5, 'mil (0.001 in) to metre'],
    ['µin', 2.54e-8, 'microinch to metre'],
    ['lb', 4.535924e-1, 'pound (avoirdupois) to kilogram'],
    ['oz', 2.834952e-2, 'ounce (avoirdupois) to kilogram'],
    ['t', 1e3, 'tonne to kilogram'],
    ['lbf', 4.448222, 'pound-force to newton'],
    ['ozf', 2.780139e-1, 'ounce-force to newton'],
    ['kgf', 9.80665, 'kilogram-force to newton'],
    ['kp', 9.80665, 'kilopond to newton'],
    ['lbf·in', 1.129848e-1, 'pound-force inch to newton metre'],
    ['lbf·ft', 1.355818, 'pound-force foot to newton metre'],
    ['ozf·in', 7.061552e-3, 'ounce-force inch to newton metre'],
    ['kgf·m', 9.80665, 'kilogram-force metre to newton metre'],
    ['lbf/in', 1.751268e2, 'pound-force per inch to newton per metre'],
    ['lbf/ft', 1.45939e1, 'pound-force per foot to newton per metre'],
    ['psi', 6.894757e3, 'psi to pascal'],
    ['ksi', 6.894757e6, 'ksi to pascal'],
    ['bar', 1e5, 'bar to pascal'],
    ['hp', 7.456999e2, 'horsepower (550 ft·lbf/s) to watt'],
    ['Wh', 3.6e3, 'watt hour to joule'],
    ['kWh', 3.6e6, 'kilowatt hour to joule'],
    ['rpm', 1.047198e-1, 'revolution per minute to radian per second'],
    ['rev', 6.283185, 'revolution to radian'],
    ['°', 1.745329e-2, 'degree to radian'],
    ['arcmin', 2.908882e-4, 'minute (angle) to radian'],
    ['arcsec', 4.848137e-6, 'second (angle) to radian'],
    ['ft/min', 5.08e-3, 'foot per minute to metre per second'],
    ['in/s', 2.54e-2, 'inch per second to metre per second'],
    ['lb/in³', 2.76799e4, 'pound per cubic inch to kilogram per cubic metre'],
    ['lb/ft', 1.488164, 'pound per foot to kilogram per metre'],
    ['lb·in²', 2.926397e-4, 'pound inch squared to kilogram metre squared'],
    ['W/in²', 1.550003e3, 'watt per square inch to watt per square metre'],
    ['d', 8.64e4, 'day to second'],
    ['h', 3.6e3, 'hour to second'],
    ['°F', 5.555556e-1, 'degree Fahrenheit (interval) to kelvin'],
  ])('%s is %f (%s)', (unit, source) => expectSevenDigits(factor(unit), source));

  // BIPM, The International System of Units, 9th edition (2019), table 7.
  it.each([['p', 1e-12], ['n', 1e-9], ['µ', 1e-6], ['m', 1e-3], ['c', 1e-2], ['h', 1e2], ['k', 1e3], ['M', 1e6], ['G', 1e9]])('prefix %s is %f', (prefix, power) => {
    expect(prefixes[prefix]).toBe(power);
  });

  it('for ounces come by hand from the pound: a sixteenth', () => {
    // 0.45359237 kg × (0.0254 m)² / 16 = 1.828998e-5 kg·m²
    expectSevenDigits(factor('oz·in²'), 1.828998e-5);
  });

  it('agree with another library, which has its own table', () => {
    const pairs: readonly (readonly [string, string, string])[] = [
      ['mm/s²', 'mm/s^2', 'm/s^2'], ['in', 'inch', 'm'], ['ft', 'ft', 'm'], ['mil', 'mil', 'm'], ['lb', 'lbm', 'kg'], ['oz', 'oz', 'kg'], ['lbf', 'lbf', 'N'], ['psi', 'psi', 'Pa'], ['bar', 'bar', 'Pa'],
      ['hp', 'hp', 'W'], ['°', 'deg', 'rad'], ['arcmin', 'arcmin', 'rad'], ['arcsec', 'arcsec', 'rad'], ['rev', 'cycle', 'rad'], ['kN·mm', 'kN mm', 'J'], ['g·cm²', 'g cm^2', 'kg m^2'], ['W/(m·K)', 'W / m K', 'W / m K'],
      ['mΩ', 'mohm', 'ohm'], ['µF', 'uF', 'F'], ['mH', 'mH', 'H'], ['kHz', 'kHz', 'Hz'], ['kWh', 'kW hour', 'J'], ['d', 'day', 's'], ['N/µm', 'N/um', 'N/m'], ['lbf/in', 'lbf/in', 'N/m'], ['ft·lbf', 'ft lbf', 'J'],
    ];
    for (const [ours, theirs, si] of pairs) {
      const value = referee(`1 ${theirs}`).to(si).getValue();
      expect(Math.abs(factor(ours) / value - 1), ours).toBeLessThan(1e-9);
    }
  });
});

describe('spellings', () => {
  it.each([
    ['m/s²', 'm/s^2', 'm/s2', 'm/s/s', 'm s⁻²', 'm·s^-2', 'metre/s²'],
    ['mm/s²', 'mm/s^2', 'mm/s2', 'mm / s²', 'mm/sec²'],
    ['N·m', 'Nm', 'N m', 'N*m', 'N⋅m', 'N-m', 'N × m'],
    ['N·mm', 'Nmm', 'N mm', 'N*mm', 'mN·m', 'mNm'],
    ['N·cm', 'Ncm', 'cN·m', 'cNm'],
    ['N·m²', 'Nm²', 'Nm^2', 'N m2'],
    ['N·m/rad', 'Nm/rad', 'N m/rad'],
    ['in', '"', 'inch', 'inches', '\u2033'],
    ['thou', 'mil', 'mils'],
    ['rpm', 'r/min', 'rev/min', 'turns/min'],
    ['rev/s', 'r/s', 'rps', 'rev·s⁻¹'],
    ['°', 'deg', 'degree', 'degrees', '\u00ba'],
    ['°/s', 'deg/s'],
    ['Ω', '\u2126', 'ohm', 'Ohm', 'ohms'],
    ['mΩ', 'm\u2126', 'mohm'],
    ['µm', '\u03bcm', 'um'],
    ['N/µm', 'N/um', 'N/\u03bcm', 'N/(µm)'],
    ['g·cm²', 'g cm²', 'g*cm^2', 'g·cm2', 'gcm²'.replace('gcm', 'g cm')],
    ['kg·m²', 'kg m2', 'kg m^2'],
    ['N/mm²', 'N/mm^2', 'N/mm2', 'MPa'],
    ['µm/(m·K)', 'µm/(m K)', 'um/(m*K)', 'µm/m/K', 'ppm/K'],
    ['1/K', '/K', 'K⁻¹', 'K^-1'],
    ['°C', 'degC', '\u2103'.normalize('NFC'), 'K'],
    ['kWh', 'kW·h'],
    ['steps/s', 'step/s'],
    ['steps/mm', 'step/mm'],
    ['lbf·in', 'in·lbf', 'in lbf', 'lbf-in', 'inlb'],
    ['ozf·in', 'in·ozf', 'ozf in', 'ozin'],
    ['ft·lbf', 'lbf·ft', 'ftlb'],
    ['h', 'hr', 'hours'],
    ['mm³/(N·m)', 'mm^3/(N m)', 'mm³/N/m'],
    ['V·s/rad', 'V s/rad'],
    ['EUR', '€'],
  ])('%s is read the same in other spellings', (...spellings) => {
    const [first = '', ...others] = spellings;
    for (const other of others) {
      expect(Math.abs(factor(other) / factor(first) - 1), other).toBeLessThan(1e-12);
      expect(dimension(other), other).toEqual(dimension(first));
    }
  });

  it.each([
    ['mm/s^2', 'mm/s²'], ['Nm', 'N·m'], ['um', 'µm'], ['ohm', 'Ω'], ['deg', '°'], ['"', 'in'], ['g cm2', 'g·cm²'], ['um/(m*K)', 'µm/(m·K)'], ['W/m/K', 'W/m/K'], ['/K', '1/K'], ['K^-1', 'K⁻¹'], ['€', 'EUR'], ['N*m*s/rad', 'N·m·s/rad'],
  ])('%s is shown as %s', (written, shown) => {
    const reading = readUnit(written);
    expect(reading.ok && reading.unit.symbol).toBe(shown);
  });

  it('with prefixes are case-sensitive', () => {
    expect(factor('mN')).toBe(1e-3);
    expect(factor('MN')).toBe(1e6);
    expect(factor('mH')).toBe(1e-3);
    expect(factor('MPa')).toBe(1e6);
    expect(factor('mPa')).toBe(1e-3);
    expect(factor('min')).toBe(60);
  });

  it('read every unit of the table with each of its prefixes', () => {
    for (const definition of unitDefinitions) {
      expect(factor(definition.symbol)).toBe(definition.factor);
      for (const prefix of definition.prefixes ?? '') {
        expect(Math.abs(factor(prefix + definition.symbol) / (definition.factor * (prefixes[prefix] ?? 0)) - 1), prefix + definition.symbol).toBeLessThan(1e-12);
      }
    }
  });
});

describe('refusals', () => {
  it.each([
    'constructor', '__proto__', 'toString', 'hasOwnProperty', 'valueOf', 'M', 'u', 'unit', 'PS', 'mmm', 'kmm', 'Mm', 'dm', 'C', 'mm^', 'mm^0', 'mm/', '/', '·', 'mm·', 'mm·/s', 'm//s', '(mm)', 'mm)', 'N/(m', 'mm^2.5', 'mm12', '5', '', ' ', 'm m/s)', 'm(s)', 'µ', 'kilomm', 'mm😀', 'X'.repeat(80),
  ])('%j is unknown', (text) => {
    const reading = readUnit(text);
    expect(reading.ok).toBe(false);
    if (!reading.ok) {
      expect(reading.code).toBe('unit-unknown');
      expect(reading.end).toBeLessThanOrEqual(text.length);
    }
  });

  it.each([
    ['µm/m K', 'µm/(m K)'],
    ['µm/m·K', 'µm/(m·K)'],
    ['W/m*K', 'W/(m·K)'],
    ['N/mm s', 'N/(mm s)'],
  ])('%s has a product behind its slash', (text, clear) => {
    expect(readUnit(text)).toMatchObject({ ok: false, code: 'unit-ambiguous', clear });
  });

  it.each([
    ['MM', 'mm'], ['KG', 'kg'], ['Kg', 'kg'], ['n·m', 'N·m'], ['khz', 'kHz'], ['RPM', 'rpm'], ['mpa', 'MPa'], ['OHM', 'Ω'], ['mms', 'mm'],
  ])('%s is near %s', (wrong, right) => {
    expect(nearestUnits(wrong, ['mm', 'kg', 'N·m', 'kHz', 'rpm', 'MPa', 'Ω'])).toContain(right);
  });
});

describe('kinds', () => {
  it('offer only units that they accept', () => {
    for (const kind of quantityKindNames) {
      const { units, shown, si } = kindDetails(kind);
      for (const unit of [...units, ...shown.map((step) => step.unit), si].filter((text) => text !== '')) expect(readUnitOfKind(unit, kind), `${kind}: ${unit}`).toMatchObject({ ok: true });
    }
  });

  it('have the factor 1 for their SI unit', () => {
    for (const kind of quantityKindNames) {
      const { si } = kindDetails(kind);
      if (si === '') continue;
      const reading = readUnitOfKind(si, kind);
      expect(reading.ok && reading.unit.factor, `${kind}: ${si}`).toBe(1);
      expect(reading.ok && reading.unit.offset).toBe(0);
    }
  });

  it.each([
    ['torque', 'J', 'an energy'], ['torque', 'N', 'a force'], ['force', 'kg', 'a mass'], ['mass', 'N', 'a force'], ['length', 'mm²', 'an area'], ['speed', 'mm', 'a length'], ['rotational-speed', 'Hz', 'a frequency'],
    ['stiffness', 'N·m/rad', 'a torsional stiffness'], ['resistance', 'mH', 'an inductance'], ['ratio', 'mm', 'a length'], ['length', '%', 'a ratio'], ['temperature', 'V', 'a voltage'], ['length', 'kg·A·s', undefined],
  ] as const)('%s refuses %s', (kind, unit, measures) => {
    expect(readUnitOfKind(unit, kind)).toMatchObject({ ok: false, code: 'unit-of-wrong-kind', measures });
  });

  it.each([
    // In these kinds the trade means something else than the letters say.
    ['torque', 'oz·in', 7.061552e-3], ['torque', 'oz-in', 7.061552e-3], ['torque', 'lb·in', 1.129848e-1], ['torque', 'ft-lb', 1.355818], ['rotational-speed', '1/min', 1.047198e-1], ['rotational-speed', 'min⁻¹', 1.047198e-1], ['rotational-speed', '1/s', 6.283185],
    ['step-rate', 'kHz', 1e3], ['step-rate', 'Hz', 1], ['acceleration', 'g', 9.80665], ['frequency', '1/s', 1], ['rotational-inertia', 'oz·in·s²', 7.061552e-3],
  ] as const)('%s reads %s', (kind, unit, source) => {
    const reading = readUnitOfKind(unit, kind);
    expect(reading.ok).toBe(true);
    if (reading.ok) expectSevenDigits(reading.unit.factor, source);
  });

  it('keep the zero of a scale for temperatures only', () => {
    const absolute = readUnitOfKind('°C', 'temperature');
    const difference = readUnitOfKind('°C', 'temperature-difference');
    expect(absolute.ok && absolute.unit.offset).toBe(273.15);
    expect(difference.ok && difference.unit.offset).toBe(0);
  });
});

describe('any unit text', () => {
  it('is read or refused', () => {
    const parts = fc.constantFrom('m', 'mm', 'N', 'kg', 's', 'rad', '°', 'K', '/', '·', '*', ' ', '²', '^2', '^-1', '2', '(', ')', '-', '1', 'Ω', 'x', '⁻');
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 10 }).map((list) => list.join('')), (text) => {
        const reading = readUnit(text);
        if (reading.ok) {
          expect(Number.isFinite(reading.unit.factor)).toBe(true);
          // What is shown reads as the same unit.
          const again = readUnit(reading.unit.symbol);
          expect(again.ok && Math.abs(again.unit.factor / reading.unit.factor - 1) < 1e-12, reading.unit.symbol).toBe(true);
          expect(again.ok && again.unit.dimension).toEqual(reading.unit.dimension);
        }
      }),
      { numRuns: 3_000 },
    );
  });
});
