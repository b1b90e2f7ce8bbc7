import { permittedHeightDifference } from '../../mechanics/guide-mismatch.ts';
import { figure, unable, type Figure } from '../figure.ts';

const onRails = { 'guides.kind': ['profile-rail'] } as const;
const makers = { title: 'mounting tables of rail makers', weak: true } as const;
const tables = { limits: 'guides.mounting-limits' } as const;
const size = { size: 'guides.size' } as const;

/** Between the value without and the one with preload. */
const between = (plain: number, preloaded: number, share: number): number => plain + (preloaded - plain) * share;

const overPermitted = (told: { readonly id: string; readonly title: string; readonly symbol: string; readonly formula: string; readonly meaning: string; readonly needs: { readonly difference: string; readonly permitted: string } }): Figure =>
  figure({
    ...told,
    quantity: 'ratio',
    unit: '%',
    onlyWhere: onRails,
    compute: ({ difference, permitted }) => (permitted > 0 ? difference / permitted : unable('nothing is permitted')),
    sources: [makers],
    rank: 3,
  });

export default [
  figure({
    id: 'guides.height-permitted',
    title: 'Height difference of the rails that is permitted',
    symbol: 'S_h',
    quantity: 'length',
    meaning: 'How much higher one rail may lie than the other by the rule of rail makers; preloaded carriages forgive less.',
    onlyWhere: onRails,
    choices: size,
    needs: { spacing: 'guides.rail-spacing', preloaded: 'guides.preload-share' },
    tables,
    compute: ({ spacing, preloaded, limits }) => {
      const [plain = 0, tight = 0] = limits?.[0] ?? [];
      return plain > 0 && spacing > 0 ? permittedHeightDifference(spacing, between(plain, tight, preloaded)) : unable('no maker’s rule is known for this size');
    },
    formula: 'S_h = b_r f, f with ψ between without and with preload',
    sources: [makers],
    rank: 3,
  }),
  figure({
    id: 'guides.parallelism-permitted',
    title: 'Parallelism of the rails that is permitted',
    symbol: 'P_1',
    quantity: 'length',
    meaning: 'How far the rails may be out of parallel by the tables of rail makers; preloaded carriages forgive less.',
    onlyWhere: onRails,
    choices: size,
    needs: { preloaded: 'guides.preload-share' },
    tables,
    compute: ({ preloaded, limits }) => {
      const [, , plain = 0, tight = 0] = limits?.[0] ?? [];
      return plain > 0 ? between(plain, tight, preloaded) : unable('no maker’s table was read for this size');
    },
    formula: 'from the table of the size, with ψ between without and with preload',
    sources: [makers],
    rank: 3,
  }),
  overPermitted({
    id: 'guides.height-use', title: 'Height difference over what is permitted', symbol: 'δ_h/S_h', formula: 'δ_h / S_h',
    meaning: 'How far one rail may lie higher over what the rule of rail makers permits.',
    needs: { difference: 'guides.level-within', permitted: 'guides.height-permitted' },
  }),
  overPermitted({
    id: 'guides.parallelism-use', title: 'Parallelism over what is permitted', symbol: 'δ_p/P_1', formula: 'δ_p / P₁',
    meaning: 'How far the rails may be out of parallel over what the tables of rail makers permit.',
    needs: { difference: 'guides.parallel-within', permitted: 'guides.parallelism-permitted' },
  }),
  figure({
    id: 'guides.mounting-use',
    title: 'Use of what is permitted at mounting',
    symbol: 'u_m',
    quantity: 'ratio',
    unit: '%',
    meaning: 'The larger of both: height difference and parallelism over what is permitted.',
    onlyWhere: onRails,
    needs: { rails: 'guides.rails' },
    optional: { height: 'guides.height-use', parallel: 'guides.parallelism-use' },
    compute: ({ rails, height, parallel }) => {
      if (rails < 2) return unable('there is one rail');
      if (height === undefined && parallel === undefined) return unable('it is not known how far the rails may be out of line, or what is permitted');
      return (height ?? 0) > (parallel ?? 0) ? { value: height ?? 0, note: 'by the height' } : { value: parallel ?? 0, note: 'by the parallelism' };
    },
    formula: 'u_m = max(δ_h/S_h, δ_p/P₁)',
    sources: [makers],
    rank: 2,
  }),
];
