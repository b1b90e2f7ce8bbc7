import type { CancellationToken, Diagnostic as Message } from 'vscode-languageserver';
import { Appearing } from './appearing.ts';
import type { Client } from './client.ts';
import type { Documents, OpenDocument } from './documents.ts';
import type { Fence } from './fence.ts';
import { faultMessage, messageOf, type PageAddress } from './finding-messages.ts';
import { fingerprint } from './fingerprint.ts';
import type { Scheduler } from './scheduling.ts';
import type { SettingsByFile } from './settings.ts';

/** What was told of a text last. */
export interface Report {
  /** Changes when what is told does. */
  readonly resultId: string;
  readonly items: readonly Message[];
  /** Of the text and its part lists: `undefined` after a failure. */
  readonly revision: number;
}

/** What a report needs to know. */
export interface Reporting {
  readonly documents: Documents;
  readonly scheduler: Scheduler;
  readonly settings: SettingsByFile;
  readonly client: Client;
  readonly fence: Fence;
  readonly pageAddress: PageAddress;
}

/** Computes what is to be told of a text, whether the client fetches it or has it sent. One way for both. */
export class Reports {
  readonly #with: Reporting;
  readonly #told = new Map<OpenDocument, Report>();
  readonly #appearing = new WeakMap<OpenDocument, Appearing>();
  readonly #timers = new Map<OpenDocument, ReturnType<typeof setTimeout>>();
  /** Called when something was held back and it is time to look again. */
  readonly #again: (document: OpenDocument) => void;

  constructor(reporting: Reporting, again: (document: OpenDocument) => void) {
    this.#with = reporting;
    this.#again = again;
  }

  told(document: OpenDocument): Report | undefined {
    return this.#told.get(document);
  }

  /** The report of the newest version; undefined when the text is closed or the asker has given up. */
  async of(document: OpenDocument, token?: CancellationToken): Promise<Report | undefined> {
    const { settings, scheduler, documents, fence } = this.#with;
    const { findings } = await settings.of(document.uri);
    if (!documents.isOpen(document)) return undefined;
    const last = this.#told.get(document);
    if (findings === 'off' || document.deleted) return this.#keep(document, []);
    if (findings === 'save' && last && document.revision !== document.savedRevision) return last;
    try {
      const snapshot = await scheduler.latest(document, token);
      if (!snapshot) return undefined;
      return this.#keep(document, this.#select(document, snapshot));
    } catch (error) {
      fence.report(`analysis of ${nameOf(document.uri)}`, error);
      return documents.isOpen(document) ? this.#keep(document, [faultMessage]) : undefined;
    }
  }

  forget(document: OpenDocument): void {
    clearTimeout(this.#timers.get(document));
    this.#timers.delete(document);
    this.#told.delete(document);
  }

  #select(document: OpenDocument, snapshot: NonNullable<Awaited<ReturnType<Scheduler['latest']>>>): readonly Message[] {
    const { client, pageAddress } = this.#with;
    let appearing = this.#appearing.get(document);
    if (!appearing) this.#appearing.set(document, (appearing = new Appearing()));
    // A client that fetches and cannot be told to fetch again would never see what is held back.
    const editing = client.pulls && !client.refreshesFindings ? undefined : document.editing;
    const { shown, wait } = appearing.select(snapshot.diagnostics, snapshot.document.lines, editing, Date.now());
    clearTimeout(this.#timers.get(document));
    this.#timers.delete(document);
    if (wait !== undefined) this.#timers.set(document, setTimeout(() => this.#again(document), wait));
    return shown.map((diagnostic) => messageOf(diagnostic, snapshot, client, pageAddress));
  }

  #keep(document: OpenDocument, items: readonly Message[]): Report {
    const report = { items, resultId: fingerprint(JSON.stringify(items)), revision: document.revision };
    this.#told.set(document, report);
    return report;
  }
}

const nameOf = (uri: string): string => uri.slice(uri.lastIndexOf('/') + 1);
