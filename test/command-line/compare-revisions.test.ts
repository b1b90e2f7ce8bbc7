import { execFileSync } from 'node:child_process';
import { existsSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { marginLossOf } from '../../server/src/command-line/compare-options.ts';
import { revisionFlaw } from '../../server/src/command-line/git.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { axiswright, Folder, type Run } from './support.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

/** 10 mm/s over a lead of 3 mm is 200 rpm. */
const lift = (limit: string, more = ''): string => yamlOf(machineWith('lift', { 'screw.speed-limit': limit })) + more;
/** A motor from a part list. */
const listed = (): string => {
  const machine = machineWith('lift');
  delete machine['parts'];
  machine['uses'] = ['stock.parts.yaml'];
  return yamlOf(machine);
};
const stock = (price: string): string =>
  `description-version: 1\nparts:\n  lift-motor: { kind: stepper, frame: NEMA 17, holding-torque: 0.45 N·m, current: 1.5 A, resistance: 2 Ω, inductance: 3.5 mH, rotor-inertia: 68 g·cm², price: ${price} }\n`;
const accepted = 'accepted:\n  - { check: screw-too-fast-for-its-maker, at: axes/lift/drive/screw, reason: short moves only, by: R. Okafor }\n';

const identity = { GIT_AUTHOR_NAME: 'T', GIT_AUTHOR_EMAIL: 't@example.org', GIT_COMMITTER_NAME: 'T', GIT_COMMITTER_EMAIL: 't@example.org', GIT_AUTHOR_DATE: '2026-01-01T00:00:00Z', GIT_COMMITTER_DATE: '2026-01-01T00:00:00Z', GIT_CONFIG_GLOBAL: '/dev/null', GIT_CONFIG_SYSTEM: '/dev/null' };
const repository = new Folder();
const git = (...args: string[]): string => execFileSync('git', args, { cwd: repository.path, env: { PATH: process.env['PATH'], ...identity }, encoding: 'utf8' });
const run = (args: readonly string[], folder = repository.path, env: Readonly<Record<string, string>> = {}): Promise<Run> => axiswright(['compare', ...args], { folder, env: { SOURCE_DATE_EPOCH: '1780000000', ...env } });

interface Json {
  readonly status: number;
  readonly comparisons: readonly { readonly after: string; readonly state: string; readonly cost: { readonly differences: readonly { readonly nominal: number }[] } }[];
  readonly unchanged: readonly string[];
}
const json = async (...args: string[]): Promise<Json> => JSON.parse((await run([...args, '--format', 'json'])).out) as Json;

beforeAll(() => {
  git('init', '-q', '-b', 'main', '.');
  repository.write('m/lift.machine.yaml', lift('250 rpm'));
  repository.write('m/gone.machine.yaml', lift('250 rpm'));
  repository.write('m/same.machine.yaml', lift('260 rpm'));
  repository.write('m/listed.machine.yaml', listed());
  repository.write('m/stock.parts.yaml', stock('10 EUR'));
  repository.write('node_modules/x/no.machine.yaml', lift('250 rpm'));
  repository.write('sp ace & $(touch ran)/lift.machine.yaml', lift('250 rpm'));
  git('add', '-f', '.');
  git('commit', '-q', '-m', 'one');
  git('tag', 'first');
  repository.write('m/lift.machine.yaml', lift('150 rpm'));
  repository.write('m/stock.parts.yaml', stock('12 EUR'));
  repository.write('m/new.machine.yaml', lift('250 rpm'));
  rmSync(join(repository.path, 'm/gone.machine.yaml'));
});
afterAll(() => repository.remove());

describe('two revisions', () => {
  it('are compared file by file: changed, new, gone and unchanged, part lists at their revision', async () => {
    const { comparisons, unchanged, status } = await json('--since', 'first');
    expect(comparisons.map(({ after, state }) => [after, state])).toEqual([['m/gone.machine.yaml', 'gone'], ['m/lift.machine.yaml', 'changed'], ['m/listed.machine.yaml', 'changed'], ['m/new.machine.yaml', 'new']]);
    expect(unchanged).toEqual(['m/same.machine.yaml', 'sp ace & $(touch ran)/lift.machine.yaml']);
    expect(status).toBe(1);
    // Two motors, each 2 EUR dearer in the part list.
    expect(comparisons.find(({ after }) => after === 'm/listed.machine.yaml')?.cost.differences.map(({ nominal }) => nominal)).toEqual([4]);
    expect(existsSync(join(repository.path, 'ran'))).toBe(false);
  });

  it('are asked for by paths, folders and patterns, also of what is gone', async () => {
    const paths = async (...args: string[]): Promise<readonly string[]> => (await json('--since', 'first', ...args)).comparisons.map(({ after }) => after);
    expect(await paths('m/gone.machine.yaml')).toEqual(['m/gone.machine.yaml']);
    expect(await paths('m/{gone,new}.*.yaml')).toEqual(['m/gone.machine.yaml', 'm/new.machine.yaml']);
    expect((await run(['--since', 'first', 'never.machine.yaml'])).status).toBe(2);
    expect((await run(['--since', 'first', 'never*'])).status).toBe(2);
    expect((await run(['--since', 'first', 'never*', '--allow-none'])).status).toBe(0);
  });

  it('are named from the top of the repository, or from here', async () => {
    for (const name of ['first:m/lift.machine.yaml', 'first:./lift.machine.yaml', 'first:lift.machine.yaml']) {
      const { status, out } = await run([name, 'lift.machine.yaml'], join(repository.path, 'm'));
      expect([status, out.split('\n')[0]]).toEqual([1, `${name} → lift.machine.yaml`]);
    }
  });

  it('are the same each time, in any language and time zone, and write nothing into the repository', async () => {
    const before = git('status', '--porcelain');
    for (const format of ['human', 'json', 'markdown']) {
      const [one, other] = [await run(['--since', 'first', '--format', format], repository.path, { TZ: 'Pacific/Auckland', LC_ALL: 'de_DE.UTF-8' }), await run(['--since', 'first', '--format', format], repository.path, { TZ: 'America/Lima' })];
      expect(one.out.length).toBeGreaterThan(200);
      expect(other.out).toBe(one.out);
      expect(one.out).not.toContain(repository.path);
    }
    expect(git('status', '--porcelain')).toBe(before);
  });

  it('lead a review comment with the machine that got worse', async () => {
    const { out } = await run(['--since', 'first', '--format', 'markdown']);
    expect(out.split('\n')[0]).toBe('### m/lift.machine.yaml');
    expect(out).toContain('**Worse: warning**');
  });
});

describe('what is staged', () => {
  it('counts, whatever is on the disk', async () => {
    expect(await json('--since', 'HEAD', '--staged')).toMatchObject({ status: 0, comparisons: [] });
    git('add', 'm/lift.machine.yaml');
    repository.write('m/lift.machine.yaml', lift('250 rpm'));
    expect((await json('--since', 'HEAD', '--staged')).comparisons.map(({ after }) => after)).toEqual(['m/lift.machine.yaml']);
    expect((await json('--since', 'HEAD', 'm/lift.machine.yaml')).comparisons).toEqual([]);
    repository.write('m/lift.machine.yaml', lift('150 rpm', accepted));
    git('add', 'm/lift.machine.yaml');
    // What is accepted with a reason is not worse.
    expect((await json('--since', 'HEAD', '--staged')).status).toBe(0);
    git('reset', '-q');
    repository.write('m/lift.machine.yaml', lift('150 rpm'));
  });

  it('is not followed where it is a link', async () => {
    symlinkSync('/etc/hostname', join(repository.path, 'm/link.machine.yaml'));
    git('add', 'm/link.machine.yaml');
    const { status, err } = await run(['--since', 'first', '--staged', 'm/link.machine.yaml']);
    git('rm', '-q', '--cached', 'm/link.machine.yaml');
    rmSync(join(repository.path, 'm/link.machine.yaml'));
    expect(status).toBe(2);
    expect(err).toContain('m/link.machine.yaml is a link in what is staged; it is not followed there.');
  });

  it('is all new before the first commit', async () => {
    const folder = new Folder({ 'lift.machine.yaml': lift('250 rpm') });
    try {
      execFileSync('git', ['init', '-q', '-b', 'main', '.'], { cwd: folder.path, env: { PATH: process.env['PATH'], ...identity } });
      const { status, out } = await run(['--since', 'HEAD'], folder.path);
      expect(out.split('\n')[0]).toBe('lift.machine.yaml (new)');
      expect(status).toBe(0);
    } finally {
      folder.remove();
    }
  });
});

describe('arguments that are no revision', () => {
  it.each(['nowhere', '--output=ran', '-p', 'HEAD;touch ran', 'HEAD:m', '$(touch ran)', 'main..first', ''])('%j is refused, and nothing is run', async (revision) => {
    const { status, err } = await run([`--since=${revision}`]);
    expect(status).toBe(2);
    expect(err).toMatch(/revision/);
    expect(existsSync(join(repository.path, 'ran'))).toBe(false);
  });

  it('are told from those that are: a revision is the name of one commit', () => {
    for (const good of ['HEAD', 'HEAD~2', 'main', 'v1.2.3', 'feature/x', '0a1b2c3d', 'HEAD@{1}', 'HEAD^']) expect(revisionFlaw(good), good).toBeUndefined();
    for (const bad of ['', '-x', 'a b', 'a:b', 'a\nb', 'a*', 'a?', 'a[', 'a\\b']) expect(revisionFlaw(bad), bad).toBeDefined();
  });

  it('a share of margin is a percentage or a part of one', () => {
    expect(['10 %', '10%', '0.1', ' 0.25 '].map(marginLossOf)).toEqual([0.1, 0.1, 0.1, 0.25]);
    expect(['10', '-1 %', 'ten', '', '%'].map(marginLossOf)).toEqual(Array.from({ length: 5 }, () => 'unreadable'));
    expect(marginLossOf(undefined)).toBeUndefined();
  });
});
