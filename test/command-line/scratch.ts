import { afterAll } from 'vitest';
import { Folder } from './support.ts';

const folders: Folder[] = [];
afterAll(() => folders.forEach((folder) => folder.remove()));

/** A folder with files in it that is gone when the tests of a file are through. */
export function scratch(files: Readonly<Record<string, string>> = {}): Folder {
  const folder = new Folder(files);
  folders.push(folder);
  return folder;
}
