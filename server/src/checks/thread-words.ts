import { quantityText } from './check.ts';

/** A dimension of a thread as text: lengths in mm, anything else as it is. */
export const dimensionText = (value: number | string, entry: string): string =>
  typeof value === 'string' ? value : entry === 'starts' ? String(value) : quantityText(value, 'length', 'mm');

/** `lead` from `lead`, `pitch diameter` from `pitch-diameter`. */
export const entryWords = (entry: string): string => entry.replaceAll('-', ' ');
