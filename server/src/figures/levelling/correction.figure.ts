import { tiltOfPlate, type PlateTilt } from '../../mechanics/levelling.ts';
import type { PlanPoint } from '../../mechanics/support-reactions.ts';
import { massPlaceOf } from '../../machine/mass-place.ts';
import { figure, unable } from '../figure.ts';
import { largestOf, liftNames, liftTables, millimetres, withLifts, type Lifts, type Rows } from './lifts.ts';

/** What each lift does to the part when it moves by 1 m: for three the plane through them, for more the plane nearest to them. */
const effects = ({ places }: Lifts): readonly PlateTilt[] => places.map((_, i) => tiltOfPlate(places, places.map((__, j) => (i === j ? 1 : 0))));

/** Places at which the part is known to reach: the lifts, and the corners of where its masses may lie. */
function reachOf({ places }: Lifts, masses: Rows | undefined): readonly PlanPoint[] {
  const corners = (masses ?? []).map(massPlaceOf).flatMap(({ x, y }) => [x.low, x.high].flatMap((px) => [y.low, y.high].map((py): PlanPoint => ({ x: px, y: py }))));
  return [...places, ...corners];
}

const riseAt = ({ height, slopeX, slopeY }: PlateTilt, { x, y }: PlanPoint): number => height + slopeX * x + slopeY * y;

const geometry = { title: 'geometry: one lift turns the part about the line through the other two', where: 'with more than three the nearest plane' } as const;

export default [
  figure({
    id: 'levelling.smallest-step',
    title: 'Smallest movement of one lift',
    symbol: 's_1',
    quantity: 'length',
    unit: 'µm',
    meaning: 'How finely one lift can be set: the step that is written, else what its motor really does against friction.',
    onlyWith: ['levelling'],
    needs: {},
    optional: { step: 'levelling.step', real: 'axis.smallest-real-move', fullStep: 'axis.full-step-travel' },
    optionalChoices: { movedBy: 'levelling.moved-by' },
    compute: ({ step, real, fullStep, movedBy }) => {
      if (step !== undefined) return step;
      if (movedBy !== 'own-motors') return unable('how finely a lift can be set is not known (step)');
      if (real !== undefined) return { value: real, note: 'what a motor does of its microsteps against friction' };
      return fullStep === undefined ? unable('how finely a lift can be set is not known (step)') : { value: fullStep, note: 'a full step: how much of a microstep is real is not known' };
    },
    formula: 's_1 = s_l, or h_r, or h_fs',
    sources: [{ title: 'see the smallest move that is real' }],
    rank: 3,
  }),
  figure({
    id: 'levelling.slope-per-step',
    title: 'Smallest correction of the tilt',
    symbol: 'Δγ_1',
    quantity: 'angle',
    unit: 'mrad',
    meaning: 'How far the part tilts with one step of the lift that tilts it most; 1 mrad is 1 mm on 1 m.',
    onlyWith: ['levelling'],
    needs: { step: 'levelling.smallest-step' },
    tables: liftTables, names: liftNames,
    compute: ({ step, ...values }) =>
      withLifts(values, (lifts) => {
        const slopes = effects(lifts).map(({ steepest }) => steepest);
        const most = largestOf(slopes);
        return { value: (slopes[most] as number) * step, note: `by ${lifts.names[most] ?? ''}, ${millimetres(1 / (slopes[most] as number))} from the line about which it turns the part` };
      }),
    formula: 'Δγ_1 = s_1 / h, h the distance of a lift to the line through the other two',
    sources: [geometry],
    rank: 2,
  }),
  figure({
    id: 'levelling.rise-per-step',
    title: 'Largest rise with one step of a lift',
    symbol: 'Δz_1',
    quantity: 'length',
    unit: 'µm',
    meaning: 'How far the part rises or sinks with one step of one lift, where it does most: at the lift, or beyond it where what it carries reaches farther out.',
    onlyWith: ['levelling'],
    needs: { step: 'levelling.smallest-step' },
    tables: { ...liftTables, masses: 'axis.mass-places' }, names: liftNames,
    compute: ({ step, masses, ...values }) =>
      withLifts(values, (lifts) => {
        const rises = effects(lifts).map((effect) => reachOf(lifts, masses).map((place) => ({ place, rise: Math.abs(riseAt(effect, place)) })));
        const most = rises.map((own) => own.reduce((a, b) => (b.rise > a.rise * (1 + 1e-12) ? b : a)));
        const lift = largestOf(most.map(({ rise }) => rise));
        const { place, rise } = most[lift] as (typeof most)[number];
        return { value: rise * step, note: `at ${millimetres(place.x).replace(' mm', '')}, ${millimetres(place.y)}, when ${lifts.names[lift] ?? ''} moves` };
      }),
    formula: 'Δz_1 = s_1 max |λ_i(x, y)|, λ_i 1 at lift i and 0 at the others',
    sources: [geometry],
    rank: 3,
  }),
  figure({
    id: 'levelling.coarseness',
    title: 'Step of levelling over what is wanted',
    symbol: 'u_Δz',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Largest rise with one step of a lift over the accuracy wanted, or over a third of the layer height where that is less.',
    onlyWith: ['levelling'],
    needs: { rise: 'levelling.rise-per-step' },
    optional: { accuracy: 'axis.accuracy', layer: 'axis.layer-height' },
    compute: ({ rise, accuracy, layer }) => {
      const third = layer === undefined ? Infinity : layer / 3;
      const wanted = Math.min(accuracy ?? Infinity, third);
      if (!Number.isFinite(wanted)) return unable('neither accuracy nor layer height of the axis is known');
      return { value: rise / wanted, note: third < (accuracy ?? Infinity) ? 'of a third of the layer height' : 'of the accuracy wanted' };
    },
    formula: 'u_Δz = Δz_1 / min(ε, h_l/3)',
    sources: [{ title: 'a third of a layer: common practice, no published source', weak: true }],
    rank: 2,
  }),
];
