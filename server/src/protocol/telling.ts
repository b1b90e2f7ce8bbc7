import type { Diagnostic as Message, DocumentDiagnosticReport, PublishDiagnosticsParams } from 'vscode-languageserver';
import type { Desk } from './desk.ts';
import type { OpenDocument } from './documents.ts';
import type { Hints } from './hint-answers.ts';
import { fieldsOf, textIn, uriIn } from './parameters.ts';
import { Reports } from './reporting.ts';
import { statusOf, type Status } from './status.ts';

/** The status is told when nothing has been told for so long, in milliseconds. */
const STATUS_PAUSE = 200;

/** What the server says of its own accord. */
export interface Outbox {
  publish(params: PublishDiagnosticsParams): Promise<void>;
  /** Asks the client to fetch the findings of every open text again. */
  refreshFindings(): Promise<void>;
  refreshHints(): Promise<void>;
  status(status: Status): Promise<void>;
}

/** Tells the client the findings: when it fetches them, or of our own accord to a client that does not fetch. Never both. */
export class Telling {
  readonly #desk: Desk;
  readonly #hints: Hints;
  readonly #outbox: Outbox;
  readonly #reports: Reports;
  /** What was sent last, by text: version and result. */
  readonly #sent = new Map<OpenDocument, string>();
  #status = '';
  #statusTimer: ReturnType<typeof setTimeout> | undefined;

  constructor(desk: Desk, hints: Hints, outbox: Outbox) {
    this.#desk = desk;
    this.#hints = hints;
    this.#outbox = outbox;
    this.#reports = new Reports(desk, (document) => this.#again(document));
  }

  answer(): void {
    const { fence, client, documents } = this.#desk;
    if (!client.pulls) return;
    fence.request<DocumentDiagnosticReport>('textDocument/diagnostic', full([]), async (params, token) => {
      const document = documents.description(uriIn(params));
      const report = document && (await this.#reports.of(document, token));
      this.#tellStatus();
      if (!report) return full([]);
      const { resultId, items } = report;
      return textIn(fieldsOf(params)['previousResultId']) === resultId ? { kind: 'unchanged', resultId } : { ...full(items), resultId };
    });
  }

  /** A text was opened, edited or saved: a client that fetches will do so by itself. */
  changed(document: OpenDocument): void {
    if (document.isDescription && !this.#desk.client.pulls) this.#publish(document);
  }

  /** A text was saved. Where findings come with saving, a client that fetches may not think of it. */
  saved(document: OpenDocument): void {
    if (this.#desk.client.pulls) this.reconsider([document]);
    else this.changed(document);
  }

  /** A text is not there any more, and neither are its findings. */
  gone(document: OpenDocument): void {
    this.#reports.forget(document);
    const sent = this.#sent.delete(document);
    if (sent) this.#desk.fence.run('clearing', () => this.#outbox.publish({ uri: document.uri, diagnostics: [] }));
    this.#tellStatus();
  }

  /** Something else than these texts has changed: tells what that changes in them, and nothing where it changes nothing. */
  reconsider(documents: readonly OpenDocument[]): void {
    const { client, fence } = this.#desk;
    const ours = documents.filter((document) => document.isDescription);
    if (ours.length === 0) return;
    if (!client.pulls) ours.forEach((document) => this.#publish(document));
    fence.run('reconsidering', async () => {
      const findings = client.pulls && client.refreshesFindings && (await anyOf(ours, (document) => this.#differs(document)));
      if (findings) fence.run('refresh of findings', () => this.#outbox.refreshFindings());
      const hints = client.refreshesHints && (await anyOf(ours, (document) => this.#hints.differ(document)));
      if (hints) fence.run('refresh of hints', () => this.#outbox.refreshHints());
    });
  }

  /** Whether what the client fetched last is not true any more. */
  async #differs(document: OpenDocument): Promise<boolean> {
    const before = this.#reports.told(document);
    const now = await this.#reports.of(document);
    return before !== undefined && now !== undefined && now.resultId !== before.resultId;
  }

  #again(document: OpenDocument): void {
    const { client, fence } = this.#desk;
    if (client.pulls) fence.run('refresh of findings', () => this.#outbox.refreshFindings());
    else this.#publish(document);
  }

  #publish(document: OpenDocument): void {
    const { fence, documents } = this.#desk;
    fence.run('findings', async () => {
      const report = await this.#reports.of(document);
      // What was found in an older version would stand at the wrong places.
      if (!report || !documents.isOpen(document) || report.revision !== document.revision) return;
      const sent = `${document.revision} ${report.resultId}`;
      if (this.#sent.get(document) === sent) return;
      this.#sent.set(document, sent);
      await this.#outbox.publish({ uri: document.uri, version: document.version, diagnostics: [...report.items] });
      this.#tellStatus();
    });
  }

  /** Counts what is known of the open texts when the typing pauses, for our own extension, which shows it. */
  #tellStatus(): void {
    if (!this.#desk.client.pages) return;
    clearTimeout(this.#statusTimer);
    this.#statusTimer = setTimeout(() => this.#countStatus(), STATUS_PAUSE);
  }

  #countStatus(): void {
    const { scheduler, documents, fence } = this.#desk;
    const analysis = scheduler.loaded;
    if (!analysis) return;
    fence.run('status', async () => {
      const status = statusOf(documents.descriptions.flatMap((document) => scheduler.known(document) ?? []), analysis);
      const told = `${status.checks} ${status.findings}`;
      if (told === this.#status) return;
      this.#status = told;
      await this.#outbox.status(status);
    });
  }
}

const full = (items: readonly Message[]): { kind: 'full'; items: Message[] } => ({ kind: 'full', items: [...items] });

/** Asks all of them, so that each is brought up to date, and tells whether one said yes. */
async function anyOf<T>(items: readonly T[], ask: (item: T) => Promise<boolean>): Promise<boolean> {
  const answers = await Promise.all(items.map(ask));
  return answers.includes(true);
}
