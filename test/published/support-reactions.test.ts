/** Reactions of supports against printed examples. */
import { expect, test } from 'vitest';
import { lyingPlateReactions, supportReactions } from '../../server/src/mechanics/support-reactions.ts';

// Hibbeler, Engineering Mechanics: Statics, example 5.13, p. 197 (open transcription; the printed page was not opened): a plate of 100 kg, 2 m by 3 m, on a roller A, a
// socket B and a cord C at three corners, with 300 N and a couple of 200 N·m on its edges: 790.5, -216.7 and 707.2 N.
// The balance from memory: 2 T_C + 2 B = 981·1; 3 A + 3 B = 981·1.5 + 300·1.5 - 200; A + B + T_C = 981 + 300.
const A = { x: 3, y: 0 };
const B = { x: 3, y: 2 };
const C = { x: 0, y: 2 };
const loads = [
  { x: 1.5, y: 1, force: 981 },
  { x: 1.5, y: 0, force: 300 },
  { x: 0, y: 0, force: 200 }, // the couple, as two forces one metre apart
  { x: 1, y: 0, force: -200 },
];

test('Hibbeler, example 5.13: 790.5, -216.7 and 707.2 N', () => {
  const { reactions, leftForGuides } = supportReactions([A, B, C], loads);
  expect(reactions[0]).toBeCloseTo(790.5, 6);
  expect(reactions[1]).toBeCloseTo(-216.667, 3);
  expect(reactions[2]).toBeCloseTo(707.167, 3);
  expect(leftForGuides).toEqual({ mx: 0, my: 0 });
});

test('Hibbeler, example 5.13: on three supports that only push the plate tips, since one would have to pull', () => {
  expect(lyingPlateReactions([A, B, C], loads).kind).toBe('tips');
});

test('truck on three wheels, 103 kg (homework solution, consistent with statics): 541.52, 128.5 and 339.38 N', () => {
  // Wheel C 540 mm before the centre of gravity, the axle of A and B 625 mm behind it, A 515 mm and B 195 mm beside it.
  const wheels = [{ x: 0, y: 0.54 }, { x: -0.515, y: -0.625 }, { x: 0.195, y: -0.625 }];
  const { reactions } = supportReactions(wheels, [{ x: 0, y: 0, force: 103 * 9.8 }]);
  expect(reactions[0]).toBeCloseTo(541.52, 2);
  expect(reactions[1]).toBeCloseTo(128.5, 2);
  expect(reactions[2]).toBeCloseTo(339.38, 1);
});
