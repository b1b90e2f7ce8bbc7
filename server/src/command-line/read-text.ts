import { lstatSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { isAbsolute, relative } from 'node:path';

/** Far above any description; what is larger is not read into memory at all. */
export const MAX_BYTES = 8_000_000;

export type Reading = { readonly text: string } | { readonly failure: string };

/**
 * The text of a file inside one of the folders `within`. Never throws: what cannot be read says why, as a clause that follows the path
 * ("is a folder"). A link is followed only to what lies inside.
 */
export function readText(path: string, within: readonly string[]): Reading {
  try {
    const real = realpathSync(path);
    if (!isInside(real, within)) {
      return { failure: lstatSync(path).isSymbolicLink() ? 'is a link to a file outside of the folders that are checked' : 'lies outside of the folders that are checked' };
    }
    const found = statSync(real);
    if (found.isDirectory()) return { failure: 'is a folder' };
    if (!found.isFile()) return { failure: 'is not an ordinary file' };
    if (found.size > MAX_BYTES) return { failure: `is larger than ${MAX_BYTES / 1_000_000} MB` };
    return decode(readFileSync(real));
  } catch (error) {
    return { failure: reasonOf(error, path) };
  }
}

/** Bytes as text: UTF-8 with or without its mark. */
export function decode(bytes: Uint8Array): Reading {
  if (bytes.includes(0)) return { failure: 'is not a text in UTF-8' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { failure: 'is not a text in UTF-8' };
  }
}

/** Whether a real path lies in one of the folders, links in the folders' own paths resolved. */
export function isInside(real: string, folders: readonly string[]): boolean {
  return folders.some((folder) => {
    const down = relative(realOrSame(folder), real);
    return down === '' || (down !== '..' && !/^\.\.[/\\]/.test(down) && !isAbsolute(down));
  });
}

function realOrSame(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'does not exist',
  ENOTDIR: 'does not exist',
  EACCES: 'may not be read',
  EPERM: 'may not be read',
  ELOOP: 'is a link that leads round in a circle',
  ENAMETOOLONG: 'has too long a name',
};

/** Why the system refused a path, in plain words. */
export function reasonOf(error: unknown, path: string): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ENOENT' && isLink(path)) return 'is a link that leads nowhere';
  return reasons[code] ?? `cannot be read (${code === '' ? String(error) : code})`;
}

function isLink(path: string): boolean {
  try {
    return lstatSync(path).isSymbolicLink();
  } catch {
    return false;
  }
}
