import { PositionEncodingKind, TextDocumentSyncKind, type ServerCapabilities } from 'vscode-languageserver';
import type { Client } from './client.ts';

/** The fix-all kind of ours: changes of spelling and units, never of the design. */
export const fixAllKind = 'source.fixAll.axiswright';

/** What the server offers to a client. */
export function offersTo(client: Client): ServerCapabilities {
  return {
    positionEncoding: PositionEncodingKind.UTF16,
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
    ...(client.pulls ? { diagnosticProvider: { identifier: 'axiswright', interFileDependencies: true, workspaceDiagnostics: false } } : {}),
    hoverProvider: true,
    ...(client.codeActionLiterals ? { codeActionProvider: { codeActionKinds: ['quickfix', fixAllKind], resolveProvider: client.resolvesEdits } } : {}),
    inlayHintProvider: { resolveProvider: true },
    documentSymbolProvider: { label: 'Axiswright' },
    definitionProvider: true,
    referencesProvider: true,
    documentLinkProvider: { resolveProvider: false },
    ...(client.workspaceFolders ? { workspace: { workspaceFolders: { supported: true, changeNotifications: true } } } : {}),
  };
}
