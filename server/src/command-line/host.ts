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
}

/** Options that both commands have. */
export interface SharedOptions {
  readonly as?: string;
  readonly allowNone?: boolean;
  readonly color: 'auto' | 'always' | 'never';
}
