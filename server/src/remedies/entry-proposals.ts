import { convertFromSi, formatQuantity } from '../language/format-quantity.ts';
import { readQuantity } from '../language/read-quantity.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { between } from './context.ts';
import { writtenValue } from './nice-values.ts';
import { choice, number, type Change, type Inputs, type Proposal, type RemedyContext } from './remedy.ts';

/** Writes a value into an entry; undefined where it has no place in the text. */
export function changeOf(context: RemedyContext, input: string, value: string): Change | undefined {
  const place = context.place(input);
  return place && { place, value };
}

/** All changes, or none where one of them has no place. */
export function allChanges(changes: readonly (Change | undefined)[]): readonly Change[] | undefined {
  const known = changes.filter((change) => change !== undefined);
  return known.length === changes.length ? known : undefined;
}

export interface Solved {
  readonly input: string;
  /** The farthest value to try, in SI: the best that is reasonable. */
  readonly towards: number;
  /** What the person reads: `Slow the axis to 42 mm/s`. */
  readonly say: (written: string) => string;
  /** Round to a nice number instead of two digits: for things that are bought. */
  readonly coarse?: boolean;
  readonly price?: string;
  /** Cost of a small change; a large one costs more. */
  readonly cost?: number;
}

/** How much more a change of this size asks than a small one: a fifth of the speed is no longer a small matter. */
export const costOfChange = (from: number, to: number): number => (from > 0 && to > 0 ? Math.abs(Math.log2(to / from)) / 2 : 0);

/** Something that is turned from the present value, at share 0, to the farthest that is reasonable, at 1. */
export interface Dial {
  readonly inputs: (share: number) => Inputs;
  /** How it is written at a share, and what it is then, after rounding; undefined where it cannot be. */
  readonly write: (share: number) => (Written & { readonly inputs: Inputs }) | undefined;
}

export interface Written {
  readonly changes: readonly Change[];
  readonly what: string;
  readonly cost: number;
  readonly price?: string;
}

/** A numeric entry as a dial, rounded to the passing side and written in the person's own unit; undefined where it has no value. */
export function entryDial(context: RemedyContext, { input, towards, say, coarse, price, cost = 0 }: Solved): Dial | undefined {
  const present = context.before.bounds(input)?.nominal;
  if (present === undefined || present === towards) return undefined;
  const at = (share: number): number => between(present, towards, share);
  return {
    inputs: (share) => ({ [input]: number(at(share)) }),
    write: (share) => {
      const written = inOwnUnit(context, input, at(share), towards > present ? 'up' : 'down', coarse);
      const change = written === undefined ? undefined : changeOf(context, input, written);
      const rounded = written === undefined ? undefined : valueOf(input, written);
      if (!change || written === undefined || rounded === undefined) return undefined;
      return { inputs: { [input]: number(rounded) }, changes: [change], what: say(written), cost: cost + costOfChange(present, at(share)), ...(price === undefined ? {} : { price }) };
    },
  };
}

/** A fixed change as a dial that is turned on all the way. */
export const switched = (inputs: Inputs, written: Written): Dial => ({ inputs: () => inputs, write: () => ({ ...written, inputs }) });

/** What is added to the share where rounding has spoiled what was found. */
const NUDGES = [0, 0.02, 0.05, 0.1];

/** Dials turned together by equal shares of their way, no farther than it takes. Nothing where one of them is missing. */
export function turned(context: RemedyContext, dials: readonly (Dial | undefined)[]): readonly Proposal[] {
  const known = dials.filter((dial) => dial !== undefined);
  if (known.length < dials.length || known.length === 0) return [];
  const share = context.solveAlong((part) => merged(known.map((dial) => dial.inputs(part))));
  if (share === undefined) return [];
  for (const nudge of NUDGES) {
    const written = known.map((dial) => dial.write(Math.min(1, share + nudge)));
    if (context.passes(context.tryWith(merged(written.map((one) => one?.inputs ?? {}))))) return joined(written);
  }
  return [];
}

const merged = (inputs: readonly Inputs[]): Inputs => Object.assign({}, ...inputs) as Inputs;

