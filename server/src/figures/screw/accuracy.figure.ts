import { travelDeviation, type LeadGrade } from '../../mechanics/lead-accuracy.ts';
import { growthAgainstFrame, thermalGrowth } from '../../mechanics/thermal-growth.ts';
import { figure, unable, type Computed } from '../figure.ts';

const grades = { title: 'ISO 3408-3:2006', where: 'values as quoted and from memory; sliding screws: common practice', weak: true } as const;
const gradeNeeds = { travel: 'axis.travel', per300: 'screw.variation-per-300' } as const;
const gradeChoices = { kind: 'screw.grade-kind' } as const;
const gradeTables = { bands: 'screw.grade-bands' } as const;

interface Graded {
  readonly travel: number;
  readonly per300: number;
  readonly kind: string;
  readonly bands: readonly (readonly number[])[] | undefined;
}

function gradeOf({ per300, kind, bands }: Graded): LeadGrade | undefined {
  if (kind === 'transport') return { kind, variationPer300: per300 };
  if (kind === 'per length') return { kind, deviationPer300: per300 };
  if (bands === undefined) return undefined;
  return {
    kind: 'positioning',
    bands: bands.flatMap(([upTo, meanTravel, variation]) => (upTo === undefined || meanTravel === undefined ? [] : [{ upTo, meanTravel, variation }])),
    variationPer300: per300,
  };
}

function deviation(values: Graded, which: 'worst' | 'afterCalibration'): Computed {
  const grade = gradeOf(values);
  if (!grade) return unable('the grade has no table');
  if (values.travel <= 0) return unable('the axis has no travel');
  const found = travelDeviation(grade, values.travel);
  return found.kind === 'deviation' ? found[which] : unable(`the table of this grade ends at ${(found.longest * 1000).toFixed(0)} mm of travel`);
}

/** Errors at their full sizes, added; what is not known is left out and said so. */
function together(lead: number, growth: number | undefined, lost: number | undefined): Computed {
  const left = [...(growth === undefined ? ['warming'] : []), ...(lost === undefined ? ['lost motion'] : [])];
  const value = lead + Math.abs(growth ?? 0) + (lost ?? 0);
  return left.length === 0 ? value : { value, note: `without ${left.join(' and ')}, not known here` };
}

export default [
  figure({
    id: 'screw.lead-deviation',
    title: 'Lead error over the travel',
    symbol: 'e_l',
    quantity: 'length',
    meaning: 'How far the travel may be off its nominal value by the grade of the screw, either way.',
    needs: gradeNeeds,
    choices: gradeChoices,
    tables: gradeTables,
    compute: (values) => deviation(values, 'worst'),
    formula: 'positioning grades: e_p + v_up/2 of the travel band; transport grades: 2 (s/300 mm) v_300; others: (s/300 mm) v_300',
    sources: [grades],
    rank: 2,
  }),
  figure({
    id: 'screw.lead-deviation-calibrated',
    title: 'Lead error after calibration',
    symbol: 'e_c',
    quantity: 'length',
    meaning: 'What remains of the lead error once the steps per millimetre are set by a measurement over the whole travel.',
    needs: gradeNeeds,
    choices: gradeChoices,
    tables: gradeTables,
    compute: (values) => deviation(values, 'afterCalibration'),
    formula: 'positioning grades: v_up/2; transport grades: v_300; others: half of the lead error (ours)',
    sources: [grades],
    rank: 3,
  }),
  figure({
    id: 'screw.temperature-rise',
    title: 'Warming of the screw',
    symbol: 'ΔT',
    quantity: 'temperature-difference',
    unit: 'K',
    meaning: 'Temperature of the drives in use over that around the machine; negative where they are colder.',
    needs: { machine: 'conditions.machine-temperature', ambient: 'conditions.ambient-temperature' },
    compute: ({ machine, ambient }) => machine - ambient,
    formula: 'ΔT = T_m − ϑ_a',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'screw.thermal-growth',
    title: 'Growth of the screw over the travel',
    symbol: 'ΔL',
    quantity: 'position',
    meaning: 'How much longer a full travel becomes when the screw warms up.',
    needs: { expansion: 'screw.expansion', travel: 'axis.travel', rise: 'screw.temperature-rise' },
    compute: ({ expansion, travel, rise }) => thermalGrowth(expansion, travel, rise),
    formula: 'ΔL = α s ΔT',
    sources: [{ title: 'linear expansion' }],
    rank: 2,
  }),
  figure({
    id: 'screw.growth-against-frame',
    title: 'Growth of the screw against its frame',
    symbol: 'ΔL_f',
    quantity: 'position',
    meaning: 'How much more the screw grows than the frame between its bearings when both warm up alike; negative where the frame outgrows it.',
    needs: { length: 'screw.unsupported-length', rise: 'screw.temperature-rise', screw: 'screw.expansion', frame: 'conditions.frame-expansion' },
    compute: ({ length, rise, screw, frame }) => growthAgainstFrame(length, { expansion: screw, temperatureRise: rise }, { expansion: frame, temperatureRise: rise }),
    formula: 'ΔL_f = L (α − α_f) ΔT',
    sources: [{ title: 'linear expansion' }],
    rank: 3,
  }),
  figure({
    id: 'drive.position-error',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'Position error over the travel',
    symbol: 'e_Σ',
    quantity: 'length',
    meaning: 'Lead error, growth by warming, and lost motion on reversal together, each at its full size.',
    needs: { lead: 'screw.lead-deviation' },
    optional: { growth: 'screw.thermal-growth', lost: 'nut.lost-motion' },
    compute: (values) => together(values.lead, values.growth, values.lost),
    formula: 'e_Σ = e_l + |ΔL| + Δ_r',
    sources: [{ title: 'worst case: errors added, not averaged' }],
    rank: 2,
  }),
  figure({
    id: 'drive.position-error-calibrated',
    title: 'Position error after calibration',
    symbol: 'e_k',
    quantity: 'length',
    meaning: 'What is left of the position error once the steps per millimetre are set by a measurement over the whole travel.',
    needs: { lead: 'screw.lead-deviation-calibrated' },
    optional: { growth: 'screw.thermal-growth', lost: 'nut.lost-motion' },
    compute: (values) => together(values.lead, values.growth, values.lost),
    formula: 'e_k = e_c + |ΔL| + Δ_r',
    sources: [{ title: 'worst case: errors added, not averaged' }],
    rank: 2,
  }),
  figure({
    id: 'drive.position-error-calibrated-use',
    title: 'Position error after calibration over the accuracy wanted',
    symbol: 'e_k/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'What calibration leaves of lead error, with growth and lost motion, over the accuracy wanted.',
    needs: { error: 'drive.position-error-calibrated', accuracy: 'axis.accuracy' },
    compute: ({ error, accuracy }) => (accuracy > 0 ? error / accuracy : unable('the accuracy wanted is 0')),
    formula: 'e_k / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'drive.position-error-use',
    title: 'Position error over the accuracy wanted',
    symbol: 'e_Σ/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Lead error, growth and lost motion together over the accuracy wanted.',
    needs: { error: 'drive.position-error', accuracy: 'axis.accuracy' },
    compute: ({ error, accuracy }) => (accuracy > 0 ? error / accuracy : unable('the accuracy wanted is 0')),
    formula: 'e_Σ / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
