/** The language server as a process of its own: `--stdio` for any editor, a channel between processes for our own extension. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { filesOnDisk } from './node-files.ts';
import { startServer } from './server.ts';

const usage = `The Axiswright language server. It is started by an editor and speaks the language server protocol.

  axiswright-language-server --stdio     over standard input and output
  axiswright-language-server --node-ipc  over the channel of a Node parent process
`;

/** Where the pages lie when the server runs from the package: beside the bundle's folder. */
const pages = join(__dirname, '..', 'server', 'docs', 'checks');

const known = new Map<string, string | undefined>();

function pageAddress(id: string): string | undefined {
  if (!known.has(id)) {
    const path = join(pages, `${id}.md`);
    known.set(id, /^[a-z0-9-]+$/.test(id) && existsSync(path) ? pathToFileURL(path).href : undefined);
  }
  return known.get(id);
}

if (process.argv.slice(2).some((argument) => /^--(?:stdio$|node-ipc$|socket\b|pipe\b)/.test(argument))) {
  const connection = createConnection(ProposedFeatures.all);
  // A slip that escapes every fence is told and survived; a client that is gone is not talked to any more.
  process.on('uncaughtException', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE' || error.code === 'ERR_STREAM_DESTROYED' || error.code === 'ERR_IPC_CHANNEL_CLOSED') process.exit(1);
    connection.console.error(`failed: ${error.message}`);
  });
  process.on('unhandledRejection', (reason) => connection.console.error(`failed: ${reason instanceof Error ? reason.message : String(reason)}`));
  process.on('disconnect', () => process.exit(1)); // the parent process has let go of its channel
  startServer(connection, { loadAnalysis: () => import('./analysis.ts'), files: filesOnDisk, pageAddress });
} else {
  const help = process.argv.includes('--help');
  (help ? process.stdout : process.stderr).write(usage);
  process.exitCode = help ? 0 : 2;
}
