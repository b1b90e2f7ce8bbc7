import { formatQuantity } from './format-quantity.ts';
import { readUnitOfKind } from './kind-units.ts';
import { aKind, kindDetails, type QuantityKind } from './quantity-kinds.ts';
import type { Quantity, QuantityProblem } from './read-quantity.ts';
import { shortened } from './slip-messages.ts';
import type { Span } from './spans.ts';
import { nearestUnits } from './units.ts';

/** The wording of everything that can be wrong with a quantity. */

type Replacement = QuantityProblem['replacements'][number];

function problem(code: string, message: string, span: Span, replacements: readonly Replacement[] = []): QuantityProblem {
  return { code, message, start: span.start, end: span.end, replacements };
}

function replace(span: Span, text: string, title = `Change to "${text}"`): Replacement {
  return { title, text, start: span.start, end: span.end };
}

/** An example of the kind, for the end of a sentence. */
function example(kind: QuantityKind): string {
  const [unit] = kindDetails(kind).units;
  if (kind === 'ratio' || kind === 'share') return '0.12 or 12 %';
  if (kind === 'money') return '14.50 EUR';
  return unit === undefined ? '4' : `12${unit === '°' ? '' : ' '}${unit}`;
}

/** The units that are offered first, as words: "mm, µm, cm or m". */
function offered(kind: QuantityKind, most = 4): string {
  const units = kindDetails(kind).units.slice(0, most);
  return units.length < 2 ? units.join('') : `${units.slice(0, -1).join(', ')} or ${units.at(-1) ?? ''}`;
}

export function tooLong(text: string): QuantityProblem {
  return problem('quantity-too-long', 'A quantity has at most 80 characters: a number, a tolerance, a unit. Put remarks behind a "#".', { start: 0, end: text.length });
}

export function noNumber(text: string, span: Span, kind: QuantityKind): QuantityProblem {
  const shown = shortened(text.slice(span.start, span.end));
  const what = shown === '' ? 'A number is missing' : `"${shown}" is not a number`;
  return problem('not-a-number', `${what}: ${aKind(kind)} is due here, such as ${example(kind)}.`, span);
}

export function noNominal(sign: string, signSpan: Span, rest: string, end: number): QuantityProblem {
  if (sign.toLowerCase() === 'to') return problem('not-a-number', 'A range needs a number before "to" as well.', signSpan);
  return problem(
    'not-a-number',
    `A number is missing before "${sign}". Write the value and its tolerance, or the size of the deviation alone.`,
    signSpan,
    rest === '' ? [] : [replace({ start: signSpan.start, end }, rest, `Write "${rest}"`)],
  );
}

export function notUnderstood(text: string, span: Span): QuantityProblem {
  const shown = shortened(text.slice(span.start, span.end));
  return problem('quantity-not-understood', `"${shown}" does not fit here. A quantity is a number and a unit, with "± …" or "to …" once.`, span);
}

