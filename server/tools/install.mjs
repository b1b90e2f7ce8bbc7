// Installs the packages that package-lock.json names when they are missing. Uses nothing but Node, since nothing else is there on a fresh clone.
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { root, run } from './processes.mjs';

/** True when every package that package.json asks for is installed in the version that it asks for. */
async function installed() {
  const { devDependencies = {}, dependencies = {} } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8'));
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies })) {
    const manifest = join(root, 'node_modules', name, 'package.json');
    if (!existsSync(manifest) || JSON.parse(await readFile(manifest, 'utf8')).version !== version) return false;
  }
  return true;
}

/** Installs if needed; throws when that does not work. */
export async function install() {
  if (await installed()) return;
  console.log('Installing packages (once) ...');
  const { code } = await run('npm', ['ci', '--no-audit', '--no-fund'], { show: true });
  if (code !== 0) throw new Error('npm ci failed: see above.');
}
