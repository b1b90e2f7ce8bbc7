#!/usr/bin/env node
// npm run bench: how long things take, as ratios to something bare on the same machine in the same run, since absolute times move with what else runs.
//   keystroke to findings, for 100, 1,000 and 10,000 lines, to merely parsing the same text with the YAML library (in this process, and through a server over stdio)
//   start of the server to its answer to "initialize", to a bare Node process that says a word
//   many descriptions on the command line: time for each to merely parsing it, and memory by their number (many-files.mjs)
//   size of the .vsix, and of what is in it
// Prints tables and writes test/artefacts/benchmarks.json. --quick takes fewer samples.
import { spawn } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseDocument } from 'yaml';
import { loadTypeScript } from '../../server/tools/load-typescript.mjs';
import { pack } from '../../server/tools/package.mjs';
import { root } from '../../server/tools/processes.mjs';
import { readZip } from '../../server/tools/read-zip.mjs';
import { apply, keystrokes } from './keystrokes.mjs';
import { manyFiles, manyFilesTable } from './many-files.mjs';
import { milliseconds, short, summary, table } from './measure.mjs';
import { StdioClient } from './stdio-client.mjs';

const quick = process.argv.includes('--quick');
const lengths = [100, 1000, 10_000];
const samplesFor = (lines) => (quick ? 24 : lines >= 10_000 ? 80 : 200);
const server = [join(root, 'dist', 'server-node.js'), '--stdio'];

const { generateMachine } = await loadTypeScript('test/benchmarks/generate-machine.ts');
const { Snapshots } = await loadTypeScript('server/src/services/snapshot.ts');
const vsix = await pack(undefined, { quiet: true });

/** The bare parse, between the samples of what is compared with it, so that both see the same machine. */
const parse = (text) => milliseconds(() => parseDocument(text));

async function inProcess(lines) {
  const uri = 'file:///bench.machine.yaml';
  let text = generateMachine(lines);
  const snapshots = new Snapshots(() => undefined);
  const first = await milliseconds(() => snapshots.take(uri, text));
  const strokes = keystrokes(text, samplesFor(lines));
  const edits = [];
  const parses = [];
  const byKind = {};
  for (const stroke of strokes) {
    text = apply(text, stroke);
    const took = await milliseconds(() => snapshots.take(uri, text).diagnostics.length);
    edits.push(took);
    (byKind[stroke.kind] ??= []).push(took);
    parses.push(await parse(text));
  }
  return { lines, first, findings: snapshots.take(uri, text).diagnostics.length, edit: summary(edits), parse: summary(parses), byKind: Object.fromEntries(Object.entries(byKind).map(([kind, samples]) => [kind, summary(samples)])) };
}

async function overStdio(lines) {
  const uri = 'file:///bench.machine.yaml';
  let text = generateMachine(lines);
  const client = new StdioClient(process.execPath, server);
  await client.initialize();
  client.notify('initialized', {});
  client.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'axiswright-machine', version: 1, text } });
  const pull = () => client.request('textDocument/diagnostic', { textDocument: { uri } });
  const first = await milliseconds(pull);
  const edits = [];
  const parses = [];
  let findings = 0;
  for (const [i, stroke] of keystrokes(text, samplesFor(lines)).entries()) {
    const range = { start: positionAt(text, stroke.from), end: positionAt(text, stroke.to) };
    text = apply(text, stroke);
    edits.push(await milliseconds(async () => {
      client.notify('textDocument/didChange', { textDocument: { uri, version: i + 2 }, contentChanges: [{ range, text: stroke.text }] });
      findings = (await pull()).items?.length ?? findings;
    }));
    parses.push(await parse(text));
  }
  await client.stop();
  return { lines, first, findings, edit: summary(edits), parse: summary(parses) };
}

function positionAt(text, offset) {
  const before = text.slice(0, offset);
  return { line: before.split('\n').length - 1, character: offset - (before.lastIndexOf('\n') + 1) };
}

async function startUp() {
  const bare = [];
  const answers = [];
  for (let i = 0; i < (quick ? 7 : 21); i++) {
    bare.push(await milliseconds(() => new Promise((done) => {
      const child = spawn(process.execPath, ['-e', 'process.stdout.write("up")'], { stdio: ['pipe', 'pipe', 'inherit'] });
      child.stdout.once('data', done);
    })));
    let client;
    answers.push(await milliseconds(() => {
      client = new StdioClient(process.execPath, server);
      return client.initialize();
    }));
    await client.stop();
  }
  return { bare: summary(bare), initialize: summary(answers) };
}

async function packed() {
  const archive = await readFile(vsix);
  return { size: archive.length, files: readZip(archive).map(({ name, size, packedSize }) => ({ name, size, packedSize })).sort((a, b) => b.packedSize - a.packedSize) };
}

const results = { node: process.version, inProcess: [], overStdio: [], startUp: await startUp(), package: await packed() };
for (const lines of lengths) {
  results.inProcess.push(await inProcess(lines));
  results.overStdio.push(await overStdio(lines));
}

results.manyFiles = await manyFiles(join(root, 'dist', 'command-line.js'), generateMachine, { quick });

const head = ['keystroke to findings', 'lines', 'findings', 'first ms', 'edit p50', 'edit p95', 'parse p50', 'p50 ratio', 'p95 ratio'];
const rows = (title, measured) => measured.map((row) => [title, String(row.lines), String(row.findings), ...[row.first, row.edit.p50, row.edit.p95, row.parse.p50, row.edit.p50 / row.parse.p50, row.edit.p95 / row.parse.p50].map(short)]);
console.log(`\n${table([head, ...rows('in process', results.inProcess), ...rows('over stdio', results.overStdio)])}\nRatios are to the median of the bare parse.\n`);
const { bare, initialize } = results.startUp;
console.log(`${table([['start-up', 'p50 ms', 'p95 ms', 'p50 ratio'], ['a bare Node process', short(bare.p50), short(bare.p95), '1'], ['server to initialize', short(initialize.p50), short(initialize.p95), short(initialize.p50 / bare.p50)]])}\n`);
console.log(manyFilesTable(results.manyFiles));
console.log(table([['packed extension', 'kB', 'packed kB'], ['all of it', short(results.package.files.reduce((sum, file) => sum + file.size, 0) / 1000), short(results.package.size / 1000)], ...results.package.files.slice(0, 8).map((file) => [`  ${file.name}`, short(file.size / 1000), short(file.packedSize / 1000)])]));

await mkdir(join(root, 'test', 'artefacts'), { recursive: true });
await writeFile(join(root, 'test', 'artefacts', 'benchmarks.json'), `${JSON.stringify(results, null, 2)}\n`);
