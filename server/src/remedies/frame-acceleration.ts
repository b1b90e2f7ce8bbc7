import type { Place } from '../machine/origin.ts';
import { costOfChange, inOwnUnit, valueOf } from './entry-proposals.ts';
import { number, type Proposal, type RemedyContext } from './remedy.ts';

/** Where the acceleration of a frame is written: its own entry, or the motion of the axis from which it is taken. */
function placeOf(context: RemedyContext, input: string): { readonly place: Place; readonly axis?: string } | undefined {
  const found = context.before.input(input);
  if (found.state !== 'known') return undefined;
  if (found.origin.from === 'here') return { place: found.origin.place };
  const first = found.origin.from === 'several' ? found.origin.parts[0]?.origin : undefined;
  if (first?.from !== 'here') return undefined;
  const { uri, path } = first.place;
  const axis = path[1];
  return path[0] === 'axes' && axis !== undefined && path.at(-1) === 'motion' ? { place: { uri, path: [...path, 'acceleration'] }, axis } : { place: first.place };
}

/** A gentler acceleration of what shakes the frame, written where it comes from. */
export function gentlerMove(context: RemedyContext, input: string): readonly Proposal[] {
  const present = context.before.bounds(input)?.nominal;
  const at = placeOf(context, input);
  if (present === undefined || !(present > 0) || !at) return [];
  const value = context.solve(input, present / 20);
  const written = value === undefined ? undefined : inOwnUnit(context, input, value, 'down');
  const rounded = written === undefined ? undefined : valueOf(input, written);
  if (written === undefined || rounded === undefined || !context.passes(context.tryWith({ [input]: number(rounded) }))) return [];
  return [{ changes: [{ place: at.place, value: written }], what: at.axis === undefined ? `Slow the acceleration to ${written}` : `Slow the acceleration of ${at.axis} to ${written}`, cost: 1 + costOfChange(present, rounded) }];
}
