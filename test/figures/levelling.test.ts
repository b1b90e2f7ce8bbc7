import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Evaluation } from '../../server/src/figures/evaluation.ts';
import { evaluate, figureOf } from '../support/evaluate.ts';

// Lifts of the bed: (0, 0), (300, 0), (150, 300) mm.
const LIFTS = [[0, 0], [300, 0], [150, 300]] as const;

const level = (levelling: Readonly<Record<string, unknown>>, changes: Readonly<Record<string, unknown>> = {}): Evaluation => evaluate('bed', { levelling: { 'moved-by': 'own-motors', ...levelling }, ...changes });
const noteOf = (evaluation: Evaluation, id: string): string | undefined => {
  const result = evaluation.result(id);
  return result.state === 'computed' ? result.note : undefined;
};
const reasonOf = (evaluation: Evaluation, id: string): string => {
  const result = evaluation.result(id);
  return result.state === 'unable' ? result.reason : result.state;
};
const wordsOf = (evaluation: Evaluation, id: string): string | undefined => {
  const result = evaluation.result(id);
  return result.state === 'computed' ? evaluation.figure(id)?.inWords?.(result) : undefined;
};
const mm = (value: number): string => `${value} mm`;
const corners = (places: readonly (readonly [number, number])[]): Record<string, unknown> => Object.fromEntries(places.map(([x, y], i) => [`supports.screw ${i + 1}`, { joint: 'nut-decoupled', at: [mm(x), mm(y)] }]));
const square = corners([[0, 0], [300, 0], [300, 300], [0, 300]]);

describe('the range', () => {
  // Screws 1 and 3 stand farthest apart: √(150² + 300²) = 335.41 mm. 8 mm over it: 23.851 mrad, 1.3666°.
  it('is set by the lifts that stand farthest apart', () => {
    const bed = level({ range: '4 mm' });
    expect(figureOf(bed, 'levelling.tilt-range') * (180 / Math.PI)).toBeCloseTo(1.3666, 4);
    expect(figureOf(bed, 'levelling.height-range')).toBeCloseTo(8e-3, 12);
    expect(noteOf(bed, 'levelling.tilt-range')).toBe('set by screw 1 and screw 3, 335 mm apart');
  });
  it('is not known where nobody says it', () => {
    expect(level({}).result('levelling.tilt-range')).toEqual({ state: 'missing', missing: ['levelling.range'] });
  });
  it('has no meaning for lifts in one line, or for fewer than three', () => {
    expect(reasonOf(level({ range: '4 mm' }, corners([[0, 0], [150, 0], [300, 0]])), 'levelling.tilt-range')).toContain('stand in one line');
    expect(reasonOf(level({ range: '4 mm' }, { 'supports.screw 3': null }), 'levelling.tilt-range')).toContain('three supports');
  });
  it('is not reckoned for more than six', () => {
    expect(reasonOf(level({ range: '4 mm' }, corners([[0, 0], [100, 0], [200, 0], [300, 0], [0, 300], [100, 300], [200, 300]])), 'levelling.tilt-range')).toContain('only up to 6 lifts');
  });
  it('is of the lifts that are named, in their order', () => {
    // (0, 0), (300, 0), (300, 300): 424.26 mm from the first to the last; 8/424.26 = 18.856 mrad.
    const bed = level({ range: '4 mm', lifts: ['screw 3', 'screw 1', 'screw 2'] }, square);
    expect(figureOf(bed, 'levelling.tilt-range')).toBeCloseTo(18.856e-3, 6);
    expect(noteOf(bed, 'levelling.tilt-range')).toBe('set by screw 3 and screw 1, 424 mm apart');
  });
  it('counts a name that leads nowhere as none', () => {
    expect(level({ range: '4 mm', lifts: ['screw 1', 'screw 2', 'screw 9'] }).result('levelling.tilt-range').state).toBe('unable');
  });
});

