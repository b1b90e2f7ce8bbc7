import type { ExitStatus, Threshold } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import type { FindingRow } from './findings.ts';
import type { Counts } from './summary.ts';

/** How a run ended, for the end of a document. */
export interface RunEnd {
  readonly status: ExitStatus;
  readonly failOn: Threshold;
  readonly counts: Counts;
  readonly sentence: string;
  readonly failures: readonly Failure[];
  readonly unmatched: readonly string[];
}

/** One file of a document: its findings, or why there are none. */
export interface FilePart {
  readonly path: string;
  /** Undefined where it could not be checked. */
  readonly rows: readonly FindingRow[] | undefined;
  readonly failures: readonly Failure[];
}

/** A report for programs, written file by file, so that it takes no room however long it gets. */
export interface RunDocument {
  begin(): string;
  file(part: FilePart): string;
  end(run: RunEnd): string;
}

/** JSON with two spaces a level, as it stands inside of other JSON. */
export const jsonAt = (value: unknown, level: number): string => JSON.stringify(value, null, 2).replaceAll('\n', `\n${'  '.repeat(level)}`);

/** Members of an object on the first level, without its braces. */
export const membersOf = (members: object): string =>
  Object.entries(members).filter(([, value]) => value !== undefined).map(([name, value]) => `  ${JSON.stringify(name)}: ${jsonAt(value, 1)}`).join(',\n');
