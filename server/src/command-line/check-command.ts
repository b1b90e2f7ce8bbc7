import { findingLinesOf } from './check-lines.ts';
import { fileReport } from './check-report.ts';
import type { ExitStatus, Threshold } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import { findingsJson } from './findings-json.ts';
import { findingsIn, type FileFindings } from './findings.ts';
import type { Host, SharedOptions } from './host.ts';
import { faultText, readMachines } from './read-machines.ts';
import { pageFor } from './style.ts';
import { failureLine, summarize, unmatchedLine } from './summary.ts';

export interface CheckOptions extends SharedOptions {
  readonly failOn: Threshold;
  readonly format: 'human' | 'lines' | 'json';
  readonly fixes: boolean;
}

/** `axiswright check` */
export async function runCheck(paths: readonly string[], options: CheckOptions, host: Host): Promise<ExitStatus> {
  const { format } = options;
  const allowNone = options.allowNone === true;
  const page = pageFor(host, options.color);
  const read = await readMachines({ paths, as: options.as, current: host.current, input: host.input });
  for (const failure of read.failures) host.complain(failureLine(failure));
  if (!allowNone) for (const pattern of read.unmatched) host.complain(unmatchedLine(pattern));

  const readable = read.failures.length;
  const faults: Failure[] = [];
  const files: FileFindings[] = [];
  for (const machine of read.machines) {
    try {
      const file = findingsIn(machine, read.places, options.fixes && format !== 'lines', (failure) => faults.push(failure));
      files.push(file);
      // Each file is shown when it is done, so that a long run shows that it runs.
      if (format === 'human') host.print(`${fileReport(file, page)}\n`);
      if (format === 'lines') host.print(findingLinesOf(file));
    } catch (error) {
      faults.push({ path: machine.path, message: faultText('shown', error) });
    }
    await host.breathe();
  }

  const result = { failures: [...read.failures, ...faults], unmatched: read.unmatched };
  for (const failure of result.failures.slice(readable)) host.complain(failureLine(failure));
  const summary = summarize(files, result, options.failOn, allowNone);
  if (format === 'json') host.print(findingsJson(files, { ...result, ...summary, failOn: options.failOn }));
  else if (format === 'lines') host.complain(`${summary.sentence}\n`);
  else host.print(`${summary.sentence}\n`);
  return summary.status;
}
