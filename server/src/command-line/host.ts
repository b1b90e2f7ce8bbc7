import type { StartWorker } from './pool.ts';

/** Everything that a run touches outside of itself. */
export interface Host {
  readonly current: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly input: AsyncIterable<Uint8Array | string>;
  /** Findings and figures. */
  readonly print: (text: string) => void;
  /** Everything that is not a result. */
  readonly complain: (text: string) => void;
  /** Lets the process notice what happened meanwhile: that nobody reads any more. */
  readonly breathe: () => Promise<void>;
  readonly isTerminal: boolean;
  readonly terminalColumns: number | undefined;
  /** The day of the clock, YYYY-MM-DD; without it no acceptance ends. SOURCE_DATE_EPOCH goes before it. */
  readonly today?: () => string;
  /** Width of the terminal that shows the error output; undefined where none does, or one that cannot draw. */
  readonly errorColumns?: number | undefined;
  /** Files that are best checked at a time; 1 when left out. */
  readonly cores?: number;
  /** Starts a worker of the pool; without it all is done in this thread. */
  readonly startWorker?: StartWorker;
  /** Settles when the person ends the run. */
  readonly untilInterrupted?: () => Promise<void>;
}

/** Options that both commands have. */
export interface SharedOptions {
  readonly as?: string;
  readonly allowNone?: boolean;
  /** Pass over what ignore files name; commander sets it. */
  readonly ignore?: boolean;
  readonly color: 'auto' | 'always' | 'never';
}
