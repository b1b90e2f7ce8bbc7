import type { Snapshot } from './snapshot.ts';

/** Version of the shape below; rises with every change that breaks a reader. */
export const figuresShape = 'figures-1';

export interface Range {
  readonly nominal: number;
  readonly low: number;
  readonly high: number;
}

/** A place in a file as people and editors count: both from 1, columns in UTF-16 units. */
export interface FilePlace {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
}

export interface SourceRow {
  readonly title: string;
  readonly where?: string;
  readonly weak: boolean;
}

export interface TermRow {
  readonly id: string;
  readonly symbol: string;
  readonly title: string;
  /** In its customary or written unit, with its range. */
  readonly text: string;
  /** In SI; left out for choices and tables. */
  readonly value?: Range;
  readonly siUnit?: string;
  readonly origin: 'written here' | 'part' | 'standard size' | 'handbook default' | 'several entries' | 'figure';
  /** Name of the part, designation of the size, or identifier of the figure. */
  readonly of?: string;
  readonly source?: string;
  readonly weak: boolean;
  /** Where it is written; for a default, where it would be written is in `override`. */
  readonly places: readonly FilePlace[];
  /** Input to write to replace a default, such as `nut.friction`. */
  readonly override?: string;
}

export interface LimitRow {
  /** Identifier of the check that compares. */
  readonly check: string;
  readonly bad: 'above' | 'below';
  readonly severity: 'error' | 'warning' | 'information' | 'hint';
  readonly value: Range;
  readonly text: string;
  readonly basis: string;
  readonly source?: SourceRow;
  /** Worst end over the strictest limit; above 1 it is broken. Left out where a share means nothing. */
  readonly used?: number;
  readonly broken: boolean;
}

/** One figure of one subject. */
export interface FigureRow {
  readonly id: string;
  readonly symbol: string;
  readonly title: string;
  readonly meaning: string;
  readonly quantity: string;
  /** `axes/lift/drive`, `machine`, `heating/bed`. */
  readonly subject: string;
  readonly rank: 1 | 2 | 3;
  readonly state: 'computed' | 'missing' | 'unable';
  /** In SI; only of a computed figure. */
  readonly value?: Range;
  readonly siUnit: string;
  /** The customary unit, and the value in it with its range. */
  readonly unit: string;
  readonly text?: string;
  readonly note?: string;
  /** Uncertain inputs under it, the one that moves it most first. */
  readonly movedBy?: readonly string[];
  /** Entries that would make it computable. */
  readonly missing?: readonly string[];
  /** Why physics gives no value here. */
  readonly reason?: string;
  readonly limits: readonly LimitRow[];
  readonly formula: string;
  readonly terms: readonly TermRow[];
  readonly sources: readonly SourceRow[];
}

/** All figures of all subjects that concern them, in the order of the text and of rank. */
export function figuresOf(snapshot: Snapshot): readonly FigureRow[] {
  void snapshot;
  return [];
}
