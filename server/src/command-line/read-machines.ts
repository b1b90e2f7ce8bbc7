import { dirname, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Snapshots, type Snapshot } from '../services/snapshot.ts';
import { findFiles, isDescription, shownPath, type Failure } from './find-files.ts';
import { decode, MAX_BYTES, readText } from './read-text.ts';
import { SourceLines, type TextPlace } from './source-lines.ts';

/** A description that was read and analysed. */
export interface ReadMachine {
  /** Relative to the current folder, with forward slashes. */
  readonly path: string;
  readonly snapshot: Snapshot;
  readonly lines: SourceLines;
}

/** Shows places of any document of the run. */
export interface Places {
  pathOf(uri: string): string;
  placeOf(uri: string, offset: number): TextPlace;
}

export interface ReadResult {
  /** In the order of their paths; each is analysed when it is asked for, once. */
  readonly machines: Iterable<ReadMachine>;
  /** Complete when all machines have been asked for. */
  readonly failures: readonly Failure[];
  readonly unmatched: readonly string[];
  readonly places: Places;
}

export interface ReadRequest {
  /** Files, folders, patterns, or `-` for standard input; nothing means the current folder. */
  readonly paths: readonly string[];
  /** The path that standard input is taken to have; stdin.machine.yaml in the current folder when left out. */
  readonly as: string | undefined;
  readonly current: string;
  readonly input: AsyncIterable<Uint8Array | string>;
}

/** Reads and analyses everything that the arguments mean. What cannot be read becomes a failure, and the rest is read all the same. */
export async function readMachines(request: ReadRequest): Promise<ReadResult> {
  const { current } = request;
  const asked = request.paths.length === 0 ? ['.'] : request.paths;
  const found = findFiles(asked.filter((path) => path !== '-'), current);
  const failures: Failure[] = [...found.failures];
  const within = [...found.within];
  const texts = new Map<string, string>();
  for (const file of found.files) {
    const reading = readText(file, within);
    if ('text' in reading) texts.set(file, reading.text);
    else failures.push({ path: shownPath(file, current), message: reading.failure });
  }
  if (asked.includes('-')) {
    const pretended = resolve(current, request.as ?? 'stdin.machine.yaml');
    within.push(dirname(pretended));
    const reading = isDescription(pretended) ? await readInput(request.input) : { failure: 'cannot stand for a description: --as needs *.machine.yaml or *.parts.yaml' };
    if ('text' in reading) texts.set(pretended, reading.text);
    else failures.push({ path: isDescription(pretended) ? 'standard input' : shownPath(pretended, current), message: reading.failure });
  } else if (request.as !== undefined) failures.push({ path: '--as', message: 'is for standard input, which "-" among the paths stands for' });

  const snapshots = new Snapshots((uri) => {
    const path = pathOfUri(uri);
    if (path === undefined) return undefined;
    const reading = texts.get(path) ?? readText(path, within);
    return typeof reading === 'string' ? reading : 'text' in reading ? reading.text : undefined;
  });
  const known = new Map<string, SourceLines>();
  const ordered = [...texts].map(([file, text]) => ({ path: shownPath(file, current), uri: pathToFileURL(file).href, text })).sort(byPath);
  function* analysed(): Generator<ReadMachine> {
    for (const { path, uri, text } of ordered) {
      try {
        const snapshot = snapshots.take(uri, text);
        const lines = new SourceLines(text);
        known.set(uri, lines);
        for (const list of snapshot.lists) if (!known.has(list.uri)) known.set(list.uri, new SourceLines(list.text));
        yield { path, snapshot, lines };
      } catch (error) {
        failures.push({ path, message: faultText('analysed', error) });
      }
      snapshots.forget(uri);
    }
  }
  const places: Places = {
    pathOf: (uri) => {
      const path = pathOfUri(uri);
      return path === undefined ? uri : shownPath(path, current);
    },
    placeOf: (uri, offset) => known.get(uri)?.placeOf(offset) ?? { line: 1, column: 1 },
  };
  return { machines: analysed(), failures: failures.sort(byPath), unmatched: [...new Set(found.unmatched)].sort(), places };
}

const byPath = (a: { readonly path: string }, b: { readonly path: string }): number => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0);

/** What is said of a file with which the tool itself failed. */
export const faultText = (task: string, error: unknown): string =>
  `could not be ${task} (${error instanceof Error ? error.message : String(error)}). This is a fault of the tool: please report it with this file`;

/** Standard input as text, up to the size that a file may have. */
async function readInput(input: ReadRequest['input']): Promise<ReturnType<typeof decode>> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of input) {
    const bytes = typeof chunk === 'string' ? new TextEncoder().encode(chunk) : chunk;
    size += bytes.length;
    if (size > MAX_BYTES) return { failure: `is larger than ${MAX_BYTES / 1_000_000} MB` };
    chunks.push(bytes);
  }
  return decode(Buffer.concat(chunks));
}

function pathOfUri(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
