// A file system held in memory for the web workbench under test, filled from /seed.json: { "/machines/a.machine.yaml": "text" }.
const vscode = require('vscode');

exports.activate = async (context) => {
  const origin = `${context.extensionUri.scheme}://${context.extensionUri.authority}`;
  const files = new Map(); // path to { data, ctime, mtime }
  const folders = new Set(['/']);
  const changed = new vscode.EventEmitter();

  const makeParents = (path) => {
    for (let folder = path; (folder = folder.slice(0, folder.lastIndexOf('/')) || '/') && !folders.has(folder); ) folders.add(folder);
  };
  const put = (path, data) => {
    files.set(path, { data, ctime: files.get(path)?.ctime ?? Date.now(), mtime: Date.now() });
    makeParents(path);
  };
  const missing = (uri) => vscode.FileSystemError.FileNotFound(uri);
  const tell = (type, uri) => changed.fire([{ type, uri }]);
  const plain = (path) => path.replace(/(.)\/$/, '$1');

  for (const [path, text] of Object.entries(await (await fetch(`${origin}/seed.json`)).json())) put(path, new TextEncoder().encode(text));

  const provider = {
    onDidChangeFile: changed.event,
    watch: () => new vscode.Disposable(() => undefined),
    stat(uri) {
      const file = files.get(uri.path);
      if (file) return { type: vscode.FileType.File, ctime: file.ctime, mtime: file.mtime, size: file.data.length };
      if (folders.has(plain(uri.path))) return { type: vscode.FileType.Directory, ctime: 0, mtime: 0, size: 0 };
      throw missing(uri);
    },
    readDirectory(uri) {
      if (!folders.has(plain(uri.path))) throw missing(uri);
      const base = uri.path === '/' ? '/' : `${plain(uri.path)}/`;
      const direct = (path) => path !== '/' && path.startsWith(base) && !path.slice(base.length).includes('/');
      const named = (paths, type) => [...paths].filter(direct).map((path) => [path.slice(base.length), type]);
      return [...named(folders, vscode.FileType.Directory), ...named(files.keys(), vscode.FileType.File)];
    },
    createDirectory(uri) {
      makeParents(`${uri.path}/x`);
      tell(vscode.FileChangeType.Created, uri);
    },
    readFile(uri) {
      const file = files.get(uri.path);
      if (!file) throw missing(uri);
      return file.data;
    },
    writeFile(uri, data, options) {
      const had = files.has(uri.path);
      if (!had && !options.create) throw missing(uri);
      if (had && options.create && !options.overwrite) throw vscode.FileSystemError.FileExists(uri);
      put(uri.path, data);
      tell(had ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created, uri);
    },
    delete(uri) {
      for (const path of [...files.keys()]) if (path === uri.path || path.startsWith(`${uri.path}/`)) files.delete(path);
      for (const path of [...folders]) if (path === uri.path || path.startsWith(`${uri.path}/`)) folders.delete(path);
      tell(vscode.FileChangeType.Deleted, uri);
    },
    rename(from, to) {
      const file = files.get(from.path);
      if (!file) throw missing(from);
      files.delete(from.path);
      put(to.path, file.data);
      tell(vscode.FileChangeType.Deleted, from);
      tell(vscode.FileChangeType.Created, to);
    },
  };
  context.subscriptions.push(vscode.workspace.registerFileSystemProvider('memfs', provider, { isCaseSensitive: true }));
};
