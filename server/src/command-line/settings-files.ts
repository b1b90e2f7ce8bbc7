import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { settingsIn as readSettings, settingsName, type RepositorySettings } from '../services/repository-settings.ts';
import { isInside, readText } from './read-text.ts';

/** Where settings may lie that hold for a file: in its folder and those above it, the nearest first, as far as they lie in one of `within`. */
export function settingsNear(file: string | undefined, within: readonly string[]): readonly string[] {
  const found: string[] = [];
  if (file === undefined) return found;
  for (let folder = dirname(file); isInside(folder, within); folder = dirname(folder)) {
    found.push(join(folder, settingsName));
    if (dirname(folder) === folder) break;
  }
  return found;
}

/** The settings that hold for some files, each with its text. */
export function settingsInUse(files: readonly string[], within: readonly string[]): ReadonlyMap<string, string> {
  const byFolder = new Map<string, string | undefined>();
  const used = new Map<string, string>();
  for (const file of files) {
    const folder = dirname(file);
    if (byFolder.has(folder)) continue;
    const path = settingsNear(file, within).find((candidate) => 'text' in readText(candidate, within));
    byFolder.set(folder, path);
    const reading = path === undefined ? undefined : readText(path, within);
    if (path !== undefined && reading && 'text' in reading) used.set(path, reading.text);
  }
  return used;
}

/** The settings that lie in a folder. */
export function settingsIn(folder: string, within: readonly string[] = [folder]): RepositorySettings | undefined {
  const path = join(folder, settingsName);
  const reading = readText(path, within);
  return 'text' in reading ? readSettings(pathToFileURL(path).href, reading.text) : undefined;
}

/** The settings in the folder in which the program was started: what they say of the run as a whole counts. */
export const settingsOfRun = (current: string, within: readonly string[]): RepositorySettings | undefined => settingsIn(current, [...within, current]);
