#!/usr/bin/env node
// npm start: on a fresh clone installs, generates and builds, then checks the example machine on the command line.
import { existsSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { install } from './install.mjs';
import { root, run } from './processes.mjs';

const example = 'examples/large-format-printer/first-draft.machine.yaml';

await install();
const { build } = await import('./build.mjs');
await build({ quiet: true });

if (!existsSync(join(root, example))) throw new Error(`no example at ${example}; there are: ${(await readdir(join(root, 'examples'))).join(', ')}`);
console.log(`\n$ axiswright check ${example}\n`);
const { code } = await run(process.execPath, ['dist/command-line.js', 'check', example], { show: true });
if (code === 2) process.exitCode = 2; // 1 means that there are findings, and the first draft has some

console.log(`
The extension: npm run package makes axiswright.vsix; install it with "Extensions: Install from VSIX..." in the editor
(or code --install-extension axiswright.vsix), then open a *.machine.yaml file. All figures: node dist/command-line.js figures ${example}; more: node dist/command-line.js --help`);
