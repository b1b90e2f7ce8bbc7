#!/usr/bin/env node
// No source file is longer than 500 lines: a longer one holds more than one thing.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './processes.mjs';

const limit = 500;

/** @returns {string[]} one line for each file over the limit */
export function tooLong() {
  const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard', '-z'], { cwd: root, encoding: 'utf8' }).split('\0');
  return [...new Set(files)]
    .filter((file) => /\.(?:ts|mts|cts|js|mjs|cjs|sh)$/.test(file) && existsSync(join(root, file)))
    .map((file) => ({ file, lines: readFileSync(join(root, file), 'utf8').split('\n').length - 1 }))
    .filter(({ lines }) => lines > limit)
    .map(({ file, lines }) => `${file} has ${lines} lines; ${limit} is the limit`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const found = tooLong();
  for (const line of found) console.error(line);
  process.exitCode = found.length === 0 ? 0 : 1;
}
