import { describe, expect, it } from 'vitest';
import { frameJerkRinging } from '../../server/src/mechanics/frame-ringing.ts';

/** Largest swing of m x″ + k x = F(t) after a push of F over a time, by small steps: another method. */
function swingAfter(mass: number, stiffness: number, force: number, duration: number): number {
  const step = 1e-5;
  let [x, v, largest] = [0, 0, 0];
  for (let t = 0; t < duration + 1; t += step) {
    const push = t < duration ? force : 0;
    v += ((push - stiffness * x) / mass) * step;
    x += v * step;
    if (t >= duration) largest = Math.max(largest, Math.abs(x));
  }
  return largest;
}

describe('ringing after a jerk', () => {
  // 2 kg on 8000 N/m: 63.25 rad/s, half a period 49.67 ms.
  it('is what is left where the push lasts half a period: both swings meet', () => {
    expect(swingAfter(2, 8000, 2 * 3, Math.PI / Math.sqrt(8000 / 2)) / frameJerkRinging(2, 3, 8000)).toBeCloseTo(1, 2);
  });
  it('is more than any other push leaves', () => {
    for (const duration of [0.01, 0.03, 0.0993, 0.2]) expect(swingAfter(2, 8000, 6, duration)).toBeLessThan(1.001 * frameJerkRinging(2, 3, 8000));
  });
  it('refuses a frame without stiffness', () => {
    expect(() => frameJerkRinging(1, 1, 0)).toThrow(RangeError);
  });
});
