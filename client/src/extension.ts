/** What both kinds of extension host have in common: commands, pages, the status item, and a language server that is started once. */
import * as vscode from 'vscode';
import type { BaseLanguageClient, WorkspaceEdit } from 'vscode-languageclient';
import { acceptCommand, type Acceptance } from './accept.ts';
import { explainCommand, pageProvider, pageScheme, type PageReader } from './pages.ts';
import { languageId } from './documents.ts';
import { ServerStatus } from './server-status.ts';

/** Makes and starts the language client of one kind of host. */
export type ClientStarter = (context: vscode.ExtensionContext, status: ServerStatus) => Promise<BaseLanguageClient>;

/** The running language server, or the reason why there is none. */
export class Server implements PageReader {
  #client: Promise<BaseLanguageClient> | undefined;
  readonly #context: vscode.ExtensionContext;
  readonly #starter: ClientStarter;
  readonly #status: ServerStatus;

  constructor(context: vscode.ExtensionContext, starter: ClientStarter, status: ServerStatus) {
    this.#context = context;
    this.#starter = starter;
    this.#status = status;
  }

  /** The client, started at the first call. A start that failed is told in the status item and tried again at the next call. */
  start(): Promise<BaseLanguageClient> {
    if (this.#client === undefined) {
      this.#status.starting();
      this.#client = this.#starter(this.#context, this.#status);
      this.#client.catch((reason: unknown) => {
        this.#client = undefined;
        this.#status.failed(reason instanceof Error ? reason.message : String(reason));
      });
    }
    return this.#client;
  }

  async restart(): Promise<void> {
    const running = this.#client;
    this.#client = undefined;
    await (await running?.catch(() => undefined))?.dispose();
    await this.start();
  }

  async stop(): Promise<void> {
    const running = this.#client;
    this.#client = undefined;
    await (await running?.catch(() => undefined))?.dispose();
  }

  async showLog(): Promise<void> {
    (await this.start()).outputChannel.show(true);
  }

  /** Has the edit made that accepts a finding, and carries it out; false where the text no longer has the finding. */
  async accept(acceptance: Acceptance): Promise<boolean> {
    const client = await this.start();
    const answer = await client.sendRequest<{ edit: WorkspaceEdit } | null>('axiswright/accept', acceptance).catch(() => null);
    const edit = answer && (await client.protocol2CodeConverter.asWorkspaceEdit(answer.edit));
    return edit ? vscode.workspace.applyEdit(edit) : false;
  }

  async page(id: string): Promise<string | undefined> {
    const answer = await (await this.start()).sendRequest<{ markdown: string } | null>('axiswright/page', { id });
    return answer?.markdown;
  }
}

/** Registers what the extension contributes; the server starts with the first machine description that is open, and nothing here waits for it. */
export function activateWith(context: vscode.ExtensionContext, starter: ClientStarter): Server {
  const status = new ServerStatus();
  const server = new Server(context, starter, status);
  const startIfMachine = (document: vscode.TextDocument): void => {
    if (document.languageId === languageId) server.start().catch(() => undefined); // the status item tells
  };
  context.subscriptions.push(
    status,
    vscode.commands.registerCommand('axiswright.restartServer', () => server.restart()),
    vscode.commands.registerCommand('axiswright.showServerLog', () => server.showLog()),
    vscode.commands.registerCommand('axiswright.explainFinding', (id?: unknown) => explainCommand(id)),
    vscode.commands.registerCommand('axiswright.accept', (finding?: unknown, until?: unknown) => acceptCommand(finding, until, server, context.globalState)),
    vscode.workspace.registerTextDocumentContentProvider(pageScheme, pageProvider(server)),
    vscode.workspace.onDidOpenTextDocument(startIfMachine),
  );
  vscode.workspace.textDocuments.forEach(startIfMachine);
  return server;
}
