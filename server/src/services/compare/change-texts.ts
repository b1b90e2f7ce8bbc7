import { percent } from '../../checks/check.ts';
import type { FigureRow } from '../figures-table.ts';
import { valueCells } from '../record/figure-cells.ts';
import { moneyText, type Money } from '../record/machine-parts.ts';
import { subjectTitle } from '../subject-title.ts';
import type { FigureChange, MarginChange } from './figure-changes.ts';
import type { Worsening } from './worsening.ts';

/** A figure of one side in one cell: `2.5 (1.7 to 4.5)`; in the unit of the row with which it is compared. */
export function valueText(row: FigureRow | undefined, like?: FigureRow): string {
  if (!row) return '–';
  const { value, range } = valueCells(row, like);
  // The unit stands at the value already.
  const unit = value.slice(value.indexOf(' '));
  const ends = value.includes(' ') && range.endsWith(unit) ? range.slice(0, -unit.length) : range;
  return ends === '' ? value : `${value} (${ends})`;
}

/** Only its nominal value. */
export const nominalText = (row: FigureRow | undefined, like?: FigureRow): string => (row ? valueCells(row, like).value : '–');

/** `+12 %`; a factor where per cents would be hard to grasp; empty where it means nothing. */
export function relativeText({ relative }: Pick<FigureChange, 'relative'>): string {
  if (relative === undefined) return '';
  if (Math.abs(relative) < 5e-5) return '±0 %';
  if (relative >= 9) return `×${Number((1 + relative).toPrecision(2))}`;
  return `${relative > 0 ? '+' : '−'}${percent(Math.abs(relative))}`;
}

/** `60 → 136 %, fails`: how much of the limit is used. */
export function usedText({ usedBefore, usedAfter, stateBefore, stateAfter }: MarginChange): string {
  const of = (used: number | undefined): string => (used === undefined ? '' : used >= 9.95 ? `${Number(used.toPrecision(2))}×` : percent(used));
  const [old, fresh] = [of(usedBefore), of(usedAfter)];
  const verdict = stateAfter === 'broken' ? 'fails' : stateAfter === 'may-break' ? 'may fail' : stateBefore === 'broken' || stateBefore === 'may-break' ? 'kept now' : '';
  const shares = old === '' || fresh === '' || old === fresh ? fresh || old : `${old.endsWith(' %') && fresh.endsWith(' %') ? old.slice(0, -2) : old} → ${fresh}`;
  return [shares, verdict].filter((text) => text !== '').join(', ');
}

/** Points of per cent of the limit: `+14` gained, `−75` lost. */
export function gainedText({ gained }: MarginChange): string {
  if (gained === undefined || Math.abs(gained) < 5e-4) return '';
  const points = Math.abs(gained) * 100;
  return `${gained > 0 ? '+' : '−'}${Number(points.toPrecision(points < 1000 ? 3 : 2)).toFixed(points < 10 ? 1 : 0)}`;
}

export interface WorseLine {
  /** A severity, or `margin`. */
  readonly what: string;
  readonly where: string;
  readonly text: string;
}

/** One line of "why": first what it is, then where, then by how much. */
export function worseLine(worse: Worsening): WorseLine {
  if (worse.kind === 'finding') {
    const { finding, wasSeverity } = worse;
    const where = finding.subject === '' ? finding.place : subjectTitle(finding.subject);
    return { what: finding.severity, where: `${finding.code}${where === '' ? '' : `, ${lowerFirst(where)}`}`, text: `${wasSeverity === undefined ? '' : `(was ${wasSeverity}) `}${finding.message}` };
  }
  const { figure, margin } = worse;
  const { before, after } = figure;
  return {
    what: 'margin',
    where: `${after?.title ?? before?.title ?? figure.id}, ${lowerFirst(subjectTitle(figure.subject))}`,
    text: `${usedText(margin)} of ${margin.limit} (${nominalText(before, after)} → ${nominalText(after)})`,
  };
}

/** `+12.00 EUR`, from the sum before to the sum after. */
export function differenceText(money: Money): string {
  const sign = money.nominal < 0 ? '−' : '+';
  const size = (value: number): number => Math.abs(value);
  return `${sign}${moneyText({ currency: money.currency, nominal: size(money.nominal), low: size(money.nominal), high: size(money.nominal) })}`;
}

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
