import { spawnSync } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { scratch } from './scratch.ts';
import { axiswright, bundledCommandLine, root, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 60_000 }); // many processes, on machines that do other things too

/** A repository with the hook in it, and the program on the path. */
class Repository {
  readonly folder = scratch();
  readonly #programs = scratch();

  static async make(): Promise<Repository> {
    const repository = new Repository();
    const program = repository.#programs.write('axiswright', `#!/bin/sh\nexec "${process.execPath}" "${await bundledCommandLine()}" "$@"\n`);
    chmodSync(program, 0o755);
    repository.git('init', '-q', '-b', 'main');
    const { out } = await axiswright(['hook'], { folder: repository.folder.path });
    chmodSync(repository.folder.write('.git/hooks/pre-commit', out), 0o755);
    return repository;
  }

  git(...args: readonly string[]): { readonly status: number | null; readonly said: readonly string[] } {
    return this.run('git', ['-C', this.folder.path, ...args]);
  }

  run(program: string, args: readonly string[], more: Readonly<Record<string, string>> = {}): { readonly status: number | null; readonly said: readonly string[] } {
    const { PATH = '' } = process.env;
    const env = { ...more, PATH: `${this.#programs.path}${delimiter}${dirname(process.execPath)}${delimiter}${PATH}`, HOME: this.folder.path, GIT_AUTHOR_NAME: 'T', GIT_AUTHOR_EMAIL: 't@example.org', GIT_COMMITTER_NAME: 'T', GIT_COMMITTER_EMAIL: 't@example.org', GIT_CONFIG_NOSYSTEM: '1' };
    const { status, stdout, stderr } = spawnSync(program, args, { env, encoding: 'utf8', cwd: this.folder.path });
    return { status, said: `${stdout}${stderr}`.split('\n').filter((line) => line !== '') };
  }

  commit(message: string, ...args: readonly string[]): ReturnType<Repository['git']> {
    return this.git('commit', '-q', '-m', message, ...args);
  }

  get commits(): readonly string[] {
    return this.git('log', '--format=%s').said;
  }
}

const good = yamlOf(machineWith('lift', {}));
/** 20 mm/s with a lead of 3 mm is 400 rpm; its maker allows 125: hand calculation. */
const worse = yamlOf(machineWith('lift', { 'screw.speed-limit': '125 rpm' }));
const acceptance = '\naccepted:\n  - check: screw-too-fast-for-its-maker\n    at: axes/lift/drive/screw\n    reason: the maker allows 250 rpm for short moves, letter of 3 May\n    by: R. Okafor\n';

