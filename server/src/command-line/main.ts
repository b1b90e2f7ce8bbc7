import { exitStatus } from './exit-status.ts';
import { runProgram } from './program.ts';

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
  breathe: () => new Promise((done) => setImmediate(done)),
  isTerminal: process.stdout.isTTY,
  terminalColumns: process.stdout.isTTY ? process.stdout.columns : undefined,
}).then(
  (status) => {
    process.exitCode = status;
  },
  (error: unknown) => {
    process.stderr.write(`axiswright could not finish. This is a fault of the tool: please report it.\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    process.exitCode = exitStatus.couldNotRun;
  },
);
