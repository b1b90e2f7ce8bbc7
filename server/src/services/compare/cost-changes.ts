import type { Cost, Money, PartRow } from '../record/machine-parts.ts';

/** A part that is new, gone, or bought otherwise. */
export interface PartChange {
  readonly change: 'new' | 'gone' | 'changed';
  readonly before?: PartRow;
  readonly after?: PartRow;
}

/** What a change costs. */
export interface CostChange {
  readonly changed: boolean;
  readonly before: Cost;
  readonly after: Cost;
  /** Of the sums, one for each currency that is on both sides or on one: after less before. */
  readonly differences: readonly Money[];
  readonly parts: readonly PartChange[];
}

interface Bought {
  readonly parts: readonly PartRow[];
  readonly cost: Cost;
}

export function compareCost(before: Bought, after: Bought): CostChange {
  const old = new Map(before.parts.map((part) => [part.id, part]));
  const fresh = new Set(after.parts.map((part) => part.id));
  const parts: readonly PartChange[] = [
    ...after.parts.flatMap((part): readonly PartChange[] => {
      const was = old.get(part.id);
      if (!was) return [{ change: 'new', after: part }];
      return samePart(was, part) ? [] : [{ change: 'changed', before: was, after: part }];
    }),
    ...before.parts.filter((part) => !fresh.has(part.id)).map((part): PartChange => ({ change: 'gone', before: part })),
  ];
  const currencies = [...new Set([...before.cost.totals, ...after.cost.totals].map((total) => total.currency))].sort();
  const differences = currencies.map((currency) => difference(currency, before.cost.totals.find((total) => total.currency === currency), after.cost.totals.find((total) => total.currency === currency)));
  const changed = differences.some(({ nominal, low, high }) => nominal !== 0 || low !== 0 || high !== 0) || before.cost.unpriced !== after.cost.unpriced || !sameMoney(before.cost.budget, after.cost.budget);
  return { changed, before: before.cost, after: after.cost, differences, parts };
}

const samePart = (a: PartRow, b: PartRow): boolean => a.size === b.size && a.pieces === b.pieces && a.supplierNote === b.supplierNote && sameMoney(a.price, b.price);

const sameMoney = (a: Money | undefined, b: Money | undefined): boolean => JSON.stringify(a) === JSON.stringify(b);

/** To a thousandth of the currency: sums of decimal prices leave dust in binary numbers. */
const clean = (value: number): number => Math.round(value * 1000) / 1000 + 0;

function difference(currency: string, before: Money | undefined, after: Money | undefined): Money {
  const at = (end: 'nominal' | 'low' | 'high'): number => clean((after?.[end] ?? 0) - (before?.[end] ?? 0));
  return { currency, nominal: at('nominal'), low: at('low'), high: at('high') };
}
