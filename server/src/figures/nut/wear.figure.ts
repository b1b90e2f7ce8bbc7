import { normalFlankAngle } from '../../mechanics/power-screw.ts';
import { bearingPressure, playFromWear, slidingDistance, travelToPlay, wearDepth } from '../../mechanics/nut-pressure.ts';
import { flankAngleOf } from '../../mechanics/sliding-thread.ts';
import { figure } from '../figure.ts';
import { preloadOnFlanks } from './preload-on-flanks.ts';

const sliding = { 'screw.thread': ['trapezoidal', 'acme', 'square'] } as const;
const source = [{ title: 'Archard’s law; The Tribology Handbook', where: 'section A5' }, { title: 'specific wear: wide range', weak: true }] as const;
const needs = {
  pitchDiameter: 'screw.pitch-diameter', pitch: 'screw.pitch', engagedLength: 'nut.length', areaFactor: 'nut.area-factor',
  load: 'drive.cruising-load', lowering: 'drive.lowering-load', leadAngle: 'screw.lead-angle', wear: 'nut.specific-wear',
} as const;

/** Mean of the way up and the way down, since half of the distance goes each way. */
function meanPressure(values: {
  pitchDiameter: number; pitch: number; engagedLength: number; areaFactor: number; load: number; lowering: number; preload: number | undefined; design: string | undefined;
}): number {
  const load = (Math.abs(values.load) + Math.abs(values.lowering)) / 2 + preloadOnFlanks(values);
  return bearingPressure({ ...values, load, flankHeight: values.pitch / 2 });
}

export default [
  figure({
    id: 'nut.play-growth',
    title: 'Play that a year’s wear adds',
    symbol: 'Δ_a',
    quantity: 'length',
    meaning: 'Axial play that wear of the loaded flanks adds in a year of the stated distance, after running-in.',
    needs: { ...needs, distance: 'motion.distance-per-year' },
    optional: { preload: 'nut.preload' },
    choices: { thread: 'screw.thread' },
    optionalChoices: { design: 'nut.design' },
    onlyWhere: sliding,
    compute: (values) => {
      const depth = wearDepth(values.wear, meanPressure(values), slidingDistance(values.distance, values.leadAngle));
      return playFromWear(depth, normalFlankAngle(flankAngleOf(values.thread), values.leadAngle), values.leadAngle);
    },
    formula: 'Δ_a = k_w p x / (sin λ cos α_n cos λ)',
    sources: source,
    rank: 2,
  }),
  figure({
    id: 'nut.worn-after',
    title: 'Distance until the nut is worn',
    symbol: 'x_w',
    quantity: 'distance',
    meaning: 'Distance along the axis after which wear has taken a quarter of the thread’s thickness.',
    needs,
    optional: { preload: 'nut.preload' },
    choices: { thread: 'screw.thread' },
    optionalChoices: { design: 'nut.design' },
    onlyWhere: sliding,
    compute: (values) => {
      const angle = normalFlankAngle(flankAngleOf(values.thread), values.leadAngle);
      // A quarter of the thickness P/2 at the pitch diameter is also the play that it opens.
      return travelToPlay(values.pitch / 8, values.wear, meanPressure(values), angle, values.leadAngle);
    },
    formula: 'x_w = P/8 · sin λ cos α_n cos λ / (k_w p)',
    sources: [...source, { title: 'a quarter of the thickness: common practice, no published source' }],
    rank: 3,
  }),
];
