import { SLOTTED_PROFILES } from '../catalogue/slotted-profiles.ts';
import { changeOf } from './entry-proposals.ts';
import { choice, type Proposal, type RemedyContext } from './remedy.ts';

/** Profiles that are larger than the present one, in the order of the catalogue. */
export function largerProfile(context: RemedyContext, input: string, say: (title: string) => string): readonly Proposal[] {
  const present = SLOTTED_PROFILES.find(({ name }) => name === context.before.choice(input));
  if (!present) return [];
  const larger = SLOTTED_PROFILES.filter(({ secondUpright, secondSideways }) => secondUpright.low > present.secondUpright.high && secondSideways.low > present.secondSideways.low);
  const found = context.first(larger, ({ name }) => ({ [input]: choice(name) }));
  const change = found && changeOf(context, input, found.name);
  return found && change ? [{ changes: [change], what: say(found.title) }] : [];
}
