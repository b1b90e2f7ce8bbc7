import { TextDocument } from 'vscode-languageserver-textdocument';
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';

/** The language of our files. */
export const languageId = 'axiswright-machine';

/** Lines that the last change touched, and when it came. */
export interface Editing {
  readonly lines: readonly { readonly first: number; readonly last: number }[];
  /** Milliseconds, as `Date.now` counts. */
  readonly at: number;
}

/** A text that is open in the editor. */
export class OpenDocument {
  readonly uri: string;
  readonly languageId: string;
  /** The client's count, given back to it with findings and edits. */
  version: number;
  /** Our own count of changes, which no client can get wrong. */
  revision = 0;
  /** The revision that was opened or saved last. */
  savedRevision = 0;
  editing: Editing | undefined;
  /** Gone from the disk and not touched since. */
  deleted = false;
  #document: TextDocument;

  constructor(uri: string, language: string, version: number, text: string) {
    this.uri = uri;
    this.languageId = language;
    this.version = version;
    this.#document = TextDocument.create(uri, language, version, text);
  }

  get text(): string {
    return this.#document.getText();
  }

  /** Whether it is a file of ours, a description or settings: by its language, or, in editors that know no such language, by its name. */
  get isDescription(): boolean {
    return this.languageId === languageId || (this.languageId === 'yaml' && isDescriptionName(this.uri));
  }

  change(changes: readonly TextDocumentContentChangeEvent[], version: number, now: number): void {
    const lines: { first: number; last: number }[] = [];
    for (const change of changes) {
      this.#document = TextDocument.update(this.#document, [change], version);
      if ('range' in change) lines.push({ first: Math.min(change.range.start.line, change.range.end.line), last: Math.min(change.range.start.line, change.range.end.line) + lineEnds(change.text) });
    }
    this.version = version;
    this.revision++;
    this.deleted = false;
    // A text replaced as a whole is not being typed.
    this.editing = lines.length > 0 ? { lines, at: now } : undefined;
  }
}

const lineEnds = (text: string): number => text.match(/\r\n|\n|\r/g)?.length ?? 0;

const isDescriptionName = (uri: string): boolean => /\.(?:machine|parts)\.ya?ml$/i.test(uri) || uri.endsWith('/axiswright.yaml');

/** One name for all spellings of the address of a file: editors and servers escape different characters. */
export function keyOf(uri: string): string {
  const plain = decoded(uri);
  return plain.replace(/^file:\/\/\/([A-Za-z]):/, (_, drive: string) => `file:///${drive.toLowerCase()}:`);
}

function decoded(uri: string): string {
  try {
    return decodeURIComponent(uri);
  } catch {
    return uri;
  }
}

/** The open texts, found by any spelling of their address. */
export class Documents {
  readonly #open = new Map<string, OpenDocument>();

  get(uri: string): OpenDocument | undefined {
    return this.#open.get(keyOf(uri));
  }

  /** Descriptions only: a text of another language concerns nobody here. */
  description(uri: string | undefined): OpenDocument | undefined {
    const document = uri === undefined ? undefined : this.get(uri);
    return document?.isDescription === true ? document : undefined;
  }

  get descriptions(): readonly OpenDocument[] {
    return [...this.#open.values()].filter((document) => document.isDescription);
  }

  add(document: OpenDocument): void {
    this.#open.set(keyOf(document.uri), document);
  }

  remove(uri: string): OpenDocument | undefined {
    const document = this.get(uri);
    this.#open.delete(keyOf(uri));
    return document;
  }

  isOpen(document: OpenDocument): boolean {
    return this.get(document.uri) === document;
  }
}
