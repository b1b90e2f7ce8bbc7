// Running other programs from the project's scripts.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The top of the working tree. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/**
 * Runs a program and waits for its end.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {{ show?: boolean, env?: Record<string, string>, cwd?: string }} [options] show: let its output through as it comes
 * @returns {Promise<{ code: number, output: string }>} exit status (128 when a signal ended it) and all that it printed
 */
export function run(command, args, { show = false, env = {}, cwd = root } = {}) {
  return new Promise((done, fail) => {
    const child = spawn(command, args, { cwd, env: { ...process.env, ...env }, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    for (const [stream, to] of [[child.stdout, process.stdout], [child.stderr, process.stderr]]) {
      stream.on('data', (chunk) => {
        output += chunk;
        if (show) to.write(chunk);
      });
    }
    child.on('error', fail);
    child.on('close', (code) => done({ code: code ?? 128, output }));
  });
}

/** Path of a program that an installed package brings. */
export const tool = (name) => join(root, 'node_modules', '.bin', name);
