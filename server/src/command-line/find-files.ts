import { lstatSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, parse, relative, resolve, sep } from 'node:path';
import { expandBraces, isPattern, readPattern } from './globs.ts';
import { reasonOf } from './read-text.ts';

/** What could not be done about one path: `PATH MESSAGE` is a sentence. */
export interface Failure {
  readonly path: string;
  readonly message: string;
}

export interface Found {
  /** Absolute paths, each once, in the order of the paths as they are shown. */
  readonly files: readonly string[];
  readonly failures: readonly Failure[];
  /** Patterns and folders in which there is no description. */
  readonly unmatched: readonly string[];
  /** Folders inside which files, and the part lists that they use, may be read. */
  readonly within: readonly string[];
}

/** Folders in which nobody keeps descriptions of their own. */
const ignoredFolders = new Set(['node_modules', '.git', 'dist']);

export const isDescription = (path: string): boolean => /[^/\\]\.(?:machine|parts)\.yaml$/.test(path);

export const isPartList = (path: string): boolean => path.endsWith('.parts.yaml');

/** A path as it is shown: relative to the current folder, with forward slashes. */
export function shownPath(path: string, current: string): string {
  const shown = relative(current, path);
  return (shown === '' ? '.' : shown).split(sep).join('/');
}

/** Finds the descriptions that the arguments mean: files, folders (searched all the way down) and patterns. */
export function findFiles(given: readonly string[], current: string): Found {
  const files = new Set<string>();
  const failures: Failure[] = [];
  const unmatched: string[] = [];
  const bases: string[] = [];

  const search = (folder: string, depth: number, fits: (path: string) => boolean): number => {
    let count = 0;
    for (const path of filesBelow(folder, depth, (failed, error) => failures.push({ path: shownPath(failed, current), message: reasonOf(error, failed) }))) {
      if (!isDescription(path) || !fits(relative(folder, path).split(sep).join('/'))) continue;
      files.add(path);
      count++;
    }
    return count;
  };

  const take = (argument: string): void => {
    const path = resolve(current, argument);
    const kind = kindOf(path);
    if (kind === 'folder') {
      bases.push(path);
      if (search(path, Number.POSITIVE_INFINITY, () => true) === 0) unmatched.push(argument);
    } else if (kind === 'file') {
      bases.push(dirname(path));
      if (isDescription(path)) files.add(path);
      else failures.push({ path: shownPath(path, current), message: 'is not named *.machine.yaml or *.parts.yaml. Rename it, or pass it in: check - --as NAME.machine.yaml < FILE' });
    } else if (isPattern(argument)) {
      const pattern = readPattern(argument);
      const base = resolve(current, pattern.base);
      bases.push(base);
      if (kindOf(base) !== 'folder' || search(base, pattern.depth, pattern.fits) === 0) unmatched.push(argument);
    } else failures.push({ path: argument, message: reasonOf(kind, path) });
  };

  for (const argument of given) {
    const slashed = sep === '\\' ? argument.replaceAll('\\', '/') : argument;
    try {
      // A path that exists is meant as it is, whatever signs it holds.
      const exact = typeof kindOf(resolve(current, slashed)) === 'string';
      for (const one of exact ? [slashed] : expandBraces(slashed)) take(one);
    } catch (error) {
      failures.push({ path: argument, message: `is no pattern that can be searched for: ${error instanceof Error ? error.message : String(error)}` });
    }
  }
  const ordered = [...files].map((path) => [shownPath(path, current), path] as const).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return { files: ordered.map(([, path]) => path), failures, unmatched, within: [current, ...commonRoot(bases)] };
}

/** What is at a path, or the error of looking. A link counts as what it leads to, a broken one as a file, which then cannot be read. */
function kindOf(path: string): 'file' | 'folder' | Error {
  try {
    return statSync(path).isDirectory() ? 'folder' : 'file';
  } catch (error) {
    return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true ? 'file' : error instanceof Error ? error : new Error(String(error));
  }
}

/** Files below a folder. Links to folders are not entered, so that the search ends and stays inside. */
function* filesBelow(folder: string, depth: number, failed: (path: string, error: unknown) => void): Generator<string> {
  if (depth < 1) return;
  let entries;
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    failed(folder, error);
    return;
  }
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (!entry.isDirectory()) yield path;
    else if (!ignoredFolders.has(entry.name)) yield* filesBelow(path, depth - 1, failed);
  }
}

/** The deepest folder that holds all given ones; where that is a whole disk, each by itself. */
function commonRoot(folders: readonly string[]): readonly string[] {
  const [first, ...rest] = folders;
  if (first === undefined) return [];
  let common = first;
  for (const folder of rest) while (common !== dirname(common) && folder !== common && !folder.startsWith(common + sep)) common = dirname(common);
  return common === parse(common).root && !folders.includes(common) ? folders : [common];
}
