import { softestPosition, spanStiffness, spansAt, tautStiffness } from '../../mechanics/belt-spans.ts';
import { figure, unable } from '../figure.ts';
import { impossible, reach, spansAtEnds, springs, travelNeeds, travelOf, travelOptional, type TravelValues } from './path.ts';

const needs = { ...travelNeeds, specific: 'belt.specific-stiffness' } as const;
type Values = TravelValues & { readonly specific: number };

const at = ({ specific, freeLength }: Values, position: number): number => tautStiffness(specific, spansAt(freeLength, position));
const bothTaut = 'Both spans taut; the give of the teeth is not in it.';

export default [
  figure({
    id: 'belt.span-stiffness-near',
    title: 'Stiffness of the belt at the near end',
    symbol: 'k_1',
    quantity: 'stiffness',
    unit: 'N/mm',
    meaning: 'How stiffly both spans hold the carriage at the end of the travel next to the driving pulley (or near anchor).',
    needs,
    optional: travelOptional,
    compute: (values) => {
      const reason = impossible(values);
      return reason === undefined ? { value: at(values, values.nearest), note: bothTaut } : unable(reason);
    },
    formula: 'k₁ = c_b (1/x₀ + 1/(L − x₀))',
    sources: [springs],
    rank: 3,
  }),
  figure({
    id: 'belt.span-stiffness-far',
    title: 'Stiffness of the belt at the far end',
    symbol: 'k_2',
    quantity: 'stiffness',
    unit: 'N/mm',
    meaning: 'How stiffly both spans hold the carriage at the end of the travel far from the driving pulley (or near anchor).',
    needs,
    optional: travelOptional,
    compute: (values) => {
      const reason = impossible(values);
      return reason === undefined ? { value: at(values, values.nearest + reach(values)), note: bothTaut } : unable(reason);
    },
    formula: 'k₂ = c_b (1/(x₀ + s) + 1/(L − x₀ − s))',
    sources: [springs],
    rank: 3,
  }),
  figure({
    id: 'belt.span-stiffness-least',
    title: 'Least stiffness of the belt',
    symbol: 'k_b',
    quantity: 'stiffness',
    unit: 'N/mm',
    meaning: 'How stiffly both spans hold the carriage where it stands softest: in a loop at the end far from the motor, between two anchors in the middle.',
    needs,
    optional: travelOptional,
    compute: (values) => {
      const reason = impossible(values);
      if (reason !== undefined) return unable(reason);
      const softest = softestPosition(travelOf(values));
      return { value: at(values, softest), note: `softest ${Math.round(softest * 1000)} mm from the driving pulley or near anchor; both spans taut, the give of the teeth not in it` };
    },
    formula: 'k_b = c_b (1/x_s + 1/(L − x_s)); at x_s = L/2: 4 c_b/L',
    sources: [springs],
    rank: 2,
    chart: {
      title: 'Stiffness of the belt over the travel',
      alt: (values) => `The belt holds the carriage with ${Math.round(at(values, values.nearest) / 1000)} N/mm at the near end and ${Math.round(at(values, values.nearest + reach(values)) / 1000)} N/mm at the far end.`,
      x: { title: 'Place along the travel', quantity: 'length', unit: 'mm', from: () => 0, to: (values) => reach(values) },
      y: { title: 'Stiffness', quantity: 'stiffness', unit: 'N/mm' },
      curves: [
        { title: 'both spans taut', y: (x, values) => at(values, values.nearest + x) },
        { title: 'one span slack', y: (x, { specific, freeLength, nearest }) => spanStiffness(specific, Math.max(nearest + x, freeLength - nearest - x)) },
      ],
      points: [{ title: 'softest', x: (values) => softestPosition(travelOf(values)) - values.nearest, y: (values) => at(values, softestPosition(travelOf(values))) }],
    },
  }),
  figure({
    id: 'belt.slack-stiffness',
    title: 'Stiffness with one span slack',
    symbol: 'k_s',
    quantity: 'stiffness',
    unit: 'N/mm',
    meaning: 'What is left when the shorter span hangs slack and the longer one holds alone, at the worse end of the travel.',
    needs,
    optional: travelOptional,
    compute: (values) => {
      const reason = impossible(values);
      if (reason !== undefined) return unable(reason);
      return spanStiffness(values.specific, Math.max(...spansAtEnds(values).flatMap(({ first, second }) => [first, second])));
    },
    formula: 'k_s = c_b / max(L₁, L₂)',
    sources: [springs],
    rank: 3,
  }),
];