export function separatorsInNumber(written: string, span: Span): QuantityProblem {
  const bare = written.replace(/[ _'’]/g, '');
  const commas = bare.split(',').length - 1;
  const grouped = /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(bare);
  const asPoint = commas === 1 && !bare.includes('.') ? [bare.replace(',', '.')] : [];
  const asGroups = grouped || commas === 0 ? [bare.replaceAll(',', '')] : [];
  // "1,000" may be a thousand or one: both are offered, and none is preferred.
  const [first, second] = [...asPoint, ...asGroups];
  if (first === undefined) return problem('decimal-comma', `"${shortened(written)}" is not a number: write decimals with a point and do not separate thousands.`, span);
  const choice = second === undefined ? `${first}` : `${first} or ${second}`;
  const message = commas > 0 ? `Write decimals with a point and no separators between thousands: ${choice}.` : `Write the number without separators: ${choice}.`;
  return problem('decimal-comma', message, span, [first, second].flatMap((text) => (text === undefined ? [] : [replace(span, text)])));
}

export function rangeWithDash(span: Span): QuantityProblem {
  return problem('range-with-dash', 'A dash could be a minus sign. Write a range with "to": 5 mm to 8 mm.', span, [replace(span, ' to ', 'Write "to" for the dash')]);
}

export function reversed(text: string, unitsShared: boolean, left: { number: Span; unit: Span }, right: { number: Span; unit: Span }): QuantityProblem {
  const first = unitsShared ? left.number : { start: left.number.start, end: Math.max(left.number.end, left.unit.end) };
  const second = unitsShared ? right.number : { start: right.number.start, end: Math.max(right.number.end, right.unit.end) };
  const [a, b] = [text.slice(first.start, first.end), text.slice(second.start, second.end)];
  const span = { start: left.number.start, end: Math.max(second.end, right.unit.end) };
  const swapped = text.slice(span.start, first.start) + b + text.slice(first.end, second.start) + a + text.slice(second.end, span.end);
  return problem('range-reversed', `A range goes from the smaller to the larger value: "${shortened(swapped, 40)}".`, span, [replace(span, swapped, 'Swap the ends')]);
}

export function percentOfTemperature(right: { number: Span; unit: Span }): QuantityProblem {
  return problem('quantity-not-understood', 'A percentage of a temperature depends on its scale. Write the tolerance in kelvin: "± 2 K".', { start: right.number.start, end: right.unit.end });
}

export function notFinite(span: Span): QuantityProblem {
  return problem('value-out-of-domain', 'The number is too large to be computed with.', span);
}

export function notWhole(span: Span): QuantityProblem {
  return problem('value-out-of-domain', 'A whole number is due here.', span);
}

export function belowMinimum(value: Pick<Quantity, 'nominal' | 'low' | 'stated'>, kind: QuantityKind, span: Span): QuantityProblem {
  const { title, minimum = 0 } = kindDetails(kind);
  const least = kind === 'temperature' ? 'below absolute zero' : minimum === 0 ? 'negative' : `less than ${formatQuantity(minimum, kind)}`;
  const how = value.nominal >= minimum ? `With its tolerance this ${title} becomes ${least}` : `${aKind(kind).replace(/^a/, 'A')} cannot be ${least}`;
  return problem('value-out-of-domain', `${how}. Check the sign${value.stated === 'exact' ? '' : ' and the tolerance'}.`, span);
}

/** Of a share: the whole is the most there is. A bare number above 1 is probably meant in percent. */
export function aboveMaximum(value: Pick<Quantity, 'nominal' | 'stated'>, kind: QuantityKind, text: string, number: Span, unit: string, span: Span): QuantityProblem {
  const { title, maximum = Infinity } = kindDetails(kind);
  const most = formatQuantity(maximum, kind);
  if (value.nominal <= maximum) return problem('value-out-of-domain', `With its tolerance this ${title} becomes more than ${most}. Check the tolerance.`, span);
  const inPercent = unit === '' && value.nominal <= 100 && value.stated === 'exact' ? `${text.slice(number.start, number.end)} %` : undefined;
  const cure = inPercent === undefined ? 'Check the number and its unit.' : `Write "${inPercent}" if percent are meant.`;
  return problem('value-out-of-domain', `${aKind(kind).replace(/^a/, 'A')} cannot be more than ${most}. ${cure}`, span, inPercent === undefined ? [] : [replace(number, inPercent)]);
}

export function unitMissing(text: string, number: Span, kind: QuantityKind): QuantityProblem {
  const written = text.slice(number.start, number.end);
  const at = { start: number.end, end: number.end };
  const units = unitsThatFit(written, kind).slice(0, 4);
  const replacements = units.map((unit) => {
    const joined = unit === '°' ? unit : ` ${unit}`;
    return replace(at, joined, `Write "${written}${joined}"`);
  });
  const { title } = kindDetails(kind);
  return problem('unit-missing', `No unit: a ${title} needs one, such as ${offered(kind)}. The tool never guesses it.`.replace(/\ba ([aeiou])/, 'an $1'), number, replacements);
}

/** The offered units, without those in which this number would be out of all proportion; all of them where none is in proportion. */
function unitsThatFit(written: string, kind: QuantityKind): readonly string[] {
  const { units, plausible } = kindDetails(kind);
  const size = Math.abs(Number(written));
  if (!plausible || !Number.isFinite(size) || size === 0) return units;
  const fitting = units.filter((name) => {
    const reading = readUnitOfKind(name, kind);
    if (!reading.ok) return false;
    const si = size * reading.unit.factor + reading.unit.offset;
    return si >= plausible[0] && si <= plausible[1];
  });
  return fitting.length > 0 ? fitting : units;
}

export function unitOfWrongKind(unit: string, measures: string | undefined, span: Span, kind: QuantityKind): QuantityProblem {
  const shown = shortened(unit);
  const is = measures === undefined ? `"${shown}" does not measure ${aKind(kind)}` : `"${shown}" is a unit of ${measures.replace(/^an? /, '')}, and ${aKind(kind)} is due here`;
  const units = offered(kind);
  const cure = units === '' ? 'Leave the unit away.' : kindDetails(kind).bare === true ? `Write the number alone, or use ${units}.` : `Use ${units}.`;
  const asForce = ({ kg: 'kgf', g: 'gf', lb: 'lbf', lbs: 'lbf', oz: 'ozf' } as Readonly<Record<string, string>>)[unit];
  const inForce = unit.replace(/\b(kg|lb|oz)\b/g, '$1f');
  const force = kind === 'force' ? asForce : inForce !== unit && readUnitOfKind(inForce, kind).ok ? inForce : undefined;
  // "nm" where a torque is due is a newton metre in small letters.
  const [letters] = nearestUnits(unit, []).filter((candidate) => plainLetters(candidate) === plainLetters(unit) && readUnitOfKind(candidate, kind).ok);
  // Millimetres where a speed is due, millimetres a second where an acceleration is due: the time was left out.
  const [overTime] = [`${unit}/s`, `${unit}²`, `${unit}/s²`].filter((candidate) => /^[a-zµ]+(\/s)?$/.test(unit) && readUnitOfKind(candidate, kind).ok);
  const [text] = [force, letters, kind === 'speed' || kind === 'acceleration' ? overTime : undefined].filter((candidate) => candidate !== undefined);
  return problem('unit-of-wrong-kind', `${is}. ${cure}`, span, text === undefined ? [] : [replace(span, text)]);
}

function plainLetters(unit: string): string {
  return unit.toLowerCase().replaceAll('·', '');
}

export function unitAmbiguous(unit: string, clear: string | undefined, span: Span): QuantityProblem {
  const cure = clear === undefined ? 'Put what belongs below the slash in brackets.' : `Put brackets: "${shortened(clear)}".`;
  return problem(
    'unit-ambiguous',
    `After the slash in "${shortened(unit)}" it is not clear what belongs to the denominator; readers differ. ${cure}`,
    span,
    clear === undefined ? [] : [replace(span, clear)],
  );
}

/** Words of everyday speech for a unit, singular: what is written, and the unit that is meant. They are not read as units, since a file has one spelling for a thing. */
const everydayWords: ReadonlyMap<string, string> = new Map(Object.entries({
  amp: 'A', ampere: 'A', milliamp: 'mA', volt: 'V', vdc: 'V', vac: 'V', millimeter: 'mm', millimetre: 'mm', milimeter: 'mm', milimetre: 'mm', centimeter: 'cm', centimetre: 'cm', micron: 'µm', micrometer: 'µm', micrometre: 'µm',
  meter: 'm', metre: 'm', inch: 'in', inche: 'in', foot: 'ft', feet: 'ft', kilo: 'kg', kilogram: 'kg', gram: 'g', pound: 'lb', ounce: 'oz', newton: 'N', watt: 'W', hour: 'h', hr: 'h', day: 'd', minute: 'min', degree: '°', henry: 'H', millihenry: 'mH',
  celsius: '°C', fahrenheit: '°F', euro: 'EUR', dollar: 'USD',
}));

export function unitUnknown(word: string, unit: string, wordSpan: Span, unitSpan: Span, kind: QuantityKind): QuantityProblem {
  const offeredUnits = kindDetails(kind).units;
  const fitting = (candidate: string): boolean => readUnitOfKind(candidate, kind).ok;
  const everyday = everydayWords.get(unit.toLowerCase().replace(/s$/, ''));
  const whole = everyday !== undefined && fitting(everyday) ? [everyday] : nearestUnits(unit, offeredUnits).filter(fitting);
  // In a unit put together from several, only one may be misspelt.
  const at = wordSpan.start - unitSpan.start;
  const parts = nearestUnits(word, offeredUnits).filter((candidate) => fitting(unit.slice(0, at) + candidate + unit.slice(at + word.length)));
  const replacements = (whole.length > 0 ? whole.map((text) => replace(unitSpan, text)) : parts.map((text) => replace(wordSpan, text))).slice(0, 3);
  const suggestion = replacements.map((replacement) => `"${replacement.text}"`).join(' or ');
  const units = offered(kind);
  const cure = suggestion !== '' ? `Did you mean ${suggestion}?` : units === '' ? 'No unit is needed here.' : `Units of ${kindDetails(kind).title} are ${units}.`;
  return problem('unit-unknown', `"${shortened(word === '' ? unit : word)}" is not a known unit. ${cure}`, wordSpan, replacements);
}

/** A question about an unusual size; undefined where the size is usual. */
export function implausible(quantity: Quantity): string | undefined {
  const { plausible, title } = kindDetails(quantity.kind);
  const size = Math.abs(quantity.nominal);
  if (!plausible || quantity.nominal === 0 || (size >= plausible[0] && size <= plausible[1])) return undefined;
  const show = (si: number): string => formatQuantity(si, quantity.kind);
  const shown = formatQuantity(quantity.nominal, quantity.kind, { unit: quantity.unit });
  const which = size < plausible[0] ? 'small' : 'large';
  return `${shown} is unusually ${which} for a ${title} (${show(plausible[0])} to ${show(plausible[1])} is usual). Is the unit right?`.replace(/\ba ([aeiou])/, 'an $1');
}
