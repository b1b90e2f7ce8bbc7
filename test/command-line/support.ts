import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export const root = fileURLToPath(new URL('../../', import.meta.url));

let built: Promise<string> | undefined;

/** The command line bundled into one file, as it is shipped. */
export function bundledCommandLine(): Promise<string> {
  built ??= (async () => {
    const folder = join(root, 'node_modules', '.cache', 'axiswright-command-line');
    mkdirSync(folder, { recursive: true });
    const target = join(folder, 'command-line.js');
    const aside = join(folder, `${process.pid}-${Math.random().toString(36).slice(2)}.js`);
    await build({ absWorkingDir: root, entryPoints: ['server/src/command-line/main.ts'], outfile: aside, bundle: true, platform: 'node', format: 'cjs', target: 'node20', logLevel: 'warning' });
    renameSync(aside, target); // other test files may be running the old one at this moment
    return target;
  })();
  return built;
}

export interface Run {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly folder: string;
  readonly input?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs the command line as a process of its own, in a folder. */
export async function axiswright(args: readonly string[], { folder, input, env = {} }: RunOptions): Promise<Run> {
  const program = await bundledCommandLine();
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [program, ...args], { cwd: folder, env: { PATH: process.env['PATH'], ...env }, stdio: 'pipe' });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => err.push(chunk));
    child.on('error', fail);
    child.on('close', (code) => done({ status: code ?? -1, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() }));
    child.stdin.on('error', () => undefined); // it may end before it has read everything
    child.stdin.end(input ?? '');
  });
}

/** A folder with files in it, by relative path. */
export class Folder {
  readonly path: string;

  constructor(files: Readonly<Record<string, string | Uint8Array>> = {}) {
    this.path = mkdtempSync(join(tmpdir(), 'axiswright-test-'));
    for (const [name, content] of Object.entries(files)) this.write(name, content);
  }

  write(name: string, content: string | Uint8Array): string {
    const path = join(this.path, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    return path;
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** A description with nothing to be said against its text; nothing drives the axis yet. */
export const quiet = `description-version: 1
machine: Quiet
masses:
  table: { mass: 4 kg }
axes:
  slide:
    direction: horizontal
    travel: 300 mm
    moves: [table]
    motion: { speed: 50 mm/s }
`;

/** Two errors of the text: a mass and a motor that are described nowhere. */
export const twoErrors = `description-version: 1
machine: Slip
axes:
  lift:
    direction: vertical
    travel: 300 mm
    moves: [plate]
    motion: { speed: 10 mm/s }
    drive: { motor: lost }
`;

/** One thing that nothing uses: a hint, and nothing graver. */
export const oneHint = `${quiet}parts:
  spare: { kind: brake, holding-torque: 1 N·m }
`;
