import data from './data/frame-joints.json' with { type: 'json' };
import type { HandbookRange } from './nut-materials.ts';

/** How members of a frame are joined. */
export interface FrameJoint {
  readonly name: string;
  readonly title: string;
  /** Against turning, N·m/rad. */
  readonly stiffness: HandbookRange;
}

/** All joints; orders of magnitude, the middle is the geometric one. */
export const FRAME_JOINTS: readonly FrameJoint[] = data.rows.map((row) => {
  const [low = 0, high = 0] = row.stiffness_Nm_per_rad;
  return { name: row.name, title: row.title, stiffness: { low, nominal: low === 0 ? 0 : Math.sqrt(low * high), high, source: data.source, weak: true } };
});

/** The joint of that name; undefined for one that the table does not have. */
export const frameJoint = (name: string): FrameJoint | undefined => FRAME_JOINTS.find((row) => row.name === name);
