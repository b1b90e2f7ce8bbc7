#!/usr/bin/env node
// Writes the design records of the examples, beside their descriptions.
//   npm run records             writes those that are not current
//   npm run records -- --check  writes nothing; fails when one is not current, naming the first line that differs
import { generate } from './generate.mjs';
import { loadTypeScript } from './load-typescript.mjs';
import { root } from './processes.mjs';

await generate();
const { runRecord } = await loadTypeScript('server/src/command-line/record-command.ts');
process.exitCode = await runRecord(['examples'], { color: 'never', check: process.argv.includes('--check') }, {
  current: root, env: {}, input: [], print: (text) => void process.stdout.write(text), complain: (text) => void process.stderr.write(text), breathe: async () => {}, isTerminal: false, terminalColumns: undefined,
});
