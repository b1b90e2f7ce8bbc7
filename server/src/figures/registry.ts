import figureModules from '../generated/figures.ts';
import { scopeRow, type SubjectKind } from '../machine/scopes.ts';
import { scopeOf, type Figure } from './figure.ts';
import { planOf, type Plan } from './plan.ts';

/**
 * All figures, their order, and which inputs each rests on in the end.
 *
 * Several declarations may share an id: variants, told apart by their conditions (`onlyWhere`, `onlyWith`), so that a new kind of drive adds files
 * and changes none. Which one holds is known only for a subject: see `Evaluation.figure`.
 */
export interface FigureRegistry {
  /** Every declaration, variants too. */
  readonly figures: readonly Figure[];
  /** The first declaration of an id: title, symbol, quantity and unit are the same in all its variants. */
  get(id: string): Figure | undefined;
  /** All declarations of an id. */
  variants(id: string): readonly Figure[];
  /** One figure for each id that subjects of this kind have: the first of its variants. */
  ofKind(kind: SubjectKind): readonly Figure[];
  /** Inputs (not figures) that the figure, in any of its variants, depends on directly or through others; an input is under itself. */
  inputsUnder(id: string): readonly string[];
  /** The number of an id, as in `Need.figure`; -1 for an input. */
  numberOf(id: string): number;
  /** The variants behind a number. */
  plansAt(number: number): readonly Plan[];
}

/** Throws when figures of one id contradict each other or figures need one another in a circle: slips in declarations, caught by the first test that loads them. */
export function createRegistry(figures: readonly Figure[]): FigureRegistry {
  const groups: Figure[][] = [];
  const numbers = new Map<string, number>();
  for (const figure of figures) {
    const number = numbers.get(figure.id);
    if (number === undefined) numbers.set(figure.id, groups.push([figure]) - 1);
    else groups[number]?.push(figure);
  }
  groups.forEach(requireAgreement);

  const numberOf = (id: string): number => numbers.get(id) ?? -1;
  const variants = (id: string): readonly Figure[] => groups[numberOf(id)] ?? [];
  const under = new Map<string, readonly string[]>();
  const byKind = new Map<SubjectKind, readonly Figure[]>();
  const plans: (readonly Plan[] | undefined)[] = [];
  const indexOf = new Map(figures.map((figure, index) => [figure, index]));

  const inputsUnder = (id: string, above: readonly string[] = []): readonly string[] => {
    const known = under.get(id);
    if (known) return known;
    if (above.includes(id)) throw new Error(`Figures go round in a circle: ${[...above, id].join(' → ')}`);
    const declared = variants(id);
    if (declared.length === 0) return [id];
    const list = [...new Set(declared.flatMap(directNeeds).flatMap((need) => inputsUnder(need, [...above, id])))].sort();
    under.set(id, list);
    return list;
  };

  return {
    figures,
    get: (id) => variants(id)[0],
    variants,
    inputsUnder: (id) => inputsUnder(id),
    numberOf,
    plansAt: (number) => (plans[number] ??= planGroup(groups[number] ?? [])),
    ofKind: (kind) => {
      let list = byKind.get(kind);
      if (!list) {
        list = groups.flatMap(([figure]) => (figure && scopeRow(scopeOf(figure.id)).subjects.includes(kind) ? [figure] : []));
        byKind.set(kind, list);
      }
      return list;
    },
  };

  function planGroup(group: readonly Figure[]): readonly Plan[] {
    for (const { id } of group) inputsUnder(id);
    return group.map((figure) => planOf(figure, indexOf.get(figure) ?? -1, numberOf));
  }
}

/** Variants of a figure are one figure to a person: they must be called and measured alike, and something must tell them apart. */
function requireAgreement(group: readonly Figure[]): void {
  const [first, ...others] = group;
  for (const other of others) {
    const differs = (['title', 'symbol', 'quantity', 'unit'] as const).find((member) => first?.[member] !== other[member]);
    if (differs) throw new Error(`The variants of ${other.id} differ in their ${differs}.`);
  }
  if (others.length > 0 && group.some((figure) => !figure.onlyWhere && !figure.onlyWith)) throw new Error(`Two figures share the id ${first?.id}, and nothing tells them apart.`);
}

/** Everything that a figure names: needs, options, choices, tables. */
export function directNeeds(figure: Figure): readonly string[] {
  return [figure.needs, figure.optional, figure.choices, figure.optionalChoices, figure.tables, figure.names].flatMap((group) => Object.values(group ?? {}));
}

let shared: FigureRegistry | undefined;

/** The figures found by their place. */
export function allFigures(): FigureRegistry {
  shared ??= createRegistry((figureModules as readonly (Figure | readonly Figure[])[]).flat());
  return shared;
}
