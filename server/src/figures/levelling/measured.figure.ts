import { figure, unable } from '../figure.ts';
import { eachInWords, largestOf, liftNames, liftTables, millimetres, orderOf, signedMillimetres, withMeasured } from './lifts.ts';

const tables = { ...liftTables, heights: 'levelling.measured-heights' } as const;
const plane = { title: 'plane through the heights of three lifts; of more the plane that misses them least (least squares)', where: 'heights at what is written, without their uncertainty' } as const;
const common = { onlyWith: ['levelling'], tables, names: liftNames } as const;

const isLevel = (moves: readonly number[]): boolean => moves.every((move) => move === 0);

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

export default [
  figure({
    ...common,
    id: 'levelling.measured-tilt',
    title: 'Tilt as measured',
    symbol: 'γ_m',
    quantity: 'angle',
    unit: '°',
    meaning: 'How steep the part stands by the heights measured at its lifts.',
    needs: {},
    compute: (values) =>
      withMeasured(values, (lifts, { tilt, moves }) => {
        if (isLevel(moves)) return 0;
        const [high, low] = [largestOf(moves.map((move) => -move)), largestOf(moves)];
        return { value: tilt.steepest, note: `highest at ${lifts.names[high] ?? ''}, lowest at ${lifts.names[low] ?? ''}, ${millimetres(spread(moves))} between them` };
      }),
    formula: 'γ_m = √(s_x² + s_y²), z = h + s_x x + s_y y',
    sources: [plane],
    rank: 2,
  }),
  figure({
    ...common,
    id: 'levelling.largest-move',
    title: 'Largest movement to level it',
    symbol: 'Δz_max',
    quantity: 'length',
    unit: 'mm',
    meaning: 'How far the lift that has to move most must go; the middle of the lifts keeps its height.',
    needs: {},
    compute: (values) => withMeasured(values, ({ names }, { moves }) => ({ value: Math.max(...moves.map(Math.abs)), note: eachInWords(names, moves) })),
    formula: 'Δz_i = −(s_x (x_i − x_0) + s_y (y_i − y_0))',
    sources: [plane],
    rank: 1,
  }),
  figure({
    ...common,
    id: 'levelling.range-use',
    title: 'Use of the range of the lifts',
    symbol: 'u_c',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of their range the lifts need to take the measured tilt away, at the height of the part that asks least of them.',
    needs: { range: 'levelling.range' },
    compute: ({ range, ...values }) =>
      withMeasured(values, ({ names }, { moves }) => {
        const [up, down] = [largestOf(moves), largestOf(moves.map((move) => -move))];
        const needed = spread(moves) / 2;
        return needed === 0 ? 0 : { value: needed / range, note: `${millimetres(needed)} up at ${names[up] ?? ''} and down at ${names[down] ?? ''}` };
      }),
    formula: 'u_c = (max Δz_i − min Δz_i) / (2 c)',
    sources: [{ title: 'geometry' }],
    rank: 2,
  }),
  figure({
    ...common,
    id: 'levelling.rounds',
    title: 'Rounds of levelling',
    symbol: 'n_r',
    quantity: 'count',
    meaning: 'In how many rounds the lifts are moved, one after the other and each by an equal part of its way, so that the part stays within the tilt allowed; the order that keeps it flattest.',
    needs: {},
    optional: { steepest: 'levelling.steepest' },
    compute: ({ steepest, ...values }) =>
      withMeasured(values, (lifts, measured) => {
        const order = orderOf(lifts, measured, steepest);
        if (order === undefined) return unable('the part stands too steep for any order');
        if (order.order.length === 0) return { value: 0, note: 'it is level' };
        const list = order.order.map((i) => `${lifts.names[i] ?? ''} ${signedMillimetres((measured.moves[i] ?? 0) / order.rounds)}`).join(', then ');
        return { value: order.rounds, note: order.rounds === 1 ? `${list}, in one go` : `in each of ${order.rounds} rounds ${list}` };
      }),
    formula: '1, 2, 4 … 64 rounds, all orders tried; the slope is largest where one lift stops and the next begins',
    sources: [{ title: 'exhaustive search; a slope that changes evenly is convex' }],
    rank: 1,
  }),
  figure({
    ...common,
    id: 'levelling.steepest-on-the-way',
    title: 'Steepest tilt on the way',
    symbol: 'γ_w',
    quantity: 'angle',
    unit: '°',
    meaning: 'How steep the part stands at the worst moment of levelling in the order given; it begins with the tilt as measured.',
    needs: {},
    optional: { steepest: 'levelling.steepest' },
    compute: ({ steepest, ...values }) =>
      withMeasured(values, (lifts, measured) => (isLevel(measured.moves) ? 0 : (orderOf(lifts, measured, steepest)?.steepest ?? unable('the part stands too steep for any order')))),
    formula: 'γ_w = max of √(s_x² + s_y²) after each movement',
    sources: [{ title: 'a slope that changes evenly is convex' }],
    rank: 3,
  }),
  figure({
    ...common,
    id: 'levelling.twist',
    title: 'Twist that stays',
    symbol: 'Δz_t',
    quantity: 'length',
    unit: 'mm',
    meaning: 'How far a lift stands beside the plane of all when it is level: the part bends by it, or leaves that lift. Moved as far the other way, the lifts take it out.',
    needs: {},
    compute: (values) =>
      withMeasured(values, ({ names }, { tilt }) => {
        if (names.length === 3) return unable('three lifts always stand in one plane');
        const most = Math.max(...tilt.off.map(Math.abs));
        return most < 1e-9 ? 0 : { value: most, note: eachInWords(names, tilt.off) };
      }),
    formula: 'Δz_t = max |z_i − (h + s_x x_i + s_y y_i)|',
    sources: [plane],
    rank: 3,
  }),
];
