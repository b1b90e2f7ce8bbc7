import { collarFriction, COLLARS } from '../../catalogue/collar-friction.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between } from '../values.ts';

const plainPairs = COLLARS.map(collarFriction).filter((collar) => collar.kind === 'plain');

/** Diameter over which a thrust face or bearing of a screw usually has its mean. Common practice, no published source. */
const MEAN_OVER_MAJOR = { plain: [1.1, 1.5, 2], rolling: [1.1, 1.5, 2.2] } as const;

const isPlain = (read: InputReader): boolean => read.choice('thrust-bearing.design') === 'plain';

export default fallbacks(
  {
    input: 'thrust-bearing.design',
    handbook: () => ({ value: { type: 'choice', text: 'none' }, source: 'none, since no thrust bearing is described: the thrust passes into the motor, whose ball bearings take it' }),
  },
  {
    input: 'thrust-bearing.friction',
    symbol: 'µ_c',
    handbook: (read) => {
      if (isPlain(read)) {
        const low = Math.min(...plainPairs.map((pair) => pair.running.low));
        const high = Math.max(...plainPairs.map((pair) => pair.running.high));
        return { value: { type: 'number', ...between(low, 0.1, high) }, source: 'steel on bronze to steel on cast iron, Budynas and Nisbett, Table 8-6; ends ±20 %, ours', weak: true };
      }
      const rolling = collarFriction('rolling-bearing');
      return { value: { type: 'number', ...between(rolling.running.low, rolling.running.nominal, rolling.running.high) }, source: rolling.source, weak: rolling.weak };
    },
  },
  {
    input: 'thrust-bearing.mean-diameter',
    symbol: 'd_c',
    handbook: (read) => {
      const major = read.number('screw.major-diameter')?.nominal;
      if (major === undefined) return undefined;
      const [low, nominal, high] = MEAN_OVER_MAJOR[isPlain(read) ? 'plain' : 'rolling'];
      return { value: { type: 'number', ...between(low * major, nominal * major, high * major), unit: 'mm' }, source: '1.1 to 2.2 screw diameters; common practice, no published source', weak: true };
    },
  },
);
