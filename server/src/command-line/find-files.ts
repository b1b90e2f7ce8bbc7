import { lstatSync, readdirSync, statSync } from 'node:fs';
import { basename, dirname, join, parse, relative, resolve, sep } from 'node:path';
import { settingsName } from '../services/repository-settings.ts';
import { expandBraces, isPattern, readPattern } from './globs.ts';
import { IgnoreRules } from './ignore-rules.ts';
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
  /** Folders that were looked into. */
  readonly searched: readonly string[];
  /** Whether a description, or a whole folder, was passed over because of an ignore file or the settings. */
  readonly passedOver: boolean;
}

/** Folders in which nobody keeps descriptions of their own. */
export const ignoredFolders = new Set(['node_modules', '.git', 'dist']);

export const isDescription = (path: string): boolean => /[^/\\]\.(?:machine|parts)\.yaml$/.test(path);

export const isPartList = (path: string): boolean => path.endsWith('.parts.yaml');

/** A path as it is shown: relative to the current folder, with forward slashes. */
export function shownPath(path: string, current: string): string {
  const shown = relative(current, path);
  return (shown === '' ? '.' : shown).split(sep).join('/');
}

/**
 * Finds the descriptions that the arguments mean: files, folders (searched all the way down) and patterns. What is ignored is passed over
 * in folders and patterns, never where it is named itself.
 */
export function findFiles(given: readonly string[], current: string, { ignore = true }: { readonly ignore?: boolean } = {}): Found {
  const files = new Set<string>();
  const failures: Failure[] = [];
  const unmatched: string[] = [];
  const bases: string[] = [];
  const searched = new Set<string>();
  let passedOver = false;

  const failed = (path: string, message: string): void => {
    const shown = shownPath(path, current);
    if (!failures.some((failure) => failure.path === shown && failure.message === message)) failures.push({ path: shown, message });
  };

  const search = (folder: string, depth: number, fits: (path: string) => boolean): number => {
    const rules = ignore ? new IgnoreRules(folder, current, failed) : undefined;
    const walk: Walk = {
      enter: (path) => searched.add(path),
      failed: (path, error) => failed(path, reasonOf(error, path)),
      ignores: (path, isFolder) => {
        const ignored = (isFolder || isDescription(path)) && rules?.ignores(path, isFolder) === true;
        if (ignored) passedOver = true;
        return ignored;
      },
    };
    let count = 0;
    for (const path of filesBelow(folder, depth, walk)) {
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
      searched.add(dirname(path));
      if (isDescription(path) || basename(path) === settingsName) files.add(path);
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
  return { files: ordered.map(([, path]) => path), failures, unmatched, within: [current, ...commonRoot(bases)], searched: [...searched].sort(), passedOver };
}

/** What is at a path, or the error of looking. A link counts as what it leads to, a broken one as a file, which then cannot be read. */
function kindOf(path: string): 'file' | 'folder' | Error {
  try {
    return statSync(path).isDirectory() ? 'folder' : 'file';
  } catch (error) {
    return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true ? 'file' : error instanceof Error ? error : new Error(String(error));
  }
}

interface Walk {
  readonly enter: (folder: string) => void;
  readonly failed: (path: string, error: unknown) => void;
  readonly ignores: (path: string, isFolder: boolean) => boolean;
}

/** Files below a folder. Links to folders are not entered, so that the search ends and stays inside. */
function* filesBelow(folder: string, depth: number, walk: Walk): Generator<string> {
  if (depth < 1) return;
  let entries;
  try {
    entries = readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    walk.failed(folder, error);
    return;
  }
  walk.enter(folder);
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory() ? ignoredFolders.has(entry.name) : !isDescription(path)) continue;
    if (walk.ignores(path, entry.isDirectory())) continue;
    if (!entry.isDirectory()) yield path;
    else yield* filesBelow(path, depth - 1, walk);
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
