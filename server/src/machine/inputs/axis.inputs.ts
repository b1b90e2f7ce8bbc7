import { readQuantity } from '../../language/read-quantity.ts';
import type { Origin } from '../origin.ts';
import { fallbacks } from '../input.ts';
import { exactly, sumOf, type Bounded } from '../values.ts';

/** `vertical`, `horizontal`, or an angle above horizontal, as an angle in rad. */
function inclinationOf(direction: string): Bounded | undefined {
  if (direction === 'vertical') return exactly(Math.PI / 2);
  if (direction === 'horizontal') return exactly(0);
  const reading = readQuantity(direction, 'angle');
  return reading.ok ? reading.quantity : undefined;
}

export default fallbacks(
  {
    input: 'axis.pull',
    title: 'Whether gravity pulls along the axis',
    symbol: '',
    compose: (read) => {
      const inclination = read.number('axis.inclination');
      const origin = read.origin('axis.inclination');
      return inclination && origin ? { value: { type: 'choice', text: inclination.low === 0 && inclination.high === 0 ? 'level' : 'pulled' }, origin } : undefined;
    },
  },
  {
    input: 'axis.inclination',
    title: 'Inclination above horizontal',
    symbol: 'β',
    quantity: 'angle',
    compose: (read) => {
      const direction = read.choice('axis.direction');
      const origin = read.origin('axis.direction');
      const value = direction === undefined ? undefined : inclinationOf(direction);
      return value && origin ? { value: { type: 'number', ...value, unit: '°' }, origin } : undefined;
    },
  },
  {
    input: 'axis.moved-mass',
    title: 'Moved mass',
    symbol: 'm',
    quantity: 'mass',
    compose: (_read, lists) => {
      const members = lists.named('axis.moves', 'masses');
      if (!members || members.length === 0) return undefined;
      const known = members.map((member) => ({ member, mass: member.number('mass') }));
      const masses = known.flatMap(({ mass }) => (mass ? [mass] : []));
      // A mass that cannot be read makes the sum unknown, not smaller.
      if (masses.length < known.length) return undefined;
      const parts = known.map(({ member }): { title: string; origin: Origin } => ({
        title: member.title,
        origin: { from: 'here', place: { uri: member.place.uri, path: [...member.place.path, 'mass'] } },
      }));
      return { value: { type: 'number', ...sumOf(masses), unit: 'kg' }, origin: { from: 'several', parts } };
    },
  },
);
