import { resolve } from 'node:path';
import { slipIn, type CheckOptions } from './check-options.ts';
import { documentFor, setupFor, workersFor } from './check-setup.ts';
import { exitStatus, type ExitStatus } from './exit-status.ts';
import type { Failure } from './find-files.ts';
import type { Host } from './host.ts';
import { OutputFile } from './output-file.ts';
import { checkAll } from './pool.ts';
import { Progress } from './progress.ts';
import { byPath, listMachines, type Listing } from './read-machines.ts';
import { failureLine, sumUp, unmatchedLine, type Tally } from './summary.ts';
import { dayOf } from './today.ts';
import { watchCheck } from './watch.ts';

/** `axiswright check` */
export async function runCheck(paths: readonly string[], options: CheckOptions, host: Host): Promise<ExitStatus> {
  const slip = slipIn(paths, options);
  if (slip !== undefined) {
    host.complain(`${slip}\n`);
    return exitStatus.couldNotRun;
  }
  if (options.watch === true) return watchCheck(() => listFor(paths, options, host), options, host);
  const listing = await listFor(paths, options, host);
  const output = options.output === undefined ? undefined : OutputFile.begin(resolve(host.current, options.output));
  if (output && 'failure' in output) {
    host.complain(failureLine({ path: options.output ?? '', message: output.failure }));
    return exitStatus.couldNotRun;
  }
  try {
    return await checkOnce(listing, options, host, output);
  } finally {
    output?.abandon();
  }
}

const listFor = (paths: readonly string[], options: CheckOptions, host: Host): Promise<Listing> =>
  listMachines({ paths, as: options.as, ignore: options.ignore, current: host.current, input: host.input, today: dayOf(host) });

async function checkOnce(listing: Listing, options: CheckOptions, host: Host, output: OutputFile | undefined): Promise<ExitStatus> {
  const setup = setupFor(listing, options, host);
  const { failOn } = setup;
  const document = documentFor(options.format, failOn);
  const write = output ? (text: string): void => output.write(text) : host.print;
  const allowNone = options.allowNone === true;
  const progress = new Progress(listing.files.length, host.errorColumns === undefined ? undefined : { write: host.complain, columns: host.errorColumns });
  const failures: Failure[] = [...listing.failures];
  const tallies: Tally[] = [];

  for (const failure of failures) host.complain(failureLine(failure));
  if (!allowNone) for (const pattern of listing.unmatched) host.complain(unmatchedLine(pattern, listing.passedOver));
  write(document?.begin() ?? '');
  // Each file is shown when it is done, so that a long run shows that it runs, and is then forgotten.
  for await (const { path, tally, rows, screen, filed, failures: failed } of checkAll(listing.files, setup, { workers: workersFor(options, host), start: host.startWorker })) {
    failures.push(...failed);
    if (tally) tallies.push(tally);
    progress.around(() => {
      if (screen !== '') host.print(screen);
      write(filed);
      write(document?.file({ path, rows, failures: failed }) ?? '');
      for (const failure of failed) host.complain(failureLine(failure));
    });
    progress.step();
    await host.breathe();
  }
  progress.clear();

  const result = { failures: failures.sort(byPath), unmatched: listing.unmatched };
  const summary = sumUp(tallies, result, failOn, allowNone);
  write(document?.end({ ...result, ...summary, failOn, unmatched: allowNone ? [] : result.unmatched }) ?? '');
  const sentence = `${summary.sentence}\n`;
  if (setup.filed?.as === 'human') write(sentence);
  if (setup.screen?.as === 'human') host.print(sentence);
  if (setup.screen?.as === 'lines') host.complain(sentence);
  const failure = output?.finish();
  if (failure === undefined) return summary.status;
  host.complain(failureLine({ path: options.output ?? '', message: failure }));
  return exitStatus.couldNotRun;
}
