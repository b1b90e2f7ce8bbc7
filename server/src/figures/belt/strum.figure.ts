import { isStringLike, stringFrequency } from '../../mechanics/belt-string.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { inMillimetres } from './path.ts';

const string = { title: 'vibrating string; Rao, Mechanical Vibrations', where: 'chapter 8', weak: true } as const;
const long = { title: 'from a length of 15 widths on bending stiffness may be neglected: common practice, no published source' } as const;
const sources = [string, long] as const;
const needs = { tension: 'belt.tension', density: 'belt.mass-per-length', width: 'belt.width', distance: 'belt.center-distance', nearest: 'belt.nearest-distance', travel: 'axis.travel' } as const;

interface Spans {
  readonly tension: number;
  readonly density: number;
  readonly width: number;
}

const common = { quantity: 'frequency', unit: 'Hz', needs, onlyWhere: { 'belt.run': ['open'] }, sources } as const;
const asSet = 'with the tension as set, the load taken off it';

function strum({ tension, density, width }: Spans, length: number): Computed {
  if (!(length > 0)) return unable('there is no such stretch of belt: the travel reaches beyond it');
  const value = stringFrequency(length, tension, density);
  const note = `${inMillimetres(length)} of belt swing`;
  return isStringLike(length, width) ? { value, note } : { value, note: `${note}: too short for its width, it sounds higher than its tension` };
}

export default [
  figure({
    ...common,
    id: 'belt.strum-frequency-near',
    title: 'Strum frequency, carriage at the near end',
    symbol: 'f_b1',
    meaning: `Frequency of the stretch from the carriage to the far idler (or far anchor) when it is plucked, the carriage held at the end next to the motor (or near anchor), ${asSet}.`,
    compute: ({ distance, nearest, ...values }) => strum(values, distance - nearest),
    formula: "f_b1 = √(T₀/m') / (2 (C − x₀))",
    rank: 1,
    hint: ({ nominal }) => `pluck ${nominal < 9.95 ? nominal.toPrecision(2) : Math.round(nominal)} Hz`,
  }),
  figure({
    ...common,
    id: 'belt.strum-frequency-far',
    title: 'Strum frequency, carriage at the far end',
    symbol: 'f_b2',
    meaning: `Frequency of the stretch from the driving pulley (or near anchor) to the carriage when it is plucked, the carriage held at the far end, ${asSet}.`,
    compute: ({ nearest, travel, ...values }) => strum(values, nearest + travel),
    formula: "f_b2 = √(T₀/m') / (2 (x₀ + s))",
    rank: 2,
  }),
  figure({
    ...common,
    id: 'belt.strum-frequency-near-short',
    title: 'Strum frequency of the short stretch, carriage at the near end',
    symbol: 'f_b3',
    meaning: `Frequency of the stretch from the driving pulley (or near anchor) to the carriage, the carriage held at the near end, ${asSet}.`,
    compute: ({ nearest, ...values }) => strum(values, nearest),
    formula: "f_b3 = √(T₀/m') / (2 x₀)",
    rank: 3,
  }),
  figure({
    ...common,
    id: 'belt.strum-frequency-far-short',
    title: 'Strum frequency of the short stretch, carriage at the far end',
    symbol: 'f_b4',
    meaning: `Frequency of the stretch from the carriage to the far idler (or far anchor), the carriage held at the far end, ${asSet}.`,
    compute: ({ distance, nearest, travel, ...values }) => strum(values, distance - nearest - travel),
    formula: "f_b4 = √(T₀/m') / (2 (C − x₀ − s))",
    rank: 3,
  }),
  figure({
    ...common,
    id: 'belt.strum-frequency-return',
    title: 'Strum frequency of the run without the carriage',
    symbol: 'f_b5',
    meaning: `Frequency of the free run between driving pulley and far idler, wherever the carriage stands, ${asSet}.`,
    needs: { tension: 'belt.tension', density: 'belt.mass-per-length', width: 'belt.width', distance: 'belt.center-distance' },
    onlyWhere: { 'belt.run': ['open'], 'belt.arrangement': ['loop'] },
    compute: ({ distance, ...values }) => strum(values, distance),
    formula: "f_b5 = √(T₀/m') / (2 C)",
    rank: 3,
  }),
  figure({
    ...common,
    id: 'belt.strum-frequency-least',
    title: 'Lowest strum frequency to set',
    symbol: 'f_b,min',
    meaning: 'Strum frequency of the longer stretch, carriage at the near end, at the tension that is needed at least.',
    needs: { ...needs, tension: 'belt.tension-needed' },
    compute: ({ distance, nearest, ...values }) => strum(values, distance - nearest),
    formula: "f_b,min = √(T_min/m') / (2 (C − x₀))",
    rank: 3,
  }),
  figure({
    ...common,
    id: 'belt.strum-frequency-most',
    title: 'Highest strum frequency to set',
    symbol: 'f_b,max',
    meaning: 'Strum frequency of the longer stretch, carriage at the near end, at the highest tension to set.',
    needs: { ...needs, tension: 'belt.tension-highest' },
    compute: ({ distance, nearest, ...values }) => strum(values, distance - nearest),
    formula: "f_b,max = √(T₀,max/m') / (2 (C − x₀))",
    rank: 3,
  }),
  figure({
    id: 'belt.string-length',
    title: 'Longest stretch over the width',
    symbol: 'L_s/b',
    quantity: 'ratio',
    meaning: 'Longest straight stretch of the belt over its width: from 15 on it swings as a string, and its note tells the tension.',
    needs: { width: 'belt.width', distance: 'belt.center-distance', nearest: 'belt.nearest-distance', travel: 'axis.travel', tension: 'belt.tension' },
    choices: { arrangement: 'belt.arrangement' },
    onlyWhere: { 'belt.run': ['open'] },
    compute: ({ width, distance, nearest, travel, arrangement }) => Math.max(distance - nearest, nearest + travel, arrangement === 'loop' ? distance : 0) / width,
    formula: 'max(C, C − x₀, x₀ + s) / b',
    sources: [long],
    rank: 3,
  }),
];
