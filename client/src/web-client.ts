/** The language server in a Web Worker, or, where workers are refused, in the extension host itself. */
import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { clientId, clientName, clientOptions, startClient } from './client-options.ts';
import { newWorker, ServerPort, type ServerWorker } from './server-port.ts';
import type { ServerStatus } from './server-status.ts';

export async function startWebClient(context: vscode.ExtensionContext, status: ServerStatus): Promise<LanguageClient> {
  const script = vscode.Uri.joinPath(context.extensionUri, 'dist/server-web.js');
  const text = async (): Promise<string> => new TextDecoder().decode(await vscode.workspace.fs.readFile(script));
  const connect = async () => {
    const port = await ServerPort.open(() => startWorker(script, text), text, (note) => client.info(note));
    return { reader: new BrowserMessageReader(port), writer: new BrowserMessageWriter(port) };
  };
  const client: LanguageClient = new LanguageClient(clientId, clientName, connect, clientOptions());
  await startClient(client, status);
  return client;
}

/** A page that has its extensions on a server refuses workers from there by their scheme; a blob of the same text is accepted. */
async function startWorker(script: vscode.Uri, text: () => Promise<string>): Promise<ServerWorker> {
  if (script.scheme !== 'vscode-remote') return newWorker(script.toString(true));
  return newWorker(URL.createObjectURL(new Blob([await text()], { type: 'text/javascript' })));
}
