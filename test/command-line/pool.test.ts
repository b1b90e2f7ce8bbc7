import { rmSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import type { CheckedFile, CheckSetup } from '../../server/src/command-line/file-checker.ts';
import { checkAll } from '../../server/src/command-line/pool.ts';
import { generateMachine } from '../benchmarks/generate-machine.ts';
import { axiswright, Folder, oneHint, quiet, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 60_000 }); // many processes, on machines that do other things too

const folder = new Folder(Object.fromEntries(Array.from({ length: 14 }, (_, i) => {
  const text = [twoErrors, oneHint, quiet, generateMachine(60, i + 1), `${generateMachine(60, i + 1).replace('machine: Generated', 'machine: Generated\nuses: [stock.parts.yaml]')}`][i % 5] ?? '';
  return [`${String((i * 7) % 14).padStart(2, '0')}.machine.yaml`, text];
})));
folder.write('stock.parts.yaml', 'description-version: 1\nparts:\n  spare: { kind: brake, holding-torque: 1 N·m }\n');
folder.write('bad.machine.yaml', new Uint8Array([0, 255]));
folder.write('axiswright.yaml', 'checks:\n  nonsense: { severity: off }\n');
afterAll(() => folder.remove());

describe('the same, whatever the number of workers', () => {
  it.each(['human', 'lines', 'json', 'sarif', 'junit'])('%s', async (format) => {
    const run = (workers: string) => axiswright(['check', '--format', format, '--workers', workers, '--no-fixes'], { folder: folder.path });
    const alone = await run('1');
    expect(alone.status).toBe(2);
    expect(alone.out.length).toBeGreaterThan(1000);
    for (const workers of ['2', '5']) expect(await run(workers)).toEqual(alone);
  });

  it('with remedies too', async () => {
    const run = (workers: string) => axiswright(['check', '--format', 'sarif', '--workers', workers, '0*', 'stock.parts.yaml'], { folder: folder.path });
    expect(await run('3')).toEqual(await run('1'));
  });

  it('and with standard input among them', async () => {
    const run = (workers: string) => axiswright(['check', '--format', 'lines', '--workers', workers, '.', '-', '--as', '05.machine.yaml'], { folder: folder.path, input: twoErrors });
    const alone = await run('1');
    expect(alone.out).toContain('05.machine.yaml:');
    expect(await run('4')).toEqual(alone);
  });

  it('a number that is none is refused', async () => {
    for (const number of ['0', '-1', 'two', '1.5', '65']) expect(await axiswright(['check', '--workers', number], { folder: folder.path })).toMatchObject({ status: 2, out: '' });
  });
});

/** A worker that answers with the name of its file; one named "dies" ends it, one named "throws" fails. */
const echo = `
const { parentPort } = require('node:worker_threads');
parentPort.on('message', ({ index, file }) => {
  if (file.includes('dies')) process.exit(3);
  if (file.includes('throws')) throw new Error('out of luck');
  const wait = (index * 7919) % 13;
  setTimeout(() => parentPort.postMessage({ index, checked: { path: file, screen: '', filed: '', restsOn: [], failures: [] } }), wait);
});`;

const setup: CheckSetup = { reader: { current: '/machines', within: [], today: undefined, typed: undefined }, fixes: false, failOn: 'error', quiet: false, screen: undefined, filed: undefined, rows: false };

async function all(files: readonly string[], workers: number, start: () => Worker): Promise<readonly CheckedFile[]> {
  const checked: CheckedFile[] = [];
  for await (const one of checkAll(files, setup, { workers, start })) checked.push(one);
  return checked;
}

describe('the pool', () => {
  const start = (): Worker => new Worker(echo, { eval: true, stderr: true });
  const names = (count: number): string[] => Array.from({ length: count }, (_, i) => `/machines/f${i}`);

  it('gives results in the order of the files, though workers finish in another', async () => {
    expect((await all(names(40), 4, start)).map(({ path }) => path)).toEqual(names(40));
  });

  it('a worker that dies is a failure of its file, and the others go on', async () => {
    const files = names(20);
    files[3] = '/machines/dies-at-once';
    files[4] = '/machines/throws-at-once';
    files[19] = '/machines/dies-at-last';
    const checked = await all(files, 3, start);
    expect(checked.map(({ failures }) => failures.length)).toEqual(files.map((file) => (/dies|throws/.test(file) ? 1 : 0)));
    expect(checked[3]?.failures[0]).toMatchObject({ path: 'dies-at-once', message: expect.stringMatching(/^could not be checked \(its worker ended with status 3\)/) as string });
    expect(checked[4]?.failures[0]?.message).toContain('out of luck');
  });

  it('workers that cannot start at all fail file by file, and the run ends', async () => {
    const checked = await all(names(12), 2, () => new Worker('throw new Error("no start")', { eval: true, stderr: true }));
    expect(checked.every(({ failures }) => failures.length === 1)).toBe(true);
    expect((await all(names(12), 2, () => { throw new Error('no thread'); })).every(({ failures }) => failures[0]?.message.includes('no thread'))).toBe(true);
  });

  it('does not run ahead of what is asked for by more than a few files a worker', async () => {
    let posted = 0;
    const counting = (): Worker => {
      const worker = start();
      const post = worker.postMessage.bind(worker);
      worker.postMessage = (job: unknown) => {
        posted++;
        post(job);
      };
      return worker;
    };
    const run = checkAll(names(200), setup, { workers: 2, start: counting });
    await run.next();
    await new Promise((done) => setTimeout(done, 500));
    expect(posted).toBeGreaterThan(2);
    expect(posted).toBeLessThan(12);
    await run.return(undefined);
  });

  it('starts no worker for a few files', async () => {
    const few = new Folder({ 'a.machine.yaml': twoErrors });
    const files = [join(few.path, 'a.machine.yaml'), join(few.path, 'gone.machine.yaml')];
    rmSync(join(few.path, 'gone.machine.yaml'), { force: true });
    const checked: CheckedFile[] = [];
    for await (const one of checkAll(files, { ...setup, reader: { ...setup.reader, current: few.path, within: [few.path] } }, { workers: 4, start: () => { throw new Error('started'); } })) checked.push(one);
    expect(checked.map(({ failures }) => failures)).toEqual([[], [{ path: 'gone.machine.yaml', message: 'does not exist' }]]);
    few.remove();
  });
});

describe('memory', () => {
  it('does not grow with the number of files', async () => {
    const most = async (count: number): Promise<number> => {
      const many = new Folder(Object.fromEntries(Array.from({ length: count }, (_, i) => [`m${i}.machine.yaml`, oneHint])));
      const script = `process.on('exit', () => require('node:fs').writeSync(2, 'peak ' + process.resourceUsage().maxRSS));`;
      many.write('peak.cjs', script);
      const { err } = await axiswright(['check', '--quiet', '--no-fixes', '--workers', '1'], { folder: many.path, env: { NODE_OPTIONS: `--require ${join(many.path, 'peak.cjs')} --max-semi-space-size=1 --max-old-space-size=64` } });
      many.remove();
      return Number(/peak (\d+)/.exec(err)?.[1]);
    };
    const [few, many] = [await most(50), await most(800)];
    expect(few).toBeGreaterThan(20_000); // kB
    // Sixteen times the files: what would be kept of each would show. A tenth and 10 MB is what collection leaves to chance.
    expect(many).toBeLessThan(few * 1.1 + 10_000);
  });
});
