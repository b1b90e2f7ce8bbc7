import { loadedSpans, spansAt } from '../../mechanics/belt-spans.ts';
import { figure, unable } from '../figure.ts';
import { forceMaybe, forceNeeds, forceOptional, pushes, type ForceValues } from './forces.ts';
import { impossible, reach, springs, travelNeeds, travelOptional, type TravelValues } from './path.ts';

type Values = TravelValues & ForceValues & { readonly specific: number; readonly tension: number | undefined };

/** Largest give at a place of the travel, from where the resting load leaves the carriage. Nothing known of the tension: both spans taut. */
function giveAt(values: Values, place: number): number {
  const spans = spansAt(values.freeLength, values.nearest + place);
  const gives = pushes(values).flatMap(({ towards, away, rest, whileMoving }) => {
    // A tension beyond all forces stands for "taut": what it is makes no difference then.
    const tension = values.tension ?? towards + away + Math.abs(rest) + 1;
    const give = (force: number): number => Math.sign(force) * loadedSpans(values.specific, spans, tension, Math.abs(force), force >= 0 ? 'first' : 'second').give;
    return whileMoving.map((force) => Math.abs(give(force) - give(rest)));
  });
  return Math.max(...gives);
}

/** The worst place: an end of the travel or the softest place, seldom something between. */
function worstGive(values: Values): { readonly at: number; readonly give: number } {
  const softest = Math.min(Math.max(values.freeLength / 2 - values.nearest, 0), reach(values));
  const places = [softest, ...[0, 0.25, 0.5, 0.75, 1].map((share) => share * reach(values))];
  return places.map((at) => ({ at, give: giveAt(values, at) })).reduce((worst, each) => (each.give > worst.give ? each : worst));
}

const millimetres = (length: number): string => `${Number((length * 1000).toPrecision(2))} mm`;

export default [
  figure({
    id: 'belt.stretch-under-load',
    title: 'Give of the belt while speeding up',
    symbol: 'δ_b',
    quantity: 'length',
    meaning: 'How far the belt lets the carriage leave its place at rest at the largest force, at the worst place of the travel; a slack span is counted where the tension is known.',
    needs: { ...travelNeeds, ...forceNeeds, specific: 'belt.specific-stiffness' },
    optional: { ...travelOptional, ...forceOptional, tension: 'belt.tension' },
    optionalChoices: forceMaybe,
    compute: (values) => {
      const reason = impossible(values);
      return reason === undefined ? worstGive(values).give : unable(reason);
    },
    formula: 'δ_b = (F − F₀)/k; (F − T₀)/k of the pulling span where the other is slack',
    sources: [springs],
    rank: 2,
    chart: {
      title: 'Give of the belt over the travel',
      alt: (values) => `While speeding up the belt gives ${millimetres(giveAt(values, 0))} at the near end of the travel and ${millimetres(giveAt(values, reach(values)))} at the far end.`,
      x: { title: 'Place along the travel', quantity: 'length', unit: 'mm', from: () => 0, to: (values) => reach(values) },
      y: { title: 'Give', quantity: 'length', unit: 'mm' },
      curves: [{ title: 'while speeding up', y: (x, values) => giveAt(values, x) }],
      points: [{ title: 'worst', x: (values) => worstGive(values).at, y: (values) => worstGive(values).give }],
    },
  }),
  figure({
    id: 'belt.stretch-at-speed',
    title: 'Give of the belt at steady speed',
    symbol: 'δ_b1',
    quantity: 'length',
    meaning: 'How far the belt lets the carriage lag behind its place at rest while it moves up (or forward) at steady speed, where it is softest.',
    needs: { stiffness: 'belt.span-stiffness-least', rest: 'drive.gravity-load', cruising: 'drive.cruising-load' },
    compute: ({ stiffness, rest, cruising }) => Math.abs(cruising - rest) / stiffness,
    formula: 'δ_b1 = (F₁ − F₀) / k_b',
    sources: [springs],
    rank: 3,
  }),
];
