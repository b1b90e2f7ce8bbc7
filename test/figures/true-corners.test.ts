import { describe, expect, it } from 'vitest';
import { evaluate } from '../support/evaluate.ts';

/** Bounds where a sign turns, or a value is cut off, between the nominal point and the corner. */
const boundsOf = (evaluation: ReturnType<typeof evaluate>, id: string) => {
  const bounds = evaluation.bounds(id);
  if (!bounds) throw new Error(`${id}: ${JSON.stringify(evaluation.result(id))}`);
  return bounds;
};

describe('a thread that holds at the nominal friction and runs down at the lowest', () => {
  // Tr12x3: tan λ = 3/(10.5π) = 0.0909457, cos α_n = 0.966190. Friction 0.05 to 0.15, nominal 0.10: µ′ 0.0517497 to 0.155249, nominal 0.103499, which holds.
  // One screw, 10 m/s², 5 to 15 kg: the worst is the lowest friction with the heaviest load, although at the nominal friction a heavier load is held more firmly:
  // 150 N · 5.25 mm · (0.0909457 − 0.0517497)/(1 + 0.0909457 · 0.0517497) = 787.5 · 0.0391960/1.00470641 = 30.722 N·mm.
  // The other end: the highest friction with the heaviest load, 787.5 · (0.0909457 − 0.155249)/(1 + 0.0909457 · 0.155249) = −787.5 · 0.0643033/1.0141192 = −49.934 N·mm.
  const evaluation = evaluate('lift', {
    brake: null, 'drive.units': 1, 'mass.mass': '10 kg ± 5 kg', 'conditions.gravity': '10 m/s²', 'nut.friction': '0.05 to 0.15', 'thrust-bearing.friction': 0,
  });

  it('runs down hardest under its heaviest load', () => {
    const { low, nominal, high } = boundsOf(evaluation, 'screw.run-down-torque');
    expect(high * 1000).toBeCloseTo(30.722, 2);
    expect(low * 1000).toBeCloseTo(-49.934, 2);
    expect(nominal).toBeLessThan(0);
  });

  it('asks for that torque to be held, though nominally for none', () => {
    expect(boundsOf(evaluation, 'screw.holding-torque')).toMatchObject({ nominal: 0, low: 0 });
    expect(boundsOf(evaluation, 'screw.holding-torque').high * 1000).toBeCloseTo(30.722, 2);
    expect(boundsOf(evaluation, 'motor.holding-torque-needed').high * 1000).toBeCloseTo(30.722, 2);
  });

  it('falls with the heaviest mass at the lowest friction', () => {
    // η_r = 0.0391960/1.00470641/0.0909457 = 0.428967; no detent counted. The energy alone goes with the mass: 15 kg · 10 · 0.3 m = 45 J.
    expect(boundsOf(evaluation, 'drive.drop-energy').high).toBeCloseTo(45, 9);
    expect(boundsOf(evaluation, 'drive.fall-speed').low).toBe(0);
    expect(boundsOf(evaluation, 'drive.fall-speed').high).toBeGreaterThan(0);
  });
});

describe('a hanging screw that only a process force could push', () => {
  it('is pushed by the most that can come together: the lightest load and the largest force', () => {
    // 2 F_0 − F_2 = F_0 − F_g − F_p − m a; hanging, the push is its negative: 60 + 4 + 1 · 0.2 − 1 · 10 = 54.2 N with 1 kg and 60 N. Nominally 30 N against 20 N of weight: 30 + 4 + 0.4 − 20 = 14.4 N.
    const evaluation = evaluate('lift', { 'drive.units': 1, 'mass.mass': '2 kg ± 1 kg', 'conditions.gravity': '10 m/s²', 'axis.process-force': '0 N to 60 N' });
    const { low, nominal, high } = boundsOf(evaluation, 'screw.compression');
    expect([low, nominal, high]).toEqual([0, expect.closeTo(14.4, 9), expect.closeTo(54.2, 9)]);
  });
});
