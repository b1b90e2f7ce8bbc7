import data from './data/guide-kinds.json' with { type: 'json' };
import wheels from './data/guide-wheels.json' with { type: 'json' };
import { type HandbookRange } from './nut-materials.ts';

interface RawRange { low: number; nominal: number; high: number }
const rangeOf = (row: { source: string; weak: boolean }) => (raw: RawRange, unit = 1): HandbookRange => ({
  low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, source: row.source, weak: row.weak,
});

/** What is usual for a kind of guide. SI. */
export interface GuideKind {
  readonly kind: string;
  readonly title: string;
  /** Whether it rolls: then friction does not jam it, but rails out of line do. */
  readonly rolls: boolean;
  /** Coefficient of friction, without unit. */
  readonly friction: HandbookRange;
  /** Drag of the seals of one carriage or bushing, N. */
  readonly sealDrag: HandbookRange;
  /** Angle between shaft or rail and bearing that it bears, rad. */
  readonly misalignment: HandbookRange;
}

/** All kinds. */
export const GUIDE_KINDS: readonly GuideKind[] = data.rows.map((row) => {
  const range = rangeOf(row);
  return { kind: row.kind, title: row.title, rolls: row.rolls, friction: range(row.friction), sealDrag: range(row.seal_drag_N), misalignment: range(row.misalignment_deg, Math.PI / 180) };
});

/** The kind of that name; undefined for an unknown one. */
export const guideKind = (kind: string): GuideKind | undefined => GUIDE_KINDS.find((row) => row.kind === kind);

/** What is usual for a wheel. SI. */
export interface GuideWheel {
  readonly form: string;
  readonly title: string;
  /** m. */
  readonly diameter: HandbookRange;
  /** That one wheel carries, N. */
  readonly load: HandbookRange;
  /** Of one wheel with its axle, N/m. */
  readonly stiffness: HandbookRange;
}

/** All wheels. */
export const GUIDE_WHEELS: readonly GuideWheel[] = wheels.rows.map((row) => {
  const range = rangeOf(row);
  return { form: row.form, title: row.title, diameter: range(row.diameter_mm, 1e-3), load: range(row.load_N), stiffness: range(row.stiffness_N_per_um, 1e6) };
});

/** The wheel of that form; undefined for an unknown one. */
export const guideWheel = (form: string): GuideWheel | undefined => GUIDE_WHEELS.find((row) => row.form === form);
