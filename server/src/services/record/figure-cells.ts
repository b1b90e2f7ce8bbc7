import { percent } from '../../checks/check.ts';
import { allFigures } from '../../figures/registry.ts';
import { formatBounds, formatQuantity } from '../../language/format-quantity.ts';
import { isQuantityKind } from '../../language/quantity-kinds.ts';
import { STATE_WORDS } from '../figure-markdown.ts';
import type { FigureRow, LimitRow, Range } from '../figures-table.ts';

/** A figure as the cells of a table: plain text, not escaped. */
export interface FigureCells {
  readonly value: string;
  /** `low to high`, empty where the value is certain. */
  readonly range: string;
  readonly limit: string;
  /** How much of the limit is used, and whether it is kept. */
  readonly use: string;
}

/** Whether a figure is told in words: a verdict. */
export const isInWords = (id: string): boolean => allFigures().variants(id).some((figure) => figure.inWords !== undefined);

export function figureCells(row: FigureRow): FigureCells {
  const [limit] = row.limits;
  return { ...valueCells(row), limit: limit?.text ?? '', use: limit ? useText(limit) : '' };
}

/** The nominal value, and apart from it the ends of its range in the same unit: its customary one, or that of another row with which it is compared. */
export function valueCells(row: FigureRow, like?: FigureRow): Pick<FigureCells, 'value' | 'range'> {
  if (row.state !== 'computed' || row.value === undefined) return { value: row.state === 'unable' ? 'none' : 'not computable', range: '' };
  if (isInWords(row.id) || !isQuantityKind(row.quantity)) return { value: row.text ?? '', range: '' };
  return numberCells(row.value, row.quantity, like?.state === 'computed' ? like.unit : row.unit, like !== undefined);
}

function numberCells(value: Range, quantity: Parameters<typeof formatQuantity>[1], unit: string, fixed: boolean): Pick<FigureCells, 'value' | 'range'> {
  // A value of nothing would choose the smallest unit for its ends, too.
  const size = value.nominal === 0 && !fixed ? Math.max(Math.abs(value.low), Math.abs(value.high)) : 0;
  const options = size > 0 ? {} : { unit };
  const nominal = formatQuantity(value.nominal, quantity, options);
  const range = formatBounds(value, quantity, options);
  return { value: nominal, range: range === nominal ? '' : range };
}

export function useText({ used, state }: Pick<LimitRow, 'used' | 'state'>): string {
  return [used === undefined ? '' : percent(used), STATE_WORDS[state]].filter((text) => text !== '').join(', ');
}
