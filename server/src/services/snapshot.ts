import { analyse, type Analysis, type KeptResults } from '../checks/analysis.ts';
import { readDocument, type LanguageDocument } from '../language/read-document.ts';
import { editDocument } from '../language/incremental.ts';
import { childOf } from '../language/syntax-tree.ts';
import { diagnosticsOf, type Diagnostic } from './diagnostics.ts';

/** Gives the text of a file by its URI, from what the host has loaded; undefined when it is not there or must not be read. */
export type FileReader = (uri: string) => string | undefined;

/** One version of a description with everything that is known of it. Immutable; a newer text gives a newer snapshot. */
export interface Snapshot {
  readonly uri: string;
  readonly document: LanguageDocument;
  /** The part lists that could be read, in the order of `uses`. */
  readonly lists: readonly LanguageDocument[];
  /** URIs named by `uses`, in order, whether readable or not: the host loads and watches them. */
  readonly listUris: readonly string[];
  /** Of a machine's description; a part list by itself has none. */
  readonly analysis: Analysis | undefined;
  readonly diagnostics: readonly Diagnostic[];
}

/** Turns texts into snapshots, keeping from one version to the next what has not changed. */
export class Snapshots {
  readonly #kept = new Map<string, { document: LanguageDocument; results: KeptResults }>();
  readonly #lists = new Map<string, LanguageDocument>();

  constructor(readonly read: FileReader) {}

  /** The snapshot of a text. Call again with the same text after a part list has been loaded or has changed. */
  take(uri: string, text: string): Snapshot {
    const kept = this.#kept.get(uri);
    const document = kept ? (kept.document.text === text ? kept.document : editDocument(kept.document, text)) : readDocument(uri, text);
    const results = kept?.results ?? (new Map() as KeptResults);
    this.#kept.set(uri, { document, results });
    if (document.fileKind === 'parts') return finish({ uri, document, lists: [], listUris: [], analysis: undefined }, []);
    const uses = usesOf(document);
    const lists = uses.flatMap((use) => (use.uri === undefined ? [] : (this.#list(use.uri) ?? [])));
    const analysis = analyse(document, lists, results);
    return finish({ uri, document, lists, listUris: uses.flatMap((use) => use.uri ?? []), analysis }, uses.filter((use) => use.uri === undefined || !lists.some((list) => list.uri === use.uri)));
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

/** Part lists named by a description. At most 20 are followed. */
export function usesOf(document: LanguageDocument): readonly Use[] {
  const node = childOf(document.root, 'uses');
  if (node?.type !== 'list') return [];
  return node.items.slice(0, 20).flatMap((item, index) => (item?.type === 'scalar' && item.text !== '' ? [{ index, path: item.text, uri: resolve(item.text, document.uri) }] : []));
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
