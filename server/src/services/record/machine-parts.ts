import type { Evaluation } from '../../figures/evaluation.ts';
import { readQuantity } from '../../language/read-quantity.ts';
import { childOf, nodeAt, type SyntaxNode } from '../../language/syntax-tree.ts';
import { showInput } from '../../figures/derivation.ts';
import { scopeRow } from '../../machine/scopes.ts';
import type { Analysis } from '../../checks/analysis.ts';

/** An amount of money in one currency, with how sure it is. Never converted. */
export interface Money {
  readonly currency: string;
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

/** A line of the parts list. */
export interface PartRow {
  /** Stays the same while its price and its number change: the part's name, or the element and where it stands. */
  readonly id: string;
  readonly title: string;
  /** Designation or rating in a few words; empty where there is none. */
  readonly size: string;
  readonly pieces: number;
  /** Of one piece. */
  readonly price?: Money;
  readonly supplierNote?: string;
}

/** What the parts come to. */
export interface Cost {
  /** One for each currency, in the order of their names. */
  readonly totals: readonly Money[];
  /** Lines without a price. */
  readonly unpriced: number;
  readonly budget?: Money;
}

/** What a drive is built of, in the order from the motor to the load. */
const ELEMENTS = ['motor', 'coupling', 'screw', 'nut', 'belt', 'pulley', 'idlers', 'rack', 'pinion', 'brake'] as const;

/** The entry that says most about an element in a word. */
const SIZES: Readonly<Partial<Record<(typeof ELEMENTS)[number], readonly string[]>>> = {
  motor: ['frame', 'kind'],
  coupling: ['form'],
  screw: ['size', 'major-diameter'],
  nut: ['design', 'material'],
  belt: ['profile'],
  pulley: ['teeth'],
  idlers: ['teeth', 'diameter'],
  rack: ['module'],
  pinion: ['teeth'],
  brake: ['at'],
};

/** What is to be bought for the chosen drives and the supplies, as far as it is described, in the order of the text. A part that serves several drives is one line. */
export function partsOf(analysis: Analysis): readonly PartRow[] {
  const rows = new Map<string, PartRow>();
  const add = (row: PartRow): void => {
    const before = rows.get(row.id);
    rows.set(row.id, before ? { ...before, pieces: before.pieces + row.pieces } : row);
  };
  const counted = new Set<string>();
  for (const evaluation of analysis.evaluations) {
    const { subject } = evaluation;
    if (subject.kind === 'supply') add(supplyRow(evaluation));
    if (subject.kind !== 'drive' || !subject.chosen) continue;
    // Two axes on crossed belts are two drives with the same map: it is built once.
    const drive = (subject.fixed.get('drive') ?? []).join('/');
    if (counted.has(drive)) continue;
    counted.add(drive);
    for (const row of driveRows(evaluation, drive)) add(row);
  }
  return [...rows.values()];
}

function driveRows(evaluation: Evaluation, drive: string): readonly PartRow[] {
  const { subject } = evaluation;
  const units = evaluation.bounds('drive.units')?.nominal ?? 1;
  const where = drive === 'layout/drive' ? 'shared drive' : (drive.split('/')[1] ?? drive);
  const elements = ELEMENTS.flatMap((scope): readonly PartRow[] => {
    if (!subject.isPresent(scope)) return [];
    const part = partName(evaluation, scope);
    const pieces = scope === 'idlers' ? units * (evaluation.bounds('idlers.count')?.nominal ?? 1) : units;
    return [{
      ...(part === undefined ? { id: `${drive}/${scope}`, title: `${capital(scopeRow(scope).title)} of ${where}` } : { id: `parts/${part}`, title: part }),
      size: sizeOf(evaluation, scope),
      pieces,
      ...priceOf(evaluation, scope),
    }];
  });
  return [...elements, ...stageRows(evaluation, drive, where, units)];
}

/** The stages of a reduction stand in a list, each with a price of its own. */
function stageRows(evaluation: Evaluation, drive: string, where: string, units: number): readonly PartRow[] {
  const { subject } = evaluation;
  const place = subject.placeOf('drive', 'reduction');
  const stages = place && nodeAt(subject.machine.document(place.uri)?.root, place.path);
  if (stages?.type !== 'list') return [];
  return stages.items.flatMap((stage, index): readonly PartRow[] => {
    if (stage?.type !== 'map') return [];
    const kind = textOf(stage, 'kind');
    const teeth = [textOf(stage, 'driving-teeth'), textOf(stage, 'driven-teeth')];
    const ratio = teeth.every((text) => text !== undefined) ? `${teeth.join(' to ')} teeth` : (textOf(stage, 'ratio') ?? '');
    const money = moneyOf(textOf(stage, 'price'));
    const note = textOf(stage, 'supplier-note');
    return [{
      id: `${drive}/reduction/${index}`,
      title: `Reduction of ${where}${stages.items.length > 1 ? `, stage ${index + 1}` : ''}`,
      size: [kind, ratio].filter((text) => text !== undefined && text !== '').join(', '),
      pieces: units,
      ...(money === undefined ? {} : { price: money }),
      ...(note === undefined ? {} : { supplierNote: note }),
    }];
  });
}

function supplyRow(evaluation: Evaluation): PartRow {
  const name = evaluation.subject.id.slice('supplies/'.length);
  const rating = ['voltage', 'current'].flatMap((entry) => (evaluation.bounds(`supply.${entry}`) ? [showInput(`supply.${entry}`, evaluation)] : []));
  return { id: evaluation.subject.id, title: `Supply ${name}`, size: rating.join(', '), pieces: 1, ...priceOf(evaluation, 'supply') };
}

/** The name of the part that an element is; undefined where it is described in the drive itself. */
function partName(evaluation: Evaluation, scope: string): string | undefined {
  const { subject } = evaluation;
  const row = scopeRow(scope);
  const holder = subject.placeOf('drive');
  const node = holder && nodeAt(subject.machine.document(holder.uri)?.root, [...holder.path, row.within?.key ?? scope]);
  if (node?.type === 'scalar') return node.text;
  return row.part?.by === 'part-key' ? textOf(node, 'part') : undefined;
}

function sizeOf(evaluation: Evaluation, scope: (typeof ELEMENTS)[number]): string {
  for (const entry of SIZES[scope] ?? []) {
    const id = `${scope}.${entry}`;
    // What is only assumed is not to be ordered.
    if (!evaluation.subject.reader.isWritten(id)) continue;
    const text = showInput(id, evaluation);
    return entry === 'teeth' ? `${text} teeth` : entry === 'at' ? `at the ${text}` : text;
  }
  return '';
}

function priceOf(evaluation: Evaluation, scope: string): Pick<PartRow, 'price' | 'supplierNote'> {
  const price = moneyInput(evaluation, `${scope}.price`);
  const note = evaluation.choice(`${scope}.supplier-note`);
  return { ...(price === undefined ? {} : { price }), ...(note === undefined ? {} : { supplierNote: note }) };
}

function moneyInput(evaluation: Evaluation, id: string): Money | undefined {
  const input = evaluation.subject.input(id);
  if (input.state !== 'known' || input.value.type !== 'number') return undefined;
  const { nominal, low, high, unit } = input.value;
  return { currency: currencyOf(unit ?? ''), nominal, low, high };
}

function moneyOf(text: string | undefined): Money | undefined {
  const reading = text === undefined ? undefined : readQuantity(text, 'money');
  if (!reading?.ok) return undefined;
  const { nominal, low, high, unit } = reading.quantity;
  return { currency: currencyOf(unit), nominal, low, high };
}

const SIGNS: Readonly<Record<string, string>> = { '€': 'EUR', $: 'USD', '£': 'GBP' };
const currencyOf = (unit: string): string => SIGNS[unit] ?? unit;

/** Sums by currency; nothing is converted. */
export function costOf(parts: readonly PartRow[], analysis: Analysis): Cost {
  const totals = new Map<string, Money>();
  for (const { price, pieces } of parts) {
    if (!price) continue;
    const { currency } = price;
    const before = totals.get(currency) ?? { currency, nominal: 0, low: 0, high: 0 };
    totals.set(currency, { currency, nominal: before.nominal + pieces * price.nominal, low: before.low + pieces * price.low, high: before.high + pieces * price.high });
  }
  const machine = analysis.evaluations.find((evaluation) => evaluation.subject.kind === 'machine');
  const budget = machine && moneyInput(machine, 'machine.budget');
  return {
    totals: [...totals.values()].sort((a, b) => (a.currency < b.currency ? -1 : 1)),
    unpriced: parts.filter((part) => part.price === undefined).length,
    ...(budget === undefined ? {} : { budget }),
  };
}

/** `14.50 EUR`, `14.00 to 15.00 EUR`: two places, whatever the currency. */
export function moneyText({ currency, nominal, low, high }: Money): string {
  return low === high ? `${nominal.toFixed(2)} ${currency}` : `${low.toFixed(2)} to ${high.toFixed(2)} ${currency}`;
}

const textOf = (node: SyntaxNode | null | undefined, key: string): string | undefined => {
  const value = childOf(node, key);
  return value?.type === 'scalar' && value.text !== '' ? value.text : undefined;
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
