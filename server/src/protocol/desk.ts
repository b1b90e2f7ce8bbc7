import type { CancellationToken } from 'vscode-languageserver';
import type { Snapshot } from '../services/snapshot.ts';
import type { Client } from './client.ts';
import type { Documents, OpenDocument } from './documents.ts';
import type { Fence } from './fence.ts';
import type { PageAddress } from './finding-messages.ts';
import { fieldsOf, positionIn, uriIn } from './parameters.ts';
import type { Analysis, Scheduler } from './scheduling.ts';
import type { SettingsByFile } from './settings.ts';

/** A text that somebody asks about, as it is now. */
export interface Asked {
  readonly document: OpenDocument;
  readonly snapshot: Snapshot;
  readonly analysis: Analysis;
  /** Whether the text is still the one that was asked about: places in it mean what the asker meant. */
  readonly fresh: boolean;
}

/** What every answer needs. */
export class Desk {
  readonly documents: Documents;
  readonly scheduler: Scheduler;
  readonly settings: SettingsByFile;
  readonly client: Client;
  readonly fence: Fence;
  readonly pageAddress: PageAddress;

  constructor(parts: Pick<Desk, 'documents' | 'scheduler' | 'settings' | 'client' | 'fence' | 'pageAddress'>) {
    this.documents = parts.documents;
    this.scheduler = parts.scheduler;
    this.settings = parts.settings;
    this.client = parts.client;
    this.fence = parts.fence;
    this.pageAddress = parts.pageAddress;
  }

  /** The text that a request names; undefined when it is none of ours, closed, or nobody waits for the answer any more. */
  async open(uri: string | undefined, token: CancellationToken): Promise<Asked | undefined> {
    const document = this.documents.description(uri);
    if (!document) return undefined;
    const { revision } = document;
    const snapshot = await this.scheduler.latest(document, token);
    return snapshot && { document, snapshot, analysis: await this.scheduler.analysis(), fresh: document.revision === revision };
  }

  /** The same with the offset of the request's position; undefined as well when the position is malformed. */
  async at(params: unknown, token: CancellationToken): Promise<(Asked & { readonly offset: number }) | undefined> {
    const position = positionIn(fieldsOf(params)['position']);
    const asked = position && (await this.open(uriIn(params), token));
    return asked && { ...asked, offset: asked.snapshot.document.lines.offsetAt(position) };
  }
}
