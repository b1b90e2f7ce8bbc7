import { limits } from './limits.ts';
import { readUnitOfKind } from './kind-units.ts';
import { kindDetails, type QuantityKind } from './quantity-kinds.ts';
import * as say from './quantity-messages.ts';
import type { Span } from './spans.ts';
import type { Unit } from './units.ts';

/** A quantity that was understood. Numbers are in coherent SI units; `low` and `high` are where it may lie. */
export interface Quantity {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
  /** The unit as it is written; empty where a number alone is meant. */
  readonly unit: string;
  readonly stated: 'exact' | 'plus-minus' | 'percent' | 'range';
  /** Where the first number and the unit stand in the text; the unit's span is empty where there is none. */
  readonly numberSpan: Span;
  readonly unitSpan: Span;
  readonly kind: QuantityKind;
}

export interface QuantityProblem {
  readonly code: string;
  readonly message: string;
  /** Relative to the text of the quantity. */
  readonly start: number;
  readonly end: number;
  readonly replacements: readonly { readonly title: string; readonly text: string; readonly start: number; readonly end: number }[];
}

export type QuantityReading = { readonly ok: true; readonly quantity: Quantity } | { readonly ok: false; readonly problem: QuantityProblem };

const remembered = new Map<string, QuantityReading>();
const mostRemembered = 20_000;

/**
 * Reads a quantity as it is written: `420 mm`, `1 1/2 in`, `0.12 ± 0.03`, `6.4 kg ± 5 %`, `0.08 to 0.15`. The nominal value of a range
 * is its middle. Never throws, never guesses a unit; each text is read once for each kind and remembered.
 */
export function readQuantity(text: string, kind: QuantityKind): QuantityReading {
  const key = `${kind} ${text}`;
  const known = remembered.get(key);
  if (known) return known;
  const reading = readAnew(text, kind);
  if (remembered.size >= mostRemembered) remembered.clear();
  if (text.length <= limits.quantityLength) remembered.set(key, reading);
  return reading;
}

function readAnew(text: string, kind: QuantityKind): QuantityReading {
  if (text.length > limits.quantityLength) return { ok: false, problem: say.tooLong(text) };
  try {
    return { ok: true, quantity: new QuantityReader(text, kind).read() };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, problem: error.problem };
    throw error;
  }
}

/** Leaves the reader with the problem that was found. Never leaves this module. */
class Refusal extends Error {
  constructor(readonly problem: QuantityProblem) {
    super(problem.message);
  }
}

function refuse(problem: QuantityProblem): never {
  throw new Refusal(problem);
}

/** A number and what stands behind it. */
interface Side {
  readonly value: number;
  readonly number: Span;
  readonly unit: Span;
  readonly unitText: string;
}

