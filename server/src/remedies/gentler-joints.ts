import type { JointKind } from '../mechanics/constraint-wrenches.ts';

/** What each kind may give way to, gentlest change first; none does another job than its own. */
export const GENTLER_JOINTS: Partial<Record<JointKind, readonly JointKind[]>> = {
  'rail-carriage': ['carriage-on-ball', 'fork'],
  'wheel-carriage': ['vee-wheel', 'flat-wheel'],
  'vee-wheel': ['flat-wheel'],
  'two-bushings': ['self-aligning-bushing', 'fork'],
  'one-bushing': ['self-aligning-bushing', 'fork'],
  'self-aligning-bushing': ['fork'],
  'carriage-on-ball': ['fork'],
  ball: ['ball-on-radial-slide', 'flat'],
  cone: ['vee', 'flat'],
  vee: ['flat'],
  'ball-on-radial-slide': ['flat'],
  'rigid-bolts': ['ball', 'ball-on-radial-slide', 'flat', 'blade-flexure', 'wire-flexure'],
  'nut-rigid': ['nut-sliding-plate', 'nut-decoupled'],
  'nut-sliding-plate': ['nut-decoupled'],
};
