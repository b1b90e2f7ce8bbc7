import { createHash } from 'node:crypto';
import { pathToFileURL } from 'node:url';
import { relative, resolve } from 'node:path';
import { version } from '../../../package.json';
import { designRecord, hashedText, recordMark } from '../services/record/record.ts';
import type { Snapshot } from '../services/snapshot.ts';
import { printable } from './cells.ts';
import { exitStatus, type ExitStatus } from './exit-status.ts';
import { isPartList, type Failure } from './find-files.ts';
import type { Host, SharedOptions } from './host.ts';
import { faultText, readMachines, type ReadMachine } from './read-machines.ts';
import { readRecord, recordPath, writeRecord } from './record-file.ts';
import { failureLine, unmatchedLine } from './summary.ts';

export interface RecordCommandOptions extends SharedOptions {
  readonly check?: boolean;
  readonly stdout?: boolean;
}

/** What became of one record. */
type Outcome = 'written' | 'current' | 'stale' | 'failed' | 'shown';

/** `axiswright record` */
export async function runRecord(paths: readonly string[], options: RecordCommandOptions, host: Host): Promise<ExitStatus> {
  const allowNone = options.allowNone === true;
  // Without a day: a record says the same tomorrow.
  const read = await readMachines({ paths, as: options.as, ignore: options.ignore, current: host.current, input: host.input });
  for (const failure of read.failures) host.complain(failureLine(failure));
  if (!allowNone) for (const pattern of read.unmatched) host.complain(unmatchedLine(pattern));

  const readable = read.failures.length;
  const faults: Failure[] = [];
  const outcomes: Outcome[] = [];
  const typed = paths.includes('-') ? pathToFileURL(resolve(host.current, options.as ?? 'stdin.machine.yaml')).href : undefined;
  for (const machine of read.machines) {
    if (machine.snapshot.analysis === undefined) continue; // a part list has no record
    try {
      outcomes.push(await record(machine, options, options.stdout === true || machine.snapshot.uri === typed, host, faults));
    } catch (error) {
      faults.push({ path: machine.path, message: faultText('recorded', error) });
    }
    await host.breathe();
  }
  for (const failure of [...read.failures.slice(readable), ...faults]) host.complain(failureLine(failure));
  const onlyLists = outcomes.length === 0 && faults.length === 0 && read.failures.length === 0 && read.unmatched.length === 0;
  if (onlyLists) host.complain(`${paths.length > 0 && paths.every(isPartList) ? 'Part lists have no record of their own' : 'There is no *.machine.yaml here'}.\n`);

  const refused = read.failures.length > 0 || faults.length > 0 || (read.unmatched.length > 0 && !allowNone) || (onlyLists && !allowNone);
  if (refused) return exitStatus.couldNotRun;
  return outcomes.includes('stale') ? exitStatus.findings : exitStatus.passed;
}

async function record(machine: ReadMachine, options: RecordCommandOptions, show: boolean, host: Host, faults: Failure[]): Promise<Outcome> {
  const text = recordText(machine.snapshot);
  if (show && options.check !== true) {
    host.print(text);
    return 'shown';
  }
  const target = recordPath(machine.path);
  const file = resolve(host.current, target);
  const there = readRecord(file);
  if ('failure' in there) {
    faults.push({ path: target, message: there.failure });
    return 'failed';
  }
  // A checkout may have turned the line ends.
  const same = there.text?.replaceAll('\r\n', '\n') === text;
  if (same) {
    if (options.check === true) return 'current';
    host.print(`${printable(target)} is current.\n`);
    return 'current';
  }
  if (options.check === true) {
    host.print(`${printable(`${target} ${staleText(there.text, text)} Write it: axiswright record ${relative(host.current, resolve(host.current, machine.path))}`)}\n`);
    return 'stale';
  }
  if (there.text !== undefined && there.text !== '' && !there.text.startsWith(recordMark)) {
    faults.push({ path: target, message: 'was not written by this tool, and is left as it is; give it another name' });
    return 'failed';
  }
  const failure = writeRecord(file, text);
  if (failure !== undefined) {
    faults.push({ path: target, message: failure });
    return 'failed';
  }
  host.print(`${printable(target)} is written.\n`);
  return 'written';
}

export function recordText(snapshot: Snapshot): string {
  return designRecord(snapshot, { version, sha256: createHash('sha256').update(hashedText(snapshot), 'utf8').digest('hex') });
}

/** One line that tells what is not current: the first lines that differ, apart from those that differ with every edit. */
function staleText(there: string | undefined, due: string): string {
  if (there === undefined) return 'does not exist.';
  const [old, fresh] = [there.replaceAll('\r\n', '\n').split('\n'), due.split('\n')];
  const first = fresh.findIndex((line, index) => line !== old[index]);
  const telling = fresh.findIndex((line, index) => line !== old[index] && !/^- (?:Content of the description|Written by)/.test(line));
  const at = telling >= 0 ? telling : first;
  if (at < 0) return `is not current: line ${fresh.length} and what follows belong to no record.`;
  return `is not current: line ${at + 1} reads "${short(old[at] ?? '')}", due is "${short(fresh[at] ?? '')}".`;
}

const short = (line: string): string => ([...line].length <= 70 ? line : `${[...line].slice(0, 69).join('')}…`);
