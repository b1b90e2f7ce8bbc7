import { roundBendingStress } from '../../mechanics/guide-shaft.ts';
import { carriageOnShaft, type CarriageOverTravel } from '../../mechanics/guide-shaft-travel.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { bendingOf, onRoundShafts, overTravel, shaftNeeds, shaftOptional, type ShaftValues } from './bending-shaft.ts';

const sources = [
  { title: 'Euler-Bernoulli beam between ends with a tilt stiffness', where: "for instance Roark's Formulas for Stress and Strain, chapter 8", weak: true },
  { title: 'bounds for how the ends are held', where: 'an end that can tilt sags more than one that cannot; a real holder lies between' },
];
const common = { needs: shaftNeeds, optional: shaftOptional, onlyWhere: onRoundShafts } as const;

/** What every one of these takes for granted. */
const ASSUMED = 'All shafts carry the same part of the weight, travel runs about the middle of the free length, bearings do not give.';

const of = (values: ShaftValues, pick: (over: CarriageOverTravel) => Computed): Computed => {
  const over = overTravel(values);
  return typeof over === 'string' ? unable(over) : pick(over);
};

/** Sag with the carriage at a place, counted from the middle of the travel, m. */
function sagAt(values: ShaftValues, place: number, fixity: number): number {
  const bending = bendingOf({ ...values, fixity });
  return typeof bending === 'string' ? NaN : carriageOnShaft(bending.shaft, bending.carriage, bending.shaft.length / 2 + place).sag;
}

export default [
  figure({
    id: 'guides.sag-lowest',
    title: 'Greatest sag of the guide shafts',
    symbol: 'y_max',
    quantity: 'length',
    meaning: `How far the carriage hangs below a straight shaft at the place of its travel where it hangs lowest. ${ASSUMED}`,
    ...common,
    compute: (values) => of(values, ({ lowest }) => lowest.sag),
    formula: "E_s I y'''' = q with F/n_r shared by the bearings of a shaft; one force in the middle, free to tilt: y = F L_s³/(48 E_s I)",
    sources,
    rank: 2,
    chart: {
      title: 'Sag over the travel',
      alt: (values) => {
        const bounds = [sagAt(values, 0, 0), sagAt(values, 0, 1)].map((sag) => (sag * 1000).toFixed(3));
        return `In the middle of the travel the carriage hangs ${bounds[0]} mm low with ends that can tilt, ${bounds[1]} mm with clamped ends, and less towards the ends.`;
      },
      x: { title: 'Place from the middle of the travel', quantity: 'position', unit: 'mm', from: ({ travel }) => -travel / 2, to: ({ travel }) => travel / 2 },
      y: { title: 'Sag', quantity: 'length', unit: 'mm' },
      curves: [
        { title: 'Ends free to tilt', y: (x, values) => sagAt(values, x, 0) },
        { title: 'Ends clamped', y: (x, values) => sagAt(values, x, 1) },
      ],
    },
  }),
  figure({
    id: 'guides.sag-variation',
    title: 'Sag that varies over the travel',
    symbol: 'Δy',
    quantity: 'length',
    meaning: `Sag at the lowest place less sag at the highest: what the work sees, since an even sag can be adjusted away. ${ASSUMED}`,
    ...common,
    compute: (values) => of(values, ({ variation }) => variation),
    formula: 'Δy = y_max − y_min over the travel',
    sources,
    rank: 1,
    hint: ({ high }) => (Number.isFinite(high) ? `sags ${sagText(high)}` : undefined),
  }),
  figure({
    id: 'guides.sag-use',
    title: 'Varying sag over the accuracy wanted',
    symbol: 'Δy/δ',
    quantity: 'ratio',
    unit: '%',
    meaning: 'The part of the accuracy wanted that the guide shafts use up by bending.',
    onlyWhere: onRoundShafts,
    needs: { variation: 'guides.sag-variation', accuracy: 'axis.accuracy' },
    compute: ({ variation, accuracy }) => (accuracy > 0 ? variation / accuracy : unable('the accuracy wanted must be above zero')),
    formula: 'Δy / accuracy',
    sources: [{ title: 'definition' }],
    rank: 2,
  }),
  figure({
    id: 'guides.tilt',
    title: 'Greatest tilt of the carriage on its shafts',
    symbol: 'θ_g',
    quantity: 'angle',
    unit: 'mrad',
    meaning: `How much the carriage noses where the shafts slope most under it; a long overhang turns it into an error. ${ASSUMED}`,
    ...common,
    compute: (values) => of(values, ({ mostTilted }) => Math.abs(mostTilted.tilt)),
    formula: "θ_g = (y₂ − y₁)/b_c, with one bearing the slope y'",
    sources,
    rank: 3,
  }),
  figure({
    id: 'guides.shaft-stress',
    title: 'Bending stress in the guide shafts',
    symbol: 'σ_s',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: `Greatest bending stress at the skin of a shaft over the travel. ${ASSUMED}`,
    ...common,
    compute: (values) => of(values, ({ mostBent }) => roundBendingStress(mostBent.greatestMoment, values.diameter, values.bore)),
    formula: 'σ_s = M d_s/(2 I)',
    sources,
    rank: 3,
  }),
];

/** `0.35 mm`, `40 µm`: three digits at most. */
const sagText = (sag: number): string => (sag < 1e-4 ? `${Number((sag * 1e6).toPrecision(2))} µm` : `${Number((sag * 1e3).toPrecision(2))} mm`);
