#!/usr/bin/env node
// npm run picture: takes the README's picture of the real editor, server/docs/images/editor.png. Run by hand when what it shows has changed.
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pack } from '../../server/tools/package.mjs';
import { root } from '../../server/tools/processes.mjs';
import { placeIn } from './harness/fixtures.mjs';
import { launchBrowser, newPage, Workbench } from './harness/page.mjs';
import { startWebHost } from './harness/web-host.mjs';

const picture = join(root, 'server', 'docs', 'images', 'editor.png');
const file = 'first-draft.machine.yaml';
const folder = mkdtempSync(join(tmpdir(), 'axiswright-picture-'));
cpSync(join(root, 'examples', 'large-format-printer'), folder, { recursive: true });
const text = readFileSync(join(folder, file), 'utf8');

const host = await startWebHost({ vsix: await pack(join(folder, 'picture.vsix'), { quiet: true }) });
rmSync(join(folder, 'picture.vsix'));
const browser = await launchBrowser();
try {
  const opened = await host.open(folder);
  const { page } = await newPage(browser, { width: 1240, height: 800 });
  const workbench = new Workbench(page);
  await workbench.open(opened.url);
  await workbench.openFile(file);
  await workbench.until(() => workbench.counts(), (counts) => counts.errors > 0, 60_000);
  await workbench.command('View: Toggle Primary Side Bar Visibility');
  const [line, column] = placeIn(text, 'screw:');
  await workbench.goTo(line, column);
  await workbench.until(() => workbench.inlayHints(), (hints) => hints.length > 0);
  await workbench.hover(line, column + 1);
  await page.waitForTimeout(800);
  mkdirSync(join(picture, '..'), { recursive: true });
  await workbench.screenshot(picture);
  await opened.close();
} finally {
  await browser.close();
  await host.stop();
  rmSync(folder, { recursive: true, force: true });
}
