import { skewFromGive, skewFromPitchErrors, skewFromSlip, worstLoadShare, type GantryLoad } from '../../mechanics/gantry.ts';
import { stepsFromAngle } from '../../mechanics/step-rate.ts';
import { figure, unable, type Source } from '../figure.ts';

/** An axis on two drives with another axis upon it, whose masses go from side to side. */
const gantry = { 'drive.sharing': ['gantry'] } as const;
const moments: Source = { title: 'balance of moments of a stiff beam on two drives', where: 'the carriage goes as far to the one side of the middle as to the other; the guides are taken not to help' };
const loadNeeds = { mass: 'axis.moved-mass', carried: 'carried.moved-mass', travel: 'carried.travel', spacing: 'drive.unit-spacing', units: 'drive.units' } as const;

type LoadValues = { readonly [alias in keyof typeof loadNeeds]: number };

/** What rides on the two drives; a string says why it cannot be reckoned with. */
function loadOf({ mass, carried, travel, spacing, units }: LoadValues): GantryLoad | string {
  if (units !== 2) return 'a gantry is reckoned with two drives';
  if (!(spacing > 0)) return 'the drives stand at no distance';
  if (carried > mass) return 'what is carried across weighs more than all that this axis moves: its masses belong into moves too';
  return { mass, carriageMass: carried, spacing, offCentre: travel / 2 };
}

const pitch = { id: 'drive.skew-from-pitch', title: 'Skew from uneven pitch', symbol: 'δ_p', quantity: 'length' } as const;
const pitchMeaning = 'How far one end of the gantry can run ahead of the other over the travel since the two drives are not exactly alike.';
const pitchSource: Source = { title: 'worst case of two independent tolerances' };