describe('the hook before commits', () => {
  it('refuses a commit that makes a machine worse, says why in three lines, and lets it pass once the deviation is recorded', async () => {
    const repository = await Repository.make();
    repository.folder.write('machines/lift.machine.yaml', good);
    repository.git('add', '.');
    expect(repository.commit('a lift')).toEqual({ status: 0, said: [] });

    repository.folder.write('machines/lift.machine.yaml', worse);
    repository.git('add', '.');
    const refused = repository.commit('faster');
    expect(refused.status).toBe(1);
    expect(refused.said).toHaveLength(3);
    expect(refused.said[0]).toBe('Not committed: machines/lift.machine.yaml gets worse than in the last commit: warning screw-too-fast-for-its-maker, axis lift.');
    expect(refused.said[1]).toMatch(/^ {2}Screw turns at 200 rpm, 160 % of the 125 rpm allowed for it/); // 10 mm/s · 60 / 3 mm = 200 rpm; 200/125 = 1.6: hand calculation
    expect(refused.said[2]).toMatch(/^ {2}Mend it, or record why it may stay, under "accepted": \{ check: screw-too-fast-for-its-maker, at: axes\/lift\/drive\/screw/);
    expect(repository.commits).toEqual(['a lift']);

    repository.folder.write('machines/lift.machine.yaml', worse + acceptance);
    repository.git('add', '.');
    expect(repository.commit('faster, and why')).toEqual({ status: 0, said: [] });
    expect(repository.commits).toEqual(['faster, and why', 'a lift']);
  });

  it('looks at what is staged, not at the disk', async () => {
    const repository = await Repository.make();
    const file = repository.folder.write('lift.machine.yaml', good);
    repository.git('add', '.');
    repository.commit('first');
    // Staged is worse, the disk is good again: refused.
    writeFileSync(file, worse);
    repository.git('add', '.');
    writeFileSync(file, good);
    expect(repository.commit('x').status).toBe(1);
    expect(readFileSync(file, 'utf8')).toBe(good);
    // The other way round: passes.
    writeFileSync(file, good.replace('Test lift', 'Lift for tests'));
    repository.git('add', '.');
    writeFileSync(file, worse);
    expect(repository.commit('y').status).toBe(0);
    // All that is changed is committed (-a): that counts.
    expect(repository.commit('z', '-a').status).toBe(1);
  });

  it('sees what a part list makes worse, in the machine that uses it', async () => {
    const repository = await Repository.make();
    const machine = machineWith('lift', {}) as { parts: Record<string, unknown>; uses?: readonly string[] };
    const parts = machine.parts;
    const list = (changed: Readonly<Record<string, unknown>>): string => yamlOf({ 'description-version': 1, parts: { ...parts, ...changed } });
    repository.folder.write('lift.machine.yaml', yamlOf({ ...machine, parts: undefined, uses: ['stock.parts.yaml'] }));
    repository.folder.write('stock.parts.yaml', list({}));
    repository.git('add', '.');
    expect(repository.commit('first')).toEqual({ status: 0, said: [] });
    const [name = ''] = Object.keys(parts);
    // A motor with a hundredth of the torque lifts nothing.
    repository.folder.write('stock.parts.yaml', list({ [name]: { ...(parts[name] as object), 'holding-torque': '0.004 N·m' } }));
    repository.git('add', '.');
    const { status, said } = repository.commit('weaker');
    expect(status).toBe(1);
    expect(said).toHaveLength(3);
    expect(said[0]).toMatch(/^Not committed: lift\.machine\.yaml gets worse than in the last commit: error /);
  });

  it('refuses errors in a first draft, and lets what is not worse pass', async () => {
    const repository = await Repository.make();
    repository.folder.write('slip.machine.yaml', twoErrors);
    repository.git('add', '.');
    const { status, said } = repository.commit('a slip');
    expect(status).toBe(1);
    expect(said).toHaveLength(3);
    expect(said[2]).not.toContain('accepted');
    repository.git('reset', '-q', '--', '.');
    repository.folder.write('lift.machine.yaml', worse); // a warning only
    repository.folder.write('notes.txt', 'x');
    repository.git('add', 'lift.machine.yaml', 'notes.txt');
    expect(repository.commit('a draft')).toEqual({ status: 0, said: [] });
    repository.git('rm', '-q', 'lift.machine.yaml');
    expect(repository.commit('no more')).toEqual({ status: 0, said: [] });
  });

  it('compares what a commit changes, wherever it lies, and not what was worse before', async () => {
    const repository = await Repository.make();
    repository.folder.write('old.machine.yaml', twoErrors);
    repository.folder.write('a b/[x]/lift.machine.yaml', good);
    repository.git('add', '.');
    expect(repository.commit('first', '--no-verify').status).toBe(0);
    repository.folder.write('notes.txt', 'x');
    repository.git('add', '.');
    expect(repository.commit('notes')).toEqual({ status: 0, said: [] });
    repository.folder.write('a b/[x]/lift.machine.yaml', worse);
    repository.git('add', '.');
    const { status, said } = repository.commit('worse');
    expect(status).toBe(1);
    expect(said[0]).toMatch(/^Not committed: a b\/\[x\]\/lift\.machine\.yaml gets worse/);
    // Renamed, it is a new description, in which only errors are refused.
    repository.git('reset', '-q', '--hard');
    repository.git('mv', 'old.machine.yaml', 'same.machine.yaml');
    expect(repository.commit('renamed').said[0]).toMatch(/^Not committed: same\.machine\.yaml/);
  });

  it('says so where the program is not there, and where there is no repository', async () => {
    const repository = await Repository.make();
    const { status, stderr } = spawnSync('/bin/sh', [join(repository.folder.path, '.git/hooks/pre-commit')], { cwd: repository.folder.path, env: { PATH: '/nowhere' }, encoding: 'utf8' });
    expect(status).toBe(1);
    expect(stderr).toContain('is not on the path');
    const nowhere = scratch({ 'a.machine.yaml': good });
    expect(await axiswright(['staged'], { folder: nowhere.path, env: { GIT_CEILING_DIRECTORIES: dirname(nowhere.path) } })).toMatchObject({ status: 2, out: '' });
  });
});

describe('the recipe for continuous integration in the README', () => {
  const recipe = /<!-- recipe: continuous integration -->\n```sh\n([^]*?)```/.exec(readFileSync(join(root, 'README.md'), 'utf8'))?.[1] ?? '';

  it('passes what is well, and fails on what got worse, with a log, a comment and a stale record', async () => {
    const repository = await Repository.make();
    const { folder } = repository;
    const inCi = () => repository.run('/bin/sh', ['-c', recipe], { BASE: 'main' });
    folder.write('.gitignore', 'axiswright.sarif\ncomparison.md\n');
    folder.write('lift.machine.yaml', good);
    expect(repository.run('axiswright', ['record']).status).toBe(0);
    repository.git('add', '.');
    repository.commit('a lift');
    repository.git('checkout', '-q', '-b', 'change');
    expect(inCi()).toMatchObject({ status: 0 });

    folder.write('lift.machine.yaml', worse);
    const { status, said } = inCi();
    expect(status).toBe(1);
    expect(said.join('\n')).toContain('lift.record.md is not current');
    const log = JSON.parse(readFileSync(join(folder.path, 'axiswright.sarif'), 'utf8')) as { readonly runs: readonly [{ readonly results: readonly { readonly ruleId: string; readonly level: string }[] }] };
    expect(log.runs[0].results).toContainEqual(expect.objectContaining({ ruleId: 'screw-too-fast-for-its-maker', level: 'warning' }));
    expect(readFileSync(join(folder.path, 'comparison.md'), 'utf8')).toContain('screw-too-fast-for-its-maker');

    folder.write('lift.machine.yaml', worse + acceptance);
    repository.run('axiswright', ['record']);
    expect(inCi()).toMatchObject({ status: 0 });
  });
});
