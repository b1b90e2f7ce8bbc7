import { kindDetails, quantityKindNames, type QuantityKind } from './quantity-kinds.ts';
import { sameDimension, type Dimension } from './unit-table.ts';
import { readUnit, type Unit, type UnitReading } from './units.ts';

export type KindUnitReading =
  | { readonly ok: true; readonly unit: Unit }
  | (UnitReading & { readonly ok: false })
  | { readonly ok: false; readonly code: 'unit-of-wrong-kind'; readonly start: number; readonly end: number; /** What the unit measures, with an article, where that has a name. */ readonly measures: string | undefined };

const noUnit: Unit = { factor: 1, offset: 0, dimension: {}, symbol: '', energy: false };

/** Reads a unit text where a quantity of `kind` is due: its dimension must fit, and some spellings depend on the kind. */
export function readUnitOfKind(text: string, kind: QuantityKind): KindUnitReading {
  const details = kindDetails(kind);
  const spelling = spellingOf(text, details.spellings);
  if (spelling === '') return { ok: true, unit: { ...noUnit, symbol: text } };
  const reading = readUnit(spelling ?? text);
  if (!reading.ok) return reading;
  const { unit } = reading;
  if (!sameDimension(unit.dimension, dimensionOf(kind)) || (unit.energy && kind === 'torque')) {
    return { ok: false, code: 'unit-of-wrong-kind', start: 0, end: text.length, measures: measuredBy(unit) };
  }
  // A difference has no zero of its own; where a spelling stands for another unit, it is shown as it is customary.
  const offset = kind === 'temperature-difference' ? 0 : unit.offset;
  return { ok: true, unit: { ...unit, offset, symbol: spelling === undefined || readUnit(text).ok === false ? unit.symbol : text } };
}

function spellingOf(text: string, spellings: Readonly<Record<string, string>> | undefined): string | undefined {
  return spellings && Object.hasOwn(spellings, text) ? spellings[text] : undefined;
}

const dimensions = new Map<QuantityKind, Dimension>();

/** The dimension that units of a kind have. */
export function dimensionOf(kind: QuantityKind): Dimension {
  const known = dimensions.get(kind);
  if (known) return known;
  const { si } = kindDetails(kind);
  const reading = si === '' ? undefined : readUnit(si);
  const dimension = reading?.ok ? reading.unit.dimension : {};
  dimensions.set(kind, dimension);
  return dimension;
}

function measuredBy(unit: Unit): string | undefined {
  if (Object.keys(unit.dimension).length === 0) return 'a ratio';
  const found = quantityKindNames.filter((name) => sameDimension(dimensionOf(name), unit.dimension));
  const kind = unit.energy ? 'energy' : found[0];
  if (kind === undefined) return undefined;
  const { title } = kindDetails(kind);
  return `${/^[aeiou]/.test(title) ? 'an' : 'a'} ${title}`;
}
