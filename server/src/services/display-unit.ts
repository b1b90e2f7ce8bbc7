import { readUnitOfKind } from '../language/kind-units.ts';
import { kindDetails, type QuantityKind } from '../language/quantity-kinds.ts';

/** A unit for showing numbers: `of` turns SI into it. */
export interface DisplayUnit {
  /** Empty for bare numbers. */
  readonly symbol: string;
  readonly of: (si: number) => number;
}

const bare: DisplayUnit = { symbol: '', of: (si) => si };

/** The unit called `unit`, else the kind's customary one for numbers of the size of `largest` (SI, without sign). */
export function customaryUnit(kind: QuantityKind, unit?: string, largest = 0): DisplayUnit {
  const symbol = unit ?? kindDetails(kind).shown.filter((step) => step.from <= largest).at(-1)?.unit ?? '';
  const reading = symbol === '' ? undefined : readUnitOfKind(symbol, kind);
  if (!reading?.ok) return bare;
  const { factor, offset } = reading.unit;
  return { symbol: reading.unit.symbol, of: (si) => (si - offset) / factor };
}

/** The coherent SI unit of a kind, as shown: empty for bare numbers. */
export const siUnit = (kind: QuantityKind): string => kindDetails(kind).si;