export default [
  figure({
    id: 'drive.load-share',
    title: 'Share of the load on one drive',
    symbol: 'q_F',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Part of the load of the axis that the more loaded of its two drives carries, with the carriage at the end of its travel.',
    needs: loadNeeds,
    onlyWhere: gantry,
    compute: (values) => {
      const load = loadOf(values);
      if (typeof load === 'string') return unable(load);
      const share = worstLoadShare(load);
      return share > 1 ? { value: share, note: 'the carriage goes out beyond its drives, so that the other one is pulled the other way' } : share;
    },
    formula: 'q_F = ½ + (m_r/m) (h_r/2)/s',
    sources: [moments],
    rank: 3,
  }),
  figure({
    id: 'drive.process-share',
    title: 'Share of the process force on one drive',
    symbol: 'q_p',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Part of the process force that the nearer of the two drives takes, with the carriage, on which the tool sits, at the end of its travel.',
    needs: loadNeeds,
    onlyWhere: gantry,
    compute: (values) => {
      const load = loadOf(values);
      return typeof load === 'string' ? unable(load) : worstLoadShare({ ...load, mass: 1, carriageMass: 1 });
    },
    formula: 'q_p = ½ + (h_r/2)/s',
    sources: [moments],
    rank: 3,
  }),
  figure({
    id: 'drive.skew-from-load',
    title: 'Skew while speeding up',
    symbol: 'δ_q',
    quantity: 'length',
    onlyWhere: gantry,
    meaning: 'How far one end of the gantry stays behind the other while it speeds up with the carriage at one side, since the drives then give by different amounts.',
    needs: {
      share: 'drive.load-share', spacing: 'drive.unit-spacing', mass: 'axis.moved-mass', acceleration: 'motion.acceleration', stiffness: 'drive.axial-stiffness',
      gravity: 'conditions.gravity', inclination: 'axis.inclination',
    },
    compute: ({ share, spacing, mass, acceleration, stiffness, gravity, inclination }) => {
      const force = mass * (acceleration + gravity * Math.sin(inclination));
      return skewFromGive([share * force, (1 - share) * force], [stiffness, stiffness], spacing).distance;
    },
    formula: 'δ_q = (2 q_F − 1) m (a + g sin β) / k',
    sources: [{ title: 'springs; guides that let the gantry turn, so that stiff ones make it less' }],
    rank: 2,
  }),
  figure({
    ...pitch,
    onlyWhere: { ...gantry, 'drive.transmission': ['belt'] },
    meaning: pitchMeaning,
    needs: { error: 'belt.length-error', spacing: 'drive.unit-spacing' },
    compute: ({ error, spacing }) => skewFromPitchErrors(error, spacing).distance,
    formula: 'δ_p = 2 e_L',
    sources: [pitchSource],
    rank: 3,
  }),
  figure({
    ...pitch,
    onlyWhere: { ...gantry, 'drive.transmission': ['screw'] },
    meaning: pitchMeaning,
    needs: { error: 'screw.lead-deviation', spacing: 'drive.unit-spacing' },
    compute: ({ error, spacing }) => skewFromPitchErrors(error, spacing).distance,
    formula: 'δ_p = 2 e_l',
    sources: [pitchSource],
    rank: 3,
  }),
  figure({
    ...pitch,
    onlyWhere: { ...gantry, 'drive.transmission': ['rack'] },
    meaning: pitchMeaning,
    needs: { error: 'rack.pitch-error', spacing: 'drive.unit-spacing' },
    compute: ({ error, spacing }) => skewFromPitchErrors(error, spacing).distance,
    formula: 'δ_p = 2 e_t',
    sources: [pitchSource],
    rank: 3,
  }),
  figure({
    id: 'drive.skew',
    title: 'Skew of the gantry',
    symbol: 'δ_s',
    quantity: 'length',
    onlyWhere: gantry,
    meaning: 'How far one end of the gantry can stand ahead of the other in use, with guides that let it turn.',
    needs: { load: 'drive.skew-from-load' },
    optional: { pitch: 'drive.skew-from-pitch' },
    compute: ({ load, pitch: uneven }) => (uneven === undefined ? { value: load, note: 'without uneven pitch, not known here' } : load + uneven),
    formula: 'δ_s = δ_q + δ_p',
    sources: [{ title: 'both at their full size, added' }],
    rank: 2,
  }),
  figure({
    id: 'drive.skew-use',
    title: 'Skew over the accuracy wanted',
    symbol: 'δ_s/ε',
    quantity: 'ratio',
    unit: '%',
    onlyWhere: gantry,
    meaning: 'Skew of the gantry over the accuracy wanted.',
    needs: { skew: 'drive.skew', accuracy: 'axis.accuracy' },
    compute: ({ skew, accuracy }) => (accuracy > 0 ? skew / accuracy : unable('the accuracy wanted is 0')),
    formula: 'δ_s / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'drive.skew-from-slip',
    title: 'Skew after one motor has slipped',
    symbol: 'δ_4',
    quantity: 'length',
    onlyWhere: { ...gantry, 'drive.motors': ['one-each'], 'motor.kind': ['stepper'] },
    meaning: 'How far the gantry stands askew after one of its two motors has slipped once: it falls into step again four full steps away, and nobody tells the other motor.',
    needs: { perTurn: 'axis.travel-per-turn', stepAngle: 'motor.step-angle', spacing: 'drive.unit-spacing' },
    compute: ({ perTurn, stepAngle, spacing }) => skewFromSlip(perTurn, stepsFromAngle(stepAngle), spacing).distance,
    formula: 'δ_4 = 4 h_fs',
    sources: [{ title: 'the torque of a two-phase motor repeats after four full steps (Acarnley, Stepping Motors)', where: 'chapter 3' }],
    rank: 3,
  }),
  figure({
    id: 'drive.racking-force',
    title: 'Force of the drives against each other',
    symbol: 'F_r',
    quantity: 'force',
    onlyWhere: gantry,
    meaning: 'Force with which the two drives strain gantry and guides where stiff guides do not let it turn: an upper bound.',
    needs: { skew: 'drive.skew', stiffness: 'drive.axial-stiffness' },
    optional: { slip: 'drive.skew-from-slip' },
    compute: ({ skew, stiffness, slip }) => ({
      value: (stiffness * skew) / 2,
      ...(slip === undefined ? { note: 'in normal use' } : { note: `in normal use; ${Number(((stiffness * slip) / 2).toPrecision(2))} N after a slip of one motor` }),
    }),
    formula: 'F_r = k δ_s / 2',
    sources: [{ title: 'two springs that pull against each other' }],
    rank: 3,
  }),
];
