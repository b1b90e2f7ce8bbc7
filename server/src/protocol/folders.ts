import { fieldsOf, listIn, textIn } from './parameters.ts';

/** The folders that the person has opened: only what lies inside is read. */
export class Folders {
  #folders: readonly string[];
  /** Addresses of the open descriptions: where no folder is open, each one's own folder counts. */
  openTexts: () => readonly string[] = () => [];

  /** @param params of `initialize` */
  constructor(params: unknown) {
    const { workspaceFolders, rootUri } = fieldsOf(params);
    const named = urisIn(workspaceFolders);
    const root = textIn(rootUri);
    this.#folders = named.length > 0 || root === undefined ? named : [root];
  }

  get all(): readonly string[] {
    return this.#folders.length > 0 ? this.#folders : this.openTexts().flatMap((uri) => folderOf(uri) ?? []);
  }

  /** @param event the folders that came and went */
  changed(event: unknown): void {
    const removed = urisIn(fieldsOf(event)['removed']);
    this.#folders = [...new Set([...this.#folders.filter((folder) => !removed.includes(folder)), ...urisIn(fieldsOf(event)['added'])])];
  }
}

const urisIn = (folders: unknown): readonly string[] => listIn(folders).flatMap((folder) => textIn(fieldsOf(folder)['uri']) ?? []);

function folderOf(uri: string): string | undefined {
  try {
    return new URL('.', uri).href;
  } catch {
    return undefined; // a text without a file
  }
}
