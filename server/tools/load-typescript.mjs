// Lets a script import a TypeScript module of the project: it is bundled in memory and imported from there.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { root } from './processes.mjs';

/**
 * @param {string} entry path of the module, relative to the top of the working tree
 * @returns {Promise<Record<string, unknown>>} its exports
 */
export async function loadTypeScript(entry) {
  // "module" first: the form of a package that can be bundled into an ES module. Packages without one may still call require() for parts of Node.
  const banner = { js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);" };
  const { outputFiles } = await build({ absWorkingDir: root, entryPoints: [entry], bundle: true, write: false, platform: 'node', format: 'esm', target: 'node20', mainFields: ['module', 'main'], logLevel: 'warning', banner });
  const folder = await mkdtemp(join(tmpdir(), 'axiswright-module-'));
  try {
    const file = join(folder, 'module.mjs');
    await writeFile(file, outputFiles[0].contents);
    return await import(pathToFileURL(file).href);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
