#!/usr/bin/env node
// Writes the reference, server/docs/, from the declarations of keys, figures, checks and problems, and what the README shows of real output.
//   npm run reference             writes it, and removes pages of what is gone
//   npm run reference -- --check  writes nothing; fails when what is there differs, naming the files
import { existsSync } from 'node:fs';
import { mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { generate } from './generate.mjs';
import { loadTypeScript } from './load-typescript.mjs';
import { root } from './processes.mjs';
import { withRealOutput } from './readme-output.mjs';

const folder = join(root, 'server', 'docs');
const checkOnly = process.argv.includes('--check');

await generate();
const { referenceFiles } = await loadTypeScript('server/src/services/reference.ts');
const wanted = referenceFiles();

/** Markdown files that are there, except pictures and what lies beside them. */
async function present() {
  if (!existsSync(folder)) return [];
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries.filter((entry) => entry.isFile() && entry.name.endsWith('.md')).map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'));
}

const stale = [];
for (const [path, text] of wanted) {
  const file = join(folder, path);
  if (existsSync(file) && (await readFile(file, 'utf8')) === text) continue;
  stale.push(path);
  if (checkOnly) continue;
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, text);
}
for (const path of await present()) {
  if (wanted.has(path)) continue;
  stale.push(`${path} (describes nothing that is there)`);
  if (!checkOnly) await rm(join(folder, path));
}

const readme = join(root, 'README.md');
const readmeText = await readFile(readme, 'utf8');
const readmeWanted = await withRealOutput(readmeText);
if (readmeWanted !== readmeText) {
  stale.push('the README\'s sample output');
  if (!checkOnly) await writeFile(readme, readmeWanted);
}

if (checkOnly && stale.length > 0) {
  console.error(`The reference is not up to date; run npm run reference. Different: ${stale.sort().join(', ')}`);
  process.exitCode = 1;
} else console.log(stale.length === 0 ? 'The reference is up to date.' : `Written: ${stale.length} of ${wanted.size + 1} files.`);
