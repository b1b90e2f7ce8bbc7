import { afterAll, describe, expect, it, vi } from 'vitest';
import { axiswright, Folder, oneHint, quiet, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 30_000 }); // many processes, on machines that do other things too

const folder = new Folder({ 'quiet.machine.yaml': quiet, 'hint.machine.yaml': oneHint, 'errors.machine.yaml': twoErrors, 'other.txt': 'x', 'empty/readme.txt': 'x' });
afterAll(() => folder.remove());
const check = (...args: string[]) => axiswright(['check', ...args], { folder: folder.path });
const lastLine = (text: string): string => text.trimEnd().split('\n').at(-1) ?? '';

describe('exit status 0', () => {
  it('without findings', async () => {
    const { status, out, err } = await check('quiet.machine.yaml');
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(lastLine(out)).toBe('No findings in 1 file. Exit status 0: no finding is an error.');
  });

  it('with findings below the threshold, and the last line says so', async () => {
    const { status, out } = await check('hint.machine.yaml', '--fail-on', 'information');
    expect(status).toBe(0);
    expect(lastLine(out)).toBe('1 hint in 1 file. Exit status 0: no finding is information or graver.');
  });

  it('for help and version', async () => {
    const help = await axiswright(['check', '--help'], { folder: folder.path });
    expect(help.status).toBe(0);
    expect(help.out).toContain('Exit status:\n  0 ');
    expect(help.out).toContain('Threshold (--fail-on):\n  error ');
    const version = await axiswright(['--version'], { folder: folder.path });
    expect(version).toMatchObject({ status: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) as string, err: '' });
  });
});

describe('exit status 1', () => {
  it('with a finding at the threshold', async () => {
    const { status, out, err } = await check('errors.machine.yaml', 'quiet.machine.yaml');
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(lastLine(out)).toMatch(/^2 errors.* in 2 files\. Exit status 1: at least one finding is an error\.$/);
  });
});

describe('exit status 2', () => {
  it.each([
    [['check', '--bad'], /unknown option '--bad'/],
    [['check', '--fail-on', 'never'], /'never' is invalid/],
    [['check', '--format', 'xml'], /'xml' is invalid/],
    [['chek'], /unknown command 'chek'/],
    [[], /Usage: axiswright/],
    [['check', 'missing.machine.yaml'], /^missing\.machine\.yaml does not exist\.$/m],
    [['check', 'other.txt'], /^other\.txt is not named \*\.machine\.yaml or \*\.parts\.yaml\. Rename it, .*\.$/m],
    [['check', 'empty'], /is in the folder "empty"/],
    [['check', '--as', 'x.machine.yaml', 'quiet.machine.yaml'], /--as is for standard input/],
    [['figures', '--figure', 'screw.nonsense', 'quiet.machine.yaml'], /No figure "screw\.nonsense"/],
  ])('%j', async (args, says) => {
    const { status, err } = await axiswright(args, { folder: folder.path });
    expect(status).toBe(2);
    expect(err).toMatch(says);
  });

  it('names every pattern that matches nothing, and checks the rest all the same', async () => {
    const { status, out, err } = await check('no*.machine.yaml', 'errors.machine.yaml', 'zz/**', '{quiet,absent*}.machine.yaml');
    expect(status).toBe(2);
    expect(err.trimEnd().split('\n')).toEqual(['no*.machine.yaml', 'zz/**', 'absent*.machine.yaml'].sort().map((pattern) => `No *.machine.yaml or *.parts.yaml matches "${pattern}".`));
    expect(out).toContain('unknown-name');
    expect(lastLine(out)).toMatch(/in 2 files\. Exit status 2: not everything could be read\.$/);
  });

  it('unless matching nothing is allowed; a missing file never is', async () => {
    expect((await check('no*.machine.yaml', 'empty', '--allow-none')).status).toBe(0);
    expect((await check('missing.machine.yaml', '--allow-none')).status).toBe(2);
  });
});

