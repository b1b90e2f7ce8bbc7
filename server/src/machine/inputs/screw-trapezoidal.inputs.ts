import { pitchDiameterBelowCrest, rootBelowCrest } from '../../mechanics/sliding-thread.ts';
import { fallbacks, type InputReader } from '../input.ts';
import type { Origin } from '../origin.ts';
import { isInUse, sizeMeaning, sizeSource, trapezoidalPitchDiameter, trapezoidalRootDiameter, usualPitches } from '../trapezoidal-size.ts';
import { exactly, type Bounded, type InputValue } from '../values.ts';

/** A length as an input's value, shown in millimetres. */
const length = (value: Bounded): InputValue => ({ type: 'number', ...value, unit: 'mm' });

/** A value that follows from the size that the description names. */
function fromSize(read: InputReader, value: InputValue | undefined, source: string) {
  const size = read.choice('screw.size');
  return value === undefined || size === undefined ? undefined : { value, size, sizeInput: 'screw.size', source };
}

/** A value put together from entries, with the origin of each. */
function from(read: InputReader, value: InputValue | undefined, inputs: readonly { readonly title: string; readonly input: string }[]) {
  const parts = inputs.flatMap(({ title, input }): { title: string; origin: Origin }[] => {
    const origin = read.origin(input);
    return origin ? [{ title, origin }] : [];
  });
  return value && { value, origin: { from: 'several', parts } as const };
}

const sizeless = (read: InputReader): boolean => read.choice('screw.size') === undefined;

/** Largest pitch over diameter of a listed single-start size is 0.36 (22 × 8): a longer lead has several starts, and how many must be said. */
const LARGEST_PITCH_SHARE = 0.37;

/** Whether the lead could be that of a single start. */
function isFineLead(read: InputReader): boolean {
  const [lead, major] = [read.number('screw.lead'), read.number('screw.major-diameter')];
  return read.choice('screw.thread') !== 'ball' && lead !== undefined && major !== undefined && lead.nominal <= LARGEST_PITCH_SHARE * major.nominal;
}

/** The dimension of a thread that is described by its diameter and pitch instead of a size. */
function described(read: InputReader, of: (thread: string, major: number, pitch: number) => Bounded | undefined) {
  const [thread, major, pitch] = [read.choice('screw.thread'), read.number('screw.major-diameter'), read.number('screw.pitch')];
  if (!sizeless(read) || thread === undefined || thread === 'ball' || !major || !pitch) return undefined;
  const value = of(thread, major.nominal, pitch.nominal);
  return from(read, value && length(value), [{ title: 'Major diameter', input: 'screw.major-diameter' }, { title: 'Pitch', input: 'screw.pitch' }]);
}

