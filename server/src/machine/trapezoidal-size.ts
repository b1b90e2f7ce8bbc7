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

/** Whether threads of this diameter and pitch (m) are in use at all, with any number of starts. */
export const isInUse = (majorDiameter: number, pitch: number): boolean => pitchesAt(majorDiameter).some((known) => Math.abs(known - pitch) < 1e-9);

/** Pitches in use at a diameter (m), in m; none for a diameter that has none. */
export const usualPitches = (majorDiameter: number): readonly number[] => pitchesAt(majorDiameter);

/** Where the dimensions of a thread come from, as shown to the person. */
export function sizeSource(majorDiameter: number, pitch: number | undefined, starts = 1): string {
  const relations = 'relations of ISO 2901';
  if (pitch === undefined) return 'ISO 2902, designation';
  const row = standardThread(majorDiameter, pitch, starts) ?? standardThread(majorDiameter, pitch, 1);
  const source = row?.source ?? `not among the sizes in use; ${relations}`;
  return isListed(majorDiameter, pitch) ? source : `${source}; ± 0.2 mm, since screws sold as such differ`;
}

/** How far the diameters of a thread that the standard does not list may be off its relations, in m: screws sold as such differ. Common practice, no published source. */
const UNLISTED = 0.2e-3;

/** Whether the standard's size list has this diameter with this pitch (ISO 2904), in m. */
const isListed = (majorDiameter: number, pitch: number): boolean => standardThread(majorDiameter, pitch, 1)?.listedInStandard === true;

/** d2 of a trapezoidal thread in m, ± 0.2 mm where the standard does not list it; undefined where no such thread can exist. */
export function trapezoidalPitchDiameter(majorDiameter: number, pitch: number): Bounded | undefined {
  const thread = trapezoidalGeometry(majorDiameter, pitch);
  if (!thread.exists) return undefined;
  const { pitchDiameter } = thread;
  return isListed(majorDiameter, pitch) ? exactly(pitchDiameter) : between(pitchDiameter - UNLISTED, pitchDiameter, pitchDiameter + UNLISTED);
}

/** d3 of a trapezoidal thread in m: nominal, and down to the smallest of class 7e where the tolerance is known; at least ± 0.2 mm where the standard does not list it. */
export function trapezoidalRootDiameter(majorDiameter: number, pitch: number): Bounded | undefined {
  const thread = trapezoidalGeometry(majorDiameter, pitch);
  if (!thread.exists) return undefined;
  const { rootDiameter } = thread;
  const tolerance = class7e(majorDiameter, pitch);
  const off = isListed(majorDiameter, pitch) ? 0 : UNLISTED;
  const smallest = tolerance ? screwThreadLimits(thread, tolerance).rootDiameterMin : rootDiameter;
  return between(Math.max(Math.min(smallest, rootDiameter - off), rootDiameter / 2), rootDiameter, rootDiameter + off);
}
