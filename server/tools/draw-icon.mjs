#!/usr/bin/env node
// Draws client/media/icon.png (256 x 256) from client/media/icon.svg with the Chromium of the workbench tests. Run by hand when the drawing changes.
import { readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { chromiumPath } from '../../test/workbench/harness/chromium.mjs';

const media = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'client', 'media');
const browser = await chromium.launch({ executablePath: chromiumPath(), headless: true, args: ['--no-sandbox', '--disable-gpu'] });
try {
  const page = await browser.newPage({ viewport: { width: 256, height: 256 } });
  await page.setContent(`<style>body { margin: 0; background: transparent }</style>${await readFile(join(media, 'icon.svg'), 'utf8')}`);
  await writeFile(join(media, 'icon.png'), await page.screenshot({ omitBackground: true }));
} finally {
  await browser.close();
}
