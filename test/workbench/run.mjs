#!/usr/bin/env node
// Runs every test/workbench/*.journey.mjs with the packed extension in a real workbench, in each kind of host.
//   node test/workbench/run.mjs [--host NAME]... [--only PART_OF_A_NAME] [--vsix FILE]
// Hosts: node (Node extension host, real files) and web (Web Worker, folder in memory, no server) are the usual ones;
//        node-web puts the extension into the Web Worker of a page that has a server. MODERN=1 takes a newer workbench for the ones with a server.
// Each step of a journey is one test. Screenshots and summary.json lie in test/artefacts/workbench/ afterwards.
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync, cpSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { pack } from '../../server/tools/package.mjs';
import { launchBrowser, newPage, Workbench } from './harness/page.mjs';
import { startServerHost } from './harness/server-host.mjs';
import { startWebHost } from './harness/web-host.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..', '..');
const artefacts = join(root, 'test', 'artefacts', 'workbench');

const { values } = parseArgs({ options: { host: { type: 'string', multiple: true, default: ['node', 'web'] }, only: { type: 'string' }, vsix: { type: 'string' } } });
const { name, publisher } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const modern = process.env['MODERN'] === '1';
const starters = {
  node: (vsix) => startServerHost({ vsix, extension: `${publisher}.${name}`, modern }),
  'node-web': (vsix) => startServerHost({ vsix, extension: `${publisher}.${name}`, modern, inWebHost: true }),
  web: (vsix) => startWebHost({ vsix }),
};

const summary = { passed: 0, failed: 0, leftOut: [] };

/** A folder with what a journey wants to find there: copies of example folders, and files of its own. */
function fixtures({ examples = [], files = {} }) {
  const folder = mkdtempSync(join(tmpdir(), 'axiswright-fixtures-'));
  for (const example of examples) cpSync(join(root, 'examples', example), join(folder, example), { recursive: true });
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

async function travel(journey, journeyName, hostName, host, browser) {
  const folder = fixtures(journey);
  const opened = await host.open(folder);
  const { context, page, external } = await newPage(browser);
  const workbench = new Workbench(page);
  const picture = (title) => join(artefacts, `${journeyName}-${hostName}-${title}.png`);
  const step = async (title, action) => {
    const since = Date.now();
    try {
      await action();
      summary.passed++;
      console.log(`  ok      ${title} (${((Date.now() - since) / 1000).toFixed(1)} s)`);
    } catch (error) {
      summary.failed++;
      console.log(`  FAILED  ${title}\n${String(error?.stack ?? error).replace(/^/gm, '          ')}`);
      await workbench.screenshot(picture('failed')).catch(() => undefined);
      throw Object.assign(new Error('stopped'), { counted: true });
    }
  };
  try {
    await step('the workbench opens', () => workbench.open(opened.url));
    await journey.run({ workbench, page, step, host: hostName, folder: opened.folder, shot: (title) => workbench.screenshot(picture(title)) });
    await step('nothing was asked outside this machine', () => {
      if (external.length > 0) throw new Error(external.join('\n'));
    });
  } catch (error) {
    if (!error?.counted) {
      summary.failed++;
      console.log(`  FAILED  ${String(error?.stack ?? error)}`);
    }
  } finally {
    await context.close();
    await opened.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

rmSync(artefacts, { recursive: true, force: true });
mkdirSync(artefacts, { recursive: true });
const vsix = values.vsix ?? (await pack(join(artefacts, 'axiswright.vsix'), { quiet: true }));
const names = readdirSync(here).filter((file) => file.endsWith('.journey.mjs')).sort();
const wanted = names.filter((file) => values.only === undefined || file.includes(values.only));
for (const hostName of values.host) {
  const host = await starters[hostName](vsix);
  const browser = await launchBrowser();
  try {
    for (const file of wanted) {
      const { default: journey } = await import(pathToFileURL(join(here, file)).href);
      if (journey.hosts !== undefined && !journey.hosts.includes(hostName)) continue;
      console.log(`${hostName}: ${journey.title}`);
      await travel(journey, file.replace('.journey.mjs', ''), hostName, host, browser);
    }
  } finally {
    await browser.close();
    await host.stop();
  }
}
for (const hostName of ['node', 'web'].filter((usual) => !values.host.includes(usual))) summary.leftOut.push(`workbench tests in the host "${hostName}"`);
if (wanted.length < names.length) summary.leftOut.push(`workbench journeys whose names do not contain "${values.only}"`);
writeFileSync(join(artefacts, 'summary.json'), JSON.stringify(summary, null, 2));
console.log(`workbench: ${summary.passed} passed, ${summary.failed} failed`);
process.exitCode = summary.failed === 0 ? 0 : 1;
