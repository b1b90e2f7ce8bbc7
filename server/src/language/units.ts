import { nearestNames } from './nearest-names.ts';
import { prefixes, times, unitDefinitions, type Dimension, type UnitDefinition } from './unit-table.ts';

/** A unit text that was understood. */
export interface Unit {
  /** What one of it is in coherent SI units. */
  readonly factor: number;
  /** Added after scaling: kelvin at the zero of a temperature scale, else 0. */
  readonly offset: number;
  readonly dimension: Dimension;
  /** The usual spelling: `N·m`, `mm/s²`. */
  readonly symbol: string;
  /** Contains a unit of energy, so it is no torque. */
  readonly energy: boolean;
}

export type UnitReading =
  | { readonly ok: true; readonly unit: Unit }
  | {
      readonly ok: false;
      readonly code: 'unit-unknown' | 'unit-ambiguous';
      /** The part that is not understood, relative to the text. */
      readonly start: number;
      readonly end: number;
      /** Where a bracket would make it clear: the text with brackets. */
      readonly clear?: string;
    };

interface Known {
  readonly definition: UnitDefinition;
  readonly symbol: string;
  readonly factor: number;
}

/** Every spelling with every prefix that goes with it. A Map, so that no name of the language's own objects is mistaken for a unit. */
const vocabulary: ReadonlyMap<string, Known> = (() => {
  const known = new Map<string, Known>();
  for (const definition of unitDefinitions) {
    const spellings = [definition.symbol, ...(definition.spellings ?? [])];
    for (const spelling of spellings) known.set(spelling, { definition, symbol: definition.symbol, factor: definition.factor });
    for (const prefix of definition.prefixes ?? '') {
      const scaled = { definition, symbol: prefix + definition.symbol, factor: definition.factor * (prefixes[prefix] ?? Number.NaN) };
      // Words such as "metre" take no short prefix.
      for (const spelling of spellings) if (spelling.length <= 3 || spelling.startsWith('step')) if (!known.has(prefix + spelling)) known.set(prefix + spelling, scaled);
    }
  }
  return known;
})();

/** Products of inch units that are written without a sign between, as the trade does. */
const joined: ReadonlyMap<string, string> = new Map([
  ['ftlb', 'ft·lbf'], ['ftlbf', 'ft·lbf'], ['inlb', 'in·lbf'], ['inlbf', 'in·lbf'], ['lbin', 'lbf·in'], ['lbft', 'lbf·ft'], ['ozin', 'ozf·in'],
]);

/** The usual torques in one word, for suggestions. */
const newtonMetres: ReadonlyMap<string, string> = new Map([['Nm', 'N·m'], ['Nmm', 'N·mm'], ['Ncm', 'N·cm']]);

const remembered = new Map<string, UnitReading>();
const mostRemembered = 2_000;

/**
 * Reads a unit text such as `mm/s²`, `N·m`, `kg m^2`, `W/(m·K)`, `1/K`. Products are written with `·`, `*`, a hyphen or a blank,
 * powers as `²`, `^2` or `2`. Never throws; each text is read once and remembered.
 */
export function readUnit(text: string): UnitReading {
  const known = remembered.get(text);
  if (known) return known;
  const reading = new UnitReader(text).read();
  if (remembered.size >= mostRemembered) remembered.clear();
  remembered.set(text, reading);
  return reading;
}

/** Known units nearest to a misspelt one, best first: those that differ in upper and lower case only, or lack a degree sign, come before the others. */
export function nearestUnits(wrong: string, offered: readonly string[]): string[] {
  const spelled = plain(wrong);
  const spellings = [...offered, ...vocabulary.keys(), ...newtonMetres.keys()];
  const letters = spelled.toLowerCase();
  const sameLetters = spellings.filter((candidate) => [letters, `°${letters}`].includes(candidate.toLowerCase()));
  const near = spelled.length >= 2 ? nearestNames(spelled, spellings, 20) : [];
  const symbols = [...sameLetters, ...near].map((spelling) => (offered.includes(spelling) ? spelling : (vocabulary.get(spelling)?.symbol ?? newtonMetres.get(spelling) ?? spelling)));
  return [...new Set(symbols)];
}

/** Signs that look or mean the same, one character for one, so that positions stay. */
const sameSign: Readonly<Record<string, string>> = {
  '\u03bc': '\u00b5', '\u2126': '\u03a9', '\u00ba': '°', '\u02da': '°', '\u22c5': '·', '\u2219': '·', '\u2022': '·', '×': '·', '*': '·',
  '\u2212': '-', '\u2010': '-', '\u2011': '-', '\u2033': '"', '\u201d': '"', '\u201c': '"',
  '\u00a0': ' ', '\u2009': ' ', '\u202f': ' ', '\t': ' ', '\u2215': '/', '\u2044': '/', '\uff05': '%',
};
const unusualSign = /[\u03bc\u2126\u00ba\u02da\u22c5\u2219\u2022×*\u2212\u2010\u2011\u2033\u201d\u201c\u00a0\u2009\u202f\t\u2215\u2044\uff05]/g;

