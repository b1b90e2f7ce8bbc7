// How long many descriptions take on the command line, and how much memory: 1,000 of 150 lines each, on two workers.
//   time for each file, as a ratio to merely parsing its text with the YAML library, both on one thread
//   what two workers gain over one
//   peak memory with 200 and with 1,000 files
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { milliseconds, short, table } from './measure.mjs';

const LINES = 150;

/** Runs the command line and tells its time in ms, the peak of its memory in MB, and its last line. */
async function checked(program, folder, args) {
  const measuring = join(folder, 'peak.cjs');
  await writeFile(measuring, "if (require('node:worker_threads').isMainThread) process.on('exit', () => require('node:fs').writeSync(2, '\\npeak ' + process.resourceUsage().maxRSS));");
  let said = '';
  let last = '';
  const ms = await milliseconds(() => new Promise((done, fail) => {
    const child = spawn(process.execPath, ['--require', measuring, program, 'check', '--no-fixes', ...args], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.on('data', (chunk) => (last = (last + chunk).slice(-500)));
    child.stderr.on('data', (chunk) => (said += chunk));
    child.on('error', fail);
    child.on('close', done);
  }));
  const line = last.trimEnd().split('\n').at(-1);
  if (!/Exit status [01]/.test(line)) throw new Error(`the run did not end well: ${line}\n${said}`);
  return { ms, megabytes: Number(/peak (\d+)/.exec(said)?.[1]) / 1000, line };
}

/**
 * @param {string} program the bundled command line
 * @param {(lines: number, seed: number) => string} generateMachine
 */
export async function manyFiles(program, generateMachine, { quick = false } = {}) {
  const most = quick ? 200 : 1000;
  const some = quick ? 50 : 200;
  const few = quick ? 50 : 100;
  const texts = Array.from({ length: most }, (_, i) => generateMachine(LINES, i + 1));
  const folder = await mkdtemp(join(tmpdir(), 'axiswright-many-'));
  try {
    for (const [name, count] of [['most', most], ['some', some], ['few', few]]) {
      await mkdir(join(folder, name));
      await Promise.all(texts.slice(0, count).map((text, i) => writeFile(join(folder, name, `m${String(i).padStart(4, '0')}.machine.yaml`), text)));
    }
    const parse = async () => (await milliseconds(() => texts.forEach((text) => parseDocument(text)))) / most;
    const before = await parse();
    const two = await checked(program, folder, ['most', '--workers', '2']);
    const fewer = await checked(program, folder, ['some', '--workers', '2']);
    const one = await checked(program, folder, ['few', '--workers', '1']);
    const nothing = await checked(program, folder, ['some/m0000.machine.yaml']);
    const after = await parse();
    const parsed = (before + after) / 2;
    // Without the start of the program, which one file measures well enough.
    const perFile = (one.ms - nothing.ms) / (few - 1);
    return { files: most, some, few, lines: LINES, parsed, perFile, ratio: perFile / parsed, two, fewer, one, start: nothing.ms, gain: perFile / ((two.ms - nothing.ms) / most) };
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** What is told of it. */
export const manyFilesTable = ({ files, some, few, lines, parsed, perFile, ratio, two, fewer, one, gain }) =>
  `${table([
    [`descriptions of ${lines} lines`, 'files', 'workers', 's', 'ms a file', 'ratio', 'peak MB'],
    ['merely parsed', String(files), '1', '', short(parsed), '1', ''],
    ['checked', String(few), '1', short(one.ms / 1000), short(perFile), short(ratio), short(one.megabytes)],
    ['checked', String(some), '2', short(fewer.ms / 1000), short(fewer.ms / some), short(fewer.ms / some / parsed), short(fewer.megabytes)],
    ['checked', String(files), '2', short(two.ms / 1000), short(two.ms / files), short(two.ms / files / parsed), short(two.megabytes)],
  ])}\nTwo workers do ${short(gain)} times as much as one. Memory with ${files} files is ${short(two.megabytes / fewer.megabytes)} times that with ${some}. Remedies are left out (--no-fixes).\n`;
