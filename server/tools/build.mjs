#!/usr/bin/env node
// Bundles the project into dist/:
//   client-node.js, client-web.js   the extension, for the two kinds of extension host
//   server-node.js                  the language server as a process of its own; small, so that it answers `initialize` at once
//   analysis.js                     what server-node.js loads after that: each module that it imports with import(...) becomes a bundle of its own name
//   server-web.js                   the language server as a Web Worker, all in one file
//   command-line.js                 the command line, all in one file, which is also what its workers run
//   library.js, library.d.ts        the library, all in one file, and its types
//   third-party-licences.txt        the licences of the packages whose code is in them
import { chmod, mkdir, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build as bundle } from 'esbuild';
import typescript from 'typescript';
import { generate } from './generate.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const shebang = '#!/usr/bin/env node';

const common = { absWorkingDir: root, bundle: true, minify: true, sourcemap: false, write: false, metafile: true, legalComments: 'none', logLevel: 'warning', charset: 'utf8', outdir: 'dist' };
const node = { ...common, platform: 'node', format: 'cjs', target: 'node20' };
const browser = { ...common, platform: 'browser', target: 'es2022', mainFields: ['browser', 'module', 'main'], conditions: ['browser', 'module'] };

/** Leaves every import('./x.ts') of the server's own modules out of the bundle, to be required as ./x.js when it is reached; tells which they were. */
function loadedLater(found) {
  return {
    name: 'loaded-later',
    setup(plugin) {
      plugin.onResolve({ filter: /^\.{1,2}\// }, async (args) => {
        if (args.kind !== 'dynamic-import' || args.pluginData === 'resolving') return undefined;
        const at = await plugin.resolve(args.path, { kind: args.kind, importer: args.importer, resolveDir: args.resolveDir, pluginData: 'resolving' });
        if (at.errors.length > 0) return { errors: at.errors };
        found.add(at.path);
        return { path: `./${basename(at.path, '.ts')}.js`, external: true };
      });
    },
  };
}

const later = new Set();
/** The server's process; `found` gathers what it loads later. */
const serverProcess = (found) => ({ ...node, entryPoints: { 'server-node': 'server/src/protocol/node.ts' }, banner: { js: shebang }, plugins: [loadedLater(found)], supported: { 'dynamic-import': false } });
const serverWorker = { ...browser, format: 'iife', entryPoints: { 'server-web': 'server/src/protocol/browser.ts' } };
const bundles = [
  { ...node, entryPoints: { 'client-node': 'client/src/node.ts' }, external: ['vscode'] },
  { ...browser, format: 'cjs', entryPoints: { 'client-web': 'client/src/web.ts' }, external: ['vscode'] },
  serverProcess(later),
  serverWorker,
  { ...node, entryPoints: { 'command-line': 'server/src/command-line/main.ts' }, banner: { js: shebang } },
  // It runs anywhere, as the core does: nothing of Node is in it.
  // The last line is never run: it names the exports for those who import a CommonJS module by name.
  { ...node, platform: 'neutral', mainFields: ['module', 'main'], conditions: ['module'], entryPoints: { library: 'server/src/library/library.ts' }, footer: { js: '0 && (module.exports = { check, figures });' } },
];

/** The types of the library: its entry file declares all of them itself, so that nothing of the inside shows. */
export async function libraryTypes() {
  const { outputText, diagnostics } = typescript.transpileDeclaration(await readFile(join(root, 'server/src/library/library.ts'), 'utf8'), { fileName: 'library.ts', compilerOptions: { strict: true, target: typescript.ScriptTarget.ES2022 } });
  if (diagnostics?.length > 0) throw new Error(diagnostics.map(({ messageText }) => typescript.flattenDiagnosticMessageText(messageText, '\n')).join('\n'));
  return outputText;
}

