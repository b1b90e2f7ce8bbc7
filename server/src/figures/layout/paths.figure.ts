import { crossCoupling, giveOnCrossedBelts, twistFromTensions } from '../../mechanics/crossed-belts.ts';
import { figure, unable, type Source } from '../figure.ts';

const onlyWhere = { 'layout.role': ['first'] } as const;
const lengths = { first: 'layout.first-path-length', second: 'layout.second-path-length' } as const;
const tensions = { first: 'layout.first-path-tension', second: 'layout.second-path-tension' } as const;
const energy: Source = { title: 'elastic energy of both belts', where: 'derived; checked against the lengths of the belts in the plane' };
const definition: Source = { title: 'definition' };

/** Difference over the mean of two values. */
function differenceOf(first: number, second: number) {
  const mean = (first + second) / 2;
  return mean > 0 ? Math.abs(first - second) / mean : unable('both are 0');
}

interface Sides {
  readonly first: number;
  readonly second: number;
  readonly specific: number;
  readonly perTurn: number;
  readonly ratio: number | undefined;
  readonly magnetic: number | undefined;
  readonly reduction: number | undefined;
}

const sideNeeds = { ...lengths, specific: 'belt.specific-stiffness', perTurn: 'drive.travel-per-shaft-turn' } as const;
const sideOptions = { ratio: 'drive.reduction-ratio', magnetic: 'motor.magnetic-stiffness', reduction: 'drive.reduction-stiffness' } as const;

/** Stiffness of each belt with its motor where it is softest, N/m. */
function sidesOf({ first, second, specific, perTurn, ratio = 1, magnetic, reduction }: Sides): readonly [number, number] {
  const lever2 = (perTurn / (2 * Math.PI)) ** 2;
  const before = (magnetic === undefined ? 0 : lever2 / (magnetic * ratio ** 2)) + (reduction === undefined ? 0 : lever2 / reduction);
  const of = (length: number): number => 1 / (before + length / (4 * specific));
  return [of(first), of(second)];
}

export default [
  figure({
    id: 'layout.path-difference',
    title: 'Difference of the paths of both belts',
    symbol: 'ΔL/L',
    quantity: 'ratio',
    unit: '%',
    onlyWhere,
    meaning: 'How far the paths of both belts differ, over their mean. The longer belt is the softer one, and pulls the carriage off its line.',
    needs: lengths,
    compute: ({ first, second }) => differenceOf(first, second),
    formula: '2 |L_A − L_B| / (L_A + L_B)',
    sources: [definition],
    rank: 2,
  }),
  figure({
    id: 'layout.tension-difference',
    title: 'Difference of the tensions of both belts',
    symbol: 'ΔT/T',
    quantity: 'ratio',
    unit: '%',
    onlyWhere,
    meaning: 'How far the tensions of both belts differ, over their mean. The tighter belt turns the gantry.',
    needs: tensions,
    compute: ({ first, second }) => differenceOf(first, second),
    formula: '2 |T_A0 − T_B0| / (T_A0 + T_B0)',
    sources: [definition],
    rank: 2,
  }),
  figure({
    id: 'layout.cross-coupling',
    title: 'Give across over give along',
    symbol: 'κ',
    quantity: 'ratio',
    unit: '%',
    onlyWhere,
    meaning: 'A force along one axis pushes the carriage off along the other by this part of its give, since the belts are not equally stiff.',
    needs: sideNeeds,
    optional: sideOptions,
    compute: (values) => crossCoupling(...sidesOf(values)),
    formula: 'κ = |k_A − k_B| / (k_A + k_B), 1/k_A = L_A/(4 c_b) + (p_w/2π)² (1/(k_m i²) + 1/k_i)',
    sources: [energy],
    rank: 3,
  }),
  figure({
    id: 'layout.coupling-error',
    title: 'Error across while speeding up',
    symbol: 'δ_κ',
    quantity: 'length',
    onlyWhere,
    meaning: 'How far the carriage leaves its line to the side while the heavier of both axes speeds up alone.',
    needs: {
      ...sideNeeds, mass: 'axis.moved-mass', acceleration: 'motion.acceleration', partnerMass: 'partner.moved-mass', partnerAcceleration: 'partner-motion.acceleration',
    },
    optional: sideOptions,
    compute: ({ mass, acceleration, partnerMass, partnerAcceleration, ...sides }) => {
      const force = Math.max(mass * acceleration, partnerMass * partnerAcceleration);
      return Math.abs(giveOnCrossedBelts(...sidesOf(sides), { x: force, y: 0 }).y);
    },
    formula: 'δ_κ = max(m a, m_o a_o) |k_A − k_B| / (4 k_A k_B)',
    sources: [energy],
    rank: 2,
  }),
  figure({
    id: 'layout.twist-offset',
    title: 'Skew of the gantry from unequal tensions',
    symbol: 'δ_T',
    quantity: 'length',
    onlyWhere,
    meaning: 'How far one end of the gantry would stand ahead of the other if its guides let it turn: an upper bound, since guides hold against it.',
    needs: { ...tensions, specific: 'belt.specific-stiffness', path: 'belt.path-length' },
    compute: ({ first, second, specific, path }) =>
      // Without guides the width does not count: the offset of the ends is the same for all.
      Math.abs(twistFromTensions({ width: 1, tensionDifference: first - second, specificStiffness: specific, pathLength: path, guideStiffness: 0 })),
    formula: 'δ_T = |T_A0 − T_B0| L / (2 c_b)',
    sources: [{ title: 'balance of moments on the gantry', where: 'derived; checked by least energy of both belts in the plane' }],
    rank: 2,
  }),
  figure({
    id: 'layout.twist-use',
    title: 'Skew of the gantry over the accuracy wanted',
    symbol: 'δ_T/ε',
    quantity: 'ratio',
    unit: '%',
    onlyWhere,
    meaning: 'Skew of the gantry from unequal tensions over the accuracy wanted of the axis along which it runs.',
    needs: { offset: 'layout.twist-offset', accuracy: 'partner.accuracy' },
    compute: ({ offset, accuracy }) => (accuracy > 0 ? offset / accuracy : unable('the accuracy wanted is 0')),
    formula: 'δ_T / ε_o',
    sources: [definition],
    rank: 3,
  }),
];