const separator = /±|\+\/-|\+-|(?<=\s)to(?=\s|$)/gi;
const number = /[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

class QuantityReader {
  /** With ordinary blanks and minus signs, position by position the same. */
  readonly #text: string;
  readonly #kind: QuantityKind;

  constructor(text: string, kind: QuantityKind) {
    this.#text = text.replace(/[\u00a0\u2009\u202f\t\r\n]/g, ' ').replaceAll('\u2212', '-');
    this.#kind = kind;
  }

  read(): Quantity {
    if (this.#text.trim() === '') refuse(say.noNumber(this.#text, { start: 0, end: this.#text.length }, this.#kind));
    const [first, second] = [...this.#text.matchAll(separator)];
    if (!first) return this.#exact(this.#side(0, this.#text.length));
    if (second) refuse(say.notUnderstood(this.#text, { start: second.index, end: second.index + second[0].length }));
    const after = first.index + first[0].length;
    if (this.#text.slice(0, first.index).trim() === '') this.#refuseWithoutNominal(first[0], first.index, after);
    const left = this.#side(0, first.index);
    const right = this.#side(after, this.#text.length);
    return first[0].toLowerCase() === 'to' ? this.#range(left, right) : this.#withTolerance(left, right);
  }

  #refuseWithoutNominal(sign: string, start: number, end: number): never {
    const rest = this.#text.slice(end).trim();
    refuse(say.noNominal(sign, { start, end }, rest, this.#text.length));
  }

  #exact(side: Side): Quantity {
    const unit = this.#unitOf(side, undefined);
    const value = this.#inSi(side, unit);
    return this.#checked({ nominal: value, low: value, high: value, stated: 'exact' }, side, side);
  }

  #range(left: Side, right: Side): Quantity {
    const [low, high] = [this.#inSi(left, this.#unitOf(left, right)), this.#inSi(right, this.#unitOf(right, left))];
    if (low > high) refuse(say.reversed(this.#text, this.#unitsShared(left, right), left, right));
    return this.#checked({ nominal: (low + high) / 2, low, high, stated: 'range' }, left, left.unitText === '' ? right : left);
  }

  #unitsShared(left: Side, right: Side): boolean {
    return left.unitText === '' || right.unitText === '';
  }

  #withTolerance(left: Side, right: Side): Quantity {
    if (right.value < 0) refuse(say.notUnderstood(this.#text, right.number));
    if (right.unitText === '%' && left.unitText !== '%') {
      if (this.#kind === 'temperature') refuse(say.percentOfTemperature(right));
      const nominal = this.#inSi(left, this.#unitOf(left, undefined));
      const part = (Math.abs(nominal) * right.value) / 100;
      return this.#checked({ nominal, low: nominal - part, high: nominal + part, stated: 'percent' }, left, left);
    }
    const unit = this.#unitOf(left, right);
    const nominal = this.#inSi(left, unit);
    const part = right.value * (right.unitText === '' ? unit : this.#toleranceUnit(right)).factor;
    return this.#checked({ nominal, low: nominal - part, high: nominal + part, stated: 'plus-minus' }, left, left.unitText === '' ? right : left);
  }

  #toleranceUnit(side: Side): Unit {
    return this.#unit(side, this.#kind === 'temperature' ? 'temperature-difference' : this.#kind);
  }

  #inSi(side: Side, unit: Unit): number {
    return side.value * unit.factor + unit.offset;
  }

  #checked(value: Pick<Quantity, 'nominal' | 'low' | 'high' | 'stated'>, first: Side, unitSide: Side): Quantity {
    const details = kindDetails(this.#kind);
    const whole = { start: first.number.start, end: this.#text.trimEnd().length };
    if (![value.nominal, value.low, value.high].every(Number.isFinite)) refuse(say.notFinite(whole));
    const least = details.minimum;
    // What rounding leaves below the smallest value counts as the smallest value: "0.3 kg ± 300 g" reaches down to nothing.
    if (least !== undefined && value.low < least && value.low >= least - 1e-12 * Math.abs(value.high)) return this.#checked({ ...value, low: least }, first, unitSide);
    if (least !== undefined && value.low < least) refuse(say.belowMinimum(value, this.#kind, whole));
    const most = details.maximum;
    if (most !== undefined && value.high > most && value.high <= most * (1 + 1e-12)) return this.#checked({ ...value, nominal: Math.min(value.nominal, most), low: Math.min(value.low, most), high: most }, first, unitSide);
    if (most !== undefined && value.high > most) refuse(say.aboveMaximum(value, this.#kind, this.#text, first.number, unitSide.unitText, whole));
    if (details.whole === true && ![value.nominal, value.low, value.high].every(Number.isInteger)) refuse(say.notWhole(whole));
    return { ...value, unit: unitSide.unitText, numberSpan: first.number, unitSpan: unitSide.unit, kind: this.#kind };
  }

  /** The unit of one side; a side without one takes it from the other. */
  #unitOf(side: Side, other: Side | undefined): Unit {
    if (side.unitText !== '') return this.#unit(side, this.#kind);
    if (other && other.unitText !== '') return this.#unit(other, this.#kind);
    if (kindDetails(this.#kind).bare !== true) refuse(say.unitMissing(this.#text, side.number, this.#kind));
    return { factor: 1, offset: 0, dimension: {}, symbol: '', energy: false };
  }

  #unit(side: Side, kind: QuantityKind): Unit {
    const reading = readUnitOfKind(side.unitText, kind);
    if (reading.ok) return reading.unit;
    this.#refuseDash();
    const span = { start: side.unit.start + reading.start, end: side.unit.start + reading.end };
    switch (reading.code) {
      case 'unit-of-wrong-kind':
        return refuse(say.unitOfWrongKind(side.unitText, reading.measures, side.unit, kind));
      case 'unit-ambiguous':
        return refuse(say.unitAmbiguous(side.unitText, reading.clear, side.unit));
      case 'unit-unknown':
        return refuse(say.unitUnknown(this.#text.slice(span.start, span.end), side.unitText, span, side.unit, kind));
    }
  }

  /** A range with a dash instead of the word, where the text has no other meaning. */
  #refuseDash(): void {
    const dash = /(?<=[\d%"°µA-Za-z²³)]) ?(?:-|–|—|\.{2,3}|…|~) ?(?=[+-]?\.?\d)/.exec(this.#text);
    if (dash) refuse(say.rangeWithDash({ start: dash.index, end: dash.index + dash[0].length }));
  }

  #side(from: number, to: number): Side {
    let start = from;
    while (start < to && this.#text[start] === ' ') start += 1;
    const currency = this.#kind === 'money' ? /^[€$£] ?/.exec(this.#text.slice(start, to))?.[0] : undefined;
    const numberStart = start + (currency?.length ?? 0);
    const read = this.#number(numberStart, to);
    if (!read) refuse(say.noNumber(this.#text, { start, end: Math.max(start, this.#text.slice(0, to).trimEnd().length) }, this.#kind));
    if (currency !== undefined) {
      if (this.#text.slice(read.end, to).trim() !== '') refuse(say.notUnderstood(this.#text, { start: read.end, end: to }));
      return { value: read.value, number: { start: numberStart, end: read.end }, unit: { start, end: start + 1 }, unitText: currency.trim() };
    }
    let unitStart = read.end;
    while (unitStart < to && this.#text[unitStart] === ' ') unitStart += 1;
    const unitText = this.#text.slice(unitStart, to).trimEnd();
    const unit = unitText === '' ? { start: read.end, end: read.end } : { start: unitStart, end: unitStart + unitText.length };
    return { value: read.value, number: { start: numberStart, end: read.end }, unit, unitText };
  }

  /** A decimal number, a fraction, a whole number with a fraction, or a number times a power of ten. */
  #number(from: number, to: number): { readonly value: number; readonly end: number } | undefined {
    number.lastIndex = from;
    const match = number.exec(this.#text);
    if (!match || from + match[0].length > to) return undefined;
    const end = from + match[0].length;
    const rest = this.#text.slice(end, to);
    this.#refuseSeparators(from, end, to);
    if (/^[+-]?\d+$/.test(match[0])) {
      const fraction = /^ *\/ *(\d+)(?![\d.])/.exec(rest);
      if (fraction?.[1] !== undefined) return this.#fraction(0, Number(match[0]), Number(fraction[1]), { start: from, end: end + fraction[0].length });
      const mixed = /^(?: +|-)(\d+) *\/ *(\d+)(?![\d.])/.exec(rest);
      if (mixed) {
        const sign = match[0].startsWith('-') ? -1 : 1;
        return this.#fraction(Number(match[0]), sign * Number(mixed[1]), Number(mixed[2]), { start: from, end: end + mixed[0].length });
      }
    }
    const power = /^ *[×x*·] *10(?:\^ *\(? *([+-]?\d+) *\)?|([⁺⁻]?)([⁰¹²³⁴⁵⁶⁷⁸⁹]+))/.exec(rest);
    if (!power) return { value: Number(match[0]), end };
    const raised = [...(power[3] ?? '')].map((digit) => superscripts.indexOf(digit)).join('');
    const exponent = power[1] ?? `${power[2] === '⁻' ? '-' : ''}${raised}`;
    // Read as one decimal number, so that no rounding comes in.
    return { value: Number(/e/i.test(match[0]) ? Number.NaN : `${match[0]}e${exponent}`), end: end + power[0].length };
  }

  #fraction(whole: number, numerator: number, denominator: number, span: Span): { readonly value: number; readonly end: number } {
    if (denominator === 0) refuse(say.noNumber(this.#text, span, this.#kind));
    return { value: whole + numerator / denominator, end: span.end };
  }

  /** Commas, blanks, apostrophes or underscores inside a number. */
  #refuseSeparators(from: number, end: number, to: number): void {
    const run = /^(?:[,_'’]\d|[ ]\d{3}(?![\d/.]))/.test(this.#text.slice(end, to));
    if (!run) return;
    const whole = /^[+-]?[\d.,_'’]+(?: \d{3}(?!\d))*(?:[.,]\d+)?/.exec(this.#text.slice(from, to))?.[0];
    if (whole !== undefined) refuse(say.separatorsInNumber(whole, { start: from, end: from + whole.length }));
  }
}