describe('paths', () => {
  const tree = new Folder({
    'b.machine.yaml': quiet, 'a/one.machine.yaml': quiet, 'a/.hidden/two.machine.yaml': quiet, 'a/parts.parts.yaml': 'description-version: 1\nparts: {}\n', 'a/x.yaml': 'x',
    'node_modules/p/no.machine.yaml': quiet, 'dist/no.machine.yaml': quiet, '.git/no.machine.yaml': quiet, 'a[1]/three.machine.yaml': quiet,
  });
  afterAll(() => tree.remove());
  const paths = async (...args: string[]): Promise<readonly string[]> => {
    const { out } = await axiswright(['check', '--format', 'json', ...args], { folder: tree.path });
    return (JSON.parse(out) as { files: { path: string }[] }).files.map((file) => file.path);
  };
  const all = ['a/.hidden/two.machine.yaml', 'a/one.machine.yaml', 'a/parts.parts.yaml', 'a[1]/three.machine.yaml', 'b.machine.yaml'];

  it('a folder is searched all the way down, without dependencies and output', async () => {
    expect(await paths('.')).toEqual(all);
    expect(await paths()).toEqual(all);
    expect(await paths(tree.path)).toEqual(all);
  });

  it('patterns choose among descriptions; each file once', async () => {
    expect(await paths('**')).toEqual(all);
    expect(await paths('*/*.machine.yaml', 'a', '{a,.}/*.yaml')).toEqual(all);
    expect(await paths('*.machine.yaml')).toEqual(['b.machine.yaml']);
    expect(await paths('a/**/t*.yaml')).toEqual(['a/.hidden/two.machine.yaml']);
    expect(await paths('node_modules/**')).toEqual(['node_modules/p/no.machine.yaml']); // asked for by name
  });

  it('a path that exists is meant as it is', async () => {
    expect(await paths('a[1]')).toEqual(['a[1]/three.machine.yaml']);
    expect(await paths('a[1]/three.machine.yaml')).toEqual(['a[1]/three.machine.yaml']);
  });

  it('are shown relative to the current folder', async () => {
    const { out } = await axiswright(['check', '--format', 'json', '../b.machine.yaml', '.'], { folder: `${tree.path}/a` });
    expect((JSON.parse(out) as { files: { path: string }[] }).files.map((file) => file.path)).toEqual(['../b.machine.yaml', '.hidden/two.machine.yaml', 'one.machine.yaml', 'parts.parts.yaml']);
    expect(out).not.toContain(tree.path);
  });
});

describe('standard input', () => {
  it('is checked under the path that it is taken to have', async () => {
    const { status, out } = await axiswright(['check', '-', '--as', 'sub/lift.machine.yaml', '--format', 'lines'], { folder: folder.path, input: twoErrors });
    expect(status).toBe(1);
    expect(out).toMatch(/^sub\/lift\.machine\.yaml:7:13: error: .*\[unknown-name\]$/m);
  });

  it('without a path stands in the current folder', async () => {
    const { out } = await axiswright(['check', '-'], { folder: folder.path, input: quiet });
    expect(out).toMatch(/^stdin\.machine\.yaml$/m);
  });

  it('finds part lists relative to that path', async () => {
    folder.write('sub/stock.parts.yaml', 'description-version: 1\nparts:\n  found: { kind: stepper, holding-torque: 1 N·m }\n');
    const text = twoErrors.replace('machine: Slip', 'machine: Slip\nuses: [stock.parts.yaml]').replace('lost', 'found');
    const { out } = await axiswright(['check', '-', '--as', 'sub/lift.machine.yaml', '--format', 'json'], { folder: folder.path, input: text });
    const codes = (JSON.parse(out) as { files: { findings: { code: string; message: string }[] }[] }).files[0]?.findings.filter((finding) => ['unknown-name', 'part-list-missing'].includes(finding.code));
    expect(codes?.map((finding) => finding.message)).toEqual([expect.stringContaining('"plate"')]);
  });

  it('needs a name that is a description', async () => {
    const { status, err } = await axiswright(['check', '-', '--as', 'lift.yaml'], { folder: folder.path, input: quiet });
    expect(status).toBe(2);
    expect(err).toContain('lift.yaml cannot stand for a description');
  });
});
