import { InvalidArgumentError, Option, type Command } from 'commander';
import { thresholds, type Threshold } from './exit-status.ts';
import type { SharedOptions } from './host.ts';

export const checkFormats = ['human', 'lines', 'json', 'sarif', 'junit'] as const;

export interface CheckOptions extends SharedOptions {
  /** That of the settings in the current folder when left out, else `error`. */
  readonly failOn?: Threshold;
  readonly format: (typeof checkFormats)[number];
  readonly output?: string;
  readonly fixes: boolean;
  readonly quiet?: boolean;
  readonly watch?: boolean;
  readonly workers?: number;
}

/** More would only take memory. */
const MOST_WORKERS = 64;

function workersOf(text: string): number {
  const number = Number(text);
  if (/^\d+$/.test(text) && number >= 1 && number <= MOST_WORKERS) return number;
  throw new InvalidArgumentError(`It is a number from 1 to ${MOST_WORKERS}.`);
}

export const withCheckOptions = (command: Command): Command =>
  command
    .addOption(new Option('--fail-on <severity>', 'the threshold of exit status 1; that of axiswright.yaml when left out, else error').choices(thresholds))
    .addOption(new Option('--format <format>', 'for people, one line a finding, or for programs').choices(checkFormats).default('human'))
    .option('--output <file>', 'write what --format says into a file, in one step; the screen shows what is for people')
    .option('--no-fixes', 'do not look for remedies (faster)')
    .option('--quiet', 'for people and lines: only findings at or above the threshold')
    .option('--watch', 'check again whenever a file changes; Ctrl-C ends')
    .addOption(new Option('--workers <number>', 'files that are checked at a time; as many as there are cores when left out').argParser(workersOf));

/** What is wrong with options that do not go together; undefined where they do. */
export function slipIn(paths: readonly string[], { watch, format, output }: CheckOptions): string | undefined {
  if (watch !== true) return undefined;
  if (paths.includes('-')) return '--watch needs files: standard input is read once.';
  if (output !== undefined) return '--watch shows what changed on the screen: leave out --output.';
  if (format !== 'human' && format !== 'lines') return `--watch shows one file after another, which ${format} cannot: leave out --format, or take lines.`;
  return undefined;
}
