import { growthMisfits, jamDrag, jamForces, jointLoads, type JointLoad } from '../../mechanics/constraint-jam.ts';
import type { Wrench } from '../../mechanics/constraint-wrenches.ts';
import { dot3, length3, minus3, squareTo, unit3, type Vector3 } from '../../mechanics/vector3.ts';
import { formOf, type SupportJoint } from '../../machine/support-joint.ts';
import { figure, unable } from '../figure.ts';
import { layoutOf, NO_SUPPORTS, stiffnessOf, wrenchesIn, type Layout } from './layout.ts';

const tables = { rows: 'axis.support-joints' } as const;
const names = { owners: 'axis.support-joints' } as const;
const springs = { title: 'least elastic energy: a rigid part on joints that are springs', weak: true } as const;

/** What growth by a strain does to each joint, with the drives held. */
export function growthLoads(layout: Layout, strain: number, end: number): JointLoad[] {
  const wrenches = wrenchesIn(layout, 'drives held');
  return jointLoads(wrenches, jamForces(wrenches, growthMisfits(wrenches, strain), stiffnessOf(layout, wrenches, end), layout.scale));
}

/** How far a wrench's joint may be out along it: m, rad for couples. */
const misfitOf = (wrench: Wrench, { offset, tilt, axis }: SupportJoint): number =>
  // A couple about the joint's own axis is its twist; an offset along the axis is only that of what stops it there.
  wrench.holds === 'couple' ? tilt : wrench.holds === 'thread' ? 0 : Math.abs(dot3(wrench.direction, unit3(axis))) > 0.99 ? 0 : offset;

/** The most that joints out of place can do to each joint: every misfit by itself with its worse sign, all added. */
export function misalignmentLoads(layout: Layout, end: number): JointLoad[] {
  const wrenches = wrenchesIn(layout, 'drives held');
  const stiffness = stiffnessOf(layout, wrenches, end);
  const sums = wrenches.map(() => 0);
  wrenches.forEach((wrench, i) => {
    const misfit = misfitOf(wrench, layout.supports[wrench.joint] as SupportJoint);
    if (misfit === 0) return;
    jamForces(wrenches, wrenches.map((_, j) => (j === i ? misfit : 0)), stiffness, layout.scale).forEach((force, j) => { sums[j] = (sums[j] as number) + Math.abs(force); });
  });
  return jointLoads(wrenches, sums);
}

/** A part that is drawn tight by less than this is not jammed: rounding. N. */
const NOTHING = 1e-6;

/** The largest force, and the two supports that hold hardest against each other. */
function forceOf(loads: readonly JointLoad[]): number | { value: number; note: string } {
  const [most] = [...loads].sort((a, b) => length3(b.force) - length3(a.force));
  const force = most === undefined ? 0 : length3(most.force);
  if (most === undefined || force < NOTHING) return 0;
  const against = loads.reduce((least, one) => (dot3(one.force, most.force) < dot3(least.force, most.force) ? one : least));
  // In the order of the text, so that the sentence does not turn round while a range is looked at.
  const [one, other] = most.joint < against.joint ? [most, against] : [against, most];
  return { value: force, note: `hardest between ${one.owner} and ${other.owner}; as if part and frame were rigid, so that it is an upper bound` };
}

/** Friction of the guides under jam loads: side force, and couple where the bearing length is known. */
function dragOf(layout: Layout, loads: readonly JointLoad[], friction: number, bearingLength: number | undefined): number {
  return loads.reduce((sum, { joint, force, couple }) => {
    const { kind, axis } = layout.supports[joint] as SupportJoint;
    if (formOf(kind).drive === true || !SLIDING.has(kind)) return sum;
    const direction: Vector3 = unit3(axis);
    const [side, tilt] = [length3(squareTo(direction, force)), length3(squareTo(direction, couple))];
    return sum + (bearingLength === undefined ? friction * side : jamDrag(friction, side, tilt, bearingLength));
  }, 0);
}

/** Joints that run along a rail or shaft. */
const SLIDING: ReadonlySet<string> = new Set(['rail-carriage', 'carriage-on-ball', 'wheel-carriage', 'vee-wheel', 'flat-wheel', 'one-bushing', 'two-bushings', 'self-aligning-bushing', 'fork']);

