import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { axiswright, bundledCommandLine, Folder, quiet, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 30_000 }); // many processes, on machines that do other things too

const outside = new Folder({ 'secret.machine.yaml': quiet, 'secret.parts.yaml': 'description-version: 1\nparts:\n  lost: { kind: stepper }\n' });
const folder = new Folder({
  'good.machine.yaml': twoErrors,
  'binary.machine.yaml': new Uint8Array([0x61, 0x00, 0xff, 0x0a]),
  'latin.machine.yaml': new Uint8Array([0x6d, 0xe4, 0x0a]),
  'huge.machine.yaml': new Uint8Array(8_000_001).fill(0x61),
  'folder.machine.yaml/inner.machine.yaml': quiet,
  'mark.machine.yaml': `\ufeff${twoErrors}`,
  'empty.machine.yaml': '',
});
mkdirSync(join(folder.path, 'inside'));
symlinkSync(join(outside.path, 'secret.machine.yaml'), join(folder.path, 'outside.machine.yaml'));
symlinkSync(join(folder.path, 'good.machine.yaml'), join(folder.path, 'inside', 'link.machine.yaml'));
symlinkSync('nowhere.machine.yaml', join(folder.path, 'broken.machine.yaml'));
symlinkSync('round.machine.yaml', join(folder.path, 'round.machine.yaml'));
symlinkSync('..', join(folder.path, 'inside', 'up'));
execFileSync('mkfifo', [join(folder.path, 'pipe.machine.yaml')]);
afterAll(() => {
  folder.remove();
  outside.remove();
});

interface Output {
  readonly files: readonly { readonly path: string; readonly findings: readonly { readonly code: string; readonly range: { readonly start: { readonly line: number; readonly column: number } } }[] }[];
  readonly failures: readonly { readonly path: string; readonly message: string }[];
}

describe('files that cannot be read', () => {
  it('are named one by one, and the rest is checked', async () => {
    const { status, out, err } = await axiswright(['check', '--format', 'json', '.'], { folder: folder.path });
    const { files, failures } = JSON.parse(out) as Output;
    expect(status).toBe(2);
    expect(failures).toEqual([
      { path: 'binary.machine.yaml', message: 'is not a text in UTF-8' },
      { path: 'broken.machine.yaml', message: 'is a link that leads nowhere' },
      { path: 'huge.machine.yaml', message: 'is larger than 8 MB' },
      { path: 'latin.machine.yaml', message: 'is not a text in UTF-8' },
      { path: 'outside.machine.yaml', message: 'is a link to a file outside of the folders that are checked' },
      { path: 'pipe.machine.yaml', message: 'is not an ordinary file' },
      { path: 'round.machine.yaml', message: 'is a link that leads round in a circle' },
    ]);
    expect(err.trimEnd().split('\n')).toEqual(failures.map(({ path, message }) => `${path} ${message}.`));
    expect(files.map((file) => file.path)).toEqual(['empty.machine.yaml', 'folder.machine.yaml/inner.machine.yaml', 'good.machine.yaml', 'inside/link.machine.yaml', 'mark.machine.yaml']);
  });

  it('a byte order mark does not shift positions', async () => {
    const { out } = await axiswright(['check', '--format', 'json', 'mark.machine.yaml', 'good.machine.yaml'], { folder: folder.path });
    const [good, mark] = (JSON.parse(out) as Output).files;
    expect(good?.findings.length).toBeGreaterThan(0);
    expect(mark?.findings).toEqual(good?.findings);
  });

  it('a link named itself is refused too where it leads out, and so is an endless input', async () => {
    expect(await axiswright(['check', 'outside.machine.yaml'], { folder: folder.path })).toMatchObject({ status: 2, err: 'outside.machine.yaml is a link to a file outside of the folders that are checked.\n' });
    expect(await axiswright(['check', '-'], { folder: folder.path, input: 'x'.repeat(9_000_000) })).toMatchObject({ status: 2, err: 'standard input is larger than 8 MB.\n' });
  });
});

