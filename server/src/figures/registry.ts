import figureModules from '../generated/figures.ts';
import { scopeRow, type SubjectKind } from '../machine/scopes.ts';
import { scopeOf, type Figure } from './figure.ts';

/** All figures, their order, and which inputs each rests on in the end. */
export interface FigureRegistry {
  readonly figures: readonly Figure[];
  get(id: string): Figure | undefined;
  ofKind(kind: SubjectKind): readonly Figure[];
  /** Inputs (not figures) that the figure depends on directly or through others. */
  inputsUnder(id: string): readonly string[];
}

export function createRegistry(figures: readonly Figure[]): FigureRegistry {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  if (byId.size !== figures.length) throw new Error(`Two figures share an id: ${figures.map((figure) => figure.id).filter((id, index, all) => all.indexOf(id) !== index).join(', ')}`);
  const under = new Map<string, readonly string[]>();
  const byKind = new Map<SubjectKind, readonly Figure[]>();

  const inputsUnder = (id: string, above: readonly string[] = []): readonly string[] => {
    const known = under.get(id);
    if (known) return known;
    if (above.includes(id)) throw new Error(`Figures go round in a circle: ${[...above, id].join(' → ')}`);
    const figure = byId.get(id);
    if (!figure) return [id];
    const found = new Set(directNeeds(figure).flatMap((need) => inputsUnder(need, [...above, id])));
    const list = [...found].sort();
    under.set(id, list);
    return list;
  };

  return {
    figures,
    get: (id) => byId.get(id),
    inputsUnder: (id) => inputsUnder(id),
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
