import { bushingsFor } from '../../catalogue/ball-bushings.ts';
import { guideKind } from '../../catalogue/guide-kinds.ts';
import { USUAL_BEARING } from '../guide-friction.ts';
import { railOfSize } from '../guide-rail-size.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between, exactly, type Bounded } from '../values.ts';

/** From a lined bushing to a dry slide. */
const ANY_SLIDE = ['lined-bushing', 'polymer-bushing', 'bronze-bushing', 'dry-slide'] as const;

const bearingOf = (read: InputReader): ReturnType<typeof guideKind> => guideKind(read.choice('guides.bearing') ?? '');

/** What is left of a guided length beside the spacing of the carriages: the length of one, where that is possible. */
function lengthLeft(read: InputReader): Bounded | undefined {
  const [guided, spacing] = [read.number('guides.guided-length'), read.number('guides.carriage-spacing')];
  const carriages = read.number('guides.carriages')?.nominal ?? 1;
  if (!guided || !spacing || carriages < 2) return undefined;
  const left = between(guided.low - spacing.high, guided.nominal - spacing.nominal, guided.high - spacing.low);
  // Longer than their distance they would not fit beside each other: then the guided length means something else.
  return left.low > 0 && left.high <= spacing.low / (carriages - 1) ? left : undefined;
}

/** Length of one carriage from its size, m; undefined where no standard speaks for it. */
function usualLength(read: InputReader): { low: number; nominal: number; high: number; source: string } | undefined {
  const rail = read.choice('guides.kind') === 'profile-rail' ? railOfSize(read.choice('guides.size') ?? '') : undefined;
  if (rail) return rail.carriageLength;
  const shaft = read.number('guides.shaft-diameter')?.nominal;
  const lengths = shaft === undefined ? [] : bushingsFor(shaft).map(({ length }) => length);
  if (lengths.length > 0) return { low: Math.min(...lengths), nominal: Math.max(...lengths), high: Math.max(...lengths), source: 'ball bushings of that shaft by ISO 10285, from memory' };
  return read.choice('guides.kind') === undefined ? undefined : { low: 0.02, nominal: 0.03, high: 0.06, source: 'short bushing to long carriage, from memory' };
}

export default fallbacks(
  {
    input: 'guides.bearing',
    handbook: (read) => {
      const kind = read.choice('guides.kind');
      const text = kind === undefined ? undefined : USUAL_BEARING[kind];
      return text === undefined ? undefined : { value: { type: 'choice', text }, source: 'the bearing that is usual for guides of this kind, since none is given', weak: true };
    },
  },
  {
    input: 'guides.rails',
    symbol: 'n_r',
    handbook: (read) => (read.choice('guides.kind') === undefined ? undefined : { value: { type: 'number', ...exactly(2) }, source: 'two side by side, since no number is given' }),
  },
  {
    input: 'guides.carriages',
    symbol: 'n_c',
    handbook: (read) => {
      if (read.choice('guides.kind') === undefined) return undefined;
      return read.number('guides.carriage-spacing')
        ? { value: { type: 'number', ...exactly(2) }, source: 'two on each rail, since their spacing is given' }
        : { value: { type: 'number', ...exactly(1) }, source: 'one on each rail, since neither number nor spacing is given' };
    },
  },
  { input: 'guides.rail-spacing', symbol: 'b_r' },
  { input: 'guides.carriage-spacing', symbol: 'b_c' },
  { input: 'guides.drive-offset', symbol: 'd_F' },
  { input: 'guides.life', symbol: 'L_w' },
  {
    input: 'guides.carriage-length',
    symbol: 'l_c',
    handbook: (read) => {
      const left = read.isWritten('guides.guided-length') ? lengthLeft(read) : undefined;
      if (left) return { value: { type: 'number', ...left, unit: 'mm' }, source: 'guided length less the spacing of the carriages' };
      const usual = usualLength(read);
      return usual && { value: { type: 'number', ...between(usual.low, usual.nominal, usual.high), unit: 'mm' }, source: usual.source, weak: true };
    },
  },
  {
    input: 'guides.guided-length',
    symbol: 's_g',
    handbook: (read) => {
      const length = read.number('guides.carriage-length');
      const spacing = (read.number('guides.carriages')?.nominal ?? 1) > 1 ? read.number('guides.carriage-spacing') : exactly(0);
      if (!length || !spacing) return undefined;
      return {
        value: { type: 'number', ...between(spacing.low + length.low, spacing.nominal + length.nominal, spacing.high + length.high), unit: 'mm' },
        source: 'spacing of the carriages and the length of one, since no guided length is given',
      };
    },
  },
  {
    input: 'guides.friction',
    symbol: 'µ_g',
    handbook: (read) => {
      const row = bearingOf(read);
      if (!row) return undefined;
      if (read.choice('guides.kind') === 'plain' && !read.isWritten('guides.bearing')) {
        const all = ANY_SLIDE.flatMap((kind) => guideKind(kind)?.friction ?? []);
        const [low, high] = [Math.min(...all.map((one) => one.low)), Math.max(...all.map((one) => one.high))];
        return { value: { type: 'number', ...between(low, Math.sqrt(low * high), high) }, source: 'from lined bushings to dry slides, since no bearing is given; from memory', weak: true };
      }
      const { low, nominal, high, source, weak } = row.friction;
      return { value: { type: 'number', ...between(low, nominal, high) }, source: `${row.title}: ${source}`, weak };
    },
  },
  {
    input: 'guides.seal-drag',
    title: 'Drag of the seals of one carriage',
    symbol: 'F_s',
    quantity: 'force',
    handbook: (read) => {
      const row = bearingOf(read);
      if (!row) return undefined;
      const { low, nominal, high, source, weak } = row.sealDrag;
      return { value: { type: 'number', ...between(low, nominal, high), unit: 'N' }, source: `${row.title}: ${source}`, weak };
    },
  },
);
