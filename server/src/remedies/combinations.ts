import { changeOf, joined, type Written } from './entry-proposals.ts';
import { choice, type Inputs, type Proposal, type RemedyContext } from './remedy.ts';

/** One change that may be combined with others. */
export interface Option extends Written {
  readonly inputs: Inputs;
}

/** Combinations tried at most: the gentle ones come first. */
const MOST_TRIED = 80;

/** Combinations that are offered at most. */
const MOST_FOUND = 3;

/**
 * The gentlest combinations that pass, of at most one option from each group and at most `most` together. None of them holds another one
 * that passes by itself.
 */
export function gentlestCombinations(context: RemedyContext, groups: readonly (readonly Option[])[], most: number): readonly Proposal[] {
  const found: (readonly Option[])[] = [];
  let tried = 0;
  for (const combination of combinations(groups, most)) {
    if (found.some((smaller) => smaller.every((option) => combination.includes(option)))) continue;
    if (++tried > MOST_TRIED) break;
    if (context.passes(context.tryWith(Object.assign({}, ...combination.map(({ inputs }) => inputs)) as Inputs))) found.push(combination);
    if (found.length === MOST_FOUND) break;
  }
  return found.flatMap(joined);
}

const costOf = (combination: readonly Option[]): number => combination.reduce((sum, { cost }) => sum + cost, 0);

/** Every combination, those of few changes first, the gentler before the harder. */
function combinations(groups: readonly (readonly Option[])[], most: number): readonly (readonly Option[])[] {
  let all: readonly (readonly Option[])[] = [[]];
  for (const group of groups) all = [...all, ...all.filter((one) => one.length < most).flatMap((one) => group.map((option) => [...one, option]))];
  return all.filter((one) => one.length > 0).sort((a, b) => a.length - b.length || costOf(a) - costOf(b));
}

/** An option that sets one choice; none where it is set already or has no place. */
export function choiceOption(context: RemedyContext, input: string, text: string, what: string, cost: number): readonly Option[] {
  const change = changeOf(context, input, text);
  return context.before.choice(input) === text || !change ? [] : [{ inputs: { [input]: choice(text) }, changes: [change], what, cost }];
}
