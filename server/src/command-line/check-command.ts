import { findingLinesOf } from './check-lines.ts';
import { fileReport } from './check-report.ts';
import { printable, wrap } from './cells.ts';
import type { ExitStatus, Threshold } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import { findingsJson } from './findings-json.ts';
import { findingsIn } from './findings.ts';
import type { Host, SharedOptions } from './host.ts';
import { readMachines } from './read-machines.ts';
import { pageFor } from './style.ts';
import { complaints, summarize } from './summary.ts';

export interface CheckOptions extends SharedOptions {
  readonly failOn: Threshold;
  readonly format: 'human' | 'lines' | 'json';
  readonly fixes: boolean;
}

/** `axiswright check` */
export async function runCheck(paths: readonly string[], options: CheckOptions, host: Host): Promise<ExitStatus> {
  const read = await readMachines({ paths, as: options.as, current: host.current, input: host.input });
  const failures: Failure[] = [...read.failures];
  const files = read.machines.map((machine) => findingsIn(machine, read.places, options.fixes && options.format !== 'lines', (failure) => failures.push(failure)));
  const result = { failures, unmatched: read.unmatched };
  const summary = summarize(files, result, options.failOn, options.allowNone);
  for (const line of complaints(result, options.allowNone)) host.complain(`${printable(line)}\n`);

  switch (options.format) {
    case 'json':
      host.print(findingsJson(files, { ...result, ...summary, failOn: options.failOn }));
      break;
    case 'lines':
      host.print(files.map(findingLinesOf).join(''));
      host.complain(`${summary.sentence}\n`);
      break;
    case 'human': {
      const page = pageFor(host, options.color);
      for (const file of files) host.print(`${fileReport(file, page)}\n`);
      host.print(`${wrap(summary.sentence, page.columns).join('\n')}\n`);
    }
  }
  return summary.status;
}
