#!/usr/bin/env node
// Writes what can be told from the files that are there, into the git-ignored server/src/generated/:
//   figures.ts, checks.ts, remedies.ts, inputs.ts, commissioning.ts   index modules: every declaration found by its place, nothing registered by hand
//   pages.ts                                        the hand-written page of each check
//   cases.ts                                        the table of cases of each check, as far as its page shows it
//   and, through generate-schemas.mjs, the compiled schemas and their types.
// Runs before the build, the type check, the import rules and the tests. A file is rewritten only when its content changes.
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, readdir, rename, unlink, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { parseDocument } from 'yaml';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const source = join(root, 'server', 'src');
const target = join(source, 'generated');
const notice = '// Written by server/tools/generate.mjs from the files that are there. Do not edit.\n';

/** The index modules: where the declarations of each kind are found. */
const indexes = [
  { file: 'figures.ts', name: 'figureModules', folder: 'figures', belongs: (path) => path.endsWith('.figure.ts') },
  { file: 'checks.ts', name: 'checkModules', folder: 'checks', belongs: (path) => /^checks\/[^/]+\/check\.ts$/.test(path) },
  { file: 'remedies.ts', name: 'remedyModules', folder: 'remedies', belongs: (path) => path.endsWith('.remedy.ts') },
  { file: 'inputs.ts', name: 'inputModules', folder: 'machine/inputs', belongs: (path) => path.endsWith('.inputs.ts') },
  { file: 'commissioning.ts', name: 'commissioningModules', folder: 'services/record/commissioning', belongs: (path) => path.endsWith('.commissioning.ts') },
];

/** Paths of all files below a folder of server/src, relative to server/src, with forward slashes, in the order of their code units. */
async function filesBelow(folder) {
  const top = join(source, folder);
  if (!existsSync(top)) return [];
  const entries = await readdir(top, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(source, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort((a, b) => (a < b ? -1 : 1));
}

async function writeIfChanged(file, text) {
  const path = join(target, file);
  if (existsSync(path) && (await readFile(path, 'utf8')) === text) return false;
  const aside = `${path}.${process.pid}.tmp`;
  await writeFile(aside, text);
  await rename(aside, path);
  return true;
}

function indexModule(name, files) {
  const imports = files.map((path, i) => `import m${i} from '../${path}';\n`).join('');
  const list = files.length === 0 ? ': never[] = []' : ` = [\n${files.map((_, i) => `  m${i},\n`).join('')}]`;
  return `${notice}${imports}\n/** The default export of every module, in the order of their paths: one declaration or an array of them each. */\nexport const ${name}${list};\n\nexport default ${name};\n`;
}

async function pagesModule() {
  const rows = [];
  for (const path of await filesBelow('checks')) {
    const id = /^checks\/([^/]+)\/page\.md$/.exec(path)?.[1];
    if (id !== undefined) rows.push(`  ${JSON.stringify(id)}: ${JSON.stringify(await readFile(join(source, path), 'utf8'))},\n`);
  }
  return `${notice}\n/** Check identifier (the name of its folder) to the Markdown of its page. */\nexport const pages: Readonly<Record<string, string>> = {\n${rows.join('')}};\n\nexport default pages;\n`;
}

/** `screw.size: Tr8x8(P2)`; maps and lists in braces and brackets. */
function caseEntry([key, value]) {
  const text = (item) => {
    if (Array.isArray(item)) return `[${item.map(text).join(', ')}]`;
    if (typeof item === 'object' && item !== null) return `{ ${Object.entries(item).map(([name, inner]) => `${name}: ${text(inner)}`).join(', ')} }`;
    return String(item);
  };
  return value === null ? `without ${key}` : `${key}: ${text(value)}`;
}

/** A table that cannot be read is left out here; the test that runs the tables says what is wrong with it. */
async function casesModule() {
  const tables = [];
  for (const path of await filesBelow('checks')) {
    const id = /^checks\/([^/]+)\/cases\.yaml$/.exec(path)?.[1];
    if (id === undefined) continue;
    const document = parseDocument(await readFile(join(source, path), 'utf8'));
    const table = document.errors.length === 0 ? document.toJS() : undefined;
    if (!Array.isArray(table?.passes) || !Array.isArray(table.fails)) continue;
    const rows = (list) => list.map((row) => ({ name: String(row?.name), ...(row?.severity ? { severity: row.severity } : {}), entries: Object.entries(row?.with ?? {}).map(caseEntry) }));
    tables.push(`  ${JSON.stringify(id)}: ${JSON.stringify({ passes: rows(table.passes), fails: rows(table.fails) })},\n`);
  }
  return `${notice}
/** One case: what it is called, the severity that is due, and what is changed in a healthy machine. */
export interface CaseRow {
  readonly name: string;
  readonly severity?: string;
  readonly entries: readonly string[];
}

/** Check identifier to the table of its cases. */
export const cases: Readonly<Record<string, { readonly passes: readonly CaseRow[]; readonly fails: readonly CaseRow[] }>> = {
${tables.join('')}};
`;
}

/** Runs generate-schemas.mjs when the schemas, itself or the versions of its tools have changed since, or something that it wrote is missing. */
async function generateSchemas() {
  const script = join(root, 'server', 'tools', 'generate-schemas.mjs');
  if (!existsSync(script)) return;
  const hash = createHash('sha256');
  const inputs = (await readdir(join(root, 'schemas'), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
  for (const path of [script, join(root, 'package-lock.json'), ...inputs]) hash.update(relative(root, path)).update('\0').update(await readFile(path)).update('\0');
  const digest = hash.digest('hex');

  const stampPath = join(target, '.schemas.json');
  const stamp = existsSync(stampPath) ? JSON.parse(await readFile(stampPath, 'utf8')) : undefined;
  if (stamp?.digest === digest && stamp.files.every((file) => existsSync(join(target, file)))) return;

  await promisify(execFile)(process.execPath, [script], { cwd: root }).catch((error) => {
    throw new Error(`generate-schemas.mjs failed:\n${error.stdout}${error.stderr}`);
  });
  const ours = new Set([...indexes.map((index) => index.file), 'pages.ts', 'cases.ts']);
  const files = (await readdir(target)).filter((file) => !ours.has(file) && !file.startsWith('.') && !file.endsWith('.tmp'));
  await writeIfChanged('.schemas.json', `${JSON.stringify({ digest, files: files.sort() })}\n`);
}

/** Brings server/src/generated/ up to date. */
export async function generate() {
  await mkdir(target, { recursive: true });
  for (const left of await readdir(target)) {
    const owner = /\.(\d+)\.tmp$/.exec(left)?.[1]; // left behind by a run that was killed
    if (owner !== undefined && !isRunning(Number(owner))) await unlink(join(target, left)).catch(() => undefined);
  }
  await generateSchemas();
  for (const { file, name, folder, belongs } of indexes) await writeIfChanged(file, indexModule(name, (await filesBelow(folder)).filter(belongs)));
  await writeIfChanged('pages.ts', await pagesModule());
  await writeIfChanged('cases.ts', await casesModule());
}

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

/** Called by vitest before the first test. */
export const setup = generate;

if (process.argv[1] === fileURLToPath(import.meta.url)) await generate();
