import { readUnitOfKind } from './kind-units.ts';
import { kindDetails, type QuantityKind } from './quantity-kinds.ts';
import type { Unit } from './units.ts';

export interface FormatOptions {
  /** The person's own unit, in any spelling; a unit that does not fit the kind is passed over. */
  readonly unit?: string;
  /** Significant digits, 3 unless said otherwise. Zeros at the end are left away. */
  readonly digits?: number;
  /** A limit, in SI, that stands beside the value: the rounded value stays on its own side of it. */
  readonly besides?: number;
}

/**
 * A value in SI as a person reads it: `0.42 N·m`, `763 rpm`, `1.8°`, `50 %`, `14.50 EUR`, in the kind's customary unit for its size
 * or in the unit that is asked for. Ordinary blanks, a plain minus sign; what comes out can be read back as a quantity.
 * A value that is not finite is shown as "–".
 */
export function formatQuantity(si: number, kind: QuantityKind, options: FormatOptions = {}): string {
  if (!Number.isFinite(si)) return '–';
  const unit = unitToShow(si, kind, options.unit);
  const value = clean((si - unit.offset) / unit.factor);
  const limit = options.besides === undefined ? undefined : clean((options.besides - unit.offset) / unit.factor);
  if (kind === 'money') return `${roundTo(value, limit, (digits) => value.toFixed(digits), 2)}${unit.symbol === '' ? '' : ` ${unit.symbol}`}`;
  const number = roundTo(value, limit, (digits) => significant(value, digits), options.digits ?? 3);
  return unit.symbol === '' ? number : `${number}${unit.symbol === '°' ? '' : ' '}${unit.symbol}`;
}

/**
 * A value with its bounds: `0.145 N·m (0.095 to 0.255)`, all three in one unit, which is named once.
 * Just the value where both ends read the same as it.
 */
export function formatRange(value: { readonly nominal: number; readonly low: number; readonly high: number }, kind: QuantityKind, options: FormatOptions = {}): string {
  const { unit, nominal, low, high } = inOneUnit(value, kind, options);
  if (low === high) return nominal;
  return `${nominal} (${withoutUnit(low, unit)} to ${withoutUnit(high, unit)})`;
}

/** Only the bounds, in one unit: `0.095 to 0.255 N·m`. */
export function formatBounds(value: { readonly nominal: number; readonly low: number; readonly high: number }, kind: QuantityKind, options: FormatOptions = {}): string {
  const { unit, nominal, low, high } = inOneUnit(value, kind, options);
  return low === high ? nominal : `${withoutUnit(low, unit)} to ${high}`;
}

function inOneUnit(value: { readonly nominal: number; readonly low: number; readonly high: number }, kind: QuantityKind, options: FormatOptions): { unit: string; nominal: string; low: string; high: string } {
  const size = value.nominal === 0 ? Math.max(Math.abs(value.low), Math.abs(value.high)) : value.nominal;
  const unit = unitToShow(size, kind, options.unit).symbol;
  const text = (si: number): string => formatQuantity(si, kind, { ...options, unit });
  return { unit, nominal: text(value.nominal), low: text(value.low), high: text(value.high) };
}

function withoutUnit(text: string, unit: string): string {
  return unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length).trimEnd() : text;
}

/** A value in SI as a number in `unit`; undefined where the unit does not fit the kind. */
export function convertFromSi(si: number, unit: string, kind: QuantityKind): number | undefined {
  const reading = unit === '' ? undefined : readUnitOfKind(unit, kind);
  if (unit === '') return si;
  return reading?.ok ? (si - reading.unit.offset) / reading.unit.factor : undefined;
}

/** A number in `from` as a number in `to`; undefined where one of the units does not fit the kind. */
export function convert(value: number, from: string, to: string, kind: QuantityKind): number | undefined {
  const reading = readUnitOfKind(from, kind);
  return reading.ok ? convertFromSi(value * reading.unit.factor + reading.unit.offset, to, kind) : undefined;
}

/** The usual spelling of a unit: `mm/s²` for `mm/s^2`. The text itself where it is not understood. */
export function unitSymbol(unit: string, kind: QuantityKind): string {
  const reading = unit === '' ? undefined : readUnitOfKind(unit, kind);
  return reading?.ok ? reading.unit.symbol : unit;
}

const bare: Unit = { factor: 1, offset: 0, dimension: {}, symbol: '', energy: false };

function unitToShow(si: number, kind: QuantityKind, wanted: string | undefined): Unit {
  const details = kindDetails(kind);
  if (wanted !== undefined) {
    if (wanted === '' && details.bare === true) return bare;
    const reading = wanted === '' ? undefined : readUnitOfKind(wanted, kind);
    if (reading?.ok) return reading.unit;
  }
  // Half a digit is forgiven, so that 0.0999999 in binary stays with 0.1.
  const size = Math.abs(si) * (1 + 1e-9);
  const step = details.shown.filter((candidate) => candidate.from <= size).at(-1) ?? details.shown[0];
  if (!step || step.unit === '') return bare;
  const first = si === 0 ? details.units[0] : step.unit;
  const reading = readUnitOfKind(first ?? step.unit, kind);
  return reading.ok ? reading.unit : bare;
}

/** Takes away what the conversion from binary numbers left in the last places. */
function clean(value: number): number {
  return Number(value.toPrecision(13));
}

/** The shortest text with at least `digits` digits that stays on the value's side of the limit. */
function roundTo(value: number, limit: number | undefined, write: (digits: number) => string, digits: number): string {
  for (let count = digits; count < 13; count++) {
    const text = write(count);
    if (limit === undefined || value === limit || Math.sign(toNumber(text) - limit) === Math.sign(value - limit)) return text;
  }
  return write(13);
}

function toNumber(text: string): number {
  return Number(text.replace(/ × 10(.+)$/, (_, power: string) => `e${[...power].map((digit) => (digit === '⁻' ? '-' : String(raised.indexOf(digit)))).join('')}`));
}

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** A number with so many significant digits, without zeros at the end, in powers of ten only where it is very small or very large. */
function significant(value: number, digits: number): string {
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(digits));
  const size = Math.abs(rounded);
  if (size >= 1e-4 && size < 1e7) return plainDecimal(rounded);
  const [mantissa = '0', exponent = '0'] = rounded.toExponential().split('e');
  const power = [...String(Number(exponent))].map((digit) => (digit === '-' ? '⁻' : (raised[Number(digit)] ?? ''))).join('');
  return `${mantissa} × 10${power}`;
}

function plainDecimal(value: number): string {
  const text = String(value);
  return text.includes('e') ? value.toFixed(12).replace(/0+$/, '') : text;
}
