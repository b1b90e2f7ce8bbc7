import { scopeOf, type Figure } from './figure.ts';

/** One thing that a figure reads, with its place in the registry looked up beforehand: evaluation runs this thousands of times a second. */
export interface Need {
  readonly alias: string;
  readonly id: string;
  /** Number of the figure behind the id; -1 for an input. */
  readonly figure: number;
}

/** A figure's declaration, taken apart for evaluation. */
export interface Plan {
  readonly figure: Figure;
  /** Index of the declaration, variants counted. */
  readonly index: number;
  readonly scope: string;
  readonly needs: readonly Need[];
  readonly optional: readonly Need[];
  readonly choices: readonly Need[];
  readonly optionalChoices: readonly Need[];
  readonly tables: readonly Need[];
  readonly names: readonly Need[];
  readonly onlyWhere: readonly (readonly [choice: string, allowed: readonly string[]])[];
}

export function planOf(figure: Figure, index: number, numberOf: (id: string) => number): Plan {
  const list = (group: Readonly<Record<string, string>> | undefined): readonly Need[] =>
    Object.entries(group ?? {}).map(([alias, id]) => ({ alias, id, figure: numberOf(id) }));
  return {
    figure,
    index,
    scope: scopeOf(figure.id),
    needs: list(figure.needs),
    optional: list(figure.optional),
    choices: list(figure.choices),
    optionalChoices: list(figure.optionalChoices),
    tables: list(figure.tables),
    names: list(figure.names),
    onlyWhere: Object.entries(figure.onlyWhere ?? {}),
  };
}
