import { bushingRating } from '../../catalogue/ball-bushings.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import { railOfSize } from '../guide-rail-size.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between, exactly } from '../values.ts';

interface Ratings { readonly dynamicRating: HandbookRange; readonly staticRating: HandbookRange; readonly ratedTravel: number; readonly what: string; readonly momentLimit?: HandbookRange }

const lesser = (one: HandbookRange, other: HandbookRange): HandbookRange => (other.nominal < one.nominal ? other : one);

/** What a carriage of that size, or a ball bushing for that shaft, usually carries. */
function usual(read: InputReader): Ratings | undefined {
  if (read.choice('guides.kind') === 'profile-rail') {
    const rail = railOfSize(read.choice('guides.size') ?? '');
    return rail && { ...rail, momentLimit: lesser(lesser(rail.rollMoment, rail.pitchMoment), rail.yawMoment), what: `${rail.form} rail of size ${rail.size}` };
  }
  const bearing = read.choice('guides.bearing');
  const shaft = bearing === 'ball-bushing' || bearing === 'self-aligning-ball-bushing' ? read.number('guides.shaft-diameter')?.nominal : undefined;
  const row = shaft === undefined ? undefined : bushingRating(shaft);
  return row && { ...row, what: 'ball bushing for that shaft' };
}

function range(read: InputReader, unit: string, pick: (ratings: Ratings) => HandbookRange | undefined) {
  const ratings = usual(read);
  const found = ratings && pick(ratings);
  if (!ratings || !found) return undefined;
  return { value: { type: 'number', ...between(found.low, found.nominal, found.high), unit }, source: `${ratings.what}: ${found.source}`, weak: found.weak } as const;
}

/** Speeds that the load factors go with, m/s. */
const SLOW = 0.25;
const BRISK = 1;

export default fallbacks(
  { input: 'guides.dynamic-rating', symbol: 'C', handbook: (read) => range(read, 'kN', ({ dynamicRating }) => dynamicRating) },
  { input: 'guides.static-rating', symbol: 'C_0', handbook: (read) => range(read, 'kN', ({ staticRating }) => staticRating) },
  { input: 'guides.moment-limit', symbol: 'M_0', handbook: (read) => range(read, 'N·m', ({ momentLimit }) => momentLimit) },
  {
    input: 'guides.rated-travel',
    symbol: 'B',
    handbook: (read) => {
      // A rating that is written without its travel may be for either; the smaller travel is the cautious reading.
      if (read.isWritten('guides.dynamic-rating')) {
        return { value: { type: 'number', ...between(50e3, 50e3, 100e3), unit: 'km' }, source: 'makers state ratings for 50 or for 100 km; 50 km is the cautious reading', weak: true };
      }
      const ratings = usual(read);
      return ratings && { value: { type: 'number', ...exactly(ratings.ratedTravel), unit: 'km' }, source: `${ratings.what}: the travel that its rating is taken for, from memory`, weak: true };
    },
  },
  {
    input: 'guides.load-factor',
    title: 'Load factor for shock',
    symbol: 'f_w',
    quantity: 'ratio',
    handbook: (read) => {
      const speed = read.number('motion.speed')?.high;
      if (speed === undefined || read.choice('guides.kind') === undefined) return undefined;
      const value = speed <= SLOW ? between(1, 1.2, 1.5) : speed <= BRISK ? between(1.2, 1.5, 2) : between(1.5, 2, 3.5);
      return { value: { type: 'number', ...value }, source: 'by speed, without hard shock: 1 to 1.5 slow, up to 2 at 1 m/s, more beyond; from memory of one supplier', weak: true };
    },
  },
);
