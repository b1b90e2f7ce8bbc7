import { ballScrewOfDiameter, ballScrewSize, isCommonBallScrew, type BallScrewSize } from '../../catalogue/ball-screws.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import { parseBallScrewDesignation } from '../../mechanics/ball-screw.ts';
import { fallbacks, type Fallback, type InputReader } from '../input.ts';
import { between, exactly, type InputValue } from '../values.ts';

const DESIGNATION = 'diameter and lead by the usual short designation; common practice';

const isBall = (read: InputReader): boolean => read.choice('screw.thread') === 'ball';

const length = (metres: number): InputValue => ({ type: 'number', ...exactly(metres), unit: 'mm' });

const designated = (read: InputReader): { readonly nominalDiameter: number; readonly lead: number; readonly doubts: readonly string[] } | undefined => {
  const size = read.choice('screw.size');
  const found = size === undefined ? undefined : parseBallScrewDesignation(size);
  return found?.kind === 'ball screw' ? found : undefined;
};

/** A value that the designation itself gives. */
const fromSize = (of: (size: { readonly nominalDiameter: number; readonly lead: number }) => InputValue): NonNullable<Fallback['standard']> => (read) => {
  const size = read.choice('screw.size');
  const meaning = designated(read);
  return meaning && size !== undefined ? { value: of(meaning), size, sizeInput: 'screw.size', source: DESIGNATION } : undefined;
};

/** What is usual for a ball screw of this diameter and lead, from the size or from the dimensions written. */
function usual(read: InputReader, of: (size: BallScrewSize) => HandbookRange, unit: string, needsItsLead: boolean): ReturnType<NonNullable<Fallback['handbook']>> {
  const diameter = isBall(read) ? read.number('screw.major-diameter')?.nominal : undefined;
  const lead = read.number('screw.lead')?.nominal;
  if (diameter === undefined || lead === undefined) return undefined;
  const size = needsItsLead ? ballScrewSize(diameter, lead) : ballScrewOfDiameter(diameter, lead);
  if (!size) return undefined;
  const range = of(size);
  return { value: { type: 'number', ...between(range.low, range.nominal, range.high), unit }, source: range.source, weak: range.weak };
}

export default fallbacks(
  { input: 'screw.thread', standard: fromSize(() => ({ type: 'choice', text: 'ball' })) },
  { input: 'screw.major-diameter', symbol: 'd', standard: fromSize(({ nominalDiameter }) => length(nominalDiameter)) },
  { input: 'screw.lead', symbol: 'l', standard: fromSize(({ lead }) => length(lead)) },
  {
    input: 'screw.pitch-diameter',
    symbol: 'd₂',
    handbook: (read) => {
      const balls = usual(read, (size) => size.ballDiameter, 'mm', false);
      const diameter = read.number('screw.major-diameter')?.nominal;
      if (balls?.value.type !== 'number' || diameter === undefined) return undefined;
      const ball = balls.value.nominal;
      // The circle of ball centres stands a little outside the nominal diameter.
      const value: InputValue = { type: 'number', ...between(diameter + 0.1 * ball, diameter + 0.2 * ball, diameter + 0.3 * ball), unit: 'mm' };
      return { value, source: 'circle of the ball centres, nominal diameter plus 0.1 to 0.3 ball diameters; from memory', weak: true };
    },
  },
  { input: 'screw.root-diameter', symbol: 'd₃', handbook: (read) => usual(read, (size) => size.rootDiameter, 'mm', false) },
  { input: 'nut.ball-diameter', symbol: 'D_w', handbook: (read) => usual(read, (size) => size.ballDiameter, 'mm', false) },
  { input: 'nut.dynamic-rating', symbol: 'C_a', handbook: (read) => usual(read, (size) => size.dynamicRating, 'kN', true) },
  { input: 'nut.static-rating', symbol: 'C_0a', handbook: (read) => usual(read, (size) => size.staticRating, 'kN', true) },
  {
    input: 'nut.speed-value',
    symbol: '(d n)_max',
    handbook: (read) => {
      if (!isBall(read)) return undefined;
      // mm·rpm in m·rad/s.
      const unit = (1e-3 * 2 * Math.PI) / 60;
      return {
        value: { type: 'number', ...between(50_000 * unit, 70_000 * unit, 150_000 * unit), unit: 'mm·rpm' },
        source: '50 000 mm·rpm with return tubes to 150 000 with end caps; from memory',
        weak: true,
      };
    },
  },
  {
    input: 'nut.preload',
    symbol: 'F_pre',
    handbook: (read) => {
      const rating = read.choice('nut.design') === 'preloaded-ball' ? read.number('nut.dynamic-rating') : undefined;
      return rating && {
        value: { type: 'number', ...between(0.02 * rating.low, 0.05 * rating.nominal, 0.1 * rating.nominal), unit: 'N' },
        source: '2 to 10 % of the dynamic rating; common practice, from memory',
        weak: true,
      };
    },
  },
  {
    input: 'nut.load-factor',
    title: 'Load factor',
    symbol: 'f_w',
    quantity: 'ratio',
    handbook: (read) =>
      isBall(read) ? { value: { type: 'number', ...between(1, 1.2, 1.5) }, source: 'smooth to usual running without shock; common practice, from memory', weak: true } : undefined,
  },
  {
    input: 'screw.size-remark',
    title: 'Remark on the size',
    handbook: (read) => {
      const meaning = designated(read);
      if (!meaning) return undefined;
      const doubt = meaning.doubts[0] ?? (isCommonBallScrew(meaning.nominalDiameter, meaning.lead) ? undefined : 'this pair of diameter and lead is seldom sold');
      return doubt === undefined ? undefined : { value: { type: 'choice', text: doubt }, source: 'combinations usually sold, from memory; no published source', weak: true };
    },
  },
);
