import { guideShaftMaterial } from '../../catalogue/guide-shafts.ts';
import { material } from '../../catalogue/materials.ts';
import { fallbacks, type Fallback, type InputReader } from '../input.ts';
import { between, exactly } from '../values.ts';

const ROUND = new Set(['round-shaft', 'supported-shaft']);
const isRound = (read: InputReader): boolean => ROUND.has(read.choice('guides.kind') ?? '');

/** One property of the shaft's material; guide shafts are of bearing steel unless said otherwise. */
function ofMaterial(read: InputReader, property: 'modulus' | 'density' | 'yieldStress') {
  if (!isRound(read)) return undefined;
  const name = read.choice('guides.shaft-material');
  const shaft = guideShaftMaterial(name === undefined || name === 'steel' ? 'bearing-steel' : name);
  if (shaft) {
    const { low, nominal, high, source, weak } = shaft[property];
    return { low, nominal, high, source: `${shaft.title}${name === undefined ? ', since no material is given' : ''}: ${source}`, weak };
  }
  const row = material(name ?? '');
  if (!row || property === 'yieldStress') return undefined;
  const { low, nominal, high, source, weak } = property === 'modulus' ? row.youngsModulus : row.density;
  return { low, nominal, high, source: `${row.title}: ${source}`, weak };
}

const property = (of: 'modulus' | 'density' | 'yieldStress', input: Fallback, unit?: string): Fallback => ({
  ...input,
  handbook: (read) => {
    const found = ofMaterial(read, of);
    return found && { value: { type: 'number', ...between(found.low, found.nominal, found.high), ...(unit === undefined ? {} : { unit }) }, source: found.source, weak: found.weak };
  },
});

export default fallbacks(
  { input: 'guides.shaft-diameter', symbol: 'd_s' },
  { input: 'guides.unsupported-length', symbol: 'L_s' },
  {
    input: 'guides.shaft-bore',
    symbol: 'd_i',
    handbook: (read) => (isRound(read) ? { value: { type: 'number', ...exactly(0), unit: 'mm' }, source: 'a solid shaft, since no bore is given' } : undefined),
  },
  property('modulus', { input: 'guides.shaft-modulus', title: "Young's modulus of the shafts", symbol: 'E_s', quantity: 'pressure' }, 'GPa'),
  property('density', { input: 'guides.shaft-density', title: 'Density of the shafts', symbol: 'ρ_s', quantity: 'density' }),
  property('yieldStress', { input: 'guides.shaft-yield', title: 'Yield strength of the shafts', symbol: 'σ_y', quantity: 'pressure' }, 'MPa'),
  {
    input: 'guides.end-fixity',
    title: 'How firmly the ends are kept from tilting',
    symbol: 'φ_e',
    quantity: 'share',
    handbook: (read) => {
      switch (isRound(read) ? (read.choice('guides.shaft-ends') ?? '') : undefined) {
        case undefined: return undefined;
        case 'supported': return { value: { type: 'number', ...exactly(0), unit: '%' }, source: '0 %: ends that are free to tilt, as described' };
        case 'clamped': return {
          value: { type: 'number', ...between(0.5, 0.8, 1), unit: '%' }, weak: true,
          source: 'clamped in long stiff holders, 50 to 100 % of an end that cannot tilt; from memory',
        };
        default: return {
          value: { type: 'number', ...between(0, 0, 1), unit: '%' }, weak: true,
          source: 'bounds, since it is not said how the ends are held: free to tilt 0 %, which is judged, and clamped 100 %',
        };
      }
    },
  },
);
