import { mkdir, mkdtemp, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { codesOf, Editor, sleep, until } from './support/editor.ts';
import { partList, sample, sampleWithList } from './support/sample.ts';

let top: string;
let folder: string;
let editor: Editor | undefined;
const uriOf = (...path: readonly string[]): string => pathToFileURL(join(top, ...path)).href;
const machine = (): string => uriOf('shop', 'heron.machine.yaml');
const list = (): string => uriOf('shop', 'motors.parts.yaml');

beforeEach(async () => {
  top = await mkdtemp(join(tmpdir(), 'axiswright-lists-'));
  folder = join(top, 'shop');
  await mkdir(folder);
});
afterEach(async () => {
  await editor?.stop();
  editor = undefined;
  await rm(top, { recursive: true, force: true });
});

const start = async (text: string, client: 'pull' | 'push' = 'pull', folders: readonly string[] = [uriOf('shop')]): Promise<Editor> => {
  editor = await Editor.start({ folders, client });
  await editor.open(machine(), text);
  return editor;
};
const using = (path: string): string => sampleWithList.replace('[motors.parts.yaml]', JSON.stringify([path]));
const missing = async (it: Editor): Promise<boolean> => codesOf((await it.pull(machine())).items).includes('part-list-missing');

describe('a part list on the disk', () => {
  it('is read, and the machine is as if its parts stood in its own file', async () => {
    await writeFile(join(folder, 'motors.parts.yaml'), partList);
    const it = await start(sampleWithList);
    const withList = codesOf((await it.pull(machine())).items);
    await it.write(machine(), sample);
    expect(withList).toEqual(codesOf((await it.pull(machine())).items));
  });

  it('with blanks, accents and brackets in its name is found', async () => {
    await writeFile(join(folder, "Größe (alt) d'été.parts.yaml"), partList);
    expect(await missing(await start(using("Größe (alt) d'été.parts.yaml")))).toBe(false);
  });

  it('that is not there is told, until it is; and again when it is gone', async () => {
    const it = await start(sampleWithList);
    expect(await missing(it)).toBe(true);
    const refreshes = (): number => it.heard.filter((method) => method === 'workspace/diagnostic/refresh').length;

    await writeFile(join(folder, 'motors.parts.yaml'), partList);
    await it.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: list(), type: 1 }] });
    await until(() => refreshes() === 1, () => 'being asked to fetch again');
    expect(await missing(it)).toBe(false);

    await rename(join(folder, 'motors.parts.yaml'), join(folder, 'other.parts.yaml'));
    await it.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: list(), type: 3 }] });
    await until(() => refreshes() === 2, () => 'being asked to fetch again');
    expect(await missing(it)).toBe(true);
  });

  it('whose change alters nothing that is shown asks nobody for anything', async () => {
    await writeFile(join(folder, 'motors.parts.yaml'), partList);
    const it = await start(sampleWithList);
    await it.pull(machine());
    await writeFile(join(folder, 'motors.parts.yaml'), `${partList}# the same\n`);
    await it.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: list(), type: 2 }, { uri: uriOf('shop', 'unrelated.parts.yaml'), type: 2 }] });
    await sleep(400);
    expect(it.heard.filter((method) => method.endsWith('/refresh'))).toEqual([]);
  });

  it('is read again on saving by a client that watches no files', async () => {
    editor = await Editor.start({ folders: [uriOf('shop')], client: { textDocument: { diagnostic: {} } } });
    await editor.open(machine(), sampleWithList);
    expect(await missing(editor)).toBe(true);
    await writeFile(join(folder, 'motors.parts.yaml'), partList);
    await editor.save(machine());
    expect(await missing(editor)).toBe(false);
  });
});

