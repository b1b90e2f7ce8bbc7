import type { JointLoad } from '../../mechanics/constraint-jam.ts';
import { dot3, length3, minus3, unit3, type Vector3 } from '../../mechanics/vector3.ts';
import { figure, unable } from '../figure.ts';
import { growthLoads, misalignmentLoads, NOTHING, springs } from './jam-loads.ts';
import { layoutOf, NO_SUPPORTS } from './layout.ts';

const tables = { rows: 'axis.support-joints' } as const;
const names = { owners: 'axis.support-joints' } as const;

/** The two joints that hold hardest against each other, the harder pressed first; undefined where nothing presses. */
function hardestPair(loads: readonly JointLoad[]): { readonly most: JointLoad; readonly against: JointLoad } | undefined {
  const [most, second] = [...loads].sort((a, b) => length3(b.force) - length3(a.force));
  if (most === undefined || length3(most.force) < NOTHING) return undefined;
  const opposite = loads.reduce((least, one) => (dot3(one.force, most.force) < dot3(least.force, most.force) ? one : least));
  // Misfits that are added with their worse sign oppose nothing: then the two that are pressed hardest.
  return { most, against: second !== undefined && dot3(opposite.force, most.force) >= 0 ? second : opposite };
}

/** The largest force, and the two supports that hold hardest against each other. */
function forceOf(loads: readonly JointLoad[], stiffness: number | undefined): number | { value: number; note: string } {
  const pair = hardestPair(loads);
  if (!pair) return 0;
  const { most, against } = pair;
  // In the order of the text, so that the sentence does not turn round while a range is looked at.
  const [one, other] = most.joint < against.joint ? [most, against] : [against, most];
  const bound = stiffness === undefined ? 'as if part and frame were rigid, so that it is an upper bound' : 'with what part and frame give';
  return { value: length3(most.force), note: `hardest between ${one.owner} and ${other.owner}; ${bound}` };
}

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
    id: 'supports.growth-held',
    title: 'Growth that is held back',
    symbol: 'Δl_h',
    quantity: 'position',
    meaning: 'How much more the carried part would grow than the frame between the two supports that hold it back hardest, along the force between them; none where it is free to grow.',
    onlyWith: ['supports', 'carried-part'],
    needs: { strain: 'supports.growth-strain', end: 'axis.joint-stiffness-end' },
    tables, names,
    compute: ({ rows, owners, strain, end }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      const pair = hardestPair(growthLoads(layout, strain, end));
      if (!pair) return 0;
      const [one, other] = [pair.most, pair.against].map(({ joint }) => layout.joints[joint]?.at) as [Vector3, Vector3];
      return strain * Math.abs(dot3(minus3(one, other), unit3(pair.most.force)));
    },
    formula: 'Δl_h = ε |(p_1 − p_2) · f_1|/|f_1|',
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
    optional: { stiffness: 'carried-part.stiffness' },
    tables, names,
    compute: ({ rows, owners, strain, end, stiffness }) => {
      const layout = layoutOf(rows, owners);
      return layout ? forceOf(growthLoads(layout, strain, end), stiffness) : unable(NO_SUPPORTS);
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
    optional: { stiffness: 'carried-part.stiffness' },
    tables, names,
    compute: ({ rows, owners, end, stiffness }) => {
      const layout = layoutOf(rows, owners);
      if (!layout) return unable(NO_SUPPORTS);
      if (layout.supports.every(({ offset, tilt }) => offset === 0 && tilt === 0)) return unable('no support says by how much it may stand beside its place (offset) or at an angle (tilt)');
      return forceOf(misalignmentLoads(layout, end), stiffness);
    },
    formula: 'F_jm = max Σ |f(δ_i)|, δ_i: offset or tilt of one joint',
    sources: [springs],
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
