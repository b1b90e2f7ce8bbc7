/**
 * A round rod of solid elements for the general-purpose finite-element solver `ccx` (Debian package calculix-ccx):
 * 20-node bricks, four in the core of each slice and sixteen around them.
 */
import { execFileSync } from 'node:child_process';
import { accessSync, constants, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

export interface SolidRod {
  readonly length: number;
  readonly diameter: number;
  readonly slices: number;
  readonly youngsModulus: number;
  readonly poissonRatio: number;
  readonly density: number;
  readonly ends: 'both faces held' | 'left face held';
}

/** The solver on the search path, if it is there. */
export function findSolver(): string | undefined {
  for (const folder of (process.env['PATH'] ?? '').split(delimiter)) {
    const candidate = join(folder, 'ccx');
    try {
      accessSync(candidate, constants.X_OK);
      return candidate;
    } catch {
      // Not in this folder.
    }
  }
  return undefined;
}

type Point = readonly [number, number];

/** The cross-section as 8-node quadrilaterals: corners, then mid-sides. */
function section(radius: number): Point[][] {
  const half = 0.425 * radius;
  const core = (u: number, v: number): Point => [half * u * (1 + 0.2 * (1 - v * v)), half * v * (1 + 0.2 * (1 - u * u))];
  const ring = (turns: number) => (t: number, u: number): Point => {
    const angle = (Math.PI / 4) * u;
    const inner = core(1, u);
    let x = inner[0] * (1 - t) + radius * Math.cos(angle) * t;
    let y = inner[1] * (1 - t) + radius * Math.sin(angle) * t;
    for (let k = 0; k < turns; k++) [x, y] = [-y, x];
    return [x, y];
  };
  const quad = (map: (a: number, b: number) => Point, a0: number, a1: number, b0: number, b1: number): Point[] => {
    const am = (a0 + a1) / 2;
    const bm = (b0 + b1) / 2;
    return [map(a0, b0), map(a1, b0), map(a1, b1), map(a0, b1), map(am, b0), map(a1, bm), map(am, b1), map(a0, bm)];
  };
  const quads: Point[][] = [];
  for (const [u0, u1] of [[-1, 0], [0, 1]] as const) {
    for (const [v0, v1] of [[-1, 0], [0, 1]] as const) {
      quads.push(quad(core, u0, u1, v0, v1));
    }
  }
  for (let turns = 0; turns < 4; turns++) {
    for (const [t0, t1] of [[0, 0.5], [0.5, 1]] as const) {
      for (const [u0, u1] of [[-1, 0], [0, 1]] as const) quads.push(quad(ring(turns), t0, t1, u0, u1));
    }
  }
  return quads;
}

function mesh(rod: SolidRod): { text: string; left: number[]; right: number[] } {
  const ids = new Map<string, number>();
  const places: (readonly [number, number, number])[] = [];
  const node = ([x, y]: Point, z: number): number => {
    const key = [x / rod.diameter, y / rod.diameter, z / rod.length].map((value) => Math.round(value * 1e7)).join(' ');
    const known = ids.get(key);
    if (known !== undefined) return known;
    places.push([x, y, z]);
    ids.set(key, places.length);
    return places.length;
  };
  const quads = section(rod.diameter / 2);
  const elements: number[][] = [];
  for (let slice = 0; slice < rod.slices; slice++) {
    const z0 = (rod.length * slice) / rod.slices;
    const z1 = (rod.length * (slice + 1)) / rod.slices;
    for (const quad of quads) {
      const at = (z: number, from: number, to: number): number[] => quad.slice(from, to).map((point) => node(point, z));
      elements.push([...at(z0, 0, 4), ...at(z1, 0, 4), ...at(z0, 4, 8), ...at(z1, 4, 8), ...at((z0 + z1) / 2, 0, 4)]);
    }
  }
  const face = (z: number): number[] => places.flatMap((place, i) => (Math.abs(place[2] - z) < 1e-9 * rod.length ? [i + 1] : []));
  const lines = [
    '*NODE,NSET=ALL',
    ...places.map(([x, y, z], i) => `${i + 1},${x},${y},${z}`),
    '*ELEMENT,TYPE=C3D20R,ELSET=ROD',
    ...elements.flatMap((e, i) => [`${i + 1},${e.slice(0, 15).join(',')},`, e.slice(15).join(',')]),
    '*MATERIAL,NAME=M',
    '*ELASTIC',
    `${rod.youngsModulus},${rod.poissonRatio}`,
    '*DENSITY',
    `${rod.density}`,
    '*SOLID SECTION,ELSET=ROD,MATERIAL=M',
  ];
  return { text: lines.join('\n'), left: face(0), right: face(rod.length) };
}

function run(solver: string, input: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'solid-rod-'));
  try {
    writeFileSync(join(folder, 'rod.inp'), input);
    execFileSync(solver, ['rod'], { cwd: folder, stdio: 'pipe', env: { ...process.env, OMP_NUM_THREADS: '1' } });
    return readFileSync(join(folder, 'rod.dat'), 'utf8');
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The row of the first mode in the table under a heading, which the solver prints with blanks between its letters. */
function firstMode(result: string, heading: string): number[] {
  const spaced = [...heading].join(' ');
  const after = result.slice(result.indexOf(spaced) + 1);
  const row = after.split('\n').map((line) => line.trim().split(/\s+/).map(Number)).find((numbers) => numbers[0] === 1);
  if (!result.includes(spaced) || row === undefined) throw new Error(`the solver printed no table ${heading}`);
  return row;
}

/** Lowest angular frequency of the rod, rad/s. */
export function solidFrequency(solver: string, rod: SolidRod): number {
  const { text, left, right } = mesh(rod);
  const held = rod.ends === 'both faces held' ? [...left, ...right] : left;
  const result = run(solver, [text, '*BOUNDARY', ...held.map((id) => `${id},1,3`), '*STEP', '*FREQUENCY', '2', '*NODE PRINT,NSET=ALL', 'U', '*END STEP', ''].join('\n'));
  return firstMode(result, 'EIGENVALUE OUTPUT')[2] as number;
}

/** Buckling load of the rod pushed evenly on its right face, N. */
export function solidBucklingLoad(solver: string, rod: SolidRod): number {
  const { text, left, right } = mesh(rod);
  // The load is shared by the nodes of the face; how evenly matters only within a diameter of it (Saint-Venant).
  const result = run(solver, [
    text,
    '*BOUNDARY', ...left.map((id) => `${id},1,3`),
    '*STEP', '*BUCKLE', '2', '*CLOAD', ...right.map((id) => `${id},3,${-1 / right.length}`), '*NODE PRINT,NSET=ALL', 'U', '*END STEP', '',
  ].join('\n'));
  return firstMode(result, 'BUCKLING FACTOR OUTPUT')[1] as number;
}
