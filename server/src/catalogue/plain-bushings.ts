import data from './data/plain-bushings.json' with { type: 'json' };
import { type HandbookRange } from './nut-materials.ts';

/** What a plain bushing on a round shaft bears. SI. */
export interface PlainBushing {
  /** As in `guide-kinds`. */
  readonly kind: string;
  readonly title: string;
  /** While it slides, on its projected area, Pa. */
  readonly pressure: HandbookRange;
  /** For long, Pa·m/s. */
  readonly pressureVelocity: HandbookRange;
  /** m/s. */
  readonly speed: HandbookRange;
  /** k, m²/N. */
  readonly specificWear: HandbookRange;
  /** Depth on the loaded side, m. */
  readonly wearAllowed: HandbookRange;
}

/** All plain bushings. */
export const PLAIN_BUSHINGS: readonly PlainBushing[] = data.rows.map((row) => {
  const range = (raw: { low: number; nominal: number; high: number }, unit: number): HandbookRange => ({
    low: raw.low * unit, nominal: raw.nominal * unit, high: raw.high * unit, source: row.source, weak: row.weak,
  });
  return {
    kind: row.kind,
    title: row.title,
    pressure: range(row.pressure_MPa, 1e6),
    pressureVelocity: range(row.pressure_velocity_MPa_m_per_s, 1e6),
    speed: range(row.speed_m_per_s, 1),
    specificWear: range(row.specific_wear_mm3_per_Nm, 1e-9),
    wearAllowed: range(row.wear_allowed_mm, 1e-3),
  };
});

/** The bushing of that kind; undefined for one that is not plain. */
export const plainBushing = (kind: string): PlainBushing | undefined => PLAIN_BUSHINGS.find((row) => row.kind === kind);
