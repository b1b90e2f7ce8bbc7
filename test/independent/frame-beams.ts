/**
 * Frames of straight square bars for the general-purpose finite-element solver `ccx` (Debian package calculix-ccx): quadratic
 * beam elements, which it swells to solid bricks, so that it shares no beam theory with us.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface BarFrame {
  readonly nodes: Readonly<Record<string, readonly [number, number, number]>>;
  readonly bars: readonly (readonly [string, string])[];
  readonly clamped: readonly string[];
  /** Side of the square section, m. */
  readonly side: number;
  readonly youngsModulus: number;
  readonly poissonRatio: number;
  readonly density: number;
}

function mesh(frame: BarFrame, parts: number): { text: string; numbers: ReadonlyMap<string, number> } {
  const places = Object.values(frame.nodes).map((place) => [...place]);
  const numbers = new Map(Object.keys(frame.nodes).map((name, i) => [name, i + 1]));
  const sets: string[] = [];
  let element = 0;
  frame.bars.forEach(([from, to], bar) => {
    const [p, q] = [frame.nodes[from]!, frame.nodes[to]!];
    const chain = [numbers.get(from)!];
    for (let i = 1; i < 2 * parts; i++) {
      places.push(p.map((value, k) => value + ((q[k]! - value) * i) / (2 * parts)));
      chain.push(places.length);
    }
    chain.push(numbers.get(to)!);
    sets.push(`*ELEMENT,TYPE=B32R,ELSET=B${bar}`);
    for (let i = 0; i < parts; i++) sets.push(`${++element},${chain.slice(2 * i, 2 * i + 3).join(',')}`);
    const upright = Math.abs(q[2] - p[2]) > 0.9 * Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
    sets.push(`*BEAM SECTION,ELSET=B${bar},MATERIAL=M,SECTION=RECT`, `${frame.side},${frame.side}`, upright ? '1,0,0' : '0,0,1');
  });
  const text = [
    '*NODE,NSET=ALL', ...places.map((place, i) => `${i + 1},${place.join(',')}`),
    '*MATERIAL,NAME=M', '*ELASTIC', `${frame.youngsModulus},${frame.poissonRatio}`, '*DENSITY', `${frame.density}`,
    ...sets,
    '*BOUNDARY', ...frame.clamped.map((name) => `${numbers.get(name)!},1,6`),
  ].join('\n');
  return { text, numbers };
}

function run(solver: string, input: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'frame-beams-'));
  try {
    writeFileSync(join(folder, 'frame.inp'), input);
    execFileSync(solver, ['frame'], { cwd: folder, stdio: 'pipe', env: { ...process.env, OMP_NUM_THREADS: '1' } });
    return readFileSync(join(folder, 'frame.dat'), 'utf8');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Where bars meet, the solver makes the elements rigid over a part of their length: the error falls with the length of an element, so two meshes give the limit. */
const towardsFine = (coarse: number, fine: number): number => 2 * fine - coarse;

/** Shift of a node in m under a force in N at another. */
export function barFrameShift(solver: string, frame: BarFrame, at: string, force: readonly [number, number, number], of: string, parts: number): [number, number, number] {
  const one = (count: number): number[] => {
    const { text, numbers } = mesh(frame, count);
    const loads = force.flatMap((value, i) => (value === 0 ? [] : [`${numbers.get(at)!},${i + 1},${value}`]));
    const result = run(solver, [text, '*STEP', '*STATIC', '*CLOAD', ...loads, '*NODE PRINT,NSET=ALL', 'U', '*END STEP', ''].join('\n'));
    const row = result.split('\n').map((line) => line.trim().split(/\s+/).map(Number)).find((values) => values.length === 4 && values[0] === numbers.get(of));
    if (row === undefined) throw new Error(`the solver printed no shift of ${of}`);
    return row.slice(1);
  };
  const [coarse, fine] = [one(parts), one(2 * parts)];
  return fine.map((value, i) => towardsFine(coarse[i]!, value)) as [number, number, number];
}

/** Lowest angular frequencies of the frame by its own mass, rad/s. */
export function barFrameFrequencies(solver: string, frame: BarFrame, count: number, parts: number): number[] {
  const one = (pieces: number): number[] => {
    const result = run(solver, [mesh(frame, pieces).text, '*STEP', '*FREQUENCY', String(count), '*NODE PRINT,NSET=ALL', 'U', '*END STEP', ''].join('\n'));
    const heading = [...'EIGENVALUE OUTPUT'].join(' ');
    if (!result.includes(heading)) throw new Error('the solver printed no frequencies');
    const rows = result.slice(result.indexOf(heading)).split('\n').map((line) => line.trim().split(/\s+/).map(Number));
    return Array.from({ length: count }, (_, i) => rows.find((values) => values[0] === i + 1)?.[2] ?? Number.NaN);
  };
  const [coarse, fine] = [one(parts), one(2 * parts)];
  return fine.map((value, i) => towardsFine(coarse[i]!, value));
}
