import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it, vi } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { scratch } from './scratch.ts';
import { axiswright, type Folder, root } from './support.ts';

vi.setConfig({ testTimeout: 60_000 });

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));
const good = lift({ 'screw.speed-limit': '250 rpm' });
/** 16 mm/s over a lead of 3 mm is 320 rpm of 250: hand calculation. */
const worse = lift({ 'screw.speed-limit': '250 rpm', 'motion.speed': '16 mm/s' });

function git(folder: Folder, ...args: readonly string[]): void {
  const env = { PATH: process.env['PATH'], HOME: folder.path, GIT_AUTHOR_NAME: 'T', GIT_AUTHOR_EMAIL: 't@example.org', GIT_COMMITTER_NAME: 'T', GIT_COMMITTER_EMAIL: 't@example.org', GIT_CONFIG_NOSYSTEM: '1' };
  const { status, stderr } = spawnSync('git', ['-C', folder.path, ...args], { env, encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
}

describe('axiswright compare', () => {
  const pair = scratch({ 'old.machine.yaml': good, 'new.machine.yaml': worse });
  const compare = (...args: readonly string[]) => axiswright(['compare', 'old.machine.yaml', 'new.machine.yaml', ...args], { folder: pair.path });

  it('says first what got worse, and ends with 1', async () => {
    const run = await compare();
    expect(run.status).toBe(1);
    const lines = run.out.split('\n').filter((line) => line.trim() !== '');
    expect(lines[1]).toContain('screw-too-fast-for-its-maker');
    for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(100);
    expect(run.out).not.toContain('\u001b');
  });

  it('ends with 0 where that much is allowed, or where it is the other way round', async () => {
    expect((await compare('--fail-on', 'error')).status).toBe(0);
    expect((await compare('--fail-on', 'error', '--margin-loss', '47 %')).status).toBe(1);
    expect((await axiswright(['compare', 'new.machine.yaml', 'old.machine.yaml'], { folder: pair.path })).status).toBe(0);
    expect((await axiswright(['compare', 'old.machine.yaml', 'old.machine.yaml'], { folder: pair.path })).out).toMatch(/[Nn]othing changed/);
  });

  it('gives JSON of the published shape', async () => {
    const run = await compare('--format', 'json');
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(join(root, 'schemas/comparison-1.schema.json'), 'utf8')) as object);
    validate(JSON.parse(run.out));
    expect(validate.errors ?? []).toEqual([]);
    expect(run.status).toBe(1);
  });

  it('gives a review comment as Markdown', async () => {
    const run = await compare('--format', 'markdown');
    expect(run.out).toMatch(/^### /);
    expect(run.out.split('\n').find((line) => line.startsWith('- '))).toContain('screw-too-fast-for-its-maker');
  });

  it.each([
    [['only-one.machine.yaml']], [['old.machine.yaml', 'none.machine.yaml']], [['old.machine.yaml', 'new.machine.yaml', '--margin-loss', 'much']], [['--since', '--output=/tmp/x']],
  ])('%s: cannot run, and says why', async (args) => {
    const run = await axiswright(['compare', ...args], { folder: pair.path });
    expect(run.status).toBe(2);
    expect(run.err.trim()).not.toBe('');
    expect(run.err).not.toMatch(/at .*\.js:\d+/);
  });
});

describe('axiswright compare --since, in a repository', () => {
  const parts = (price: string): string => `description-version: 1\nparts:\n  pusher: { kind: stepper, frame: NEMA 17, holding-torque: 0.4 N·m, current: 1.5 A, price: ${price} }\n`;
  const repository = scratch({ 'machines/lift.machine.yaml': good, 'machines/same.machine.yaml': lift({ machine: 'Same' }), 'machines/shop.parts.yaml': parts('12 EUR'), 'machines/uses.machine.yaml': `${lift()}uses: [shop.parts.yaml]\n` });
  git(repository, 'init', '-q', '-b', 'main');
  git(repository, 'add', '.');
  git(repository, 'commit', '-q', '-m', 'first');

  it('finds nothing where nothing changed', async () => {
    const run = await axiswright(['compare', '--since', 'HEAD'], { folder: repository.path });
    expect(run.status).toBe(0);
  });

  it('reads the old text through git, checks nothing out, and names the file', async () => {
    repository.write('machines/lift.machine.yaml', worse);
    const run = await axiswright(['compare', '--since', 'main'], { folder: repository.path });
    expect(run.status).toBe(1);
    expect(run.out).toContain('lift.machine.yaml');
    expect(run.out).toContain('screw-too-fast-for-its-maker');
    expect(run.out).not.toContain('same.machine.yaml:');
    expect(readFileSync(join(repository.path, 'machines/lift.machine.yaml'), 'utf8')).toBe(worse);
    const inside = await axiswright(['compare', 'HEAD:./lift.machine.yaml', 'lift.machine.yaml'], { folder: join(repository.path, 'machines') });
    expect(inside.status).toBe(1);
    repository.write('machines/lift.machine.yaml', good);
  });

  it('takes a description that is new for all new, and one that is deleted for gone', async () => {
    repository.write('machines/fresh.machine.yaml', worse);
    const run = await axiswright(['compare', '--since', 'HEAD', 'machines'], { folder: repository.path });
    expect(run.out).toContain('fresh.machine.yaml');
    expect(run.status).toBe(1);
    git(repository, 'rm', '-q', '--cached', 'machines/same.machine.yaml');
    repository.write('machines/fresh.machine.yaml', good);
    expect((await axiswright(['compare', '--since', 'HEAD', '--fail-on', 'error'], { folder: repository.path })).status).toBe(0);
    git(repository, 'reset', '-q', '--hard');
  });

  it.each([['no-such-branch'], ['--upload-pack=x'], ['HEAD; touch /tmp/x'], ['']])('a revision "%s" that git does not know is said to be one', async (revision) => {
    const run = await axiswright(['compare', `--since=${revision}`], { folder: repository.path });
    expect(run.status).toBe(2);
    expect(run.err.trim()).not.toBe('');
  });

  it('says that it needs a repository where there is none', async () => {
    const run = await axiswright(['compare', '--since', 'HEAD'], { folder: scratch({ 'lift.machine.yaml': good }).path });
    expect(run.status).toBe(2);
    expect(run.err).toMatch(/git|repository/);
  });
});
