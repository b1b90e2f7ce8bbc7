import { compareMachines, machineState, type MachineState } from '../services/compare/comparison.ts';
import { comparisonMarkdown } from '../services/compare/comparison-markdown.ts';
import { worseningsOf } from '../services/compare/worsening.ts';
import type { Snapshot } from '../services/snapshot.ts';
import { comparisonJson } from './compare-json.ts';
import { comparedTitle, comparisonReport, type Compared } from './compare-report.ts';
import { marginLossOf } from './compare-options.ts';
import { namedPair, pairsSince, type Pair, type Pairs } from './compare-sides.ts';
import { exitStatus, type ExitStatus, type Threshold } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import type { Host, SharedOptions } from './host.ts';
import { faultText } from './read-machines.ts';
import { pageFor } from './style.ts';
import { failureLine, unmatchedLine } from './summary.ts';

export interface CompareOptions extends Pick<SharedOptions, 'color' | 'allowNone'> {
  readonly since?: string;
  readonly staged?: boolean;
  readonly failOn: Threshold;
  readonly marginLoss?: string;
  readonly format: 'human' | 'json' | 'markdown';
  readonly all?: boolean;
}

/** `axiswright compare` */
export async function runCompare(paths: readonly string[], options: CompareOptions, host: Host): Promise<ExitStatus> {
  const marginLoss = marginLossOf(options.marginLoss);
  const slip = slipIn(paths, options, marginLoss);
  if (slip !== undefined) {
    host.complain(`${slip}\n`);
    return exitStatus.couldNotRun;
  }
  const { failOn, format, since } = options;
  const allowance = { failOn, ...(typeof marginLoss === 'number' ? { marginLoss } : {}) };
  const found = since === undefined ? namedPair([paths[0] ?? '', paths[1] ?? ''], host) : pairsSince({ revision: since, staged: options.staged === true, paths }, host);
  const unmatched = options.allowNone === true ? [] : found.unmatched;
  for (const failure of found.failures) host.complain(failureLine(failure));
  for (const pattern of unmatched) host.complain(unmatchedLine(pattern));

  const page = pageFor(host, options.color);
  const failures: Failure[] = [...found.failures];
  const compared: Compared[] = [];
  const unchanged: string[] = [];
  for (const pair of found.pairs) {
    const one = pair.same && since !== undefined ? 'unchanged' : compareOne(pair, allowance, failures, host);
    if (one === 'unchanged') unchanged.push(pair.after);
    else if (one) {
      compared.push(one);
      if (format === 'human') host.print(`${comparisonReport(one, options.all === true, page)}\n`);
    }
    await host.breathe();
  }

  const refused = compared.flatMap(({ worse }) => worse.filter((one) => one.refused)).length;
  const status = failures.length > 0 || unmatched.length > 0 ? exitStatus.couldNotRun : refused > 0 ? exitStatus.findings : exitStatus.passed;
  const sentence = closing(compared, unchanged, refused, status, options, found);
  if (format === 'json') host.print(comparisonJson(compared, { status, allowed: allowance, ...(since === undefined ? {} : { since }), unchanged, failures, unmatched }));
  else if (format === 'markdown') host.print(markdownOf(compared, unchanged));
  else host.print(`${sentence}\n`);
  return status;
}

/** What is wrong with the arguments; undefined where they can be followed. */
function slipIn(paths: readonly string[], { since, staged, marginLoss }: CompareOptions, read: number | 'unreadable' | undefined): string | undefined {
  if (read === 'unreadable') return `--margin-loss needs a share of the limit, such as "10 %" or 0.1; "${marginLoss ?? ''}" is none.`;
  if (since === undefined && staged === true) return '--staged compares what is staged with a revision: add --since HEAD.';
  if (since === undefined && paths.length !== 2) return 'compare needs two descriptions, OLD and NEW, or --since REVISION.';
  return undefined;
}

function compareOne(pair: Pair, allowance: Parameters<typeof worseningsOf>[1], failures: Failure[], host: Host): Compared | 'unchanged' | undefined {
  const before = failures.length;
  const state = (name: string, take: () => Snapshot | undefined): MachineState | undefined => {
    try {
      const snapshot = take();
      return snapshot && machineState(snapshot);
    } catch (error) {
      failures.push({ path: name, message: faultText('compared', error) });
      return undefined;
    }
  };
  const [old, fresh] = [state(pair.before, pair.old), state(pair.after, pair.fresh)];
  for (const failure of failures.slice(before)) host.complain(failureLine(failure));
  if (failures.length > before) return undefined;
  const comparison = compareMachines(old, fresh);
  if (comparison.state === 'unchanged' && pair.before === pair.after) return 'unchanged';
  return { before: pair.before, after: pair.after, comparison, worse: worseningsOf(comparison, allowance) };
}

const many = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;

/** The last line: what was compared, and why the run ends with its status. */
function closing(compared: readonly Compared[], unchanged: readonly string[], refused: number, status: ExitStatus, { failOn, marginLoss }: CompareOptions, found: Pairs): string {
  const what = compared.length === 0 && unchanged.length > 0 ? `Nothing changed in ${many(unchanged.length, 'machine')}` : `${many(compared.length, 'machine')} compared${unchanged.length > 0 ? `, ${unchanged.length} unchanged` : ''}`;
  const kinds = failOn === 'error' ? 'new errors' : failOn === 'warning' ? 'new warnings or errors' : 'new findings';
  const loss = marginLoss === undefined ? '' : ` more than ${marginLoss} of margin lost`;
  const reason =
    status === exitStatus.couldNotRun
      ? 'not everything could be compared'
      : status === exitStatus.findings
        ? `${many(refused, 'thing')} got worse than allowed (${kinds}${loss === '' ? '' : `,${loss}`})`
        : `nothing got worse than allowed (no ${kinds}${loss === '' ? '' : `, no${loss}`})`;
  return `${found.pairs.length === 0 && compared.length === 0 ? 'No machine to compare' : what}. Exit status ${status}: ${reason}.`;
}

function markdownOf(compared: readonly Compared[], unchanged: readonly string[]): string {
  // What got worse most leads, whatever its path.
  const refused = ({ worse }: Compared): number => worse.filter((one) => one.refused).length;
  const ordered = [...compared].sort((a, b) => refused(b) - refused(a) || b.worse.length - a.worse.length);
  const parts = ordered.map((one) => comparisonMarkdown(comparedTitle(one), one.comparison, one.worse));
  if (unchanged.length > 0) parts.push(`${many(unchanged.length, 'machine')} unchanged.`);
  return `${parts.length === 0 ? 'No machine changed.' : parts.join('\n\n')}\n`;
}
