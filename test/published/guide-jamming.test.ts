/** Jamming of sliders against printed examples. */
import { expect, test } from 'vitest';
import { lockingOffset, sliderForce } from '../../server/src/mechanics/slider-jamming.ts';

const inch = 0.0254;

test('Beer and Johnston, Vector Mechanics for Engineers, sample problem 8.3, p. 398: a bracket 6 in high, friction 0.25, locks from 12 in on', () => {
  // The answer is read, the height of the collar from memory. The weight on the bracket is what drives it down; nothing resists but friction.
  expect(lockingOffset(6 * inch, 0.25) / inch).toBeCloseTo(12, 12);
  const bracket = (x: number) => sliderForce({ guidedLength: 6 * inch, friction: 0.25, driveOffset: x * inch, load: 0 });
  expect(bracket(12).kind).toBe('locks');
  expect(bracket(11.99)).toEqual({ kind: 'moves', force: 0, locksAbove: Infinity });
  expect(bracket(12.01).kind).toBe('locks');
});

test('the trade\'s "2 to 1" is friction 0.25 and nothing else (white paper on sliding bearings: the ratio depends on friction)', () => {
  expect(lockingOffset(1, 0.25)).toBe(2);
  expect(lockingOffset(1, 0.1)).toBeCloseTo(5, 12);
});
