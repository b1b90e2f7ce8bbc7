import { guideStiffness } from '../../catalogue/guide-stiffness.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import { RAIL_MOUNTING_SOURCE } from '../../catalogue/profile-rails.ts';
import { railOfSize } from '../guide-rail-size.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between, exactly } from '../values.ts';

const PLAIN = new Set(['lined-bushing', 'polymer-bushing', 'bronze-bushing', 'dry-slide']);

/** Stiffness of one carriage across its rail: of its size where the size is known, else an order of magnitude by kind. */
function stiffnessOf(read: InputReader): { readonly range: HandbookRange; readonly what: string } | undefined {
  const kind = read.choice('guides.kind');
  if (kind === undefined) return undefined;
  const rail = kind === 'profile-rail' ? railOfSize(read.choice('guides.size') ?? '') : undefined;
  if (rail) return { range: rail.stiffness, what: `${rail.form} rail of size ${rail.size}` };
  const name = kind === 'profile-rail' ? 'carriage' : kind === 'wheels' ? 'wheel' : PLAIN.has(read.choice('guides.bearing') ?? '') ? 'plain-bushing' : 'round-shaft-bushing';
  const row = guideStiffness(name);
  return row && { range: row.stiffness, what: row.title };
}

/** Preload as a part of the dynamic rating. */
const PRELOADS: Readonly<Record<string, readonly [low: number, nominal: number, high: number]>> = { none: [0, 0, 0], light: [0, 0.01, 0.02], medium: [0.03, 0.04, 0.05] };

/** Guides that can be pressed on, and whose dynamic rating says by how much. */
const PRELOADED = new Set(['profile-rail', 'round-shaft', 'supported-shaft']);

export default fallbacks(
  {
    input: 'guides.second-rail',
    handbook: (read) =>
      read.choice('guides.kind') !== undefined && (read.number('guides.rails')?.nominal ?? 1) > 1
        ? { value: { type: 'choice', text: 'fixed' }, source: 'fixed, since nothing is said of it' }
        : undefined,
  },
  { input: 'guides.parallel-within', symbol: 'δ_p' },
  { input: 'guides.level-within', symbol: 'δ_h' },
  {
    input: 'guides.carriage-stiffness',
    title: 'Stiffness of a carriage across its rail',
    symbol: 'k_c',
    quantity: 'stiffness',
    handbook: (read) => {
      const found = stiffnessOf(read);
      return found && { value: { type: 'number', ...between(found.range.low, found.range.nominal, found.range.high), unit: 'N/µm' }, source: `${found.what}: ${found.range.source}`, weak: true };
    },
  },
  {
    input: 'guides.mounting-limits',
    title: 'What the maker permits at mounting',
    symbol: 'f',
    handbook: (read) => {
      const rail = read.choice('guides.kind') === 'profile-rail' ? railOfSize(read.choice('guides.size') ?? '') : undefined;
      if (!rail) return undefined;
      // Height as a part of the spacing, parallelism in m, each without and with preload; 0 where no table was read.
      const row = [rail.heightFactor.plain, rail.heightFactor.preloaded, rail.parallelism?.plain ?? 0, rail.parallelism?.preloaded ?? 0];
      return { value: { type: 'table', rows: [row] }, source: RAIL_MOUNTING_SOURCE, weak: true };
    },
  },
  {
    input: 'guides.preload-share',
    title: 'Whether the carriages are preloaded',
    symbol: 'ψ',
    quantity: 'share',
    handbook: (read) => {
      if (read.choice('guides.kind') === undefined) return undefined;
      switch (read.choice('guides.preload')) {
        case undefined: return { value: { type: 'number', ...between(0, 0, 1), unit: '%' }, source: 'without to with preload, since nothing is said of it', weak: true };
        case 'none': return { value: { type: 'number', ...exactly(0), unit: '%' }, source: 'no preload, as described' };
        default: return { value: { type: 'number', ...exactly(1), unit: '%' }, source: 'preloaded, as described' };
      }
    },
  },
  {
    input: 'guides.preload-force',
    title: 'Preload of a carriage',
    symbol: 'F_pre',
    quantity: 'force',
    handbook: (read) => {
      const share = PRELOADS[read.choice('guides.preload') ?? ''];
      const rating = PRELOADED.has(read.choice('guides.kind') ?? '') ? read.number('guides.dynamic-rating') : undefined;
      if (!share || !rating) return undefined;
      const [low, nominal, high] = share;
      return {
        value: { type: 'number', ...between(low * rating.low, nominal * rating.nominal, high * rating.high), unit: 'N' },
        source: 'light up to 2 %, medium 3 to 5 % of the dynamic rating; from memory', weak: true,
      };
    },
  },
);
