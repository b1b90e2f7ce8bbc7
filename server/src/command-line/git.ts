import { spawnSync } from 'node:child_process';
import { existsSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { decode, MAX_BYTES, type Reading } from './read-text.ts';

/** What `git` answered, or why it did not, as a sentence without its full stop. */
type Answer = { readonly bytes: Buffer } | { readonly failure: string };

/** Lists of a whole repository are long, but not endless. */
const MAX_LIST_BYTES = 256_000_000;

/**
 * Runs git without a shell, so that no character of an argument has a meaning of its own. It asks nothing, writes nothing,
 * starts no pager and no helper that a repository could name.
 */
function git(folder: string, args: readonly string[], env: Readonly<Record<string, string | undefined>>, most = MAX_LIST_BYTES): Answer {
  const { error, status, stdout, stderr } = spawnSync('git', ['--no-pager', '--no-optional-locks', '-c', 'core.fsmonitor=false', ...args], {
    cwd: folder,
    env: { ...env, LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0', GIT_LITERAL_PATHSPECS: '1', GIT_NO_LAZY_FETCH: '1' },
    maxBuffer: most,
    stdio: ['ignore', 'pipe', 'pipe'],
    windowsHide: true,
    timeout: 60_000,
  });
  if (error && 'code' in error) {
    if (error.code === 'ENOENT') return { failure: 'git is not installed, or not on the path' };
    if (error.code === 'ENOBUFS') return { failure: `is larger than ${most / 1_000_000} MB` };
    if (error.code === 'ETIMEDOUT') return { failure: 'git did not answer within a minute' };
  }
  if (error) return { failure: `git could not be started (${error.message})` };
  if (status === 0) return { bytes: stdout };
  const said = stderr.toString('utf8').split('\n').find((line) => line.trim() !== '') ?? `exit status ${status ?? 'none'}`;
  return { failure: `git says: ${said.replace(/^(?:fatal|error): /, '').replace(/\.$/, '')}` };
}

/** The texts of a repository at one commit, or as they are staged. Nothing is checked out. */
export class GitTree {
  private constructor(
    /** The top of the repository. */
    readonly top: string,
    /** As it was asked for: `HEAD~2`; `index` for what is staged. */
    readonly revision: string,
    readonly env: Readonly<Record<string, string | undefined>>,
    /** Path from the top, with forward slashes, to the kind of entry and its object. */
    readonly entries: ReadonlyMap<string, { readonly mode: string; readonly object: string }>,
  ) {}

  /** The tree of a revision of the repository in which a folder lies; `index` is what is staged. */
  static open(folder: string, revision: string, env: Readonly<Record<string, string | undefined>>): GitTree | { readonly failure: string } {
    const top = git(folder, ['rev-parse', '--show-toplevel'], env);
    if ('failure' in top) return { failure: /not a git repository/i.test(top.failure) ? 'This folder is in no git repository' : top.failure };
    const path = realpathSync(top.bytes.toString('utf8').replace(/\r?\n$/, ''));
    const listed = revision === 'index' ? git(path, ['ls-files', '--stage', '--full-name', '-z'], env) : listOf(path, revision, env);
    if ('failure' in listed) return listed;
    const entries = new Map<string, { readonly mode: string; readonly object: string }>();
    for (const line of listed.bytes.toString('utf8').split('\0')) {
      // "MODE OBJECT STAGE\tPATH" of the index, "MODE TYPE OBJECT\tPATH" of a commit.
      const match = /^(\d+) (?:(?:blob|tree|commit) )?([0-9a-f]{40,64})(?: (\d))?\t(.+)$/s.exec(line);
      const [, mode, object, stage, name] = match ?? [];
      // A path with a conflict has several stages; 2 is our own side.
      if (mode !== undefined && object !== undefined && name !== undefined && (stage === undefined || stage === '0' || stage === '2')) entries.set(name, { mode, object });
    }
    return new GitTree(path, revision, env, entries);
  }

  /** The path from the top that a file of the disk has here; undefined where it lies outside of the repository. */
  nameOf(file: string): string | undefined {
    const name = relative(this.top, realWhereThere(file)).split(sep).join('/');
    return name === '' || name === '..' || name.startsWith('../') || resolve(this.top, name) !== join(this.top, name) ? undefined : name;
  }

  has(file: string): boolean {
    const name = this.nameOf(file);
    return name !== undefined && this.entries.has(name);
  }

  /** The text of a file as it was; undefined where there was none. */
  read(file: string): Reading | undefined {
    const name = this.nameOf(file);
    const entry = name === undefined ? undefined : this.entries.get(name);
    if (!entry) return undefined;
    if (entry.mode === '120000') return { failure: `is a link ${this.title}; it is not followed there` };
    if (!entry.mode.startsWith('100')) return { failure: `is not an ordinary file ${this.title}` };
    const shown = git(this.top, ['show', '--no-textconv', '--no-ext-diff', entry.object], this.env, MAX_BYTES);
    return 'failure' in shown ? { failure: shown.failure.startsWith('is ') ? shown.failure : `cannot be read ${this.title} (${shown.failure})` } : decode(shown.bytes);
  }

  /** For sentences about one of its files: `at HEAD~2`. */
  get title(): string {
    return this.revision === 'index' ? 'in what is staged' : `at ${this.revision}`;
  }

  /** Absolute paths of everything that there is below a folder (or at a file). */
  filesBelow(folder: string): readonly string[] {
    // A link to a folder means that folder; a link to a file is an entry of its own.
    const real = statSync(folder, { throwIfNoEntry: false })?.isDirectory() === true ? realpathSync(folder) : realWhereThere(folder);
    const base = real === this.top ? '' : this.nameOf(real);
    if (base === undefined) return [];
    return [...this.entries.keys()].filter((name) => base === '' || name === base || name.startsWith(`${base}/`)).map((name) => join(folder, relative(base === '' ? '.' : base, name)));
  }
}

/** Everything of a commit, a line each. What is asked for is first resolved to the hash of a commit, so that nothing of it reaches git as an option or a path. */
function listOf(top: string, revision: string, env: Readonly<Record<string, string | undefined>>): Answer {
  const flaw = revisionFlaw(revision);
  if (flaw !== undefined) return { failure: flaw };
  const commit = git(top, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`], env);
  const hash = 'bytes' in commit ? commit.bytes.toString('utf8').trim() : '';
  // Before the first commit HEAD names a branch that is not there yet: it holds nothing.
  if (hash === '' && revision === 'HEAD' && 'bytes' in git(top, ['symbolic-ref', '--quiet', 'HEAD'], env)) return { bytes: Buffer.alloc(0) };
  // Before the first commit HEAD is a branch that is not born yet: there was nothing.
  if (hash === '' && revision === 'HEAD' && 'bytes' in git(top, ['symbolic-ref', '--quiet', 'HEAD'], env)) return { bytes: Buffer.alloc(0) };
  if (!/^[0-9a-f]{40,64}$/.test(hash)) return { failure: `There is no revision "${revision}" in this repository` };
  return git(top, ['ls-tree', '-r', '-z', '--full-tree', hash], env);
}

/** Why a text can be no revision; undefined where it may be one. */
export function revisionFlaw(revision: string): string | undefined {
  if (revision === '') return 'A revision is missing: name a commit, a branch or a tag';
  if (revision.startsWith('-')) return `"${revision}" is no revision: it begins like an option`;
  if (/[\u0000-\u0020\u007f:?*[\\]/.test(revision)) return `"${revision}" is no revision: name one commit, branch or tag`;
  return undefined;
}

/** The real path as far as it exists: a file that was deleted still has a folder. */
function realWhereThere(file: string): string {
  let there = resolve(file);
  let rest = '';
  while (!existsSync(there) && dirname(there) !== there) {
    rest = join(basename(there), rest);
    there = dirname(there);
  }
  try {
    // The last part may be a link that is compared as such; its folders are what is resolved.
    return rest === '' ? join(realpathSync(dirname(there)), dirname(there) === there ? '' : basename(there)) : join(realpathSync(there), rest);
  } catch {
    return resolve(file);
  }
}

/** The nearest folder that exists, upwards from a path. */
export function nearestFolder(path: string, isFolder: (path: string) => boolean): string {
  let folder = resolve(path);
  while (!isFolder(folder) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}
