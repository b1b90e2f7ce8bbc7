// A web workbench with no server behind the page: extensions run in a Web Worker and the folder lives in memory (the extension in memory-folder/).
// Every load of the page starts again from the folder on disk.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { readFile, readdir, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, extname, join, relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readZip } from '../../../server/tools/read-zip.mjs';
import { installWebWorkbench } from '../install/web-workbench.mjs';
import { settings } from './settings.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const types = {
  '.js': 'text/javascript', '.css': 'text/css', '.html': 'text/html', '.json': 'application/json', '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf', '.woff': 'font/woff', '.woff2': 'font/woff2', '.wasm': 'application/wasm', '.png': 'image/png',
};

/** The folder as the page gets it: path in the workspace to text. */
async function seed(folder) {
  const files = {};
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    files[`/machines/${relative(folder, path).split(sep).join('/')}`] = await readFile(path, 'utf8');
  }
  return files;
}

const pageHtml = `<!doctype html><html><head><meta charset="utf-8"><link rel="icon" href="data:,">
<link rel="stylesheet" href="/workbench/out/vs/workbench/workbench.web.main.css"></head><body aria-label="">
<script src="/workbench/out/vs/loader.js"></script><script src="/workbench/out/vs/webPackagePaths.js"></script>
<script>
  const at = location.origin + "/workbench";
  for (const name of Object.keys(self.webPackagePaths)) self.webPackagePaths[name] = at + "/node_modules/" + name + "/" + self.webPackagePaths[name];
  require.config({ baseUrl: at + "/out", paths: self.webPackagePaths });
</script>
<script src="/workbench/out/vs/workbench/workbench.web.main.nls.js"></script>
<script src="/workbench/out/vs/workbench/workbench.web.main.js"></script>
<script src="/workbench/out/vs/code/browser/workbench/workbench.js"></script></body></html>`;

/** @param {{ vsix: string }} options the packed extension: what is tested is what would be published */
export async function startWebHost({ vsix }) {
  const files = await installWebWorkbench();
  const { version } = JSON.parse(await readFile(join(files, 'package.json'), 'utf8')); // the extension's engines.vscode is held against this
  const unpacked = mkdtempSync(join(tmpdir(), 'axiswright-vsix-'));
  for (const file of readZip(await readFile(vsix))) {
    mkdirSync(dirname(join(unpacked, file.name)), { recursive: true });
    writeFileSync(join(unpacked, file.name), file.content());
  }
  const extensions = [join(here, 'memory-folder'), join(unpacked, 'extension')];

  const product = (host) => ({
    productConfiguration: {
      nameShort: 'Workbench under test', nameLong: 'Workbench under test', applicationName: 'code-oss', dataFolderName: '.workbench', version, enableTelemetry: false,
      webviewContentExternalBaseUrlTemplate: `http://${host}/workbench/out/vs/workbench/contrib/webview/browser/pre/`, // an outside host by default
    },
    folderUri: { scheme: 'memfs', path: '/machines' },
    additionalBuiltinExtensions: extensions.map((_, i) => ({ scheme: 'http', authority: host, path: `/extension/${i}` })),
    configurationDefaults: settings,
  });
  const inside = (base, path) => {
    const file = resolve(base, `.${path}`);
    if (!file.startsWith(base + sep)) throw new Error('outside');
    return file;
  };

  async function answer(path, host, folder) {
    if (path === '/') return ['text/html', pageHtml];
    if (path === '/product.json') return ['application/json', JSON.stringify(product(host))];
    if (path === '/seed.json') return ['application/json', JSON.stringify(await seed(folder))];
    if (path.endsWith('/webview/browser/pre/index.html')) {
      // A webview's frame insists on a host name of its own, and Chromium refuses it a service worker there: let it run on this host.
      const html = await readFile(inside(files, path.slice('/workbench'.length).replace('index.html', 'index-no-csp.html')), 'utf8');
      return ['text/html', html.replace('const hostname = location.hostname;', 'const hostname = location.hostname; if (new URL(parentOrigin).hostname === hostname) return start(parentOrigin);')];
    }
    const ofExtension = /^\/extension\/(\d+)(\/.*)$/.exec(path);
    const file = ofExtension ? inside(extensions[Number(ofExtension[1])], ofExtension[2]) : inside(files, path.replace(/^\/workbench/, ''));
    if (!(await stat(file)).isFile()) throw new Error('not a file');
    return [types[extname(file)] ?? 'application/octet-stream', await readFile(file)];
  }

  return {
    log: () => '',
    /** Opens a folder of fixtures. */
    async open(fixtures) {
      const folder = resolve(fixtures);
      const server = createServer((request, response) => {
        const path = decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname);
        answer(path, request.headers.host, folder).then(
          ([type, body]) => response.writeHead(200, { 'content-type': type, 'cache-control': 'no-store' }).end(body),
          () => response.writeHead(404).end(),
        );
      });
      await new Promise((done) => server.listen(0, '127.0.0.1', done));
      const close = () => new Promise((done) => {
        server.close(done);
        server.closeAllConnections();
      });
      return { url: `http://127.0.0.1:${server.address().port}/`, folder: undefined, close };
    },
    async stop() {
      rmSync(unpacked, { recursive: true, force: true });
    },
  };
}
