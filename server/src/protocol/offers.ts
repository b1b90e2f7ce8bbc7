import type { ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import type { Client } from './client.ts';

/** Edits are sent, not whole texts. */
const incremental: typeof TextDocumentSyncKind.Incremental = 2;

/** The fix-all kind of ours: changes of spelling and units, never of the design. */
export const fixAllKind = 'source.fixAll.axiswright';

/** What the server offers to a client. */
export function offersTo(client: Client): ServerCapabilities {
  return {
    positionEncoding: 'utf-16',
    textDocumentSync: { openClose: true, change: incremental, save: { includeText: false } },
    ...(client.pulls ? { diagnosticProvider: { identifier: 'axiswright', interFileDependencies: true, workspaceDiagnostics: false } } : {}),
    hoverProvider: true,
    // A blank ends a key and a number: values and units are due behind it.
    completionProvider: { resolveProvider: true, triggerCharacters: [' '] },
    ...(client.codeActionLiterals ? { codeActionProvider: { codeActionKinds: ['quickfix', fixAllKind], resolveProvider: client.resolvesEdits } } : {}),
    inlayHintProvider: { resolveProvider: true },
    documentSymbolProvider: { label: 'Axiswright' },
    definitionProvider: true,
    referencesProvider: true,
    documentLinkProvider: { resolveProvider: false },
    ...(client.workspaceFolders ? { workspace: { workspaceFolders: { supported: true, changeNotifications: true } } } : {}),
  };
}
