import { analyse, type Analysis, type KeptResults } from '../checks/analysis.ts';
import { readSettings, type RepositorySettings } from '../checks/settings.ts';
import { readDocument, type LanguageDocument } from '../language/read-document.ts';
import { editDocument } from '../language/incremental.ts';
import { childOf } from '../language/syntax-tree.ts';
import { diagnosticsOf, type Diagnostic } from './diagnostics.ts';
import { listKey } from './list-key.ts';

/** Gives the text of a file by its URI, from what the host has loaded; undefined when it is not there or must not be read. */
export type FileReader = (uri: string) => string | undefined;

/** What a host knows of a description besides its text. */
export interface SnapshotHost {
  /** The day on which it is checked, YYYY-MM-DD; without it no acceptance ends. */
  readonly today?: () => string | undefined;
  /** Where settings of the repository may lie that hold for a file, the nearest first. The first that can be read counts. */
  readonly settingsNear?: (uri: string) => readonly string[];
}

/** One version of a description with everything that is known of it. Immutable; a newer text gives a newer snapshot. */
export interface Snapshot {
  readonly uri: string;
  readonly document: LanguageDocument;
  /** The part lists that could be read, in the order of `uses`. */
  readonly lists: readonly LanguageDocument[];
  /** URIs named by `uses` and by the settings, in order, whether readable or not. */
  readonly listUris: readonly string[];
  /** Of a machine's description, the settings that hold for it; of settings, what they say. */
  readonly settings?: RepositorySettings;
  /** Everything else that it rests on, whether it is there or not: the host loads and watches it. */
  readonly watched: readonly string[];
  /** Of a machine's description; a part list by itself has none. */
  readonly analysis: Analysis | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** Turns texts into snapshots, keeping from one version to the next what has not changed. */
export class Snapshots {
  readonly #kept = new Map<string, { document: LanguageDocument; results: KeptResults; settings: RepositorySettings | undefined }>();
  readonly #lists = new Map<string, LanguageDocument>();
  readonly #settings = new Map<string, RepositorySettings>();

  constructor(
    readonly read: FileReader,
    readonly host: SnapshotHost = {},
  ) {}

  /** The snapshot of a text. Call again with the same text after a part list has been loaded or has changed. */
  take(uri: string, text: string): Snapshot {
    const kept = this.#kept.get(uri);
    const document = kept ? (kept.document.text === text ? kept.document : editDocument(kept.document, text)) : readDocument(uri, text);
    const near = document.fileKind === 'machine' ? (this.host.settingsNear?.(uri) ?? []) : [];
    const settings = document.fileKind === 'settings' ? readSettings(document) : this.#settingsIn(near);
    // What is kept was judged by the settings of its time.
    const results = kept?.settings === settings ? (kept?.results ?? (new Map() as KeptResults)) : (new Map() as KeptResults);
    this.#kept.set(uri, { document, results, settings });
    if (document.fileKind === 'parts') return finish({ uri, document, lists: [], listUris: [], watched: [], analysis: undefined }, []);
    if (document.fileKind === 'settings') return this.#ofSettings(document, settings ?? readSettings(document));
    const uses = usesOf(document);
    // A list of the repository comes behind those of the machine: what the machine names goes first.
    const shared = settings ? sharedLists(settings, uses.flatMap((use) => use.uri ?? [])) : [];
    const listUris = [...uses.flatMap((use) => use.uri ?? []), ...shared];
    const lists = [...new Set(listUris)].flatMap((list) => this.#list(list) ?? []);
    const today = this.host.today?.();
    const analysis = analyse(document, lists, results, { ...(today === undefined ? {} : { today }), ...(settings ? { settings } : {}) });
    const parts = { uri, document, lists, listUris, watched: [...listUris, ...near], analysis, ...(settings ? { settings } : {}) };
    return finish(parts, uses.filter((use) => use.uri === undefined || !lists.some((list) => list.uri === use.uri)));
  }

  #ofSettings(document: LanguageDocument, settings: RepositorySettings): Snapshot {
    const uses = usesOf(document);
    const listUris = uses.flatMap((use) => use.uri ?? []);
    const unreadable = uses.filter((use) => use.uri === undefined || this.read(use.uri) === undefined);
    return finish({ uri: document.uri, document, lists: [], listUris, watched: listUris, analysis: undefined, settings }, unreadable);
  }

  /** The nearest settings that can be read, the same object for as long as their text is the same. */
  #settingsIn(near: readonly string[]): RepositorySettings | undefined {
    for (const uri of near) {
      const text = this.read(uri);
      const known = this.#settings.get(uri);
      if (text === undefined) this.#settings.delete(uri);
      else if (known?.text === text) return known;
      else {
        const fresh = readSettings(readDocument(uri, text));
        this.#settings.set(uri, fresh);
        return fresh;
      }
    }
    return undefined;
  }

  /** Forgets what was kept of a closed or deleted file. */
  forget(uri: string): void {
    this.#kept.delete(uri);
    this.#lists.delete(uri);
  }

  #list(uri: string): LanguageDocument | undefined {
    const text = this.read(uri);
    if (text === undefined) {
      this.#lists.delete(uri);
      return undefined;
    }
    const known = this.#lists.get(uri);
    if (known?.text === text) return known;
    const fresh = readDocument(uri, text);
    this.#lists.set(uri, fresh);
    return fresh;
  }
}

/** A path under `uses`, and the file that it means. */
export interface Use {
  readonly index: number;
  readonly path: string;
  /** Undefined where a relative path leads nowhere: in a text without a file. */
  readonly uri: string | undefined;
}

/** Part lists named by a description, or by settings. At most 20 are followed. */
export function usesOf(document: LanguageDocument): readonly Use[] {
  const node = childOf(document.root, listKey(document));
  if (node?.type !== 'list') return [];
  return node.items.slice(0, 20).flatMap((item, index) => (item?.type === 'scalar' && item.text !== '' ? [{ index, path: item.text, uri: resolve(item.text, document.uri) }] : []));
}

/** The part lists of a repository that a machine does not name itself. */
function sharedLists({ uri, partLists }: RepositorySettings, named: readonly string[]): readonly string[] {
  return partLists.slice(0, 20).flatMap((path) => resolve(path, uri) ?? []).filter((list) => !named.includes(list));
}

/** Relative to the description; the host decides whether what comes out may be read. */
function resolve(path: string, from: string): string | undefined {
  if (/^[a-z][a-z0-9+.-]*:/i.test(path) || path.startsWith('/')) return undefined;
  try {
    return new URL(path.split('/').map(encodeURIComponent).join('/'), from).href;
  } catch {
    return undefined;
  }
}

function finish(parts: Omit<Snapshot, 'diagnostics'>, unreadable: readonly Use[]): Snapshot {
  return { ...parts, diagnostics: diagnosticsOf(parts, unreadable) };
}