export default fallbacks(
  {
    input: 'screw.thread',
    standard: (read) => fromSize(read, sizeMeaning(read) && { type: 'choice', text: 'trapezoidal' }, 'ISO 2902, designation'),
  },
  {
    input: 'screw.major-diameter',
    symbol: 'd',
    standard: (read) => {
      const meaning = sizeMeaning(read);
      return fromSize(read, meaning && length(exactly(meaning.majorDiameter)), 'ISO 2902, designation');
    },
  },
  {
    input: 'screw.hand',
    standard: (read) => {
      const meaning = sizeMeaning(read);
      return meaning && 'hand' in meaning ? fromSize(read, { type: 'choice', text: meaning.hand }, 'ISO 2902, designation: right unless LH is written') : undefined;
    },
    handbook: () => ({ value: { type: 'choice', text: 'right' }, source: 'right-hand threads are the rule' }),
  },
  {
    input: 'screw.starts',
    symbol: 'n_s',
    standard: (read) => {
      const meaning = sizeMeaning(read);
      if (meaning?.kind === 'clear') return fromSize(read, { type: 'number', ...exactly(meaning.starts) }, 'ISO 2902, designation');
      const reading = meaning?.kind === 'ambiguous' ? meaning.readings.find(({ pitch }) => pitch === read.number('screw.pitch')?.nominal) : undefined;
      return fromSize(read, reading && { type: 'number', ...exactly(reading.starts) }, 'lead of the designation over the pitch');
    },
    compose: (read) => {
      const [lead, pitch] = [read.number('screw.lead'), read.number('screw.pitch')];
      if (!sizeless(read) || !lead || !pitch) return undefined;
      const starts = Math.round(lead.nominal / pitch.nominal);
      const whole = starts >= 1 && Math.abs(lead.nominal / pitch.nominal - starts) < 0.005 * starts;
      return from(read, whole ? { type: 'number', ...exactly(starts) } : undefined, [{ title: 'Lead', input: 'screw.lead' }, { title: 'Pitch', input: 'screw.pitch' }]);
    },
    // Lead, pitch and starts fall back on each other. Asked for in any order they must agree, so each also answers where the others cannot yet.
    handbook: (read) => {
      const single = sizeless(read) && (read.number('screw.pitch') !== undefined || isFineLead(read));
      return single ? { value: { type: 'number', ...exactly(1) }, source: 'one start, since no other number is given' } : undefined;
    },
  },
  {
    input: 'screw.pitch',
    symbol: 'P',
    standard: (read) => {
      const meaning = sizeMeaning(read);
      return meaning?.kind === 'clear' || meaning?.kind === 'lead-not-whole-pitches'
        ? fromSize(read, length(exactly(meaning.pitch)), 'ISO 2902, designation')
        : undefined;
    },
    compose: (read) => {
      const lead = sizeless(read) ? read.number('screw.lead') : undefined;
      if (!lead || read.choice('screw.thread') === 'ball') return undefined;
      const starts = read.number('screw.starts');
      if (!starts && !isFineLead(read)) return undefined;
      const n = starts?.nominal ?? 1;
      return from(read, length({ nominal: lead.nominal / n, low: lead.low / n, high: lead.high / n }), [
        { title: 'Lead', input: 'screw.lead' },
        { title: 'Starts', input: 'screw.starts' },
      ]);
    },
    // A designation such as Tr8x8 does not say its pitch. Where only one pitch in use divides the lead it is taken, and a finding asks.
    handbook: (read) => {
      const meaning = sizeMeaning(read);
      const only = meaning?.kind === 'ambiguous' && meaning.readings.length === 1 ? meaning.readings[0] : undefined;
      return only && { value: length(exactly(only.pitch)), source: 'the only pitch in use at this diameter that divides the lead; common practice', weak: true };
    },
  },
  {
    input: 'screw.lead',
    symbol: 'l',
    compose: (read) => {
      const pitch = sizeless(read) ? read.number('screw.pitch') : undefined;
      if (!pitch) return undefined;
      const starts = read.number('screw.starts')?.nominal ?? 1;
      const lead = length({ nominal: pitch.nominal * starts, low: pitch.low * starts, high: pitch.high * starts });
      return from(read, lead, [{ title: 'Pitch', input: 'screw.pitch' }, { title: 'Starts', input: 'screw.starts' }]);
    },
    standard: (read) => {
      const meaning = sizeMeaning(read);
      return fromSize(read, meaning?.lead === undefined ? undefined : length(exactly(meaning.lead)), 'ISO 2902, designation');
    },
  },
  {
    input: 'screw.pitch-diameter',
    symbol: 'd₂',
    standard: (read) => {
      const [major, pitch] = [read.number('screw.major-diameter'), read.number('screw.pitch')];
      if (!sizeMeaning(read) || !major || !pitch) return undefined;
      const value = trapezoidalPitchDiameter(major.nominal, pitch.nominal);
      return fromSize(read, value && length(value), sizeSource(major.nominal, pitch.nominal, read.number('screw.starts')?.nominal));
    },
    compose: (read) =>
      described(read, (thread, major, pitch) => (thread === 'trapezoidal' ? trapezoidalPitchDiameter(major, pitch) : exactly(major - pitchDiameterBelowCrest(pitch)))),
  },
  {
    input: 'screw.root-diameter',
    symbol: 'd₃',
    standard: (read) => {
      const [major, pitch] = [read.number('screw.major-diameter'), read.number('screw.pitch')];
      if (!sizeMeaning(read) || !major || !pitch) return undefined;
      const value = trapezoidalRootDiameter(major.nominal, pitch.nominal);
      return fromSize(read, value && length(value), `${sizeSource(major.nominal, pitch.nominal, read.number('screw.starts')?.nominal)}; smallest root of class 7e, ISO 2903`);
    },
    compose: (read) =>
      described(read, (thread, major, pitch) => {
        if (thread === 'trapezoidal') return trapezoidalRootDiameter(major, pitch);
        const root = major - rootBelowCrest(thread === 'acme' ? 'acme' : 'square', pitch);
        return root > 0 ? exactly(root) : undefined;
      }),
  },
  {
    input: 'screw.size-remark',
    handbook: (read) => {
      const meaning = sizeMeaning(read);
      if (meaning?.kind !== 'clear' || isInUse(meaning.majorDiameter, meaning.pitch)) return undefined;
      const usual = usualPitches(meaning.majorDiameter).map((pitch) => Number((pitch * 1000).toPrecision(4)));
      const text = usual.length === 0 ? 'no trapezoidal screws of this diameter are usual' : `usual pitches of this diameter are ${usual.join(', ')} mm`;
      return { value: { type: 'choice', text }, source: 'ISO 2904, size list, and sizes in use; partly from memory', weak: true };
    },
  },
);
