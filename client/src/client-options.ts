/** What the language client is told, the same in every kind of host, and what it answers to the server. */
import * as vscode from 'vscode';
import { CloseAction, ErrorAction, RevealOutputChannelOn, State, type BaseLanguageClient, type LanguageClientOptions } from 'vscode-languageclient';
import { documentSelector } from './documents.ts';
import { pageScheme } from './pages.ts';
import type { AnalysisReport, ServerStatus } from './server-status.ts';

export const clientId = 'axiswright';
export const clientName = 'Axiswright';

/** Restarts of a server that keeps ending are given up after so many in three minutes. */
const restarts = { most: 4, within: 3 * 60_000 };

export function clientOptions(): LanguageClientOptions {
  const ended: number[] = [];
  return {
    documentSelector,
    // What the server may use of this client: pages and the commands around them, boxes that ask for a reason, and files where it has no file system of its own.
    initializationOptions: { pages: pageScheme, readFile: true, askReason: true },
    outputChannelName: clientName,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    markdown: { isTrusted: { enabledCommands: ['axiswright.explainFinding'] }, supportHtml: false, supportThemeIcons: false },
    errorHandler: {
      error: () => ({ action: ErrorAction.Continue }),
      closed: () => {
        const now = Date.now();
        ended.push(now);
        const often = ended.filter((time) => now - time < restarts.within).length > restarts.most;
        return { action: often ? CloseAction.DoNotRestart : CloseAction.Restart, handled: true }; // the status item tells
      },
    },
    middleware: {
      handleDiagnostics: (uri, findings, next) => next(uri, findings.map(linkToPage)),
      provideDiagnostics: async (document, previous, token, next) => {
        const report = await next(document, previous, token);
        if (report !== null && report !== undefined && 'items' in report) report.items = report.items.map(linkToPage);
        return report;
      },
    },
  };
}

/** A finding's link leads to the preview of its page, not to its Markdown text. */
function linkToPage(finding: vscode.Diagnostic): vscode.Diagnostic {
  const { code } = finding;
  if (typeof code === 'object' && code.target.scheme === pageScheme) {
    const argument = encodeURIComponent(JSON.stringify([String(code.value)]));
    finding.code = { value: code.value, target: vscode.Uri.parse(`command:axiswright.explainFinding?${argument}`) };
  }
  return finding;
}

/** Starts a client that has been made and keeps the status item true. */
export async function startClient(client: BaseLanguageClient, status: ServerStatus): Promise<void> {
  client.onDidChangeState(({ newState }) => {
    if (newState === State.Starting) status.starting();
    else if (newState === State.Running) status.running();
    else status.stopped();
  });
  client.onNotification('axiswright/status', (report: AnalysisReport) => status.analysed(report));
  client.onRequest('axiswright/readFile', ({ uri }: { uri: string }) => readFile(vscode.Uri.parse(uri)));
  await client.start();
}

/** The text of a file inside the workspace, for a server that has no file system of its own; null for any other. */
async function readFile(uri: vscode.Uri): Promise<{ text: string } | null> {
  if (vscode.workspace.getWorkspaceFolder(uri) === undefined) return null;
  try {
    return { text: new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)) };
  } catch {
    return null;
  }
}
