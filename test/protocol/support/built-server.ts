import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm, stat, utimes } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..');
const cache = join(root, 'node_modules', '.cache', 'axiswright-server');

/** Builds that nobody has used for so long are removed. */
const KEPT = 30 * 60_000;

/** The folder with the bundles of the server as its sources are now. Built once and shared by all test files. */
export async function builtServer(): Promise<string> {
  const folder = join(cache, await stateOfSources());
  const dist = join(folder, 'dist');
  if (!existsSync(dist)) await buildInto(folder);
  const now = new Date();
  await utimes(folder, now, now);
  return dist;
}

/** Another test file may be building the same: the one that is ready first wins. */
async function buildInto(folder: string): Promise<void> {
  const aside = `${folder}-${process.pid}-${Math.random().toString(36).slice(2)}`;
  const tool = pathToFileURL(join(root, 'server', 'tools', 'build.mjs')).href;
  const { buildServer } = (await import(tool)) as { buildServer: (outdir: string) => Promise<void> };
  await mkdir(aside, { recursive: true });
  await buildServer(join(aside, 'dist'));
  try {
    await rename(aside, folder);
  } catch {
    await rm(aside, { recursive: true, force: true });
  }
  for (const name of await readdir(cache)) {
    const old = join(cache, name);
    const found = await stat(old).catch(() => undefined);
    if (found && Date.now() - found.mtimeMs > KEPT) await rm(old, { recursive: true, force: true });
  }
}

async function stateOfSources(): Promise<string> {
  const hash = createHash('sha256');
  for (const folder of ['server/src', 'server/tools']) {
    const entries = await readdir(join(root, folder), { recursive: true, withFileTypes: true });
    for (const path of entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name)).sort()) {
      const found = await stat(path).catch(() => undefined);
      hash.update(`${path}\0${found?.mtimeMs ?? 0}\0${found?.size ?? 0}\n`);
    }
  }
  return hash.digest('hex').slice(0, 16);
}
