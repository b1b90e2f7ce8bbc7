#!/usr/bin/env node
// npm test: every check that the project has, and how many passed. On a fresh clone it installs first.
//   lint, types, rules, file sizes, build     one test each
//   test/**/*.test.ts                         by vitest
//   test/workbench/*.journey.mjs              in a real workbench; left out, and said so, when there is no Chromium
// What is left out is listed before the last line, which reads "N passed, N failed" and nothing else; test/artefacts/summary.txt holds it too.
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { install } from './install.mjs';
import { root, run, tool } from './processes.mjs';

const artefacts = join(root, 'test', 'artefacts');
const total = { passed: 0, failed: 0 };
const leftOut = [];
const started = Date.now();
const seconds = (since) => `${((Date.now() - since) / 1000).toFixed(1)} s`;

function count(title, passed, failed, since, output = '') {
  total.passed += passed;
  total.failed += failed;
  console.log(`${failed === 0 ? 'ok    ' : 'FAILED'}  ${title}: ${passed} passed, ${failed} failed (${seconds(since)})`);
  if (failed > 0 && output.trim() !== '') console.log(output.trim().replace(/^/gm, '        '));
}

/** A check that passes or fails as a whole. */
async function single(title, command, args) {
  const since = Date.now();
  const { code, output } = await run(command, args).catch((error) => ({ code: 1, output: String(error) }));
  count(title, code === 0 ? 1 : 0, code === 0 ? 0 : 1, since, output);
}

async function unitTests() {
  const since = Date.now();
  const report = join(artefacts, 'vitest.json');
  await rm(report, { force: true });
  const { code, output } = await run(tool('vitest'), ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${report}`], { env: { NO_COLOR: '1' } });
  if (!existsSync(report)) return count('unit, published and protocol tests', 0, 1, since, output);
  const { testResults, numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(await readFile(report, 'utf8'));
  // A file that cannot even be loaded has no tests to count: it is one failure.
  const broken = testResults.filter((file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed')).length;
  const failed = numFailedTests + broken;
  count(`unit, published and protocol tests, ${testResults.length} files`, numPassedTests, failed === 0 && code !== 0 ? 1 : failed, since, output);
  for (const file of testResults) {
    const skipped = file.assertionResults.filter((test) => !['passed', 'failed'].includes(test.status));
    if (skipped.length > 0) leftOut.push(`${relative(root, file.name)}: ${skipped.map((test) => test.title).join('; ')}`);
  }
  return numPendingTests + numTodoTests;
}

async function workbenchTests() {
  const since = Date.now();
  const { findChromium } = await import('../../test/workbench/harness/chromium.mjs');
  if (process.env['AXISWRIGHT_SKIP_WORKBENCH'] === '1') return leftOut.push('workbench tests: AXISWRIGHT_SKIP_WORKBENCH is 1');
  if (findChromium() === undefined) return leftOut.push('workbench tests: no Chromium here (.ci/run installs it)');
  const summary = join(artefacts, 'workbench', 'summary.json');
  await rm(summary, { force: true });
  const { code, output } = await run(process.execPath, [join(root, 'test', 'workbench', 'run.mjs')]);
  const result = existsSync(summary) ? JSON.parse(await readFile(summary, 'utf8')) : { passed: 0, failed: 1, leftOut: [] };
  leftOut.push(...result.leftOut);
  count('workbench tests', result.passed, result.failed === 0 && code !== 0 ? 1 : result.failed, since, output);
}

await install();
await mkdir(artefacts, { recursive: true });
const generated = await run(process.execPath, [join(root, 'server/tools/generate.mjs')]);
if (generated.code !== 0) throw new Error(generated.output);

await Promise.all([
  single('lint', tool('eslint'), ['.', '--max-warnings', '0']),
  single('types', tool('tsc'), ['-p', '.', '--noEmit']).then(() =>
    single('import rules', tool('depcruise'), ['--config', '.dependency-cruiser.cjs', 'server/src', 'client/src'])),
]);
await single('file sizes', process.execPath, ['server/tools/check-file-sizes.mjs']);
await single('build', process.execPath, ['server/tools/build.mjs']);
await unitTests();
await workbenchTests();

for (const line of leftOut) console.log(`left out  ${line}`);
console.log(`in ${seconds(started)}`);
const line = `${total.passed} passed, ${total.failed} failed`;
await writeFile(join(artefacts, 'summary.txt'), `${line}\n`);
console.log(line);
process.exitCode = total.failed === 0 ? 0 : 1;
