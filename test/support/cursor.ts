import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Snapshots, type Snapshot } from '../../server/src/services/snapshot.ts';

/** A text with a `|` where the cursor is, taken apart. Throws unless there is exactly one. */
export function atCursor(marked: string): { readonly text: string; readonly offset: number } {
  const offset = marked.indexOf('|');
  if (offset < 0 || marked.includes('|', offset + 1)) throw new Error('One cursor marker "|" is needed.');
  return { text: marked.slice(0, offset) + marked.slice(offset + 1), offset };
}

export const machineUri = 'file:///work/test.machine.yaml';

/** A fresh snapshot of a machine's text; `lists` are part lists by their path beside it. */
export function snapshotOf(text: string, lists: Readonly<Record<string, string>> = {}, uri = machineUri): Snapshot {
  const files = new Map(Object.entries(lists).map(([path, content]) => [new URL(path, uri).href, content]));
  return new Snapshots((wanted) => files.get(wanted)).take(uri, text);
}

/** The offset just inside the first occurrence of `needle`, after `after` where that is given. */
export function inside(text: string, needle: string, after = ''): number {
  const from = after === '' ? 0 : text.indexOf(after);
  const at = text.indexOf(needle, from);
  if (from < 0 || at < 0) throw new Error(`"${needle}" is not in the text.`);
  return at + 1;
}

/** The text of an example file. */
export const example = (path: string): string => readFileSync(fileURLToPath(new URL(`../../examples/${path}`, import.meta.url)), 'utf8');
