import { availableParallelism } from 'node:os';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { exitStatus } from './exit-status.ts';
import type { CheckSetup } from './file-checker.ts';
import { runProgram } from './program.ts';
import { localDay } from './today.ts';
import { serveChecks } from './worker.ts';

// A worker of the pool runs the same file.
if (!isMainThread && parentPort) serveChecks(parentPort, workerData as CheckSetup);
else runHere();

function runHere(): void {
  // Whoever reads the output may stop early (a pager, `head`); that is no fault.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });

  process.stderr.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });

  runProgram(process.argv.slice(2), {
    current: process.cwd(),
    env: process.env,
    // Only touched when it is read: an open standard input would keep the process waiting.
    get input() {
      return process.stdin;
    },
    print: (text) => void process.stdout.write(text),
    complain: (text) => void process.stderr.write(text),
    // Whoever reads slowly is waited for, so that what was not read yet does not pile up here.
    breathe: () => new Promise((done) => (process.stdout.writableNeedDrain ? process.stdout.once('drain', done) : setImmediate(done))),
    today: () => localDay(new Date()),
    isTerminal: process.stdout.isTTY,
    terminalColumns: process.stdout.isTTY ? process.stdout.columns : undefined,
    errorColumns: process.stderr.isTTY && process.env['TERM'] !== 'dumb' ? process.stderr.columns : undefined,
    cores: availableParallelism(),
    // The program is one file, and its workers are that file again.
    startWorker: (setup) => new Worker(__filename, { workerData: setup }),
    untilInterrupted: () => new Promise((done) => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => done());
    }),
  }).then(
    (status) => {
      process.exitCode = status;
    },
    (error: unknown) => {
      process.stderr.write(`axiswright could not finish. This is a fault of the tool: please report it.\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
      process.exitCode = exitStatus.couldNotRun;
    },
  );
}