function plain(text: string): string {
  return text.replace(unusualSign, (sign) => sameSign[sign] ?? sign);
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

interface Factor {
  readonly known: Known;
  readonly power: number;
}

class UnitReader {
  readonly #text: string;
  #at = 0;
  #slashes = 0;

  constructor(text: string) {
    this.#text = plain(text);
  }

  read(): UnitReading {
    const whole = joined.get(this.#text);
    if (whole !== undefined) return readUnit(whole);
    const over: Factor[] = [];
    const under: Factor[][] = [];
    this.#blanks();
    const one = /^1?\//.exec(this.#text.slice(this.#at));
    if (one) this.#at += one[0].length - 1;
    else if (!this.#product(over)) return this.#unknown();
    this.#blanks();
    while (this.#text[this.#at] === '/') {
      this.#at += 1;
      this.#slashes += 1;
      const start = this.#at;
      const denominator: Factor[] = [];
      const bracketed = this.#bracketed(denominator);
      if (bracketed === 'wrong' || (bracketed === 'none' && !this.#product(denominator))) return this.#unknown();
      if (bracketed === 'none' && denominator.length > 1) return this.#ambiguous(start);
      under.push(denominator);
      this.#blanks();
      if (bracketed === 'read' && this.#at < this.#text.length && this.#text[this.#at] !== '/') return this.#unknown();
    }
    if (this.#at < this.#text.length || (over.length === 0 && under.length === 0)) return this.#unknown();
    return { ok: true, unit: unitOf(over, under) };
  }

  /** One or more units side by side. */
  #product(into: Factor[]): boolean {
    for (;;) {
      this.#blanks();
      const factors = this.#unit();
      if (!factors) return false;
      into.push(...factors);
      const separator = /^ *(?:·|-(?=[^\d\s])| (?=[^/\s)])) */.exec(this.#text.slice(this.#at));
      if (!separator) return true;
      this.#at += separator[0].length;
      if (this.#at >= this.#text.length) return false;
    }
  }

  #bracketed(into: Factor[]): 'read' | 'none' | 'wrong' {
    this.#blanks();
    if (this.#text[this.#at] !== '(') return 'none';
    this.#at += 1;
    if (!this.#product(into)) return 'wrong';
    this.#blanks();
    if (this.#text[this.#at] !== ')') return 'wrong';
    this.#at += 1;
    return 'read';
  }

  /** A unit with its power; newtons and metres may be joined, and the power is then the metre's. */
  #unit(): readonly Factor[] | undefined {
    const name = /^(?:"|%|‰|\u2103|[€$£]|°[CF](?![A-Za-z])|°|[A-Za-z\u00b5\u03a9]+)/.exec(this.#text.slice(this.#at))?.[0];
    if (name === undefined) return undefined;
    const [, force = '', metres] = /^(.?N)([mc]?m)$/.exec(name) ?? [];
    const known = vocabulary.get(spelled(metres ?? name));
    const knownForce = metres === undefined ? undefined : vocabulary.get(spelled(force));
    const power = this.#power(this.#at + name.length);
    if (!known || !power || (metres !== undefined && !knownForce)) return undefined;
    this.#at = power.end;
    return [...(knownForce ? [{ known: knownForce, power: 1 }] : []), { known, power: power.value }];
  }

  #power(from: number): { readonly value: number; readonly end: number } | undefined {
    const rest = this.#text.slice(from);
    const written = /^(?:\^ *\(? *(?<caret>[+-]?\d) *\)?|(?<raised>⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹])|(?<digit>-?\d)(?![\d.]))/.exec(rest);
    if (!written) return /^[\d^⁰¹²³⁴⁵⁶⁷⁸⁹⁻]/.test(rest) ? undefined : { value: 1, end: from };
    const { caret, raised, digit } = written.groups ?? {};
    const value = raised !== undefined ? (raised.startsWith('⁻') ? -1 : 1) * superscripts.indexOf(raised.at(-1) ?? '') : Number(caret ?? digit);
    return value === 0 ? undefined : { value, end: from + written[0].length };
  }

  #blanks(): void {
    while (this.#text[this.#at] === ' ') this.#at += 1;
  }

  #unknown(): UnitReading {
    this.#blanks();
    const word = /^[^\s·/()*^-]*/.exec(this.#text.slice(this.#at))?.[0] ?? '';
    const start = word === '' ? 0 : this.#at;
    return { ok: false, code: 'unit-unknown', start, end: word === '' ? this.#text.length : this.#at + word.length };
  }

  #ambiguous(start: number): UnitReading {
    const clear = this.#slashes === 1 ? `${this.#text.slice(0, start)}(${this.#text.slice(start, this.#at).trim()})${this.#text.slice(this.#at)}` : undefined;
    return { ok: false, code: 'unit-ambiguous', start, end: this.#at, ...(clear === undefined ? {} : { clear }) };
  }
}

/** µ is often written u; nothing else begins with u. */
function spelled(name: string): string {
  if (name === '\u2103') return '°C';
  return /^u[A-Za-z\u03a9]/.test(name) ? `\u00b5${name.slice(1)}` : name;
}

function unitOf(over: readonly Factor[], under: readonly (readonly Factor[])[]): Unit {
  let factor = 1;
  let dimension: Dimension = {};
  const all = [...over.map((one) => ({ ...one, sign: 1 })), ...under.flat().map((one) => ({ ...one, sign: -1 }))];
  for (const { known, power, sign } of all) {
    factor *= known.factor ** (sign * power);
    dimension = times(dimension, known.definition.dimension, sign * power);
  }
  const [single] = over;
  const alone = all.length === 1 && single?.power === 1;
  const shown = (factors: readonly Factor[]): string => factors.map((one) => one.known.symbol + raised(one.power)).join('·');
  const denominators = under.map((factors) => (factors.length > 1 ? `/(${shown(factors)})` : `/${shown(factors)}`)).join('');
  return {
    factor,
    offset: alone ? (single.known.definition.offset ?? 0) : 0,
    dimension,
    symbol: `${over.length === 0 ? '1' : shown(over)}${denominators}`,
    energy: all.some((one) => one.known.definition.energy === true),
  };
}

function raised(power: number): string {
  if (power === 1) return '';
  return `${power < 0 ? '⁻' : ''}${superscripts[Math.abs(power)] ?? ''}`;
}