describe('part lists', () => {
  const using = (path: string): string => twoErrors.replace('machine: Slip', `machine: Slip\nuses: ["${path}"]`);
  const codes = async (args: readonly string[], at: string): Promise<readonly string[]> =>
    (JSON.parse((await axiswright(['check', '--format', 'json', ...args], { folder: at })).out) as Output).files.flatMap((file) => file.findings.map((finding) => finding.code));
  const list = 'description-version: 1\nparts:\n  lost: { kind: stepper, holding-torque: 1 N·m }\n';

  it('are read inside the current folder', async () => {
    const tree = new Folder({ 'lists/stock.parts.yaml': list, 'machines/a.machine.yaml': using('../lists/stock.parts.yaml') });
    expect(await codes(['machines/a.machine.yaml'], tree.path)).not.toContain('part-list-missing');
    expect(await codes([join(tree.path, 'machines')], join(tree.path, 'lists'))).not.toContain('part-list-missing'); // the list lies in the current folder
    tree.remove();
  });

  it('and inside the folders given, but nowhere else', async () => {
    const tree = new Folder({ 'lists/stock.parts.yaml': list, 'machines/a.machine.yaml': using('../lists/stock.parts.yaml'), 'elsewhere/x': '' });
    expect(await codes([tree.path], join(tree.path, 'elsewhere'))).not.toContain('part-list-missing');
    expect(await codes(['../machines'], join(tree.path, 'elsewhere'))).toContain('part-list-missing');
    tree.remove();
  });

  it('are not read through a link that leads out', async () => {
    const tree = new Folder({ 'a.machine.yaml': using('stock.parts.yaml') });
    symlinkSync(join(outside.path, 'secret.parts.yaml'), join(tree.path, 'stock.parts.yaml'));
    expect(await codes(['.'], tree.path)).toContain('part-list-missing');
    tree.remove();
  });
});

describe('texts that would like to do harm', () => {
  it('cannot write to the terminal what it would obey', async () => {
    const tree = new Folder({
      'esc\u001b[2J.machine.yaml': 'a: 1\n',
      'text.machine.yaml': `description-version: 1\nmachine: x\naxes:\n  "lift\\e[31m":\n    direction: vertical\n    travel: 1 m\n    moves: ["\\e]0;owned\\a", "\u202ex"]\n`,
    });
    for (const format of ['human', 'lines']) {
      const { out, err } = await axiswright(['check', '--format', format], { folder: tree.path });
      expect(out).toContain('text.machine.yaml');
      // Nothing below a space but line ends, and no mark of reading direction.
      expect(`${out}${err}`).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    }
    tree.remove();
  });

  it.each([
    ['nested brackets', '['.repeat(10_000)],
    ['alias bomb', `a: &a [x,x,x,x,x,x,x,x,x]\n${Array.from({ length: 20 }, (_, i) => `a${i}: &a${i} [${Array.from({ length: 9 }, () => `*a${i === 0 ? '' : i - 1}`).join(',')}]`).join('\n')}\n`],
    ['one long line', `machine: ${'x'.repeat(500_000)}\n`],
    ['many lines', 'x: 1\n'.repeat(20_000)],
    ['nothing but line ends', '\r\n'.repeat(50_000)],
    ['a name of an inherited property', 'axes: { __proto__: { direction: vertical }, constructor: 1, toString: { travel: 1 mm } }\n'],
  ])('%s: an answer within seconds, of bearable length', async (_, text) => {
    const tree = new Folder({ 'x.machine.yaml': text });
    const started = performance.now();
    const { status, out } = await axiswright(['check', '.'], { folder: tree.path });
    expect(status).toBeLessThan(2);
    expect(performance.now() - started).toBeLessThan(8000);
    expect(out.length).toBeLessThan(300_000);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(200);
    tree.remove();
  }, 20_000);

  it('whoever stops reading early gets no complaint', async () => {
    const tree = new Folder(Object.fromEntries(Array.from({ length: 200 }, (_, i) => [`m${i}.machine.yaml`, twoErrors])));
    const { stdout, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${await bundledCommandLine()}" check . | head -n 1`], { cwd: tree.path });
    expect({ out: stdout.toString(), err: stderr.toString() }).toEqual({ out: 'm0.machine.yaml\n', err: '' });
    tree.remove();
  });
});
