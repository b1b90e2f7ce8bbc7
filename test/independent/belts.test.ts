/** Belts by other methods: springs as a linear system, a polygon round two circles, integration. */
import { EigenvalueDecomposition, Matrix, solve } from 'ml-matrix';
import { describe, expect, test } from 'vitest';
import { drivingEccentricityError, idlerEccentricityError } from '../../server/src/mechanics/belt-errors.ts';
import { openBelt } from '../../server/src/mechanics/belt-geometry.ts';
import { loadedSpans, softestPosition, spansAt, tautStiffness, tensionNeeded, tightShare } from '../../server/src/mechanics/belt-spans.ts';
import { capstanRatio } from '../../server/src/mechanics/belt-strength.ts';
import { stringFrequency } from '../../server/src/mechanics/belt-string.ts';

interface Loop {
  /** E A, N. */
  readonly c: number;
  /** Along the belt, from where it leaves the driving pulley through the carriage and round the idler back to the pulley, m. */
  readonly length: number;
  /** Carriage, m along the belt. */
  readonly at: number;
  /** T0, N. */
  readonly tension: number;
  /** Force on the carriage in the direction along the belt away from its beginning, N. */
  readonly force: number;
  /** By how much the ends and the stretch behind the carriage are shifted along the belt or lengthened, m. */
  readonly startShift?: number;
  readonly endShift?: number;
  readonly secondLonger?: number;
}

/**
 * The belt as a chain of many springs along its path, both ends held by the driving pulley; idlers without friction are just places on the path.
 * Springs that would push let go, and the rest is solved again.
 */
function chain({ c, length, at, tension, force, startShift = 0, endShift = 0, secondLonger = 0 }: Loop): { u: number; first: number; second: number } {
  const PIECES = 40;
  const places = [...Array.from({ length: PIECES }, (_, i) => (at * i) / PIECES), ...Array.from({ length: PIECES + 1 }, (_, i) => at + ((length - at) * i) / PIECES)];
  const carriage = PIECES;
  const springs = places.slice(1).map((place, i) => {
    const piece = place - (places[i] as number);
    const behind = i >= carriage;
    return { from: i, to: i + 1, k: c / piece, pull: tension + (behind ? (c / piece) * (secondLonger / PIECES) : 0) };
  });
  const held = new Map([[0, startShift], [places.length - 1, endShift]]);
  const free = places.map((_, i) => i).filter((i) => !held.has(i));
  const column = new Map(free.map((node, i) => [node, i]));
  const solveWith = (active: readonly boolean[]): { u: readonly number[]; tensions: readonly number[] } => {
    const K = Matrix.zeros(free.length, free.length);
    const f = Matrix.zeros(free.length, 1);
    f.set(column.get(carriage) as number, 0, force);
    const add = (row: number, col: number, value: number): void => { K.set(row, col, K.get(row, col) + value); };
    springs.forEach(({ from, to, k, pull }, i) => {
      if (!active[i]) return;
      for (const [node, other, sign] of [[from, to, 1], [to, from, -1]] as const) {
        const row = column.get(node);
        if (row === undefined) continue;
        add(row, row, k);
        f.set(row, 0, f.get(row, 0) + sign * pull);
        const col = column.get(other);
        if (col === undefined) f.set(row, 0, f.get(row, 0) + k * (held.get(other) as number));
        else add(row, col, -k);
      }
    });
    // A slack stretch leaves its nodes loose: a whisper of stiffness keeps them findable.
    for (let i = 0; i < free.length; i++) add(i, i, 1e-9);
    const found = solve(K, f);
    const u = places.map((_, i) => held.get(i) ?? found.get(column.get(i) as number, 0));
    return { u, tensions: springs.map(({ from, to, k, pull }, i) => (active[i] ? pull + k * ((u[to] as number) - (u[from] as number)) : 0)) };
  };
  let active = springs.map(() => true);
  for (let round = 0; ; round++) {
    const { u, tensions } = solveWith(active);
    const next = tensions.map((value, i) => (active[i] ?? false) && value >= -1e-6);
    if (round > 5 || next.every((each, i) => each === active[i])) return { u: u[carriage] as number, first: tensions[0] as number, second: tensions.at(-1) as number };
    active = next;
  }
}

const c = 20e3;

