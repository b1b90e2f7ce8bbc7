import { fileURLToPath, pathToFileURL } from 'node:url';
import { Snapshots, type Snapshot } from '../services/snapshot.ts';
import { shownPath, type Failure } from './find-files.ts';
import { readText } from './read-text.ts';
import { settingsNear } from './settings-files.ts';
import { SourceLines, type TextPlace } from './source-lines.ts';

/** A description that was read and analysed. */
export interface ReadMachine {
  /** Relative to the current folder, with forward slashes. */
  readonly path: string;
  readonly snapshot: Snapshot;
  readonly lines: SourceLines;
}

/** Shows places of the description that was read last, and of its part lists. */
export interface Places {
  pathOf(uri: string): string;
  placeOf(uri: string, offset: number): TextPlace;
}

/** What reading rests on besides the disk. Plain data: a worker is given it. */
export interface ReaderSetup {
  readonly current: string;
  /** Folders inside which files may be read. */
  readonly within: readonly string[];
  /** YYYY-MM-DD; without it no acceptance ends. */
  readonly today: string | undefined;
  /** What came from standard input, under the path that it is taken to have. */
  readonly typed: { readonly file: string; readonly text: string } | undefined;
}

/** Reads and analyses one description after another. Of each, nothing is kept but the part lists and settings that the next may share. */
export class MachineReader {
  readonly #snapshots: Snapshots;
  #known: ReadonlyMap<string, SourceLines> = new Map();

  constructor(readonly setup: ReaderSetup) {
    const { within, today } = setup;
    this.#snapshots = new Snapshots(
      (uri) => {
        const path = pathOfUri(uri);
        const reading = path === undefined ? undefined : this.#text(path);
        return reading && 'text' in reading ? reading.text : undefined;
      },
      { today: () => today, settingsNear: (uri) => settingsNear(pathOfUri(uri), within).map((path) => pathToFileURL(path).href) },
    );
  }

  /** The description, or why there is none; undefined for settings of which there is nothing to be said. Never throws. */
  read(file: string): ReadMachine | Failure | undefined {
    const path = shownPath(file, this.setup.current);
    const uri = pathToFileURL(file).href;
    try {
      const reading = this.#text(file);
      if ('failure' in reading) return { path, message: reading.failure };
      const snapshot = this.#snapshots.take(uri, reading.text);
      if (snapshot.document.fileKind === 'settings' && snapshot.diagnostics.length === 0) return undefined;
      const lines = new SourceLines(reading.text);
      this.#known = new Map([...snapshot.lists.map((list) => [list.uri, new SourceLines(list.text)] as const), [uri, lines]]);
      return { path, snapshot, lines };
    } catch (error) {
      return { path, message: faultText('analysed', error) };
    } finally {
      this.#snapshots.forget(uri);
    }
  }

  readonly places: Places = {
    pathOf: (uri) => {
      const path = pathOfUri(uri);
      return path === undefined ? uri : shownPath(path, this.setup.current);
    },
    placeOf: (uri, offset) => this.#known.get(uri)?.placeOf(offset) ?? { line: 1, column: 1 },
  };

  #text(file: string): ReturnType<typeof readText> {
    const { typed, within } = this.setup;
    return typed?.file === file ? { text: typed.text } : readText(file, within);
  }
}

/** What is said of a file with which the tool itself failed. */
export const faultText = (task: string, error: unknown): string =>
  `could not be ${task} (${error instanceof Error ? error.message : String(error)}). This is a fault of the tool: please report it with this file`;

export function pathOfUri(uri: string): string | undefined {
  try {
    return fileURLToPath(uri);
  } catch {
    return undefined;
  }
}
