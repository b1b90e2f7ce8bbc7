import { spawn, type ChildProcess } from 'node:child_process';
import { renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Progress } from '../../server/src/command-line/progress.ts';
import { axiswright, bundledCommandLine, Folder, oneHint, quiet, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 60_000 }); // processes, on machines that do other things too

const cleanups: (() => void)[] = [];
afterEach(() => {
  for (const cleanup of cleanups.splice(0)) cleanup();
});

/** A run that goes on, with what it has written. */
class Watching {
  out = '';
  err = '';
  #read = 0;

  constructor(readonly child: ChildProcess) {
    child.stdout?.on('data', (chunk: Buffer) => (this.out += chunk.toString()));
    child.stderr?.on('data', (chunk: Buffer) => (this.err += chunk.toString()));
  }

  /** What was written on the standard output in a round, once its end has been told. */
  async round(): Promise<string> {
    const ends = (): number => this.err.split('Ctrl-C ends.').length - 1;
    const before = this.#rounds;
    await vi.waitFor(() => expect(ends()).toBeGreaterThan(before), { timeout: 20_000, interval: 30 });
    this.#rounds = ends();
    const text = this.out.slice(this.#read);
    this.#read = this.out.length;
    return text;
  }

  #rounds = 0;
}

async function watching(folder: Folder, ...args: readonly string[]): Promise<Watching> {
  const child = spawn(process.execPath, [await bundledCommandLine(), 'check', '--watch', ...args], { cwd: folder.path, env: { PATH: process.env['PATH'] }, stdio: ['ignore', 'pipe', 'pipe'] });
  cleanups.push(() => {
    child.kill('SIGKILL');
    folder.remove();
  });
  return new Watching(child);
}

const ended = (child: ChildProcess): Promise<number | null> => new Promise((done) => child.on('close', (code) => done(code)));

describe('watching', () => {
  it('checks what changed, came, went, and what rests on a part list; Ctrl-C ends it', async () => {
    const folder = new Folder({ 'a.machine.yaml': quiet, 'sub/b.machine.yaml': twoErrors.replace('machine: Slip', 'machine: Slip\nuses: ["../lists/stock.parts.yaml"]') });
    const run = await watching(folder, '--format', 'lines');
    expect(await run.round()).toContain('sub/b.machine.yaml:');

    // As editors save: written beside, and put in its place.
    renameSync(folder.write('a.tmp', oneHint), join(folder.path, 'a.machine.yaml'));
    const second = await run.round();
    expect(second).toContain('a.machine.yaml:');
    expect(second).not.toContain('b.machine.yaml');
    expect(run.err).toMatch(/3 errors and 1 hint in 2 files/);

    folder.write('new/c.machine.yaml', twoErrors);
    expect(await run.round()).toMatch(/^new\/c\.machine\.yaml:/);

    folder.write('lists/stock.parts.yaml', 'description-version: 1\nparts:\n  lost: { kind: stepper, holding-torque: 1 N·m }\n');
    expect(await run.round()).toContain('sub/b.machine.yaml:');

    rmSync(join(folder.path, 'new'), { recursive: true });
    await run.round();
    const end = ended(run.child);
    run.child.kill('SIGINT');
    expect(await end).toBe(1);
    expect(run.err).not.toContain('fault of the tool');
  });

  it('goes on where a file cannot be read, and where there is none yet', async () => {
    const folder = new Folder({ 'a.machine.yaml': new Uint8Array([0]) });
    const run = await watching(folder);
    expect(await run.round()).toContain('Exit status 2');
    rmSync(join(folder.path, 'a.machine.yaml'));
    await run.round();
    folder.write('a.machine.yaml', quiet);
    expect(await run.round()).toContain('No findings in 1 file. Exit status 0');
    const end = ended(run.child);
    run.child.kill('SIGTERM');
    expect(await end).toBe(0);
  });

  it('is refused where it could not show what it says', async () => {
    const folder = new Folder({ 'a.machine.yaml': quiet });
    for (const args of [['-'], ['--output', 'x.json'], ['--format', 'sarif']]) expect(await axiswright(['check', '--watch', ...args], { folder: folder.path })).toMatchObject({ status: 2, out: '' });
    folder.remove();
  });
});

describe('quiet', () => {
  it('leaves out what is below the threshold, and files of which nothing is left', async () => {
    const folder = new Folder({ 'a.machine.yaml': oneHint, 'b.machine.yaml': twoErrors });
    const { out, status } = await axiswright(['check', '--quiet'], { folder: folder.path });
    expect(status).toBe(1);
    expect(out).not.toContain('a.machine.yaml');
    expect(out).not.toMatch(/warning {2}|information {2}|hint {2}|figures that decide/);
    expect(out.match(/ {2}error {2}/g)).toHaveLength(2);
    expect(out).toMatch(/\nNo findings|\n2 errors.* in 2 files\. Exit status 1/);
    const { out: lines } = await axiswright(['check', '--quiet', '--format', 'lines'], { folder: folder.path });
    expect(lines.trim().split('\n')).toHaveLength(2);
    expect((await axiswright(['check', '--quiet', 'a.machine.yaml'], { folder: folder.path })).out).toBe('1 hint in 1 file. Exit status 0: no finding is an error.\n');
    folder.remove();
  });
});

describe('progress', () => {
  it('is drawn for many files on a terminal, makes way for what is written, and leaves nothing', () => {
    let written = '';
    const progress = new Progress(40, { columns: 80, write: (text) => (written += text) });
    for (let i = 0; i < 40; i++) {
      progress.around(() => (written += `file ${i}\n`));
      progress.step();
    }
    progress.clear();
    expect(written).toContain('[###############               ] 20 of 40 files');
    // What a terminal shows in the end: a return goes to the margin, and the sequence clears to the end of the line.
    const shown = written.split('\n').map((line) => line.split('\r').reduce((kept, part) => (part.startsWith('\u001b[K') ? part.slice(3) : part.endsWith('\u001b[K') ? part.slice(0, -3) : kept + part), ''));
    expect(shown).toEqual([...Array.from({ length: 40 }, (_, i) => `file ${i}`), '']);
  });

  it('is not drawn for few files, nor without a terminal', async () => {
    let written = '';
    const few = new Progress(20, { columns: 80, write: (text) => (written += text) });
    for (let i = 0; i < 20; i++) few.step();
    expect(written).toBe('');
    const folder = new Folder(Object.fromEntries(Array.from({ length: 25 }, (_, i) => [`m${i}.machine.yaml`, quiet])));
    expect((await axiswright(['check', '--quiet'], { folder: folder.path })).err).toBe('');
    folder.remove();
  });
});
