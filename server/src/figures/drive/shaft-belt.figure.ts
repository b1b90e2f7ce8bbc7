import { figure } from '../figure.ts';

const onlyWhere = { 'drive.transmission': ['belt'] } as const;
const balance = [{ title: 'work balance over one turn' }] as const;
const needs = { travel: 'drive.travel-per-shaft-turn', efficiency: 'belt.efficiency' } as const;
/** What the bearings of the idlers take, where it is written. */
const optional = { idlerTorque: 'idlers.friction-torque', idlers: 'idlers.count', diameter: 'idlers.diameter' } as const;

interface Values {
  readonly travel: number;
  readonly efficiency: number;
  readonly idlerTorque: number | undefined;
  readonly idlers: number | undefined;
  readonly diameter: number | undefined;
}

/** Torque at the shaft for a force along the axis, positive against the direction of motion; the idlers drag either way. */
function driven(force: number, { travel, efficiency, idlerTorque = 0, idlers = 1, diameter }: Values): number {
  const drag = diameter === undefined || !(diameter > 0) ? 0 : (idlers * idlerTorque * travel) / (Math.PI * diameter);
  return (force * travel) / (2 * Math.PI * (force > 0 ? efficiency : 1 / efficiency)) + drag;
}

export default [
  figure({
    id: 'drive.travel-per-shaft-turn',
    onlyWhere,
    title: 'Travel per turn of the shaft',
    symbol: 'p_w',
    quantity: 'length',
    unit: 'mm',
    meaning: 'How far the axis moves in one turn of the pulley.',
    needs: { pitch: 'belt.pitch', teeth: 'pulley.teeth' },
    compute: ({ pitch, teeth }) => pitch * teeth,
    formula: 'p_w = z p_b',
    sources: [{ title: 'kinematics' }],
    rank: 2,
  }),
  figure({
    id: 'drive.shaft-cruising-torque',
    onlyWhere,
    title: 'Torque of the shaft at steady speed, up',
    symbol: 'T_w1',
    quantity: 'torque',
    meaning: 'Torque at one pulley while the axis moves up (or forward) at steady speed.',
    needs: { ...needs, force: 'drive.cruising-load' },
    optional,
    compute: ({ force, ...values }) => driven(force, values),
    formula: 'T_w1 = F₁ p_w / (2π η_b) + n_i T_i p_w/(π d_i)',
    sources: balance,
    rank: 3,
  }),
  figure({
    id: 'drive.shaft-lifting-torque',
    onlyWhere,
    title: 'Torque of the shaft while speeding up',
    symbol: 'T_w2',
    quantity: 'torque',
    meaning: 'Torque at one pulley while the axis speeds up in the direction up (or forward), without what turns itself.',
    needs: { ...needs, force: 'drive.lifting-load' },
    optional,
    compute: ({ force, ...values }) => driven(force, values),
    formula: 'T_w2 = F₂ p_w / (2π η_b) + n_i T_i p_w/(π d_i)',
    sources: balance,
    rank: 3,
  }),
  figure({
    id: 'drive.shaft-holding-torque',
    onlyWhere,
    title: 'Torque of the shaft at rest',
    symbol: 'T_w0',
    quantity: 'torque',
    meaning: 'Torque that one pulley must be given to hold the axis at rest; friction is not counted on.',
    needs: { travel: 'drive.travel-per-shaft-turn', force: 'drive.gravity-load' },
    compute: ({ force, travel }) => (force * travel) / (2 * Math.PI),
    formula: 'T_w0 = F₀ p_w / 2π',
    sources: balance,
    rank: 3,
  }),
  figure({
    id: 'drive.shaft-lowering-torque',
    onlyWhere,
    title: 'Torque of the shaft at steady speed, down',
    symbol: 'T_w3',
    quantity: 'torque',
    meaning: 'Torque at one pulley while the axis moves down at steady speed. Positive: it must be driven down. Negative: the load drives it.',
    needs: { ...needs, force: 'drive.lowering-load' },
    optional,
    compute: ({ force, ...values }) => driven(-force, values),
    formula: 'T_w3 = −F₃ p_w η_b / 2π if the load drives, −F₃ p_w / (2π η_b) if the pulley does; + n_i T_i p_w/(π d_i)',
    sources: balance,
    rank: 3,
  }),
  figure({
    id: 'drive.shaft-inertia',
    onlyWhere,
    title: 'Inertia on the shaft',
    symbol: 'J_w',
    quantity: 'rotational-inertia',
    meaning: 'Moment of inertia of what turns and runs with one shaft: pulley, idlers at their speed, and the mass of a belt that runs. Coupling and reduction come on top.',
    needs: { wheel: 'pulley.rotational-inertia', travel: 'drive.travel-per-shaft-turn' },
    optional: { idler: 'idlers.rotational-inertia', idlers: 'idlers.count', diameter: 'idlers.diameter', belt: 'belt.mass' },
    optionalChoices: { arrangement: 'belt.arrangement' },
    compute: ({ wheel, travel, idler = 0, idlers = 0, diameter, belt, arrangement }) => {
      const round = diameter === undefined || !(diameter > 0) ? 0 : idlers * idler * (travel / (Math.PI * diameter)) ** 2;
      // A belt between two anchors stands still.
      const runs = arrangement === 'anchored-ends' ? 0 : (belt ?? 0) * (travel / (2 * Math.PI)) ** 2;
      const value = wheel + round + runs;
      return belt === undefined && arrangement !== 'anchored-ends' ? { value, note: 'without the belt, whose mass is not known here' } : value;
    },
    formula: 'J_w = J_p + n_i J_i (d_p/d_i)² + m_b d_p²/4',
    sources: [{ title: 'equal kinetic energy' }],
    rank: 3,
  }),
  figure({
    id: 'drive.shaft-efficiency',
    onlyWhere,
    title: 'Efficiency from the shaft to the load',
    symbol: 'η_w',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Share of the work put into the shaft that moves the load.',
    needs: { efficiency: 'belt.efficiency' },
    compute: ({ efficiency }) => efficiency,
    formula: 'η_w = η_b',
    sources: [{ title: 'the entry of the belt' }],
    rank: 3,
  }),
];