describe('a part list that is open', () => {
  it.each(['pull', 'push'] as const)('beats the disk; what is typed into it updates the machine in the other tab (%s)', async (client) => {
    await writeFile(join(folder, 'motors.parts.yaml'), partList);
    const it = await start(sampleWithList, client);
    const lacksMotor = (codes: readonly unknown[]): boolean => codes.includes('unknown-name');
    const has = async (wanted: (codes: readonly unknown[]) => boolean): Promise<void> => {
      if (client === 'push') await it.pushed(machine(), wanted);
      else await until(async () => wanted(codesOf((await it.pull(machine())).items)), () => 'the findings to follow');
    };
    await has((codes) => codes.length > 0 && !lacksMotor(codes));
    await it.open(list(), partList);
    await it.replace(list(), '  lift-motor:', '  spare-motor:');
    if (client === 'pull') await until(() => it.heard.includes('workspace/diagnostic/refresh'), () => 'being asked to fetch again');
    await has(lacksMotor);
    await it.replace(list(), '  spare-motor:', '  lift-motor:');
    await has((codes) => !lacksMotor(codes));
    await it.replace(list(), '  lift-motor:', '  spare-motor:');
    await has(lacksMotor);
    await it.close(list()); // closed without saving: the disk counts again
    await has((codes) => !lacksMotor(codes));
  });

  it('is known by any spelling of its address', async () => {
    const it = await start(using('größe.parts.yaml'));
    await it.open(list().replace('motors', 'gr%C3%B6%C3%9Fe').replace('.parts', '%2Eparts'), partList);
    await until(async () => !(await missing(it)), () => 'the list to be found');
  });
});

describe('nothing outside of the opened folders is read', () => {
  beforeEach(async () => {
    await mkdir(join(top, 'shop-next-door'));
    await writeFile(join(top, 'outside.parts.yaml'), partList);
    await writeFile(join(top, 'shop-next-door', 'outside.parts.yaml'), partList);
  });

  it.each([
    ['by a path that leads up', () => '../outside.parts.yaml'],
    ['by a path to a folder whose name begins alike', () => '../shop-next-door/outside.parts.yaml'],
    ['by an absolute path', () => join(top, 'outside.parts.yaml')],
    ['by an address', () => uriOf('outside.parts.yaml')],
    ['by escaped dots and slashes', () => '%2e%2e%2foutside.parts.yaml'],
  ])('%s', async (_, path) => {
    expect(await missing(await start(using(path())))).toBe(true);
  });

  it('by a link to a file, or to a folder', async () => {
    await symlink(join(top, 'outside.parts.yaml'), join(folder, 'link.parts.yaml'));
    await symlink(top, join(folder, 'up'));
    const it = await start(using('link.parts.yaml'));
    expect(await missing(it)).toBe(true);
    await it.write(machine(), using('up/outside.parts.yaml'));
    expect(await missing(it)).toBe(true);
  });

  it('but by a link that stays inside', async () => {
    await mkdir(join(folder, 'lists'));
    await writeFile(join(folder, 'lists', 'real.parts.yaml'), partList);
    await symlink(join(folder, 'lists', 'real.parts.yaml'), join(folder, 'link.parts.yaml'));
    const it = await start(using('link.parts.yaml'));
    expect(await missing(it)).toBe(false);
  });

  it('until the folder is opened', async () => {
    const it = await start(using('../outside.parts.yaml'));
    expect(await missing(it)).toBe(true);
    await it.notify('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: pathToFileURL(top).href, name: 'all' }], removed: [] } });
    expect(await missing(it)).toBe(false);
  });

  it('where no folder is opened, the folder of the text counts, and nothing above it', async () => {
    await writeFile(join(folder, 'motors.parts.yaml'), partList);
    const it = await start(sampleWithList, 'pull', []);
    expect(await missing(it)).toBe(false);
    await it.write(machine(), using('../outside.parts.yaml'));
    expect(await missing(it)).toBe(true);
  });
});

describe('what is no part list', () => {
  it.each([
    ['a folder', async () => mkdir(join(folder, 'motors.parts.yaml'))],
    ['larger than 2 MB', async () => writeFile(join(folder, 'motors.parts.yaml'), `${partList}#${'x'.repeat(2_000_001)}\n`)],
    ['no text in UTF-8', async () => writeFile(join(folder, 'motors.parts.yaml'), Buffer.from([0x70, 0xff, 0xfe, 0x00]))],
  ])('is told when it is %s', async (_, make) => {
    await make();
    expect(await missing(await start(sampleWithList))).toBe(true);
  });

  it('is told in a text that has no file: it has to be saved first', async () => {
    editor = await Editor.start({ folders: [uriOf('shop')] });
    await editor.open('untitled:Untitled-1', sampleWithList);
    const { items } = await editor.pull('untitled:Untitled-1');
    expect(items.find(({ code }) => code === 'part-list-missing')?.message).toContain('Save the file first');
  });
});
