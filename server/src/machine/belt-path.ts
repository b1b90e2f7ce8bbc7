import { centerDistanceForLength, openBelt } from '../mechanics/belt-geometry.ts';
import type { Fallback, InputReader } from './input.ts';
import type { Origin } from './origin.ts';
import { exactly, type Bounded, type InputValue } from './values.ts';

type Composed = ReturnType<NonNullable<Fallback['compose']>>;

const length = (value: Bounded, unit = 'mm'): InputValue => ({ type: 'number', ...value, unit });

function from(read: InputReader, value: InputValue | undefined, inputs: readonly (readonly [title: string, input: string])[]): Composed {
  const parts = inputs.flatMap(([title, input]): { title: string; origin: Origin }[] => {
    const origin = read.origin(input);
    return origin ? [{ title, origin }] : [];
  });
  return value && { value, origin: { from: 'several', parts } };
}

const DRIVING = ['Pitch', 'belt.pitch'] as const;
const TEETH = ['Teeth of the pulley', 'pulley.teeth'] as const;
const IDLER = ['Diameter of the idler', 'idlers.diameter'] as const;

/** Diameters on which a loop runs: driving pulley and far idler, m. */
function diametersOf(read: InputReader): readonly [number, number] | undefined {
  const [pitch, teeth, idler] = [read.number('belt.pitch'), read.number('pulley.teeth'), read.number('idlers.diameter')];
  if (!pitch || !teeth || !idler || !(pitch.nominal > 0) || !(teeth.nominal > 0) || !(idler.nominal > 0)) return undefined;
  return [(pitch.nominal * teeth.nominal) / Math.PI, idler.nominal];
}

/**
 * What follows from the path of a belt: how long it is, how far apart its pulleys stand, and how far it lies round the driving one.
 * Each is undefined while what it follows from is not known. A figure or an entry that is written is asked for first, so that the two lengths do not chase each other.
 */
export function beltPath(read: InputReader): { readonly centerDistance: Composed; readonly pathLength: Composed; readonly wrap: Composed } {
  const isLoop = read.choice('belt.arrangement') === 'loop';
  return {
    get centerDistance() {
      const diameters = diametersOf(read);
      if (!isLoop || !diameters || !read.isWritten('belt.path-length')) return undefined;
      const path = read.number('belt.path-length');
      const at = (end: number): number | undefined => {
        const distance = end > 0 ? centerDistanceForLength(end, ...diameters) : 'too short';
        return distance === 'too short' ? undefined : distance;
      };
      const [low, nominal, high] = [path && at(path.low), path && at(path.nominal), path && at(path.high)];
      if (low === undefined || nominal === undefined || high === undefined) return undefined;
      return from(read, length({ low, nominal, high }), [['Path length', 'belt.path-length'], DRIVING, TEETH, IDLER]);
    },
    get pathLength() {
      // Crossed belts go a longer way than once to an idler and back: their paths are written for the layout.
      if (!read.isWritten('belt.center-distance') || read.isWritten('layout.path-lengths')) return undefined;
      const distance = read.number('belt.center-distance');
      if (!distance || !(distance.low > 0)) return undefined;
      if (!isLoop) return from(read, length(distance, 'm'), [['Distance of the anchors', 'belt.center-distance']]);
      const diameters = diametersOf(read);
      if (!diameters || distance.low < (diameters[0] + diameters[1]) / 2) return undefined;
      const at = (end: number): number => openBelt(end, ...diameters).length;
      return from(read, length({ low: at(distance.low), nominal: at(distance.nominal), high: at(distance.high) }, 'm'), [['Centre distance', 'belt.center-distance'], DRIVING, TEETH, IDLER]);
    },
    get wrap() {
      const diameters = diametersOf(read);
      const distance = read.number('belt.center-distance');
      if (!isLoop || !diameters || !distance || distance.nominal < (diameters[0] + diameters[1]) / 2) return undefined;
      const { firstWrap } = openBelt(distance.nominal, ...diameters);
      return from(read, { type: 'number', ...exactly(firstWrap), unit: '°' }, [['Centre distance', 'belt.center-distance'], DRIVING, TEETH, IDLER]);
    },
  };
}