/** Several changes as one proposal; nothing where one of them cannot be written. */
export function joined(written: readonly (Written | undefined)[]): readonly Proposal[] {
  const known = written.filter((one) => one !== undefined);
  if (known.length < written.length || known.length === 0) return [];
  const prices = [...new Set(known.flatMap(({ price }) => price ?? []))];
  return [{
    changes: known.flatMap(({ changes }) => changes),
    what: orders(known.map(({ what }) => what)),
    cost: known.reduce((sum, { cost }) => sum + cost, 0),
    ...(prices.length === 0 ? {} : { price: prices.join(', ') }),
  }];
}

/** `Take a nut of bronze, hold the far end and slow down`: one sentence of several orders. */
export function orders(whats: readonly string[]): string {
  const [first = '', ...others] = whats;
  const lowered = others.map((what) => what.charAt(0).toLowerCase() + what.slice(1));
  const last = lowered.pop();
  return last === undefined ? first : `${[first, ...lowered].join(', ')} and ${last}`;
}

/** The value of a numeric entry, nearest to the present one, at which the check passes. */
export function solvedProposal(context: RemedyContext, solved: Solved): readonly Proposal[] {
  const found = turned(context, [entryDial(context, solved)]);
  // Without a cost of its own it goes by that of its remedy.
  return solved.cost === undefined ? found.map(({ cost: _, ...proposal }) => proposal) : found;
}

/** What a text says as the value of an entry, in SI. */
export function valueOf(input: string, text: string): number | undefined {
  const { quantity } = describeInput(input);
  const read = quantity === undefined ? undefined : readQuantity(text, quantity);
  return read?.ok ? read.quantity.nominal : undefined;
}

/** A solved value as text in the unit in which the person wrote the entry, or its customary one. */
export function inOwnUnit(context: RemedyContext, input: string, value: number, direction: 'up' | 'down', coarse?: boolean): string | undefined {
  const present = context.before.input(input);
  const { quantity } = describeInput(input);
  if (!quantity) return undefined;
  const own = present.state === 'known' && present.value.type === 'number' ? present.value.unit : undefined;
  return writtenValue(value, quantity, own ?? customaryUnit(value, quantity), direction, coarse);
}

/** A usual size, not to be rounded, as text in the unit in which the person wrote the entry, or its customary one. */
export function exactText(context: RemedyContext, input: string, value: number): string | undefined {
  const present = context.before.input(input);
  const { quantity } = describeInput(input);
  if (!quantity) return undefined;
  const own = present.state === 'known' && present.value.type === 'number' ? present.value.unit : undefined;
  const unit = own ?? customaryUnit(value, quantity);
  const inUnit = unit === undefined ? value : convertFromSi(value, unit, quantity);
  return inUnit === undefined ? undefined : `${Number(inUnit.toPrecision(4))}${unit === undefined || unit === '' ? '' : ` ${unit}`}`;
}

/** An entry so many times as large, to three digits, in the unit in which it stands. */
export function scaledText(context: RemedyContext, input: string, times: number): string {
  const present = context.before.input(input);
  const { quantity } = describeInput(input);
  if (present.state !== 'known' || present.value.type !== 'number' || !quantity) return '';
  const { unit, nominal } = present.value;
  const inUnit = convertFromSi(nominal * times, unit ?? '', quantity) ?? nominal * times;
  return `${Number(inUnit.toPrecision(3))}${unit === undefined || unit === '' ? '' : ` ${unit}`}`;
}

const customaryUnit = (value: number, quantity: Parameters<typeof formatQuantity>[1]): string | undefined => /[^\d.\s-].*$/.exec(formatQuantity(value, quantity))?.[0];

/** The first of some choices for which the check passes. */
export function chosenProposal(context: RemedyContext, input: string, candidates: readonly string[], say: (text: string) => string): readonly Proposal[] {
  const present = context.before.choice(input);
  const found = context.first(candidates.filter((candidate) => candidate !== present), (candidate) => ({ [input]: choice(candidate) }));
  const change = found === undefined ? undefined : changeOf(context, input, found);
  return change && found !== undefined ? [{ changes: [change], what: say(found) }] : [];
}
