import fs from 'node:fs';
import { isAbsolute, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { MOST_BYTES, type FileSource } from './files.ts';

/**
 * Reads ordinary files that lie inside one of the folders, all links followed: neither `..` nor a link leads outside.
 * @param folders addresses of the folders (`file:` ones count)
 */
export function filesOnDisk(folders: () => readonly string[]): FileSource {
  return async (uri) => {
    const path = pathOf(uri);
    if (path === undefined) return undefined;
    const real = await fs.promises.realpath(path);
    const roots = await Promise.all(folders().map(realFolder));
    return roots.some((root) => root !== undefined && isInside(real, root)) ? readText(real) : undefined;
  };
}

/** Whether a real path is a real folder or lies below it. */
function isInside(path: string, folder: string): boolean {
  const down = relative(folder, path);
  return down !== '..' && !/^\.\.[/\\]/.test(down) && !isAbsolute(down);
}

/** Looks before it opens: opening a pipe would wait for somebody to write into it. */
async function readText(path: string): Promise<string | undefined> {
  const found = await fs.promises.stat(path);
  if (!found.isFile() || found.size > MOST_BYTES) return undefined;
  return new TextDecoder('utf-8', { fatal: true }).decode(await fs.promises.readFile(path));
}

async function realFolder(uri: string): Promise<string | undefined> {
  const path = pathOf(uri);
  try {
    return path === undefined ? undefined : await fs.promises.realpath(path);
  } catch {
    return undefined;
  }
}

function pathOf(uri: string): string | undefined {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined; // a host, an escaped slash
  }
}
