import { between, type Bounded } from './values.ts';

/**
 * What guides take from the force of a drive when nobody says so.
 * Rolling guides with wipers 0.3 to 1 % of the load plus a few newtons of seal drag, sliding bushings up to 5 %: from memory.
 */
export function usualGuideFriction(mass: Bounded | undefined) {
  if (!mass) return undefined;
  const weight = mass.nominal * 9.80665;
  return {
    value: { type: 'number', ...between(0.003 * weight, 0.01 * weight + 3, 0.05 * weight + 10), unit: 'N' },
    source: 'rolling and sliding guides, 0.3 to 5 % of the moved weight and up to 10 N of seal drag; common practice, no published source',
    weak: true,
  } as const;
}
