import type { Desk } from './desk.ts';
import { keyOf, OpenDocument } from './documents.ts';
import type { Files } from './files.ts';
import { changesIn, fieldAt, fieldsOf, listIn, textIn, uriIn } from './parameters.ts';
import type { Telling } from './telling.ts';

/** Notices of one change on the disk come in swarms. */
const SWARM = 50;

const DELETED = 3;

/** Follows what is open in the editor and what changes on the disk. */
export class Texts {
  readonly #desk: Desk;
  readonly #files: Files;
  readonly #telling: Telling;
  readonly #noticed = new Map<string, boolean>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(desk: Desk, files: Files, telling: Telling) {
    this.#desk = desk;
    this.#files = files;
    this.#telling = telling;
  }

  follow(): void {
    const { fence } = this.#desk;
    fence.notification('textDocument/didOpen', (params) => this.#opened(fieldsOf(params)['textDocument']));
    fence.notification('textDocument/didChange', (params) => this.#edited(params));
    fence.notification('textDocument/didSave', (params) => this.#saved(uriIn(params)));
    fence.notification('textDocument/didClose', (params) => this.#closed(uriIn(params)));
    fence.notification('workspace/didChangeWatchedFiles', (params) => this.#changedOnDisk(listIn(fieldsOf(params)['changes'])));
  }

  #opened(item: unknown): void {
    const { documents } = this.#desk;
    const uri = textIn(fieldsOf(item)['uri']);
    const text = textIn(fieldsOf(item)['text']);
    if (uri === undefined || text === undefined) throw new Error('the notification names no text');
    // Opened twice without being closed: the client says what holds now.
    this.#closed(uri);
    const version = fieldsOf(item)['version'];
    const document = new OpenDocument(uri, textIn(fieldsOf(item)['languageId']) ?? '', typeof version === 'number' ? version : 0, text);
    documents.add(document);
    this.#telling.changed(document);
    this.#listChanged(uri);
  }

  #edited(params: unknown): void {
    const { documents } = this.#desk;
    const uri = uriIn(params);
    const document = uri === undefined ? undefined : documents.get(uri);
    const changes = changesIn(params);
    if (uri === undefined || !document) throw new Error('the text is not open');
    if (!changes) throw new Error('the change is malformed; the text is not what the editor shows until it is opened again');
    const version = fieldAt(params, 'textDocument', 'version');
    document.change(changes, typeof version === 'number' ? version : document.version + 1, Date.now());
    this.#telling.changed(document);
    this.#listChanged(uri);
  }

  #saved(uri: string | undefined): void {
    const document = this.#desk.documents.description(uri);
    if (!document) return;
    document.savedRevision = document.revision;
    document.deleted = false;
    this.#lookAgain(document);
    this.#telling.saved(document);
  }

  #closed(uri: string | undefined): void {
    const { documents, scheduler, settings } = this.#desk;
    const document = uri === undefined ? undefined : documents.remove(uri);
    if (!document) return;
    this.#telling.gone(document);
    scheduler.forget(document);
    settings.forget(document.uri);
    this.#listChanged(document.uri); // what is on the disk counts again
  }

  /** A client that watches no files for us may have had them changed behind our back. */
  #lookAgain(document: OpenDocument): void {
    const { client, scheduler } = this.#desk;
    if (!client.watchesFiles) for (const list of scheduler.listsOf(document)) this.#files.changed(list);
  }

  #changedOnDisk(changes: readonly unknown[]): void {
    for (const change of changes) {
      const uri = textIn(fieldsOf(change)['uri']);
      if (uri !== undefined) this.#noticed.set(uri, fieldsOf(change)['type'] === DELETED);
    }
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined;
      const noticed = [...this.#noticed];
      this.#noticed.clear();
      this.#desk.fence.run('changes on the disk', () => noticed.forEach(([uri, deleted]) => this.#noticedOnDisk(uri, deleted)));
    }, SWARM);
  }

  #noticedOnDisk(uri: string, deleted: boolean): void {
    const document = this.#desk.documents.description(uri);
    if (document && document.deleted !== deleted) {
      document.deleted = deleted;
      this.#telling.reconsider([document]);
    }
    this.#listChanged(uri);
  }

  /** Tells what the change of a part list does to the machines that name it. */
  #listChanged(uri: string): void {
    const { documents, scheduler } = this.#desk;
    const key = keyOf(uri);
    const users = documents.descriptions.filter((document) => scheduler.listsOf(document).some((list) => keyOf(list) === key));
    if (users.length === 0) return;
    this.#files.changed(uri);
    this.#telling.reconsider(users);
  }
}
