import { class7e, pitchesAt, standardThread } from '../catalogue/trapezoidal-threads.ts';
import { readDesignation, settleDesignation, type DesignationMeaning } from '../mechanics/thread-designation.ts';
import { screwThreadLimits, trapezoidalGeometry } from '../mechanics/trapezoidal-thread.ts';
import type { InputReader } from './input.ts';
import { between, exactly, type Bounded } from './values.ts';

/** What a trapezoidal designation means; undefined where the text is none (a ball screw, a half-typed text). */
export function meaningOf(size: string | undefined): DesignationMeaning | undefined {
  const written = size === undefined ? undefined : readDesignation(size);
  return written && settleDesignation(written, pitchesAt(written.majorDiameter));
}

/** What the designation under `screw.size` means. */
export const sizeMeaning = (read: Pick<InputReader, 'choice'>): DesignationMeaning | undefined => meaningOf(read.choice('screw.size'));

/** Where the dimensions of a thread come from, as shown to the person. */
export function sizeSource(majorDiameter: number, pitch: number | undefined, starts = 1): string {
  const relations = 'relations of ISO 2901';
  if (pitch === undefined) return 'ISO 2902, designation';
  const row = standardThread(majorDiameter, pitch, starts) ?? standardThread(majorDiameter, pitch, 1);
  return row?.source ?? `not among the sizes in use; ${relations}`;
}

/** d2 of a trapezoidal thread in m; undefined where no such thread can exist. */
export function trapezoidalPitchDiameter(majorDiameter: number, pitch: number): Bounded | undefined {
  const thread = trapezoidalGeometry(majorDiameter, pitch);
  return thread.exists ? exactly(thread.pitchDiameter) : undefined;
}

/** d3 of a trapezoidal thread in m: nominal, and down to the smallest of class 7e where the tolerance is known. */
export function trapezoidalRootDiameter(majorDiameter: number, pitch: number): Bounded | undefined {
  const thread = trapezoidalGeometry(majorDiameter, pitch);
  if (!thread.exists) return undefined;
  const tolerance = class7e(majorDiameter, pitch);
  if (!tolerance) return exactly(thread.rootDiameter);
  const smallest = screwThreadLimits(thread, tolerance).rootDiameterMin;
  return between(Math.max(smallest, thread.rootDiameter / 2), thread.rootDiameter, thread.rootDiameter);
}
