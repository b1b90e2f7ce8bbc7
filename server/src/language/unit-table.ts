/**
 * The closed vocabulary of units. Factors lead to the coherent SI unit and are exact unless marked otherwise.
 * Sources: BIPM, The International System of Units, 9th edition 2019 (SI units and prefixes); NIST Special Publication 811, 2008,
 * appendix B.8 (inch, pound and other units): 1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, gₙ = 9.806 65 m/s², all exact by definition.
 */

/** Exponents of the base dimensions; those that are left out are 0. Angle, steps, turns of a life and money are dimensions of their own here. */
export interface Dimension {
  readonly length?: number;
  readonly mass?: number;
  readonly time?: number;
  readonly current?: number;
  readonly temperature?: number;
  readonly angle?: number;
  readonly step?: number;
  readonly money?: number;
}

export interface UnitDefinition {
  /** How it is shown, without prefix. */
  readonly symbol: string;
  /** Other spellings that are read, without prefix. */
  readonly spellings?: readonly string[];
  /** In terms of coherent SI units: kg, m, s, A, K, rad, step, money. */
  readonly factor: number;
  readonly dimension: Dimension;
  /** Prefixes that the trade uses with it, each a key of `prefixes`. */
  readonly prefixes?: string;
  /** Added after scaling where the zero differs: only for temperatures on a scale. */
  readonly offset?: number;
  /** A unit of energy, which is never a torque although the dimension is the same. */
  readonly energy?: boolean;
}

/** SI prefixes (BIPM, 9th edition, table 7) as far as they are in use here; µ stands for itself and for `u`. */
export const prefixes: Readonly<Record<string, number>> = { p: 1e-12, n: 1e-9, µ: 1e-6, m: 1e-3, c: 1e-2, h: 1e2, k: 1e3, M: 1e6, G: 1e9 };

const inch = 0.0254;
const pound = 0.45359237;
const standardGravity = 9.80665;
const poundForce = pound * standardGravity;
const turn = 2 * Math.PI;

const length = { length: 1 };
const force = { mass: 1, length: 1, time: -2 };
const torque = { mass: 1, length: 2, time: -2 };
const pressure = { mass: 1, length: -1, time: -2 };
const power = { mass: 1, length: 2, time: -3 };

