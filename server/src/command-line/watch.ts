import { statSync, watch, type FSWatcher } from 'node:fs';
import { dirname } from 'node:path';
import type { CheckOptions } from './check-options.ts';
import { setupFor, workersFor } from './check-setup.ts';
import { exitStatus, type ExitStatus } from './exit-status.ts';
import type { CheckedFile } from './file-checker.ts';
import type { Host } from './host.ts';
import { checkAll } from './pool.ts';
import { byPath, type Listing } from './read-machines.ts';
import { failureLine, sumUp, unmatchedLine } from './summary.ts';

/** An editor writes a file in several steps: what follows within this time belongs together. */
const SETTLE_MS = 120;

/** How often it is looked at files whose folder cannot be watched. */
const LOOK_MS = 2000;

type Known = Pick<CheckedFile, 'tally' | 'failures' | 'restsOn'> & { readonly signature: string };

/**
 * `axiswright check --watch`: checks, and then again whatever changed, until it is interrupted. Folders are watched, not files: editors put
 * new files in the place of old ones. What has changed is then told from the files themselves, so that no event need be relied on.
 */
export async function watchCheck(list: () => Promise<Listing>, options: CheckOptions, host: Host): Promise<ExitStatus> {
  const end = { came: false };
  const interrupted = host.untilInterrupted?.().then(() => {
    end.came = true;
  });
  const eye = new Eye();
  const known = new Map<string, Known>();
  let status: ExitStatus = exitStatus.passed;
  let told = '';
  while (!end.came) {
    const listing = await list();
    const round = await checkChanged(listing, known, options, host, () => end.came);
    eye.look(new Set([...listing.searched, ...[...known.values()].flatMap(({ restsOn }) => restsOn.map(dirname))]));
    const changed = round.changed || round.trouble !== told;
    if (changed && !end.came) {
      if (round.trouble !== told) host.complain(round.trouble);
      told = round.trouble;
      status = round.status;
      (options.format === 'lines' ? host.complain : host.print)(`${round.sentence}\n`);
      host.complain(`Watching ${listing.files.length} ${listing.files.length === 1 ? 'file' : 'files'}. Ctrl-C ends.\n`);
    }
    await Promise.race([interrupted ?? Promise.resolve(), eye.change()]);
    if (interrupted === undefined) break; // a host that cannot be interrupted would never end
  }
  eye.close();
  return status;
}

/** Checks the files that are new or have changed since the last round, and sums up all of them. */
async function checkChanged(listing: Listing, known: Map<string, Known>, options: CheckOptions, host: Host, stopped: () => boolean) {
  const setup = setupFor(listing, options, host);
  const { failOn, reader } = setup;
  const before = known.size;
  const there = new Set(listing.files);
  for (const file of known.keys()) if (!there.has(file)) known.delete(file);
  const signature = (own: string, restsOn: readonly string[]): string => [failOn, reader.today ?? '', own, ...restsOn.map(stateOf)].join('\n');
  const due = listing.files.filter((file) => known.get(file)?.signature !== signature(stateOf(file), known.get(file)?.restsOn ?? []));
  // Looked at before it is checked: what is written meanwhile is seen to in the next round.
  const states = due.map(stateOf);
  let at = 0;
  for await (const checked of checkAll(due, setup, { workers: workersFor(options, host), start: host.startWorker })) {
    if (stopped()) break;
    const [file, own] = [due[at] ?? '', states[at] ?? ''];
    at++;
    known.set(file, { ...(checked.tally ? { tally: checked.tally } : {}), failures: checked.failures, restsOn: checked.restsOn, signature: signature(own, checked.restsOn) });
    if (checked.screen !== '') host.print(checked.screen);
    for (const failure of checked.failures) host.complain(failureLine(failure));
    await host.breathe();
  }
  const all = listing.files.flatMap((file) => known.get(file) ?? []);
  const failures = [...listing.failures, ...all.flatMap((one) => one.failures)].sort(byPath);
  const allowNone = options.allowNone === true;
  const summary = sumUp(all.flatMap(({ tally }) => tally ?? []), { failures, unmatched: listing.unmatched }, failOn, allowNone);
  const trouble = [...listing.failures.map(failureLine), ...(allowNone ? [] : listing.unmatched.map((pattern) => unmatchedLine(pattern, listing.passedOver)))].join('');
  return { ...summary, trouble, changed: due.length > 0 || known.size < before };
}

/** What a file is known by: it changes whenever the file does. */
function stateOf(file: string): string {
  try {
    const { ino, size, mtimeMs, ctimeMs } = statSync(file);
    return `${file} ${ino} ${size} ${mtimeMs} ${ctimeMs}`;
  } catch {
    return `${file} none`;
  }
}

/** Watches folders, each by itself: what systems can do for whole trees differs. */
class Eye {
  readonly #watchers = new Map<string, FSWatcher>();
  #blind = false;
  #seen = false;
  #wake: (() => void) | undefined;

  look(folders: ReadonlySet<string>): void {
    for (const [folder, watcher] of this.#watchers) {
      if (folders.has(folder)) continue;
      watcher.close();
      this.#watchers.delete(folder);
    }
    for (const folder of folders) if (!this.#watchers.has(folder)) this.#watch(folder);
  }

  #watch(folder: string): void {
    try {
      const watcher = watch(folder, () => {
        this.#seen = true;
        this.#wake?.();
      });
      watcher.on('error', () => {
        watcher.close();
        this.#watchers.delete(folder);
        this.#blind = true;
      });
      this.#watchers.set(folder, watcher);
    } catch {
      // Too many folders for the system, or one that is gone: it is looked at from time to time instead.
      this.#blind = true;
    }
  }

  /** Waits until something may have changed, and nothing has for a moment. */
  async change(): Promise<void> {
    const timer = this.#blind ? setTimeout(() => this.#wake?.(), LOOK_MS) : undefined;
    await new Promise<void>((resolve) => {
      this.#wake = resolve;
      if (this.#seen) resolve();
    });
    clearTimeout(timer);
    do {
      this.#seen = false;
      await new Promise((resolve) => setTimeout(resolve, SETTLE_MS));
    } while (this.#wasSeen());
    this.#wake = undefined;
  }

  #wasSeen(): boolean {
    return this.#seen;
  }

  close(): void {
    for (const watcher of this.#watchers.values()) watcher.close();
    this.#watchers.clear();
  }
}
