import { percent } from '../../checks/check.ts';
import { blocks, escapeMarkdown, table } from '../markdown.ts';
import { moneyText, type Cost, type Money, type PartRow } from './machine-parts.ts';

const times = ({ currency, nominal, low, high }: Money, count: number): Money => ({ currency, nominal: nominal * count, low: low * count, high: high * count });

/** What is built in, with prices as far as they are written. */
export function partsMarkdown(parts: readonly PartRow[], cost: Cost): string {
  if (parts.length === 0) return 'No parts are described.';
  const rows = parts.map(({ title, size, pieces, price, supplierNote }) => [title, size, String(pieces), price ? moneyText(price) : '–', price ? moneyText(times(price, pieces)) : '–', supplierNote ?? ''].map(escapeMarkdown));
  return blocks(
    table(['Part', 'Size', 'Pieces', 'Price of one', 'Price', 'Supplier note'], rows),
    [...cost.totals.map((total) => `- Sum: ${moneyText(total)}`), ...budgetLines(cost), unpricedLine(cost, parts.length)].filter((line) => line !== undefined).join('\n'),
  );
}

function unpricedLine({ unpriced }: Cost, lines: number): string {
  const what = 'Frame, guides and what is described nowhere are not counted.';
  return unpriced === 0 ? `- ${what}` : `- ${unpriced} of ${lines} lines ${unpriced === 1 ? 'has' : 'have'} no price, so the sum is too low. ${what}`;
}

/** The sum of the budget's own currency against it; sums in others are named and not converted. */
function budgetLines({ totals, budget }: Cost): readonly string[] {
  if (!budget) return [];
  const total = totals.find(({ currency }) => currency === budget.currency);
  const others = totals.filter(({ currency }) => currency !== budget.currency).map(({ currency }) => currency);
  const used = total && budget.nominal > 0 ? ` (${percent(total.high / budget.nominal)} used${total.high > budget.nominal ? ', exceeded' : ''})` : '';
  return [`- Budget: ${moneyText(budget)}${used}${others.length === 0 ? '' : `; ${others.join(' and ')} not converted`}`];
}