export const unitDefinitions: readonly UnitDefinition[] = [
  { symbol: 'm', spellings: ['metre', 'metres', 'meter', 'meters'], factor: 1, dimension: length, prefixes: 'nµmck' },
  { symbol: 'in', spellings: ['"', 'inch', 'inches'], factor: inch, dimension: length },
  { symbol: 'ft', spellings: ['foot', 'feet'], factor: 12 * inch, dimension: length },
  { symbol: 'thou', spellings: ['mil', 'mils'], factor: inch / 1000, dimension: length },
  { symbol: 'µin', spellings: ['uin'], factor: inch / 1e6, dimension: length },
  { symbol: 'g', factor: 1e-3, dimension: { mass: 1 }, prefixes: 'µmk' },
  { symbol: 't', spellings: ['tonne', 'tonnes'], factor: 1000, dimension: { mass: 1 } },
  { symbol: 'lb', spellings: ['lbs', 'lbm', 'pound', 'pounds'], factor: pound, dimension: { mass: 1 } },
  { symbol: 'oz', spellings: ['ozm', 'ounce', 'ounces'], factor: pound / 16, dimension: { mass: 1 } },
  { symbol: 's', spellings: ['sec', 'second', 'seconds'], factor: 1, dimension: { time: 1 }, prefixes: 'nµm' },
  { symbol: 'min', spellings: ['minute', 'minutes'], factor: 60, dimension: { time: 1 } },
  { symbol: 'h', spellings: ['hr', 'hrs', 'hour', 'hours'], factor: 3600, dimension: { time: 1 } },
  { symbol: 'd', spellings: ['day', 'days'], factor: 86_400, dimension: { time: 1 } },
  { symbol: 'rad', factor: 1, dimension: { angle: 1 }, prefixes: 'µm' },
  { symbol: '°', spellings: ['deg', 'degree', 'degrees'], factor: turn / 360, dimension: { angle: 1 } },
  { symbol: 'arcmin', factor: turn / 21_600, dimension: { angle: 1 } },
  { symbol: 'arcsec', factor: turn / 1_296_000, dimension: { angle: 1 } },
  { symbol: 'rev', spellings: ['r', 'turn', 'turns', 'revolution', 'revolutions'], factor: turn, dimension: { angle: 1 } },
  { symbol: 'rpm', factor: turn / 60, dimension: { angle: 1, time: -1 } },
  { symbol: 'rps', factor: turn, dimension: { angle: 1, time: -1 } },
  { symbol: 'N', factor: 1, dimension: force, prefixes: 'µmckM' },
  { symbol: 'lbf', factor: poundForce, dimension: force },
  { symbol: 'ozf', factor: poundForce / 16, dimension: force },
  { symbol: 'kgf', spellings: ['kp'], factor: standardGravity, dimension: force },
  { symbol: 'gf', factor: standardGravity / 1000, dimension: force },
  { symbol: 'Pa', factor: 1, dimension: pressure, prefixes: 'mhkMG' },
  { symbol: 'bar', factor: 1e5, dimension: pressure, prefixes: 'm' },
  { symbol: 'psi', factor: poundForce / inch ** 2, dimension: pressure },
  { symbol: 'ksi', factor: (1000 * poundForce) / inch ** 2, dimension: pressure },
  { symbol: 'J', factor: 1, dimension: torque, prefixes: 'µmkM', energy: true },
  { symbol: 'Wh', factor: 3600, dimension: torque, prefixes: 'mk', energy: true },
  { symbol: 'W', factor: 1, dimension: power, prefixes: 'µmkM' },
  // Mechanical horsepower, 550 ft·lbf/s.
  { symbol: 'hp', factor: 550 * 12 * inch * poundForce, dimension: power },
  { symbol: 'V', factor: 1, dimension: { ...power, current: -1 }, prefixes: 'µmk' },
  { symbol: 'A', factor: 1, dimension: { current: 1 }, prefixes: 'µmk' },
  { symbol: 'Ω', spellings: ['ohm', 'ohms', 'Ohm'], factor: 1, dimension: { ...power, current: -2 }, prefixes: 'µmkM' },
  { symbol: 'H', factor: 1, dimension: { ...torque, current: -2 }, prefixes: 'nµm' },
  { symbol: 'F', factor: 1, dimension: { mass: -1, length: -2, time: 4, current: 2 }, prefixes: 'pnµm' },
  { symbol: 'Hz', factor: 1, dimension: { time: -1 }, prefixes: 'mkMG' },
  { symbol: 'K', spellings: ['kelvin'], factor: 1, dimension: { temperature: 1 }, prefixes: 'm' },
  { symbol: '°C', spellings: ['degC'], factor: 1, dimension: { temperature: 1 }, offset: 273.15 },
  { symbol: '°F', spellings: ['degF'], factor: 5 / 9, dimension: { temperature: 1 }, offset: (459.67 * 5) / 9 },
  { symbol: '%', spellings: ['percent'], factor: 1e-2, dimension: {} },
  { symbol: '‰', factor: 1e-3, dimension: {} },
  { symbol: 'ppm', factor: 1e-6, dimension: {} },
  { symbol: 'steps', spellings: ['step'], factor: 1, dimension: { step: 1 }, prefixes: 'kM' },
  ...['EUR', 'USD', 'GBP', 'CHF', 'SEK', 'NOK', 'DKK', 'PLN', 'CZK', 'CAD', 'AUD', 'NZD', 'JPY', 'CNY', 'INR'].map((symbol) => ({
    symbol,
    spellings: { EUR: ['€'], USD: ['$'], GBP: ['£'] }[symbol] ?? [],
    factor: 1,
    dimension: { money: 1 },
  })),
];

const bases = ['length', 'mass', 'time', 'current', 'temperature', 'angle', 'step', 'money'] as const;

/** The product of `a` and `b` raised to `power`. */
export function times(a: Dimension, b: Dimension, power = 1): Dimension {
  const product: Record<string, number> = {};
  for (const base of bases) {
    const exponent = (a[base] ?? 0) + power * (b[base] ?? 0);
    if (exponent !== 0) product[base] = exponent;
  }
  return product;
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return bases.every((base) => (a[base] ?? 0) === (b[base] ?? 0));
}
