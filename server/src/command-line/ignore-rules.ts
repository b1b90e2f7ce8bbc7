import { existsSync, lstatSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import ignore, { type Ignore } from 'ignore';
import type { Failure } from './find-files.ts';
import { readText } from './read-text.ts';
import { settingsIn } from './settings-files.ts';

/** A file of our own with patterns in the syntax of .gitignore. */
export const ignoreFile = '.axiswrightignore';

/** Stars in one part of a pattern, and `**` in a whole one, at most: trying how they fit takes a power of their number. */
const MOST_STARS = 3;

/**
 * Which files and folders a search passes over. In every folder from the top of the repository down (without one, from the folder that is
 * searched) count, the later before the earlier: .gitignore, `ignore` of the settings, .axiswrightignore. A deeper folder counts before a
 * higher one. Whoever searches must not enter a folder that is ignored: what is in it cannot be taken back.
 */
export class IgnoreRules {
  readonly #top: string;
  readonly #levels = new Map<string, Ignore | undefined>();

  constructor(base: string, current: string, readonly failed: (file: string, message: Failure['message']) => void) {
    const repository = topOfRepository(base);
    const top = repository ?? (isBelow(base, current) ? current : base);
    this.#top = top;
    // Whoever names a folder that is ignored wants it searched: only what is inside of it counts then.
    for (let folder = base; folder !== top; folder = dirname(folder)) {
      if (!this.ignores(folder, true)) continue;
      this.#top = base;
      break;
    }
  }

  ignores(path: string, isFolder: boolean): boolean {
    for (let folder = dirname(path); ; folder = dirname(folder)) {
      const answer = this.#level(folder)?.test(`${relative(folder, path).split(sep).join('/')}${isFolder ? '/' : ''}`);
      if (answer?.ignored === true) return true;
      if (answer?.unignored === true || folder === this.#top || dirname(folder) === folder) return false;
    }
  }

  #level(folder: string): Ignore | undefined {
    if (!this.#levels.has(folder)) this.#levels.set(folder, this.#read(folder));
    return this.#levels.get(folder);
  }

  #read(folder: string): Ignore | undefined {
    const settings = settingsIn(folder);
    const rules = [...this.#lines(join(folder, '.gitignore')), ...(settings?.ignore ?? []), ...this.#lines(join(folder, ignoreFile))].filter((line) => !isWild(line));
    return rules.length === 0 ? undefined : ignore().add(rules);
  }

  #lines(file: string): readonly string[] {
    if (lstatSync(file, { throwIfNoEntry: false })?.isFile() !== true) return [];
    const reading = readText(file, [dirname(file)]);
    if ('failure' in reading) {
      this.failed(file, reading.failure);
      return [];
    }
    const lines = reading.text.split(/\r?\n/);
    const wild = lines.findIndex(isWild);
    if (wild >= 0) this.failed(file, `has a pattern in line ${wild + 1} with more stars than can be tried; it is left out`);
    return lines;
  }
}

const isWild = (pattern: string): boolean =>
  (pattern.match(/\*\*/g)?.length ?? 0) > MOST_STARS || pattern.split('/').some((part) => (part.match(/\*+/g)?.length ?? 0) > MOST_STARS);

/** The nearest folder upwards that git keeps; undefined without one. */
function topOfRepository(folder: string): string | undefined {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, '.git'))) return at;
    if (dirname(at) === at) return undefined;
  }
}

const isBelow = (path: string, folder: string): boolean => path === folder || path.startsWith(folder.endsWith(sep) ? folder : folder + sep);
