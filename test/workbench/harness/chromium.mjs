// The browser of the workbench tests: Debian's Chromium, or the one that CHROMIUM names.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @returns {string | undefined} path of the browser, if there is one */
export function findChromium() {
  if (process.env['CHROMIUM']) return process.env['CHROMIUM'];
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  return ['chromium', 'chromium-browser'].flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
}

/** @returns {string} path of the browser; throws when there is none */
export function chromiumPath() {
  const path = findChromium();
  if (path === undefined) throw new Error('No Chromium here. Install the Debian package "chromium", or name one in the environment variable CHROMIUM.');
  return path;
}
