#!/usr/bin/env node
// npm run package: builds and packs axiswright.vsix.
import { readFile, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from './build.mjs';
import { root, run, tool } from './processes.mjs';

/**
 * Builds and packs.
 * @param {string} [target] where to put the file
 * @returns {Promise<string>} its path
 */
export async function pack(target = join(root, 'axiswright.vsix'), { quiet = false } = {}) {
  await build({ quiet });
  // Pictures of a packed README are shown only from an https address, and there is none: they would be broken frames.
  const readme = await readFile(join(root, 'README.md'), 'utf8');
  await writeFile(join(root, 'dist', 'readme.md'), readme.replace(/^!\[[^\]]*\]\([^)]*\)\n+/gm, ''));
  const { code, output } = await run(tool('vsce'), ['package', '--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links', '--readme-path', 'dist/readme.md', '--out', target]);
  if (code !== 0) throw new Error(`vsce failed:\n${output}`);
  if (!quiet) console.log(`${target.slice(dirname(target).length + 1)}  ${((await stat(target)).size / 1000).toFixed(0)} kB`);
  return target;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await pack();
