import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
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

  it('folders within folders without end, part lists that name each other, and a list that is a folder: each is told, the rest is checked', async () => {
    const deep = Array.from({ length: 120 }, (_, i) => `d${i}`).join('/');
    const using = (...lists: readonly string[]): string => twoErrors.replace('machine: Slip', `machine: Slip\nuses: [${lists.join(', ')}]`);
    const tree = new Folder({
      [`${deep}/deep.machine.yaml`]: quiet,
      'round.machine.yaml': using('one.parts.yaml', 'round.machine.yaml'),
      'one.parts.yaml': 'description-version: 1\nuses: [two.parts.yaml]\nparts: {}\n',
      'two.parts.yaml': 'description-version: 1\nuses: [one.parts.yaml]\nparts: {}\n',
      'folder.parts.yaml/x': '',
      'over.machine.yaml': using('folder.parts.yaml', '"../../../../../../etc/passwd"', 'pipe.parts.yaml'),
    });
    execFileSync('mkfifo', [join(tree.path, 'pipe.parts.yaml')]);
    const { status, out } = await axiswright(['check', '--format', 'json', '--no-fixes'], { folder: tree.path });
    const { files, failures } = JSON.parse(out) as Output;
    expect(status).toBe(2);
    expect(failures).toEqual([{ path: 'pipe.parts.yaml', message: 'is not an ordinary file' }]);
    expect(files.map(({ path }) => path)).toEqual([`${deep}/deep.machine.yaml`, 'one.parts.yaml', 'over.machine.yaml', 'round.machine.yaml', 'two.parts.yaml']);
    expect(files[2]?.findings.filter(({ code }) => code === 'part-list-missing')).toHaveLength(3);
    tree.remove();
  });

  it('a device, and a file or folder that may not be read, are failures of their own', async () => {
    const tree = new Folder({ 'good.machine.yaml': quiet, 'shut.machine.yaml': quiet, 'shut/in.machine.yaml': quiet });
    symlinkSync('/dev/zero', join(tree.path, 'zero.machine.yaml'));
    chmodSync(join(tree.path, 'shut.machine.yaml'), 0o000);
    chmodSync(join(tree.path, 'shut'), 0o000);
    const { status, out } = await axiswright(['check', '--format', 'json'], { folder: tree.path });
    const { files, failures } = JSON.parse(out) as Output;
    const isRoot = process.getuid?.() === 0; // nothing is shut for root
    expect(status).toBe(2);
    expect(failures.map(({ path, message }) => `${path} ${message}`)).toEqual([...(isRoot ? [] : ['shut may not be read', 'shut.machine.yaml may not be read']), 'zero.machine.yaml is a link to a file outside of the folders that are checked']);
    expect(files.map(({ path }) => path)).toContain('good.machine.yaml');
    chmodSync(join(tree.path, 'shut'), 0o755);
    tree.remove();
  });

  it('a file that vanishes after it was listed is a failure, and the rest is checked', async () => {
    const tree = new Folder(Object.fromEntries(Array.from({ length: 60 }, (_, i) => [`m${String(i).padStart(2, '0')}.machine.yaml`, twoErrors])));
    // The reader of the first lines takes the last file away; what is written waits for the reader, and so does the check of what is listed.
    const script = `"${process.execPath}" "${await bundledCommandLine()}" check --workers 1 2>err.txt | { head -c 200 >/dev/null; rm m59.machine.yaml; cat >/dev/null; }`;
    spawnSync('sh', ['-c', script], { cwd: tree.path });
    const err = readFileSync(join(tree.path, 'err.txt'), 'utf8');
    expect(err).toBe('m59.machine.yaml does not exist.\n');
    tree.remove();
  });

  it('whoever stops reading early gets no complaint', async () => {
    const tree = new Folder(Object.fromEntries(Array.from({ length: 200 }, (_, i) => [`m${i}.machine.yaml`, twoErrors])));
    const { stdout, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${await bundledCommandLine()}" check . | head -n 1`], { cwd: tree.path });
    expect({ out: stdout.toString(), err: stderr.toString() }).toEqual({ out: 'm0.machine.yaml\n', err: '' });
    tree.remove();
  });
});

describe('what is written into a file', () => {
  const tree = new Folder({ 'a.machine.yaml': twoErrors, 'old.sarif': 'old', 'folder/x': '', 'many/x': '' });
  symlinkSync('old.sarif', join(tree.path, 'link.sarif'));
  afterAll(() => tree.remove());
  const check = (...args: readonly string[]) => axiswright(['check', 'a.machine.yaml', '--no-fixes', ...args], { folder: tree.path });

  it('is what the screen would have shown, and the screen shows what is for people', async () => {
    for (const format of ['json', 'sarif', 'junit', 'lines']) {
      const { out, status } = await check('--format', format, '--output', `new.${format}`);
      expect(status).toBe(1);
      expect(out).toBe((await check()).out);
      expect(readFileSync(join(tree.path, `new.${format}`), 'utf8')).toBe((await check('--format', format)).out);
    }
    await check('--output', 'new.txt', '--color', 'always');
    expect(readFileSync(join(tree.path, 'new.txt'), 'utf8')).toMatch(/^a\.machine\.yaml\n[^\u001b]*Exit status 1/);
  });

  it('never replaces a description, a link, a folder or a device, and needs a folder that is there', async () => {
    for (const [target, said] of [['a.machine.yaml', 'would be overwritten'], ['link.sarif', 'is a link'], ['folder', 'is a folder'], ['/dev/null', 'is not an ordinary file'], ['none/x.json', 'its folder does not exist']] as const) {
      const { status, out, err } = await check('--format', 'json', '--output', target);
      expect({ status, out }).toEqual({ status: 2, out: '' });
      expect(err).toContain(said);
    }
    expect(readFileSync(join(tree.path, 'old.sarif'), 'utf8')).toBe('old');
    expect(readFileSync(join(tree.path, 'a.machine.yaml'), 'utf8')).toBe(twoErrors);
  });

  it('is there as a whole or not at all, also where the run is ended in the middle', async () => {
    for (let i = 0; i < 300; i++) tree.write(`many/m${i}.machine.yaml`, twoErrors);
    tree.write('report.json', 'before');
    const child = spawn(process.execPath, [await bundledCommandLine(), 'check', 'many', '--format', 'json', '--output', 'report.json', '--workers', '2'], { cwd: tree.path, stdio: ['ignore', 'pipe', 'ignore'] });
    await new Promise((done) => child.stdout.once('data', done));
    expect(readdirSync(tree.path).filter((name) => name.endsWith('.tmp'))).toHaveLength(1);
    const end = new Promise<string | null>((done) => child.on('exit', (_code, signal) => done(signal)));
    child.kill('SIGINT');
    expect(await end).toBe('SIGINT');
    expect(readFileSync(join(tree.path, 'report.json'), 'utf8')).toBe('before');
    expect(readdirSync(tree.path).filter((name) => name.endsWith('.tmp'))).toEqual([]);
    expect(existsSync(join(tree.path, 'many', 'm0.machine.yaml'))).toBe(true);
  });
});
