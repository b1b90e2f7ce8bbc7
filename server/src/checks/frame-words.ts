import type { Bounded } from '../machine/values.ts';
import type { Facts } from './check.ts';

/** Where the ends of a sway frequency are far apart, all of it is told, so that the lowest end is not taken for the frequency. */
const FAR = 1.5;

/** How a sway frequency is told: the low end that decides, or the range. */
export const swayText = (show: Facts['show'], bounds: Bounded | undefined, id: string): string => show(id, bounds && bounds.high > FAR * bounds.low ? 'range' : 'low');
