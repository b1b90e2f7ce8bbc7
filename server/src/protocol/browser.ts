/** The language server in a Web Worker, or, where workers are refused, in the extension host with one end of a message channel as `self`. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import * as analysis from './analysis.ts';
import { startServer } from './server.ts';

/** The worker's own scope, or what the script is given in its place. */
declare const self: ConstructorParameters<typeof BrowserMessageReader>[0];

startServer(createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self)), {
  loadAnalysis: () => Promise.resolve(analysis),
  files: undefined,
  pageAddress: () => undefined,
});