describe('a loop of springs', () => {
  test.each([0.05, 0.2, 0.45])('carriage at %f of 1.02 m: stiffness and tensions', (at) => {
    const spans = spansAt(1.02, at);
    const { u, first, second } = chain({ c, length: 1.02, at, tension: 30, force: -20 });
    // A force of 20 N towards the pulley comes from the first span letting go: the second one pulls.
    expect(tautStiffness(c, spans) / (-20 / u)).toBeCloseTo(1, 6);
    const loaded = loadedSpans(c, spans, 30, 20, 'second');
    expect(second).toBeCloseTo(loaded.tight, 5);
    expect(first).toBeCloseTo(loaded.slack, 5);
    expect((second - 30) / 20).toBeCloseTo(tightShare(spans, 'second'), 6);
  });

  test.each([[0.05, 20], [0.3, 20], [0.45, 15]])('at %f m with 5 N set and %f N asked, one span hangs slack', (at, force) => {
    const { u, first, second } = chain({ c, length: 1.02, at, tension: 5, force: -force });
    const loaded = loadedSpans(c, spansAt(1.02, at), 5, force, 'second');
    expect(loaded.isSlack).toBe(true);
    expect(-u / loaded.give).toBeCloseTo(1, 5);
    expect(second).toBeCloseTo(loaded.tight, 5);
    expect(first).toBeCloseTo(0, 5);
  });

  test('softest over the travel: searched in steps of 5 mm; a loop at its far end, two anchors in the middle', () => {
    const softest = (length: number, from: number, travel: number): number => {
      let best = { at: from, u: 0 };
      for (let at = from; at <= from + travel + 1e-9; at += 0.005) {
        const u = -chain({ c, length, at, tension: 100, force: -1 }).u;
        if (u > best.u) best = { at, u };
      }
      return best.at;
    };
    expect(Math.abs(softest(1.02, 0.05, 0.4) - softestPosition({ freeLength: 1.02, nearest: 0.05, travel: 0.4 }))).toBeLessThan(0.003);
    expect(Math.abs(softest(1, 0.1, 0.8) - softestPosition({ freeLength: 1, nearest: 0.1, travel: 0.8 }))).toBeLessThan(0.003);
  });

  test('the tension needed is where the springs begin to let go', () => {
    const needed = tensionNeeded({ freeLength: 1.02, nearest: 0.05, travel: 0.4 }, { towards: 20, away: 20 });
    const least = (tension: number): number => Math.min(...[0.05, 0.25, 0.45].flatMap((at) => [-20, 20].map((force) => {
      const { first, second } = chain({ c, length: 1.02, at, tension, force });
      return Math.min(first, second);
    })));
    expect(least(needed * 1.001)).toBeGreaterThan(0);
    expect(least(needed * 0.99)).toBeLessThanOrEqual(1e-5);
  });

  test('an idler that moves its path by 0.08 mm shifts the carriage by L1/(L1 + L2) of it', () => {
    const e = 0.02e-3;
    const at = (longer: number): number => chain({ c, length: 1, at: 0.4, tension: 200, force: 0, secondLonger: longer }).u;
    // Half a turn of wrap: the idler's axis moves by 2e from one side to the other, each run by as much.
    expect(at(4 * e) - at(0)).toBeCloseTo(idlerEccentricityError(e, Math.PI, 0.4, 0.6), 9);
  });

  test('a driving pulley that runs out of true: an eccentric circle rolled off numerically, then the loop of springs', () => {
    const r = 6e-3;
    const e = 0.02e-3;
    // Half a turn of wrap, runs parallel to x. With the pulley turned by t, where is the belt point that is a fixed length ahead on each run?
    // The rim is walked in small steps of arc round the displaced circle, so nothing of the formula is used.
    const runEnd = (t: number, side: 1 | -1): number => {
      const centre = [e * Math.cos(t), e * Math.sin(t)] as const;
      // The mark on the rim that leads this run lies at angle t0 + t; it stays in contact. From there the belt follows the rim to the highest (lowest) point, then runs along x.
      const mark = Math.PI + t;
      const target = (side * Math.PI) / 2;
      const steps = 4000;
      const sweep = ((side * (mark - target)) % (2 * Math.PI) + 2 * Math.PI) % (2 * Math.PI);
      let walked = 0;
      let previous = [centre[0] + r * Math.cos(mark), centre[1] + r * Math.sin(mark)] as const;
      for (let i = 1; i <= steps; i++) {
        const angle = mark - side * sweep * (i / steps);
        const point = [centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)] as const;
        walked += Math.hypot(point[0] - previous[0], point[1] - previous[1]);
        previous = point;
      }
      return previous[0] + (1 - walked);
    };
    for (const at of [0.05, 0.3, 0.5]) {
      let most = -Infinity;
      let least = Infinity;
      for (let i = 0; i < 37; i++) {
        const t = -1.2 + (2.4 * i) / 36;
        // What the end of each run does beyond plain rolling, counted away from the pulley.
        const top = runEnd(t, 1) - runEnd(0, 1) + r * t;
        const bottom = runEnd(t, -1) - runEnd(0, -1) - r * t;
        // Along the belt the first run's end shifts by +top; the last one, which comes back, by -bottom.
        const { u } = chain({ c, length: 1, at, tension: 200, force: 0, startShift: top, endShift: -bottom });
        most = Math.max(most, u);
        least = Math.min(least, u);
      }
      // From t = 0 (cos 1) to 1.2 (cos 0.362): the part 1 - cos 1.2 of half of the swing.
      expect(most - least).toBeCloseTo((drivingEccentricityError(e, Math.PI, at, 1 - at) / 2) * (1 - Math.cos(1.2)), 8);
    }
  });
});

