import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { dayOf } from '../../server/src/command-line/today.ts';
import { accepted, entry, liftAccepting, tooFast } from '../support/accepting.ts';
import { scratch } from './scratch.ts';
import { axiswright, bundledCommandLine, root, type Run } from './support.ts';

vi.setConfig({ testTimeout: 60_000 }); // processes of their own, on machines that do other things too
beforeAll(() => bundledCommandLine(), 60_000);

/** Seconds since 1970 at noon of a day, UTC. */
const epoch = (day: string): string => String(Date.parse(`${day}T12:00:00Z`) / 1000);

async function check(files: Readonly<Record<string, string>>, args: readonly string[] = [], day = '2026-11-25', within = ''): Promise<Run> {
  const folder = scratch(files);
  return axiswright(['check', '--no-fixes', ...args], { folder: join(folder.path, within), env: { SOURCE_DATE_EPOCH: epoch(day) } });
}

const json = ({ out }: Run) => JSON.parse(out) as { failOn: string; files: { path: string; findings: { code: string; severity: string; message: string; accepted?: object }[] }[] };
const found = (run: Run, code = tooFast) => json(run).files.flatMap(({ findings }) => findings).find((one) => one.code === code);
const machine = { 'lift.machine.yaml': liftAccepting(accepted(entry({ until: '2026-11-25' }))) };

describe('an accepted finding', () => {
  it('fails no run, is told with its reason, and counted', async () => {
    const run = await check(machine, ['--fail-on', 'warning']);
    expect(run.status).toBe(0);
    expect(run.out.replace(/\s+/g, ' ')).toContain('(accepted: it turns for a minute a day)');
    expect(run.out).toMatch(/2 information in 1 file, 1 accepted\. Exit status 0/);
  });

  it('fails it again when its last day is over', async () => {
    const run = await check(machine, ['--fail-on', 'warning'], '2026-11-26');
    expect(run.status).toBe(1);
    expect(run.out).toContain('acceptance by R. Okafor ended on 2026-11-25');
    expect(run.out).not.toContain('1 accepted');
  });

  it('is in the JSON, which keeps to its schema', async () => {
    const run = await check(machine, ['--format', 'json']);
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(readFileSync(join(root, 'schemas/findings-1.schema.json'), 'utf8')) as object);
    expect(validate(JSON.parse(run.out)), JSON.stringify(validate.errors)).toBe(true);
    expect(found(run)).toMatchObject({ severity: 'information', accepted: { reason: 'it turns for a minute a day', by: 'R. Okafor', until: '2026-11-25', severity: 'warning' } });
  });

  it('is told as information in one line', async () => {
    expect((await check(machine, ['--format', 'lines'])).out).toMatch(/: information: Screw turns .* \(accepted: it turns for a minute a day\) \[screw-too-fast-for-its-maker\]/);
  });

  it('that is none is reported, and fails no run', async () => {
    const run = await check({ 'lift.machine.yaml': liftAccepting(accepted(entry({ check: 'screw-whirls' }))) });
    expect(run.status).toBe(0);
    expect(run.out).toContain('accepted-nothing');
  });
});

describe('settings', () => {
  const text = liftAccepting();
  const hint = `checks:\n  ${tooFast}: { severity: hint }\n`;

  it('beside and above a description hold, up to the current folder', async () => {
    expect(found(await check({ 'shop/lifts/lift.machine.yaml': text, 'axiswright.yaml': hint }, ['--format', 'json']))?.severity).toBe('hint');
    expect(found(await check({ 'shop/lifts/lift.machine.yaml': text, 'axiswright.yaml': hint }, ['--format', 'json'], undefined, 'shop'))?.severity).toBe('warning');
    expect(found(await check({ 'shop/lift.machine.yaml': text, 'shop/axiswright.yaml': '{}\n', 'axiswright.yaml': hint }, ['--format', 'json']))?.severity).toBe('warning');
  });

  it('that are wrong are reported as a file of their own, whether they are named or not', async () => {
    const files = { 'a.machine.yaml': text, 'axiswright.yaml': 'checks: { pinch-point: { severity: off } }\n' };
    for (const named of [[], ['a.machine.yaml']]) {
      const run = await check(files, ['--format', 'json', ...named]);
      expect(run.status).toBe(1);
      expect(found(run, 'limit-not-changeable')?.severity).toBe('error');
      expect(found(run, 'pinch-point')?.severity).toBe('information');
      expect(json(run).files.map(({ path }) => path)).toEqual(['a.machine.yaml', 'axiswright.yaml']);
    }
  });

  it('that are right are no file to be told of', async () => {
    expect(json(await check({ 'a.machine.yaml': text, 'axiswright.yaml': hint }, ['--format', 'json'])).files.map(({ path }) => path)).toEqual(['a.machine.yaml']);
  });

  it('set the threshold of failure, unless the command line does', async () => {
    const files = { 'a.machine.yaml': text, 'axiswright.yaml': 'fail-on: warning\n' };
    const run = await check(files, ['--format', 'json']);
    expect([run.status, json(run).failOn]).toEqual([1, 'warning']);
    expect((await check(files, ['--fail-on', 'error'])).status).toBe(0);
    expect((await check({ 'a.machine.yaml': text })).status).toBe(0);
  });

  it('name files that are passed over', async () => {
    const run = await check({ 'a.machine.yaml': text, 'drafts/b.machine.yaml': text, 'axiswright.yaml': 'ignore: [drafts/**]\n' }, ['--format', 'json']);
    expect(json(run).files.map(({ path }) => path)).toEqual(['a.machine.yaml']);
  });

  it('set units and part lists', async () => {
    const bare = text.replace(/^parts:\n(?: .*\n)+/m, '');
    const parts = `description-version: 1\n${/^parts:\n(?: .*\n)+/m.exec(text)?.[0] ?? ''}`;
    const run = await check({ 'shop/a.machine.yaml': bare, 'stock.parts.yaml': parts, 'axiswright.yaml': 'part-lists: [stock.parts.yaml]\nunits: { force: lbf }\n' }, ['--format', 'json']);
    expect(found(run, 'unknown-name')).toBeUndefined();
    // 618 N / 4.448 N/lbf is 139 lbf.
    expect(found(run, 'pinch-point')?.message).toContain('139 lbf');
  });

  it.each([['no text', '\u0000\u0001'], ['endless brackets', '['.repeat(50_000)], ['an alias to itself', '&a [*a]'], ['very long', `ignore: [${'x, '.repeat(100_000)}]\n`]])('that are %s end no run', async (_, broken) => {
    const run = await check({ 'a.machine.yaml': text, 'axiswright.yaml': broken }, ['--format', 'json']);
    expect(run.err).not.toContain('fault of the tool');
    expect(found(run)?.severity).toBe('warning');
  });
});

describe('the day of a run', () => {
  it('is that of SOURCE_DATE_EPOCH, else that of the clock', () => {
    const today = (): string => '2026-11-25';
    // 1 000 000 000 seconds after 1970 came on 9 September 2001, 01:46:40 UTC.
    expect(dayOf({ env: { SOURCE_DATE_EPOCH: '1000000000' }, today })).toBe('2001-09-09');
    expect(dayOf({ env: {}, today })).toBe('2026-11-25');
    for (const wrong of ['', 'yesterday', '-1', '1e9', '9999999999999999']) expect(dayOf({ env: { SOURCE_DATE_EPOCH: wrong }, today })).toBe('2026-11-25');
  });
});
