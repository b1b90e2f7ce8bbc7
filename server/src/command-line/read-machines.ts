import { dirname, resolve } from 'node:path';
import type { RepositorySettings } from '../services/repository-settings.ts';
import { findFiles, isDescription, shownPath, type Failure, type Found } from './find-files.ts';
import { MachineReader, type Places, type ReaderSetup, type ReadMachine } from './machine-reader.ts';
import { decode, MAX_BYTES } from './read-text.ts';
import { settingsInUse, settingsOfRun } from './settings-files.ts';

export { faultText, type Places, type ReadMachine } from './machine-reader.ts';

export interface ReadResult {
  /** In the order of their paths; each is read and analysed when it is asked for, once. */
  readonly machines: Iterable<ReadMachine>;
  /** Complete when all machines have been asked for. */
  readonly failures: readonly Failure[];
  readonly unmatched: readonly string[];
  readonly passedOver: boolean;
  /** Of the machine that was asked for last. */
  readonly places: Places;
  /** The settings in the current folder, which hold for the run as a whole. */
  readonly settings: RepositorySettings | undefined;
}

export interface ReadRequest {
  /** Files, folders, patterns, or `-` for standard input; nothing means the current folder. */
  readonly paths: readonly string[];
  /** The path that standard input is taken to have; stdin.machine.yaml in the current folder when left out. */
  readonly as: string | undefined;
  /** Pass over what ignore files name; true when left out. */
  readonly ignore?: boolean | undefined;
  readonly current: string;
  readonly input: AsyncIterable<Uint8Array | string>;
  /** YYYY-MM-DD; without it no acceptance ends. */
  readonly today?: string | undefined;
}

/** What there is to read, before any of it is read. */
export interface Listing extends Pick<Found, 'passedOver' | 'searched'> {
  /** Absolute paths, in the order of the paths as they are shown; the settings in use are among them. */
  readonly files: readonly string[];
  readonly failures: readonly Failure[];
  readonly unmatched: readonly string[];
  readonly setup: ReaderSetup;
  readonly settings: RepositorySettings | undefined;
}

/** Finds out what the arguments mean. Of all texts only standard input is read. */
export async function listMachines(request: ReadRequest): Promise<Listing> {
  const { current, today } = request;
  const asked = request.paths.length === 0 ? ['.'] : request.paths;
  const found = findFiles(asked.filter((path) => path !== '-'), current, { ignore: request.ignore !== false });
  const failures: Failure[] = [...found.failures];
  const within = [...found.within];
  const files = new Set(found.files);
  let typed: ReaderSetup['typed'];
  if (asked.includes('-')) {
    const pretended = resolve(current, request.as ?? 'stdin.machine.yaml');
    within.push(dirname(pretended));
    const reading = isDescription(pretended) ? await readInput(request.input) : { failure: 'cannot stand for a description: --as needs *.machine.yaml or *.parts.yaml' };
    if ('text' in reading) {
      typed = { file: pretended, text: reading.text };
      files.add(pretended);
    } else failures.push({ path: isDescription(pretended) ? 'standard input' : shownPath(pretended, current), message: reading.failure });
  } else if (request.as !== undefined) failures.push({ path: '--as', message: 'is for standard input, which "-" among the paths stands for' });

  // What is wrong with the settings that hold is told as well.
  for (const path of settingsInUse([...files], within).keys()) files.add(path);
  return {
    files: [...files].map((file) => ({ file, path: shownPath(file, current) })).sort(byPath).map(({ file }) => file),
    failures: failures.sort(byPath),
    unmatched: [...new Set(found.unmatched)].sort(),
    passedOver: found.passedOver,
    searched: found.searched,
    setup: { current, within, today, typed },
    settings: settingsOfRun(current, within),
  };
}

/** Reads and analyses everything that the arguments mean. What cannot be read becomes a failure, and the rest is read all the same. */
export async function readMachines(request: ReadRequest): Promise<ReadResult> {
  const listing = await listMachines(request);
  const reader = new MachineReader(listing.setup);
  const failures: Failure[] = [...listing.failures];
  function* machines(): Generator<ReadMachine> {
    for (const file of listing.files) {
      const read = reader.read(file);
      if (read === undefined) continue;
      if ('snapshot' in read) yield read;
      else failures.push(read);
    }
  }
  const { unmatched, passedOver, settings } = listing;
  return { machines: machines(), failures, unmatched, passedOver, places: reader.places, settings };
}

export const byPath = (a: { readonly path: string }, b: { readonly path: string }): number => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0);

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
