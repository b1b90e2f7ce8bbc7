import { figuresOf, type FigureRow, type LimitRow } from '../services/figures-table.ts';
import type { ReadMachine } from './read-machines.ts';

/** What a subject is called: `axes/lift/drive` is the lift, `axes/lift/drive-options/belt` its option. */
export function subjectTitle(subject: string): string {
  const [section, name = '', group, option] = subject.split('/');
  if (section === 'axes') return group === 'drive-options' ? `${name}, option ${option ?? ''}` : name;
  return section === 'heating' ? `${name} (heated)` : subject;
}

/** What an element is called: `thrust-bearing.friction` belongs to the thrust bearing. */
export const elementTitle = (id: string): string => id.slice(0, id.indexOf('.')).replaceAll('-', ' ');

/** The limit that is closest to being broken, or broken most gravely. */
export function tightestLimit(limits: readonly LimitRow[]): LimitRow | undefined {
  const gravity = ['error', 'warning', 'information', 'hint'];
  return [...limits].sort((a, b) => Number(b.broken) - Number(a.broken) || gravity.indexOf(a.severity) - gravity.indexOf(b.severity))[0];
}

export const limitText = (limit: LimitRow): string => `${limit.bad === 'above' ? 'at most' : 'at least'} ${limit.text}`;

/** Subjects in the order of the text, each with its rows. */
export function bySubject(rows: readonly FigureRow[]): ReadonlyMap<string, readonly FigureRow[]> {
  return group(rows, (row) => row.subject);
}

/** Elements of one subject, each with its rows. */
export function byElement(rows: readonly FigureRow[]): ReadonlyMap<string, readonly FigureRow[]> {
  return group(rows, (row) => elementTitle(row.id));
}

function group(rows: readonly FigureRow[], keyOf: (row: FigureRow) => string): ReadonlyMap<string, readonly FigureRow[]> {
  const groups = new Map<string, FigureRow[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const rowsThere = groups.get(key);
    if (rowsThere) rowsThere.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}

/** Figures of the subjects that are checked: of an axis with options, only the chosen one. */
export function figuresOfChosen({ snapshot }: ReadMachine): readonly FigureRow[] {
  const chosen = new Set(snapshot.analysis?.evaluations.filter((evaluation) => evaluation.subject.chosen).map((evaluation) => evaluation.subject.id));
  return figuresOf(snapshot).filter((row) => chosen.has(row.subject));
}
