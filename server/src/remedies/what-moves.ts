import type { Transmission } from '../machine/scopes.ts';
import type { RemedyContext } from './remedy.ts';

/** What turns the turning of a shaft into travel in the drive that is looked at. */
export function transmissionOf(context: RemedyContext): Transmission {
  const kind = context.before.choice('drive.transmission');
  return kind === 'belt' || kind === 'rack' ? kind : 'screw';
}

/** Two axes that share their motors over crossed belts: each of them has both belts, whatever is written. */
export const isCrossed = (context: RemedyContext): boolean => context.before.choice('layout.role') !== undefined;

/** What several units of a drive are called, and one of them. */
export const UNITS: Readonly<Record<Transmission, string>> = { screw: 'screws', belt: 'belts', rack: 'racks' };

/** Whether an entry is written for this drive or for a part that it names, and does not follow from something else. */
export function isWritten(context: RemedyContext, input: string): boolean {
  const found = context.before.input(input);
  return found.state === 'known' && (found.origin.from === 'here' || found.origin.from === 'part');
}

/** `25 % more` or `20 % less` for a ratio of what is to what was. */
export const moreOrLess = (ratio: number): string => `${Math.round(Math.abs(ratio - 1) * 100)} % ${ratio >= 1 ? 'more' : 'less'}`;
