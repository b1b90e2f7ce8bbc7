// Where the workbenches under test are kept: outside what is committed, and kept between runs.
import { spawn } from 'node:child_process';
import { createWriteStream, existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');

/** The folder of all workbenches: node_modules/.cache/axiswright-workbench, or what AXISWRIGHT_WORKBENCH_CACHE names. */
export const cacheFolder = process.env['AXISWRIGHT_WORKBENCH_CACHE'] ?? join(root, 'node_modules', '.cache', 'axiswright-workbench');

/**
 * A folder that is filled once. A run that breaks off leaves it without its mark, and the next one starts afresh.
 * @param {string} name
 * @param {(folder: string) => Promise<void>} fill
 * @returns {Promise<string>} the folder
 */
export async function once(name, fill) {
  const folder = join(cacheFolder, name);
  const mark = join(folder, '.ready');
  if (existsSync(mark)) return folder;
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'workbench-under-test', private: true }));
  await fill(folder);
  writeFileSync(mark, '');
  return folder;
}

/** Runs npm in a folder; its output goes to npm.log there, and into the error when it fails. */
export function npm(folder, args, env = {}) {
  return new Promise((done, fail) => {
    const log = createWriteStream(join(folder, 'npm.log'), { flags: 'a' });
    let output = '';
    const child = spawn('npm', [...args, '--no-audit', '--no-fund', '--loglevel=error'], { cwd: folder, env: { ...process.env, ...env }, stdio: ['ignore', 'pipe', 'pipe'] });
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', (chunk) => {
        output += chunk;
        log.write(chunk);
      });
    }
    child.on('error', fail);
    child.on('close', (code) => {
      log.end();
      if (code === 0) done(output);
      else fail(new Error(`npm ${args.join(' ')} failed:\n${output.slice(-3000)}`));
    });
  });
}
