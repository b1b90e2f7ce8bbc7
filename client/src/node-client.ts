/** The language server as a process of its own, spoken to over the channel that Node gives between processes. */
import type * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientId, clientName, clientOptions, startClient } from './client-options.ts';
import type { ServerStatus } from './server-status.ts';

export async function startNodeClient(context: vscode.ExtensionContext, status: ServerStatus): Promise<LanguageClient> {
  const server = { module: context.asAbsolutePath('dist/server-node.js'), transport: TransportKind.ipc };
  const client = new LanguageClient(clientId, clientName, { run: server, debug: server }, clientOptions());
  await startClient(client, status);
  return client;
}
