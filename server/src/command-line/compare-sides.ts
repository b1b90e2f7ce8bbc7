import { statSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { readDocument } from '../services/compare/texts.ts';
import { Snapshots, usesOf, type Snapshot } from '../services/snapshot.ts';
import { findFiles, ignoredFolders, isDescription, isPartList, shownPath, type Failure } from './find-files.ts';
import { GitTree, nearestFolder, revisionFlaw } from './git.ts';
import { expandBraces, isPattern, readPattern } from './globs.ts';
import type { Host } from './host.ts';
import { readText, type Reading } from './read-text.ts';
import { settingsNear } from './settings-files.ts';
import { dayOf } from './today.ts';

/** Where the texts of one side come from: the disk, a commit, or what is staged. */
interface Side {
  /** Folders in which the settings of the repository may lie. */
  readonly within: readonly string[];
  /** Undefined where there is no such file. */
  readonly read: (file: string) => Reading | undefined;
}

/** Two texts that are compared; a side without text is a file that is not there. */
export interface Pair {
  /** As shown: one path, or two. */
  readonly before: string;
  readonly after: string;
  readonly old: () => Snapshot | undefined;
  readonly fresh: () => Snapshot | undefined;
  /** Whether both sides read the same, part lists included: then nothing need be computed. */
  readonly same: boolean;
}

export interface Pairs {
  readonly pairs: readonly Pair[];
  readonly failures: readonly Failure[];
  readonly unmatched: readonly string[];
}

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

const diskSide = (within: readonly string[]): Side => ({
  within,
  read: (file) => (statSync(file, { throwIfNoEntry: false }) ? readText(file, within) : undefined),
});

const treeSide = (tree: GitTree): Side => ({ within: [tree.top], read: (file) => tree.read(file) });

/** The two files of `compare OLD NEW`; each may be `REVISION:PATH`. */
export function namedPair(names: readonly [string, string], host: Host): Pairs {
  const failures: Failure[] = [];
  const operands = names.map((name) => operand(name, host));
  for (const one of operands) if ('failure' in one) failures.push(one.failure);
  const [old, fresh] = operands;
  if (!old || !fresh || 'failure' in old || 'failure' in fresh) return { pairs: [], failures, unmatched: [] };
  const pair = pairOf(old, fresh, failures, host);
  return { pairs: pair ? [pair] : [], failures, unmatched: [] };
}

interface Operand {
  readonly shown: string;
  readonly file: string;
  readonly side: Side;
}

function operand(name: string, host: Host): Operand | { readonly failure: Failure } {
  const refuse = (message: string): { readonly failure: Failure } => ({ failure: { path: name, message } });
  const file = resolve(host.current, name);
  const there = statSync(file, { throwIfNoEntry: false });
  const colon = name.indexOf(':');
  if (there || colon < 1) {
    if (there?.isDirectory() === true) return refuse('is a folder; to compare all that is in it, use --since');
    if (isPartList(name)) return refuse('is a part list; compare a machine that uses it');
    if (!isDescription(name)) return refuse('is not named *.machine.yaml');
    if (!there) return refuse('does not exist');
    return { shown: shownPath(file, host.current), file, side: diskSide([host.current, dirname(file)]) };
  }
  const [revision, path] = [name.slice(0, colon), name.slice(colon + 1)];
  if (!isDescription(path) || isPartList(path)) return refuse('is not named *.machine.yaml');
  if (revisionFlaw(revision) !== undefined) return refuse('does not exist, and its beginning is no revision');
  const tree = GitTree.open(host.current, revision, host.env);
  if ('failure' in tree) return refuse(`cannot be read: ${lowerFirst(tree.failure)}`);
  // Like git itself: from the top, unless it begins with a dot; then what is meant from here.
  const [fromTop, fromHere] = [resolve(tree.top, path), resolve(host.current, path)];
  const found = /^\.\.?\//.test(path) ? fromHere : tree.has(fromTop) ? fromTop : fromHere;
  if (!tree.has(found)) return refuse('does not exist at that revision');
  return { shown: name, file: found, side: treeSide(tree) };
}

export interface SinceRequest {
  readonly revision: string;
  /** Compare with what is staged instead of what is on the disk. */
  readonly staged: boolean;
  readonly paths: readonly string[];
}

/** Every machine that there is at the revision or now, in the order of the paths. */
export function pairsSince({ revision, staged, paths }: SinceRequest, host: Host): Pairs {
  const asked = paths.length === 0 ? ['.'] : paths;
  const first = nearestFolder(resolve(host.current, asked.find((path) => !isPattern(path)) ?? '.'), isFolder);
  const open = (which: string): GitTree | { readonly failure: string } => {
    const here = GitTree.open(host.current, which, host.env);
    return 'failure' in here && /no git repository/.test(here.failure) ? GitTree.open(first, which, host.env) : here;
  };
  const old = open(revision);
  const index = staged ? open('index') : undefined;
  const closed = 'failure' in old ? old : index !== undefined && 'failure' in index ? index : undefined;
  if (closed || 'failure' in old) return { pairs: [], failures: [{ path: '--since', message: `cannot be done: ${lowerFirst(closed?.failure ?? '')}` }], unmatched: [] };

  const failures: Failure[] = [];
  const inTrees = new Map<string, boolean>();
  const files = new Set<string>();
  for (const argument of asked) {
    const found = [old, ...(index && !('failure' in index) ? [index] : [])].flatMap((tree) => inTree(tree, argument, host.current));
    inTrees.set(argument, found.length > 0);
    for (const file of found) files.add(file);
  }
  const disk = findFiles(asked, host.current);
  const within = [...disk.within, old.top];
  if (index === undefined) for (const file of disk.files) files.add(file);
  const wasThere = (path: string): boolean => asked.some((argument) => inTrees.get(argument) === true && (argument === path || shownPath(resolve(host.current, argument), host.current) === path));
  failures.push(...disk.failures.filter((failure) => !wasThere(failure.path)));
  const unmatched = disk.unmatched.filter((pattern) => inTrees.get(pattern) !== true);
  for (const file of files) {
    if (old.nameOf(file) === undefined) failures.push({ path: shownPath(file, host.current), message: 'lies outside of the repository that is compared' });
  }

  const fresh = index && !('failure' in index) ? treeSide(index) : diskSide(within);
  const ordered = [...files].filter((file) => !isPartList(file) && old.nameOf(file) !== undefined).map((file) => ({ file, shown: shownPath(file, host.current) })).sort((a, b) => (a.shown < b.shown ? -1 : a.shown > b.shown ? 1 : 0));
  const pairs = ordered.flatMap(({ file, shown }) => pairOf({ shown, file, side: treeSide(old) }, { shown, file, side: fresh }, failures, host) ?? []);
  return { pairs, failures, unmatched };
}

/** Descriptions that an argument means in a tree: a path, a folder or a pattern. */
function inTree(tree: GitTree, argument: string, current: string): readonly string[] {
  const found = (base: string, fits: (path: string) => boolean): readonly string[] =>
    tree.filesBelow(base).filter((file) => {
      const inside = relative(base, file).split(sep).join('/');
      return isDescription(file) && fits(inside) && !inside.split('/').slice(0, -1).some((folder) => ignoredFolders.has(folder));
    });
  const exact = found(resolve(current, argument), () => true);
  if (exact.length > 0 || !isPattern(argument)) return exact;
  try {
    return expandBraces(argument).flatMap((one) => {
      const pattern = readPattern(one);
      return found(resolve(current, pattern.base), pattern.fits);
    });
  } catch {
    return []; // a pattern that cannot be read is reported where the disk is searched
  }
}

function pairOf(old: Operand, fresh: Operand, failures: Failure[], host: Host): Pair | undefined {
  const readers = [old, fresh].map((one) => ({ ...one, reading: one.side.read(one.file) }));
  const [before, after] = readers.map(({ reading }) => (reading && 'text' in reading ? reading.text : undefined));
  for (const { shown, reading } of readers) if (reading && 'failure' in reading) failures.push({ path: shown, message: reading.failure });
  if (readers.some(({ reading }) => reading && 'failure' in reading)) return undefined;
  if (before === undefined && after === undefined) return undefined;
  const take = ({ file, side }: Operand, text: string | undefined) => (): Snapshot | undefined => {
    if (text === undefined) return undefined;
    // Both sides are judged on the same day: an acceptance that has ended meanwhile is no doing of the change.
    const nearby = (uri: string): readonly string[] => settingsNear(fileOf(uri), side.within).map((path) => pathToFileURL(path).href);
    return new Snapshots(readerOf(side), { today: () => dayOf(host), settingsNear: nearby }).take(pathToFileURL(file).href, text);
  };
  return {
    before: old.shown,
    after: fresh.shown,
    old: take(old, before),
    fresh: take(fresh, after),
    same: before !== undefined && before === after && restsOn(before, old) === restsOn(before, fresh),
  };
}

const readerOf = ({ read }: Side) => (uri: string): string | undefined => {
  const reading = read(fileOf(uri) ?? '');
  return reading && 'text' in reading ? reading.text : undefined;
};

/** Everything else that a description rests on, as one text: the settings that hold for it, and the part lists that both name. */
function restsOn(text: string, { file, side }: Operand): string {
  const read = readerOf(side);
  const settings = settingsNear(file, side.within).map((path) => pathToFileURL(path).href).find((uri) => read(uri) !== undefined);
  const documents = [readDocument(pathToFileURL(file).href, text), ...(settings === undefined ? [] : [readDocument(settings, read(settings) ?? '')])];
  const uris = documents.flatMap((document) => [document.uri, ...usesOf(document).map(({ path, uri }) => uri ?? path)]).slice(1);
  return JSON.stringify(uris.map((uri) => [uri, read(uri) ?? null]));
}

function fileOf(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}

const lowerFirst = (text: string): string => (/^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);
