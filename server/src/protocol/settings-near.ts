import { keyOf } from './documents.ts';

/** The name of the settings of a repository. */
const settingsName = 'axiswright.yaml';
/** Folders deeper than this are not climbed out of. */
const MOST_LEVELS = 64;

/** Where settings may lie that hold for a text: in its folder and those above it, the nearest first, up to the folder that was opened. */
export function settingsNear(uri: string, folders: readonly string[]): readonly string[] {
  const opened = folders.map((folder) => `${keyOf(folder).replace(/\/+$/, '')}/`);
  const found: string[] = [];
  let folder = folderOf(uri, '.');
  for (let level = 0; folder !== undefined && level < MOST_LEVELS; level++) {
    const key = keyOf(folder);
    if (!opened.some((one) => key.startsWith(one))) break;
    found.push(folder + settingsName);
    const above = folderOf(folder, '..');
    if (above === folder) break;
    folder = above;
  }
  return found;
}

/** A folder seen from an address, with a slash at its end; undefined for a text without a file. */
function folderOf(uri: string, way: '.' | '..'): string | undefined {
  try {
    return new URL(way, uri).href;
  } catch {
    return undefined;
  }
}
