import type { Facts } from './check.ts';

/**
 * Whether most of what presses the carriages comes from rails out of line, and that is told already: larger carriages would not cure it.
 * Silent findings come back when the rails are lined up.
 */
export function railsPress({ bounds }: Facts): boolean {
  const use = bounds('guides.mounting-use')?.high ?? 0;
  const pressed = Math.hypot(bounds('guides.mismatch-side-force')?.nominal ?? 0, bounds('guides.mismatch-height-force')?.nominal ?? 0);
  return use > 1 && pressed > (bounds('guides.equivalent-load')?.nominal ?? Infinity) / 2;
}
