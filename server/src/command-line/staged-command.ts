import { realpathSync } from 'node:fs';
import { join, relative } from 'node:path';
import { compareMachines, machineState, type MachineState } from '../services/compare/comparison.ts';
import { worseLine } from '../services/compare/change-texts.ts';
import { worseningsOf, type Allowance, type Worsening } from '../services/compare/worsening.ts';
import type { Snapshot } from '../services/snapshot.ts';
import { printable } from './cells.ts';
import { marginLossOf } from './compare-options.ts';
import { pairsSince, type Pair } from './compare-sides.ts';
import { exitStatus, type ExitStatus, type Threshold } from './exit-status.ts';
import { isDescription, isPartList, type Failure } from './find-files.ts';
import { GitTree } from './git.ts';
import type { Host } from './host.ts';
import { faultText } from './machine-reader.ts';
import { failureLine } from './summary.ts';

export interface StagedOptions {
  readonly failOn: Threshold;
  readonly marginLoss?: string;
}

/** A machine that must not be committed as it is. */
interface Refusal {
  readonly path: string;
  readonly worse: readonly Worsening[];
}

/**
 * `axiswright staged`: compares what is about to be committed with the last commit, and says in three lines what got worse most. Silent where
 * nothing did. Nothing of the files on the disk counts: they may hold more, or less, than is staged.
 */
export async function runStaged(paths: readonly string[], options: StagedOptions, host: Host): Promise<ExitStatus> {
  const marginLoss = marginLossOf(options.marginLoss);
  if (marginLoss === 'unreadable') {
    host.complain(`--margin-loss needs a share of the limit, such as "10 %" or 0.1; "${options.marginLoss ?? ''}" is none.\n`);
    return exitStatus.couldNotRun;
  }
  const asked = paths.length > 0 ? paths : stagedPaths(host);
  if (asked.length === 0) return exitStatus.passed;
  const found = pairsSince({ revision: 'HEAD', staged: true, paths: asked }, host);
  const failures: Failure[] = [...found.failures];
  const refusals: Refusal[] = [];
  for (const pair of found.pairs) {
    if (pair.same) continue;
    try {
      const worse = refusedIn(pair, { failOn: options.failOn, ...(marginLoss === undefined ? {} : { marginLoss }) });
      if (worse.length > 0) refusals.push({ path: pair.after, worse });
    } catch (error) {
      failures.push({ path: pair.after, message: faultText('compared', error) });
    }
    await host.breathe();
  }
  for (const failure of failures) host.complain(failureLine(failure));
  if (refusals.length > 0) host.print(whyRefused(refusals).map((line) => `${printable(line)}\n`).join(''));
  return failures.length > 0 ? exitStatus.couldNotRun : refusals.length > 0 ? exitStatus.findings : exitStatus.passed;
}

/**
 * What a commit could make worse: the descriptions that it changes; everything where it changes a text that several may rest on. Told from the
 * hashes, so that a commit that touches one machine of many, or none, does not wait for the others.
 */
function stagedPaths({ current, env }: Host): readonly string[] {
  const [old, fresh] = [GitTree.open(current, 'HEAD', env), GitTree.open(current, 'index', env)];
  if ('failure' in old || 'failure' in fresh) return ['.']; // what is wrong is told where they are compared
  const names = [...new Set([...old.entries.keys(), ...fresh.entries.keys()])];
  const changed = names.filter((name) => old.entries.get(name)?.object !== fresh.entries.get(name)?.object || old.entries.get(name)?.mode !== fresh.entries.get(name)?.mode);
  const isMachine = (name: string): boolean => isDescription(name) && !isPartList(name);
  if (changed.some((name) => /\.ya?ml$/.test(name) && !isMachine(name))) return ['.'];
  const here = realpathSync(current);
  return changed.filter(isMachine).map((name) => relative(here, join(fresh.top, name))).filter((path) => !path.startsWith('..')).map((path) => join(current, path));
}

function refusedIn({ old, fresh }: Pair, allowance: Allowance): readonly Worsening[] {
  const state = (snapshot: Snapshot | undefined): MachineState | undefined => snapshot && machineState(snapshot);
  const comparison = compareMachines(state(old()), state(fresh()));
  // A first draft is worse than nothing; only what cannot work or is dangerous is refused in it.
  const worse = worseningsOf(comparison, comparison.state === 'new' ? { ...allowance, failOn: 'error' } : allowance);
  return worse.filter(({ refused }) => refused);
}

/** What, why, and what to do: a line each. */
function whyRefused(refusals: readonly Refusal[]): readonly string[] {
  const isFinding = ({ worse: [first] }: Refusal): boolean => first?.kind === 'finding' && first.finding.severity === 'error';
  const [gravest] = [...refusals].sort((a, b) => Number(isFinding(b)) - Number(isFinding(a)));
  const [first] = gravest?.worse ?? [];
  if (!gravest || !first) return [];
  const more = refusals.reduce((sum, { worse }) => sum + worse.length, -1);
  const { what, where, text } = worseLine(first);
  const elsewhere = refusals.length > 1 ? ` in ${refusals.length} machines` : '';
  return [
    `Not committed: ${gravest.path} gets worse than in the last commit: ${what} ${where}${more > 0 ? `, and ${more} more${elsewhere}` : ''}.`,
    `  ${text}`,
    `  Mend it${wayToAccept(first)}. All of it: axiswright compare --since HEAD --staged`,
  ];
}

/** What can be accepted is a finding about the design; the rest is mended. */
function wayToAccept(worse: Worsening): string {
  if (worse.kind !== 'finding' || worse.finding.subject === '') return '';
  const { code, place } = worse.finding;
  return `, or record why it may stay, under "accepted": { check: ${code}, at: ${place === '' ? 'machine' : place}, reason: ... }`;
}
