import { tiltRange, type TiltRange } from '../../mechanics/levelling.ts';
import { figure, type Computed } from '../figure.ts';
import { liftNames, liftTables, millimetres, withLifts, type Lifts, type LiftValues } from './lifts.ts';

const needs = { range: 'levelling.range' } as const;
const sources = [{ title: 'geometry; lifts can follow a tilt when each two of them can', where: 'the height of the part is free to follow' }];

const distance = ({ places }: Lifts, [one, other]: TiltRange['between']): number => Math.hypot((places[one]?.x ?? 0) - (places[other]?.x ?? 0), (places[one]?.y ?? 0) - (places[other]?.y ?? 0));

const reached = (values: LiftValues & { readonly range: number }, value: (range: TiltRange, apart: number) => number): Computed =>
  withLifts(values, (lifts) => {
    const range = tiltRange(lifts.places, lifts.places.map(() => ({ up: values.range, down: values.range })));
    const apart = distance(lifts, range.between);
    const [one, other] = range.between;
    return { value: value(range, apart), note: `set by ${lifts.names[one] ?? ''} and ${lifts.names[other] ?? ''}, ${millimetres(apart)} apart` };
  });

export default [
  figure({
    id: 'levelling.tilt-range',
    title: 'Tilt that can be taken away',
    symbol: 'γ_c',
    quantity: 'angle',
    unit: '°',
    meaning: 'The tilt that the lifts can take away whatever its direction, with all of them in the middle of their range when the part is level.',
    onlyWith: ['levelling'],
    needs, tables: liftTables, names: liftNames,
    compute: (values) => reached(values, (range) => range.everyDirection),
    formula: 'γ_c = min over i, j of 2 c / |r_i − r_j|',
    sources,
    rank: 1,
  }),
  figure({
    id: 'levelling.height-range',
    title: 'The same as a difference in height',
    symbol: 'Δz_c',
    quantity: 'length',
    unit: 'mm',
    meaning: 'How much higher one of two lifts may stand than the other, at the two that set the tilt that can be taken away.',
    onlyWith: ['levelling'],
    needs, tables: liftTables, names: liftNames,
    compute: (values) => reached(values, (range, apart) => range.everyDirection * apart),
    formula: 'Δz_c = γ_c |r_i − r_j|',
    sources,
    rank: 3,
  }),
];