/** The packages whose code is in the bundles, and their licences, which ask to be passed on with it. */
async function licences(results) {
  const packages = new Set(results.flatMap(({ metafile }) => Object.keys(metafile.inputs)).flatMap((path) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(path)?.[0] ?? []));
  const texts = [];
  for (const folder of [...packages].sort()) {
    const { name, version, license } = JSON.parse(await readFile(join(root, folder, 'package.json'), 'utf8'));
    const file = (await readdir(join(root, folder))).find((entry) => /^licen[cs]e/i.test(entry));
    if (file === undefined) throw new Error(`${name} ${version} (${license}) has no licence text`);
    texts.push(`${name} ${version} (${license})\n\n${(await readFile(join(root, folder, file), 'utf8')).replace(/\r/g, '').trim()}\n`);
  }
  return `Axiswright contains code of these packages.\n\n${texts.join('\n----------------------------------------\n\n')}`;
}

const kilobytes = (bytes) => `${(bytes / 1000).toFixed(0).padStart(6)} kB`;

/** What a bundle is made of: bytes by room of ours or by package, the largest first. */
function parts(metafile) {
  const [output] = Object.values(metafile.outputs);
  const sums = new Map();
  for (const [path, { bytesInOutput }] of Object.entries(output.inputs)) {
    const name = /node_modules\/((?:@[^/]+\/)?[^/]+)\/(?!.*node_modules)/.exec(path)?.[1] ?? /^(?:server\/src\/[^/]+|client)/.exec(path)?.[0] ?? path;
    sums.set(name, (sums.get(name) ?? 0) + bytesInOutput);
  }
  return [...sums].sort((a, b) => b[1] - a[1]).slice(0, 4).map(([name, bytes]) => `${name} ${(bytes / 1000).toFixed(0)}`).join(', ');
}

/** Builds all bundles whose entry point is there; a missing one is an error. */
export async function build({ quiet = false } = {}) {
  await generate();
  const missing = bundles.flatMap((options) => Object.values(options.entryPoints)).filter((entry) => !existsSync(join(root, entry)));
  if (missing.length > 0) throw new Error(`no such entry point: ${missing.join(', ')}`);

  later.clear();
  const results = await Promise.all(bundles.map((options) => bundle(options)));
  for (const path of later) results.push(await bundle({ ...node, entryPoints: { [basename(path, '.ts')]: path } }));

  const wanted = new Set();
  await mkdir(join(root, 'dist'), { recursive: true });
  for (const { outputFiles, metafile } of results) {
    for (const file of outputFiles) {
      wanted.add(basename(file.path));
      const same = existsSync(file.path) && (await readFile(file.path)).equals(Buffer.from(file.contents));
      if (!same) await writeFile(file.path, file.contents);
      if (file.text.startsWith(shebang)) await chmod(file.path, 0o755);
      if (!quiet) console.log(`${basename(file.path).padEnd(18)}${kilobytes(file.contents.length)} ${kilobytes(gzipSync(file.contents).length)} gzip   ${parts(metafile)}`);
    }
  }
  await writeFile(join(root, 'dist', 'library.d.ts'), await libraryTypes());
  await writeFile(join(root, 'dist', 'third-party-licences.txt'), await licences(results));
  for (const stale of ['client-node.js', 'client-web.js', 'server-node.js', 'server-web.js', 'command-line.js', 'analysis.js', 'library.js']) {
    if (!wanted.has(stale)) await rm(join(root, 'dist', stale), { force: true });
  }
}

/** Builds the server alone into a folder, as a process and as a worker: for tests, which must not rest on what happens to lie in dist/. */
export async function buildServer(outdir) {
  const found = new Set();
  await Promise.all([serverProcess(found), serverWorker].map((options) => bundle({ ...options, write: true, outdir })));
  for (const path of found) await bundle({ ...node, write: true, outdir, entryPoints: { [basename(path, '.ts')]: path } });
}

/** Builds the library alone into a folder: for tests. */
export async function buildLibrary(outdir) {
  await mkdir(outdir, { recursive: true });
  const options = bundles.find(({ entryPoints }) => 'library' in entryPoints);
  await bundle({ ...options, write: true, outdir });
  await writeFile(join(outdir, 'library.d.ts'), await libraryTypes());
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await build({ quiet: process.argv.includes('--quiet') }).catch((error) => {
    if (!error.errors) console.error(error.message); // the bundler has told its errors itself
    process.exitCode = 1;
  });
}
