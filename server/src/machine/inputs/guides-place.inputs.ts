import { fallbacks, type Member } from '../input.ts';
import type { Origin } from '../origin.ts';
import type { Bounded } from '../values.ts';

/** Joints that run along a rail or shaft: all that is neither a drive nor at rest. */
const RUNNING = /^(rail-carriage|carriage-on-ball|wheel-carriage|vee-wheel|flat-wheel|one-bushing|two-bushings|self-aligning-bushing|fork)$/;

/** One row: x, y, z, and 1 where the height is known, else 0. */
const rowFrom = (places: readonly (readonly number[])[]): readonly number[] => {
  const mean = (index: number): number => places.reduce((sum, place) => sum + (place[index] ?? 0), 0) / places.length;
  const withHeight = places.every((place) => place.length > 2);
  return [mean(0), mean(1), withHeight ? mean(2) : 0, withHeight ? 1 : 0];
};

const placeOf = (member: Member): readonly number[] | undefined => member.quantities('at', 'position')?.map(({ nominal }) => nominal);

export default fallbacks(
  {
    input: 'guides.at',
    title: 'Middle of the carriages',
    symbol: 'r_0',
    compose: (_read, lists) => {
      const written = lists.quantities('guides.at', 'position');
      if (!written || written.length < 2) return undefined;
      const [first] = written;
      const place = written.map(({ value }: { readonly value: Bounded }) => value.nominal);
      return first && { value: { type: 'table', rows: [rowFrom([place])], titles: ['guides'] }, origin: first.origin };
    },
  },
  {
    // The middle of the joints that run along rails and shafts, where it is not written.
    input: 'guides.at',
    compose: (_read, lists) => {
      const running = lists.entries('axis.supports')?.filter((support) => RUNNING.test(support.choice('joint') ?? '')) ?? [];
      const places = running.flatMap((support) => {
        const place = placeOf(support);
        return place && place.length >= 2 ? [place] : [];
      });
      if (places.length === 0 || places.length < running.length) return undefined;
      const parts = running.map((support): { title: string; origin: Origin } => ({ title: support.title, origin: { from: 'here', place: support.place } }));
      return { value: { type: 'table', rows: [rowFrom(places)], titles: ['guides'] }, origin: { from: 'several', parts } };
    },
  },
);
