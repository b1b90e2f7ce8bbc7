/** The extension in an extension host that is a Node process. */
import type * as vscode from 'vscode';
import { activateWith, type Server } from './extension.ts';

let server: Server | undefined;

export function activate(context: vscode.ExtensionContext): void {
  server = activateWith(context, async (...given) => (await import('./node-client.ts')).startNodeClient(...given));
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