describe('the smallest correction', () => {
  // Distances to the line through the other two, by area 2A = 300 · 300 mm²: screw 3 300 mm, screws 1 and 2 90 000/335.41 = 268.33 mm. 10 µm / 268.33 mm = 37.27 µrad.
  it('is one step over the distance to the line through the other two', () => {
    const bed = level({ step: '10 µm' });
    expect(figureOf(bed, 'levelling.slope-per-step')).toBeCloseTo(37.27e-6, 8);
    expect(noteOf(bed, 'levelling.slope-per-step')).toBe('by screw 1, 268 mm from the line about which it turns the part');
    expect(figureOf(bed, 'levelling.rise-per-step')).toBeCloseTo(10e-6, 12);
  });
  // A part may lie from y = 60 to 460 mm: 460/300 of the step of screw 3. Against a third of 0.03 mm, and 12 µm of accuracy.
  it('is larger where the load reaches beyond the lifts', () => {
    const bed = level({ step: '10 µm' }, { 'mass.at': ['150 mm', '260 mm'], 'mass.area': ['0 mm', '400 mm'], 'axis.layer-height': '0.03 mm', 'axis.accuracy': '12 µm' });
    expect(figureOf(bed, 'levelling.rise-per-step')).toBeCloseTo(15.333e-6, 8);
    expect(noteOf(bed, 'levelling.rise-per-step')).toBe('at 150, 460 mm, when screw 3 moves');
    expect(figureOf(bed, 'levelling.coarseness')).toBeCloseTo(1.5333, 4);
    expect(noteOf(bed, 'levelling.coarseness')).toBe('of a third of the layer height');
  });
  // Tr12x3 and 200 full steps a turn: 15 µm. Never finer than a microstep of 15/16 µm.
  it('follows from the drive where each lift has its motor', () => {
    const bed = level({});
    expect(figureOf(bed, 'levelling.smallest-step')).toBe(figureOf(bed, 'axis.smallest-real-move'));
    expect(figureOf(bed, 'levelling.smallest-step')).toBeGreaterThanOrEqual(15e-6 / 16 - 1e-15);
    expect(figureOf(level({}, { 'controller.microsteps': null }), 'levelling.smallest-step')).toBeCloseTo(15e-6, 12);
  });
  it('is not known where a hand moves them and nobody says how finely', () => {
    expect(reasonOf(level({ 'moved-by': 'hand' }), 'levelling.slope-per-step')).toContain('how finely');
  });
});

describe('from measured heights', () => {
  // 0, 0.8, 0.3 mm: along x 0.8/300; at (150, 0) 0.4 mm, so along y (0.3 − 0.4)/300. √(2.6667² + 0.3333²) = 2.6874 mrad = 0.15398°. Mean 0.3667 mm.
  const bed = level({ range: '4 mm', heights: ['0 mm', '0.8 mm', '0.3 mm'] });
  it('what each lift must do', () => {
    expect(figureOf(bed, 'levelling.measured-tilt') * (180 / Math.PI)).toBeCloseTo(0.15398, 5);
    expect(noteOf(bed, 'levelling.measured-tilt')).toBe('highest at screw 2, lowest at screw 1, 0.8 mm between them');
    expect(figureOf(bed, 'levelling.largest-move')).toBeCloseTo(0.4333e-3, 7);
    expect(noteOf(bed, 'levelling.largest-move')).toBe('screw 1 +0.367 mm, screw 2 −0.433 mm, screw 3 +0.0667 mm');
    // Half of 0.8 mm each way of 4 mm.
    expect(figureOf(bed, 'levelling.range-use')).toBeCloseTo(0.1, 9);
    expect(reasonOf(bed, 'levelling.twist')).toContain('three lifts');
  });
  it('nothing, where it is level', () => {
    const done = level({ range: '4 mm', steepest: '0.1°', heights: ['1 mm', '1 mm', '1 mm'] });
    expect([figureOf(done, 'levelling.measured-tilt'), figureOf(done, 'levelling.rounds'), figureOf(done, 'levelling.range-use')]).toEqual([0, 0, 0]);
  });
  it('needs as many heights as lifts', () => {
    expect(reasonOf(level({ heights: ['0 mm', '1 mm', '0 mm', '0 mm'] }), 'levelling.largest-move')).toBe('there are 3 lifts and 4 measured heights');
    expect(reasonOf(level({}), 'levelling.largest-move')).toContain('no heights');
  });
  // One corner of a square 0.4 mm too high: least squares leave a quarter of it at each corner, alternating; slopes 0.4/(2 · 300) each way.
  it('the twist that stays on four', () => {
    const four = level({ heights: ['0.4 mm', '0 mm', '0 mm', '0 mm'] }, square);
    expect(figureOf(four, 'levelling.twist')).toBeCloseTo(0.1e-3, 9);
    expect(noteOf(four, 'levelling.twist')).toBe('screw 1 +0.1 mm, screw 2 −0.1 mm, screw 3 +0.1 mm, screw 4 −0.1 mm');
    expect(figureOf(four, 'levelling.measured-tilt')).toBeCloseTo((Math.SQRT2 * 0.4) / 600, 9);
    expect(noteOf(four, 'levelling.rounds')).toBe('screw 1 −0.2 mm, then screw 3 +0.2 mm, in one go');
  });
});

/** Slope of the plane through three points, by the cross product of two of its sides. */
function slope(heights: readonly number[]): number {
  const [[ax, ay], [bx, by], [cx, cy]] = LIFTS;
  const [a, b, c] = heights as [number, number, number];
  const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, b - a, cx - ax, cy - ay, c - a];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  return Math.hypot(nx, ny) / Math.abs(nz);
}

