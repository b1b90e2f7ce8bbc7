import type { Host } from './host.ts';

const two = (value: number): string => String(value).padStart(2, '0');

/** A day where the computer stands, YYYY-MM-DD. */
export const localDay = (date: Date): string => `${String(date.getFullYear()).padStart(4, '0')}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;

/**
 * The day of a run: that of SOURCE_DATE_EPOCH (seconds since 1970, in UTC) where it is set, so that a run can be repeated; else that of the
 * host's clock. Undefined without either.
 */
export function dayOf({ env, today }: Pick<Host, 'env' | 'today'>): string | undefined {
  const epoch = env['SOURCE_DATE_EPOCH'];
  const date = epoch !== undefined && /^\d{1,12}$/.test(epoch) ? new Date(Number(epoch) * 1000) : undefined;
  return date && !Number.isNaN(date.getTime()) ? date.toISOString().slice(0, 10) : today?.();
}
