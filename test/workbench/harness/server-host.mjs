// A VS Code server on a free loopback port with a fresh profile and the packed extension installed. Each opening gets a copy of a folder.
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installServerWorkbench } from '../install/server-workbench.mjs';
import { settings } from './settings.mjs';

/**
 * @param {{ vsix: string, extension: string, inWebHost?: boolean, modern?: boolean }} options
 *   extension: publisher.name; inWebHost: force the extension into the page's Web Worker although a server is there
 */
export async function startServerHost({ vsix, extension, inWebHost = false, modern = false }) {
  const { node, main } = await installServerWorkbench({ modern });
  const top = mkdtempSync(join(tmpdir(), 'axiswright-workbench-'));
  for (const folder of ['user/User', 'extensions', 'home', 'folders']) mkdirSync(join(top, folder), { recursive: true });
  const all = inWebHost ? { ...settings, 'remote.extensionKind': { [extension]: ['web'] } } : settings;
  writeFileSync(join(top, 'user/User/settings.json'), JSON.stringify(all, null, 2));

  const args = [main, '--accept-server-license-terms', '--user-data-dir', join(top, 'user'), '--server-data-dir', join(top, 'server'), '--extensions-dir', join(top, 'extensions')];
  const env = { ...process.env, HOME: join(top, 'home'), EXTENSIONS_GALLERY: '{}' }; // no gallery of extensions: nothing is asked outside
  execFileSync(node, [...args, '--install-extension', vsix], { env, stdio: 'pipe' });

  const server = spawn(node, [...args, '--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--disable-telemetry', '--disable-workspace-trust'], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  let log = '';
  const port = await new Promise((done, fail) => {
    const listen = (chunk) => {
      log += chunk;
      const found = /agent listening on (\d+)/.exec(log);
      if (found) done(Number(found[1]));
    };
    server.stdout.on('data', listen);
    server.stderr.on('data', listen);
    server.on('exit', (code) => fail(new Error(`the workbench's server ended with ${code}\n${log}`)));
    setTimeout(() => fail(new Error(`the workbench's server did not start\n${log}`)), 60_000).unref();
  });

  let opened = 0;
  return {
    log: () => log,
    /** Opens a copy of a folder of fixtures. */
    async open(fixtures) {
      const folder = join(top, 'folders', String(++opened), 'machines');
      cpSync(fixtures, folder, { recursive: true });
      return { url: `http://127.0.0.1:${port}/?folder=${folder}`, folder, close: async () => undefined };
    },
    async stop() {
      const gone = new Promise((done) => server.once('exit', done));
      server.kill('SIGTERM');
      const impatience = setTimeout(() => server.kill('SIGKILL'), 5000);
      await gone;
      clearTimeout(impatience);
      rmSync(top, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}