describe('the order, walked in small steps', () => {
  const height = fc.integer({ min: -100, max: 100 }).map((n) => n / 100);
  it('levels, is never steeper than said, and no other order in as many rounds is flatter (property)', () => {
    fc.assert(fc.property(fc.tuple(height, height, height), fc.constantFrom(1, 1.05, 1.3), (heights, room) => {
      if (slope(heights) === 0) return;
      const allowed = slope(heights) * room + 1e-7;
      const bed = level({ steepest: `${(allowed * 180) / Math.PI}°`, heights: heights.map(mm) });
      const [rounds, steepest] = [figureOf(bed, 'levelling.rounds'), figureOf(bed, 'levelling.steepest-on-the-way')];
      const moves = (noteOf(bed, 'levelling.largest-move') ?? '').split(', ').map((text) => /^screw (\d) ([+−]?)([\d.e-]+) mm$/.exec(text) ?? []);
      const way = moves.map(([, , sign, size]) => (sign === '−' ? -1 : 1) * Number(size));
      const order = [...(noteOf(bed, 'levelling.rounds') ?? '').matchAll(/screw (\d)/g)].map(([, lift]) => Number(lift) - 1);
      // Notes are rounded to three digits: that much of the slope is left.
      const rounding = 3e-5 + 0.01 * slope(heights);
      const walk = (sequence: readonly number[]): { worst: number; end: number } => {
        const now = [...heights] as number[];
        let worst = slope(now);
        for (let round = 0; round < rounds; round++) for (const lift of sequence) for (let step = 0; step < 7; step++) {
          now[lift] = (now[lift] as number) + (way[lift] as number) / rounds / 7;
          worst = Math.max(worst, slope(now));
        }
        return { worst, end: slope(now) };
      };
      const own = walk(order);
      expect(own.end).toBeLessThan(rounding);
      expect(Math.abs(own.worst - steepest)).toBeLessThan(rounding);
      for (const other of [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]]) expect(walk(other).worst).toBeGreaterThan(steepest - rounding);
      if (room > 1) expect(steepest).toBeLessThanOrEqual(allowed * (1 + 1e-6));
    }), { numRuns: 25 });
  });
});

describe('whether it is free to tilt', () => {
  it('the bed on floating nuts is, and says so', () => {
    expect(figureOf(level({}), 'levelling.held')).toBe(0);
    expect(wordsOf(level({}), 'levelling.held')).toBe('free to tilt');
  });
  it('a bolted carriage holds both tilts, and is named', () => {
    const held = level({}, { 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } });
    expect(figureOf(held, 'levelling.held')).toBe(2);
    expect(noteOf(held, 'levelling.held')).toBe('left rail fixes tilt about X and Y');
  });
  it('a bushing holds them only softly', () => {
    const soft = level({}, { 'supports.left rail': { joint: 'one-bushing', at: ['-50 mm', '100 mm'] } });
    expect([figureOf(soft, 'levelling.held'), figureOf(soft, 'levelling.held-stiff')]).toEqual([2, 0]);
  });
  it('a lift that holds nothing upright lifts nothing', () => {
    expect(reasonOf(level({ lifts: ['screw 1', 'screw 2', 'right shaft'] }), 'levelling.held')).toBe('right shaft holds nothing along the vertical, so that it lifts nothing');
  });
  it('feet that are set by hand lift too: three balls without guides', () => {
    const foot = (x: number, y: number, joint: string, more: object = {}): object => ({ joint, at: [mm(x), mm(y)], ...more });
    const feet = { 'supports.left rail': null, 'supports.right shaft': null, 'supports.screw 1': foot(0, 0, 'ball'), 'supports.screw 2': foot(300, 0, 'vee', { across: 'x' }), 'supports.screw 3': foot(150, 300, 'flat') };
    expect(figureOf(level({ 'moved-by': 'hand', lifts: ['screw 1', 'screw 2', 'screw 3'] }, feet), 'levelling.held')).toBe(0);
  });
});

describe('with power off', () => {
  const runsDown = { brake: null, 'screw.size': 'Tr8x8(P2)', 'motor.detent-torque': '1 N·mm' };
  it('kept by brakes, lost where screws run down', () => {
    expect(wordsOf(level({}), 'levelling.kept-unpowered')).toBe('level is kept');
    expect(wordsOf(level({}, runsDown), 'levelling.kept-unpowered')).toBe('level is lost');
  });
  it('kept where one motor ties lifts together that are set by hand', () => {
    expect(wordsOf(level({ 'moved-by': 'hand' }, { ...runsDown, 'drive.motors': 'shared' }), 'levelling.kept-unpowered')).toBe('level is kept');
  });
  it('not known where nobody says what moves the lifts; told by a motor each', () => {
    expect(evaluate('bed', { levelling: { range: '4 mm' } }).result('levelling.kept-unpowered')).toEqual({ state: 'missing', missing: ['levelling.moved-by'] });
    expect(wordsOf(evaluate('bed', { levelling: { range: '4 mm' }, 'drive.motors': 'one-each' }), 'levelling.kept-unpowered')).toBe('level is kept');
  });
});