export default [
  figure({
    id: 'supports.growth-strain',
    title: 'Growth of the carried part over the frame',
    symbol: 'ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much more the carried part grows than the frame, as a part of its length, since both were put together at the temperature around the machine.',
    onlyWith: ['supports', 'carried-part'],
    needs: { part: 'carried-part.expansion', temperature: 'carried-part.temperature', ambient: 'conditions.ambient-temperature', frame: 'conditions.frame-expansion' },
    optional: { machine: 'conditions.machine-temperature' },
    compute: ({ part, temperature, ambient, frame, machine }) => {
      const strain = part * (temperature - ambient) - frame * ((machine ?? ambient) - ambient);
      return machine === undefined ? { value: strain, note: 'the frame is taken to stay as cold as the room' } : strain;
    },
    formula: 'ε = α_p (ϑ_p − ϑ_a) − α_f (T_m − ϑ_a)',
    sources: [{ title: 'linear expansion' }],
    rank: 3,
  }),
  figure({
    id: 'supports.growth',
    title: 'Growth over the farthest supports',
    symbol: 'Δl',
    quantity: 'position',
    meaning: 'How much more the carried part grows than the frame between the two supports that stand farthest apart; negative where the frame outgrows it.',
    onlyWith: ['supports', 'carried-part'],
    needs: { strain: 'supports.growth-strain' },
    tables, names,
    compute: ({ rows, owners, strain }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      let [span, note] = [0, ''];
      layout.joints.forEach((one, i) => {
        for (const other of layout.joints.slice(i + 1)) {
          const distance = length3(minus3(one.at, other.at));
          if (distance > span) [span, note] = [distance, `between ${one.owner} and ${other.owner}`];
        }
      });
      return span === 0 ? 0 : { value: strain * span, note };
    },
    formula: 'Δl = ε l',
    sources: [{ title: 'linear expansion' }],
    rank: 3,
  }),
  figure({
    id: 'supports.growth-jam-force',
    title: 'Jam force from growth',
    symbol: 'F_jϑ',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest force with which one support holds the carried part back as it grows: none where the part is free to grow.',
    onlyWith: ['supports', 'carried-part'],
    needs: { strain: 'supports.growth-strain', end: 'axis.joint-stiffness-end' },
    tables, names,
    compute: ({ rows, owners, strain, end }) => {
      const layout = layoutOf(rows, owners);
      return layout ? forceOf(growthLoads(layout, strain, end)) : unable(NO_SUPPORTS);
    },
    formula: 'f = K (W u − δ), u = (Wᵀ K W)⁺ Wᵀ K δ, δ = ε p · n',
    sources: [springs],
    rank: 2,
  }),
  figure({
    id: 'supports.misalignment-jam-force',
    title: 'Jam force from misalignment',
    symbol: 'F_jm',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest force on one support when every joint stands out of its place by as much as it may, each to its worse side.',
    onlyWith: ['supports'],
    needs: { end: 'axis.joint-stiffness-end' },
    tables, names,
    compute: ({ rows, owners, end }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      if (layout.supports.every(({ offset, tilt }) => offset === 0 && tilt === 0)) return unable('no support says by how much it may stand beside its place (offset) or at an angle (tilt)');
      return forceOf(misalignmentLoads(layout, end));
    },
    formula: 'F_jm = max Σ |f(δ_i)|, δ_i: offset or tilt of one joint',
    sources: [springs],
    rank: 3,
  }),
  figure({
    id: 'supports.jam-drag',
    title: 'Drag from jamming',
    symbol: 'R_j',
    quantity: 'force',
    unit: 'N',
    meaning: 'Friction that jam forces from growth and misalignment add on rails and shafts, against the travel.',
    onlyWith: ['supports'],
    needs: { friction: 'guides.friction', end: 'axis.joint-stiffness-end' },
    optional: { strain: 'supports.growth-strain', length: 'guides.guided-length' },
    tables, names,
    compute: ({ rows, owners, friction, strain, end, length }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      const growth = strain === undefined ? 0 : dragOf(layout, growthLoads(layout, strain, end), friction, length);
      const value = growth + dragOf(layout, misalignmentLoads(layout, end), friction, length);
      if (value < NOTHING) return 0;
      return length === undefined ? { value, note: 'side forces alone: with guided-length the couples count too' } : value;
    },
    formula: 'R_j = Σ µ (|F| + 2 |M|/s)',
    sources: [{ title: 'dry friction on both ends of a slider' }],
    rank: 3,
  }),
  figure({
    id: 'supports.growth-jam-use',
    title: 'Jam force from growth over the weight',
    symbol: 'F_jϑ/G',
    quantity: 'ratio',
    meaning: 'Largest force from growth on one support over the whole weight that moves.',
    onlyWith: ['supports', 'carried-part'],
    needs: { force: 'supports.growth-jam-force', mass: 'axis.moved-mass', gravity: 'conditions.gravity' },
    compute: ({ force, mass, gravity }) => (mass > 0 ? force / (mass * gravity) : unable('nothing weighs on it')),
    formula: 'F_jϑ / (m g)',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'supports.misalignment-jam-use',
    title: 'Jam force from misalignment over the weight',
    symbol: 'F_jm/G',
    quantity: 'ratio',
    meaning: 'Largest force from misalignment on one support over the whole weight that moves.',
    onlyWith: ['supports'],
    needs: { force: 'supports.misalignment-jam-force', mass: 'axis.moved-mass', gravity: 'conditions.gravity' },
    compute: ({ force, mass, gravity }) => (mass > 0 ? force / (mass * gravity) : unable('nothing weighs on it')),
    formula: 'F_jm / (m g)',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
