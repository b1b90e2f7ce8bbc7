import { printable } from './cells.ts';
import { exitStatus, reaches, type ExitStatus, type Threshold } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import { isPattern } from './globs.ts';
import { severities, type FileFindings, type Severity } from './findings.ts';
import type { ReadResult } from './read-machines.ts';

export type Counts = Readonly<Record<Severity, number>>;

/** How a run ended. */
export interface Summary {
  readonly status: ExitStatus;
  readonly counts: Counts;
  /** The last line of the output. */
  readonly sentence: string;
}

const many = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;

const names: Readonly<Record<Severity, readonly [string, string]>> = {
  error: ['error', 'errors'],
  warning: ['warning', 'warnings'],
  information: ['information', 'information'],
  hint: ['hint', 'hints'],
};

/** What a run is summed up from: as little as it takes, so that many files take no room. */
export interface Tally {
  readonly counts: Counts;
  readonly accepted: number;
  /** Whether a finding is at or above the threshold. */
  readonly reached: boolean;
}

export function tallyOf({ findings }: Pick<FileFindings, 'findings'>, failOn: Threshold): Tally {
  const count = (severity: Severity): number => findings.filter((finding) => finding.severity === severity).length;
  return {
    counts: { error: count('error'), warning: count('warning'), information: count('information'), hint: count('hint') },
    accepted: findings.filter((finding) => finding.accepted !== undefined).length,
    reached: findings.some((finding) => reaches(finding.severity, failOn)),
  };
}

export const summarize = (files: readonly Pick<FileFindings, 'findings'>[], result: Pick<ReadResult, 'failures' | 'unmatched'>, failOn: Threshold, allowNone: boolean): Summary =>
  sumUp(files.map((file) => tallyOf(file, failOn)), result, failOn, allowNone);

export function sumUp(tallies: readonly Tally[], result: Pick<ReadResult, 'failures' | 'unmatched'>, failOn: Threshold, allowNone: boolean): Summary {
  const count = (severity: Severity): number => tallies.reduce((sum, tally) => sum + tally.counts[severity], 0);
  const counts: Counts = { error: count('error'), warning: count('warning'), information: count('information'), hint: count('hint') };
  const refused = result.failures.length > 0 || (result.unmatched.length > 0 && !allowNone);
  const status = refused ? exitStatus.couldNotRun : tallies.some((tally) => tally.reached) ? exitStatus.findings : exitStatus.passed;

  const told = severities.filter((severity) => counts[severity] > 0).map((severity) => many(counts[severity], ...names[severity]));
  const accepted = tallies.reduce((sum, tally) => sum + tally.accepted, 0);
  const what = `${told.length === 0 ? 'No findings' : listed(told)} in ${many(tallies.length, 'file')}${accepted === 0 ? '' : `, ${accepted} accepted`}`;
  return { status, counts, sentence: `${what}. Exit status ${status}: ${reason(status, failOn)}.` };
}

/** Why a run ends with its status. */
function reason(status: ExitStatus, failOn: Threshold): string {
  if (status === exitStatus.couldNotRun) return 'not everything could be read';
  const threshold = failOn === 'error' ? 'an error' : `${failOn === 'warning' ? 'a warning' : 'information'} or graver`;
  return status === exitStatus.findings ? `at least one finding is ${threshold}` : `no finding is ${threshold}`;
}

const listed = (items: readonly string[]): string => (items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`);

/** What went wrong with a path, for the error output. */
export const failureLine = ({ path, message }: Failure): string => `${printable(`${path} ${message}`)}.\n`;

/** A pattern that matches nothing, or a folder in which there is no description. */
export const unmatchedLine = (pattern: string, passedOver = false): string =>
  `${printable(`No *.machine.yaml or *.parts.yaml ${isPattern(pattern) ? `matches "${pattern}"` : `is in the folder "${pattern}", however deep`}${passedOver ? '; something was ignored, which --no-ignore takes in' : ''}`)}.\n`;
