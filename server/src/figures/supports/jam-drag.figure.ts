import { jamDrag, type JointLoad } from '../../mechanics/constraint-jam.ts';
import { length3, squareTo, unit3 } from '../../mechanics/vector3.ts';
import type { SupportJoint } from '../../machine/support-joint.ts';
import { figure, unable } from '../figure.ts';
import { growthLoads, misalignmentLoads, NOTHING } from './jam-loads.ts';
import { layoutOf, NO_SUPPORTS, type Layout } from './layout.ts';

const tables = { rows: 'axis.support-joints' } as const;
const names = { owners: 'axis.support-joints' } as const;

/** Joints that run along a rail or shaft. */
const SLIDING: ReadonlySet<string> = new Set(['rail-carriage', 'carriage-on-ball', 'wheel-carriage', 'vee-wheel', 'flat-wheel', 'one-bushing', 'two-bushings', 'self-aligning-bushing', 'fork']);
const NUTS: ReadonlySet<string> = new Set(['nut-rigid', 'nut-sliding-plate', 'nut-decoupled']);

interface Rubbing {
  readonly friction: number;
  /** Over which it bears, m; without it only side forces count. */
  readonly length: number | undefined;
}

interface Frictions {
  readonly guide: Rubbing | undefined;
  /** `travelled`: force along the axis for each newton of friction round the screw. */
  readonly nut: (Rubbing & { readonly travelled: number }) | undefined;
}

/** Friction of one joint under a jam load: side force, and couple where the length over which it bears is known. */
function rubs({ friction, length }: Rubbing, { axis }: SupportJoint, { force, couple }: JointLoad): number {
  const direction = unit3(axis);
  const [side, tilt] = [length3(squareTo(direction, force)), length3(squareTo(direction, couple))];
  return length === undefined ? friction * side : jamDrag(friction, side, tilt, length);
}

const dragOf = ({ supports }: Layout, loads: readonly JointLoad[], { guide, nut }: Frictions): number =>
  loads.reduce((sum, load) => {
    const support = supports[load.joint] as SupportJoint;
    if (NUTS.has(support.kind)) return nut === undefined ? sum : sum + nut.travelled * rubs(nut, support, load);
    return guide !== undefined && SLIDING.has(support.kind) ? sum + rubs(guide, support, load) : sum;
  }, 0);

export default [
  figure({
    id: 'supports.jam-drag',
    title: 'Drag from jamming',
    symbol: 'R_j',
    quantity: 'force',
    unit: 'N',
    meaning: 'Friction that jam forces from growth and misalignment add on rails, shafts and nuts, as a force against the travel.',
    onlyWith: ['supports'],
    needs: { end: 'axis.joint-stiffness-end' },
    optional: {
      friction: 'guides.friction', strain: 'supports.growth-strain', length: 'guides.guided-length', stiffness: 'carried-part.stiffness',
      nutFriction: 'nut.friction', nutLength: 'nut.length', pitchDiameter: 'screw.pitch-diameter', lead: 'screw.lead', efficiency: 'drive.shaft-efficiency',
    },
    tables, names,
    compute: ({ rows, owners, friction, strain, end, length, stiffness, nutFriction, nutLength, pitchDiameter, lead, efficiency }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      const loads = [strain === undefined ? [] : growthLoads(layout, strain, end), misalignmentLoads(layout, end)] as const;
      const guided = loads.flat().some(({ joint, force }) => SLIDING.has(layout.supports[joint]?.kind ?? '') && length3(force) > NOTHING);
      if (guided && friction === undefined) return unable('the friction of the guides is not known');
      const nut = nutFriction === undefined || pitchDiameter === undefined || lead === undefined || lead <= 0 ? undefined : { friction: nutFriction, length: nutLength, travelled: (Math.PI * pitchDiameter * (efficiency ?? 1)) / lead };
      const frictions: Frictions = { guide: friction === undefined ? undefined : { friction, length }, nut };
      const [growth, misfits] = [dragOf(layout, loads[0], frictions), dragOf(layout, loads[1], frictions)];
      const value = growth + misfits;
      if (value < NOTHING) return 0;
      const notes = [
        growth >= misfits ? 'mostly from growth' : 'mostly from misalignment',
        ...(stiffness === undefined ? ['as if part and frame were rigid, so that it is an upper bound'] : []),
        ...(guided && length === undefined ? ['of the guides side forces alone: with guided-length the couples count too'] : []),
      ];
      return { value, note: notes.join('; ') };
    },
    formula: 'R_j = Σ µ (|F| + 2 |M|/s) + Σ µ_n (|F| + 2 |M|/s_n) π d₂ η_w/p_h',
    sources: [{ title: 'dry friction on both ends of a slider; round a screw it takes torque at the mean diameter, flanks that wedge not counted' }],
    rank: 3,
  }),
  figure({
    id: 'supports.jam-drag-use',
    title: 'Drag from jamming over the force to spare',
    symbol: 'R_j/F_s',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Drag from jamming over what the drives can push beyond the load of a normal move; at 100 % they stop.',
    onlyWith: ['supports'],
    needs: { drag: 'supports.jam-drag', push: 'drive.push-force', load: 'drive.lifting-load', units: 'drive.units' },
    optional: { available: 'motor.available-torque', standing: 'motor.standing-torque' },
    compute: ({ drag, push, load, units, available, standing }) => {
      // At speed a motor gives less than at rest.
      const atSpeed = available === undefined || standing === undefined || standing <= 0 ? 1 : Math.min(1, available / standing);
      // The most loaded drive has the least to spare.
      const spare = push * atSpeed - units * Math.max(0, load);
      return spare > 0 ? drag / spare : unable('the drives have no force to spare even without it');
    },
    formula: "R_j / (F_max T_a/T_H' − n_u F₂)",
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