test.each([[0.1, 0.02, 0.06], [0.5, 0.0127, 0.0127], [0.048, 0.06, 0.02]])('path round two circles %f m apart (%f, %f): a polygon as hull', (distance, first, second) => {
  const points: [number, number, 0 | 1][] = [];
  const N = 6000;
  for (let i = 0; i < N; i++) {
    const angle = (2 * Math.PI * i) / N;
    points.push([(first / 2) * Math.cos(angle), (first / 2) * Math.sin(angle), 0], [distance + (second / 2) * Math.cos(angle), (second / 2) * Math.sin(angle), 1]);
  }
  const hull = convexHull(points);
  const length = hull.reduce((sum, point, i) => sum + Math.hypot(point[0] - hull[(i + 1) % hull.length]![0], point[1] - hull[(i + 1) % hull.length]![1]), 0);
  const belt = openBelt(distance, first, second);
  expect(length / belt.length).toBeCloseTo(1, 5);
  const onFirst = hull.filter((point) => point[2] === 0).length - 1;
  expect(Math.abs((onFirst / N) * 2 * Math.PI - belt.firstWrap)).toBeLessThan(0.005);
});

/** Monotone chain. */
function convexHull(points: readonly [number, number, 0 | 1][]): [number, number, 0 | 1][] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly [number, number, 0 | 1][]): [number, number, 0 | 1][] => {
    const stack: [number, number, 0 | 1][] = [];
    for (const point of list) {
      for (;;) {
        const [a, b] = [stack.at(-2), stack.at(-1)];
        if (!a || !b || (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 0) break;
        stack.pop();
      }
      stack.push(point);
    }
    return stack.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

test.each([[0.1, Math.PI], [0.3, 4], [0.5, 0.7]])('friction %f over %f rad: the balance of small pieces added up', (friction, wrap) => {
  // Each piece presses with T dθ and so may differ by µ T dθ: summed with the midpoint rule.
  const N = 20_000;
  let tension = 1;
  for (let i = 0; i < N; i++) {
    const half = tension + 0.5 * friction * tension * (wrap / N);
    tension += friction * half * (wrap / N);
  }
  expect(tension / capstanRatio(friction, wrap)).toBeCloseTo(1, 6);
});

test('a plucked span as 150 beads on a thread: lowest eigenvalue', () => {
  const [length, tension, mass, N] = [0.2, 40, 9e-3, 150];
  const piece = length / (N + 1);
  const K = Matrix.zeros(N, N);
  for (let i = 0; i < N; i++) {
    K.set(i, i, (2 * tension) / piece);
    if (i > 0) { K.set(i, i - 1, -tension / piece); K.set(i - 1, i, -tension / piece); }
  }
  const lowest = Math.min(...new EigenvalueDecomposition(K, { assumeSymmetric: true }).realEigenvalues) / (mass * piece);
  expect(Math.sqrt(lowest) / (2 * Math.PI) / stringFrequency(length, tension, mass)).toBeCloseTo(1, 4);
});
