import figureModules from '../generated/figures.ts';
import { scopeRow, type SubjectKind } from '../machine/scopes.ts';
import { scopeOf, type Figure } from './figure.ts';
import { planOf, type Plan } from './plan.ts';

/** All figures, their order, and which inputs each rests on in the end. */
export interface FigureRegistry {
  readonly figures: readonly Figure[];
  get(id: string): Figure | undefined;
  ofKind(kind: SubjectKind): readonly Figure[];
  /** Inputs (not figures) that the figure depends on directly or through others; an input is under itself. */
  inputsUnder(id: string): readonly string[];
  plan(id: string): Plan | undefined;
  planAt(index: number): Plan | undefined;
}

/** Throws when two figures share an id or figures need one another in a circle: slips in declarations, caught by the first test that loads them. */
export function createRegistry(figures: readonly Figure[]): FigureRegistry {
  const indexOf = new Map(figures.map((figure, index) => [figure.id, index]));
  if (indexOf.size !== figures.length) throw new Error(`Two figures share an id: ${figures.map((figure) => figure.id).filter((id, index, all) => all.indexOf(id) !== index).join(', ')}`);
  const under = new Map<string, readonly string[]>();
  const byKind = new Map<SubjectKind, readonly Figure[]>();
  const plans: (Plan | undefined)[] = [];

  const get = (id: string): Figure | undefined => figures[indexOf.get(id) ?? -1];

  const inputsUnder = (id: string, above: readonly string[] = []): readonly string[] => {
    const known = under.get(id);
    if (known) return known;
    if (above.includes(id)) throw new Error(`Figures go round in a circle: ${[...above, id].join(' → ')}`);
    const figure = get(id);
    if (!figure) return [id];
    const list = [...new Set(directNeeds(figure).flatMap((need) => inputsUnder(need, [...above, id])))].sort();
    under.set(id, list);
    return list;
  };

  const planAt = (index: number): Plan | undefined => {
    const figure = figures[index];
    if (!figure) return undefined;
    return (plans[index] ??= planOf(figure, index, (id) => indexOf.get(id) ?? -1, inputsUnder(figure.id)));
  };

  return {
    figures,
    get,
    inputsUnder: (id) => inputsUnder(id),
    plan: (id) => planAt(indexOf.get(id) ?? -1),
    planAt,
    ofKind: (kind) => {
      let list = byKind.get(kind);
      if (!list) {
        list = figures.filter((figure) => scopeRow(scopeOf(figure.id)).subjects.includes(kind));
        byKind.set(kind, list);
      }
      return list;
    },
  };
}

/** Everything that a figure names: needs, options, choices, tables. */
export function directNeeds(figure: Figure): readonly string[] {
  return [figure.needs, figure.optional, figure.choices, figure.optionalChoices, figure.tables].flatMap((group) => Object.values(group ?? {}));
}

let shared: FigureRegistry | undefined;

/** The figures found by their place. */
export function allFigures(): FigureRegistry {
  shared ??= createRegistry((figureModules as readonly (Figure | readonly Figure[])[]).flat());
  return shared;
}
