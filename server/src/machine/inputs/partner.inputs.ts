import { fallbacks, type Fallback, type ListReader } from '../input.ts';
import type { Origin } from '../origin.ts';
import { sumOf } from '../values.ts';

/** The sum of the masses that another axis moves. */
const massesMoved = (moves: string): NonNullable<Fallback['compose']> => (_read, lists: ListReader) => {
  const members = lists.named(moves, 'masses');
  if (!members || members.length === 0) return undefined;
  const masses = members.flatMap((member) => member.number('mass') ?? []);
  // A mass that cannot be read makes the sum unknown, not smaller.
  if (masses.length < members.length) return undefined;
  const parts = members.map((member): { title: string; origin: Origin } => ({ title: member.title, origin: { from: 'here', place: { uri: member.place.uri, path: [...member.place.path, 'mass'] } } }));
  return { value: { type: 'number', ...sumOf(masses), unit: 'kg' }, origin: { from: 'several', parts } };
};

export default fallbacks(
  { input: 'partner.moved-mass', title: 'Mass that the other axis moves', symbol: 'm_o', quantity: 'mass', compose: massesMoved('partner.moves') },
  { input: 'carried.moved-mass', title: 'Mass that is shifted across the gantry', symbol: 'm_r', quantity: 'mass', compose: massesMoved('carried.moves') },
);
