import type { Bounded } from '../machine/values.ts';
import { timesOf, type Facts, type Judged, type Limit } from './check.ts';

/** Where the ends of a sway frequency are far apart, all of it is told, so that the lowest end is not taken for the frequency. */
const FAR = 1.5;

/** How much of the tolerance ringing may take before it is worth a word. */
const MUCH = 1 / 3;

/** Limits of ringing, whatever rings: the box, the beam, a frame of members. */
export const RINGING_LIMITS: readonly Limit[] = [
  { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'undamped answer to a step' } },
  { at: MUCH, severity: 'information', basis: 'our threshold', source: { title: 'a third leaves room for the other errors' } },
];

/** How a sway frequency is told: the low end that decides, or the range. */
export const swayText = (show: Facts['show'], bounds: Bounded | undefined, id: string): string => show(id, bounds && bounds.high > FAR * bounds.low ? 'range' : 'low');

/** Whether a check of ringing speaks: it tells of the same sway with its amplitude, so that the frequency need not be told too. */
export const ringsTell = (scope: 'frame' | 'frame-box', { bounds }: Pick<Facts, 'bounds'>): boolean => (bounds(`${scope}.ringing-use`)?.high ?? 0) > MUCH;

/** How ringing is told: all of it where its ends are far apart, so that the worst end is not taken for what will be. */
export function ringText({ show, bounds, certain }: Pick<Judged, 'show' | 'bounds' | 'certain'>, id: string): string {
  const found = bounds(id);
  if (found && found.high > FAR * found.low) return show(id, 'range');
  return `${certain ? '' : 'up to '}${show(id, 'high')}`;
}

/** How much of the tolerance it takes: `153 % of`, or `up to 153 % of` where it may be less by much. */
export function tolerancesText({ bounds }: Pick<Judged, 'bounds'>, id: string, worst: number): string {
  const found = bounds(id);
  return `${found && found.high > FAR * found.low ? 'up to ' : ''}${timesOf(worst)}`;
}

/** Whether ringing is known to be small: then a low frequency does little harm. */
export const ringsLittle = (scope: 'frame' | 'frame-box', { bounds }: Pick<Facts, 'bounds'>): boolean => (bounds(`${scope}.ringing-use`)?.high ?? Infinity) <= MUCH;
