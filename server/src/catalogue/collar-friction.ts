import data from './data/collar-friction.json';

export const COLLARS = ['soft-steel-on-cast-iron', 'hard-steel-on-cast-iron', 'soft-steel-on-bronze', 'hard-steel-on-bronze', 'rolling-bearing'] as const;
export type CollarName = (typeof COLLARS)[number];

/** Friction of a thrust face or thrust bearing, without unit. */
export interface CollarFriction {
  readonly name: CollarName;
  readonly title: string;
  readonly kind: 'plain' | 'rolling';
  readonly running: { readonly low: number; readonly nominal: number; readonly high: number };
  readonly starting: { readonly low: number; readonly nominal: number; readonly high: number };
  readonly source: string;
  /** Rests on memory. */
  readonly weak: boolean;
}

const LOADED: ReadonlyMap<string, CollarFriction> = new Map(
  data.rows.map((row) => [
    row.collar,
    {
      name: row.collar as CollarName,
      title: row.title,
      kind: row.kind === 'rolling' ? 'rolling' : 'plain',
      running: { low: row.running_low, nominal: row.running_nominal, high: row.running_high },
      starting: { low: row.starting_low, nominal: row.starting_nominal, high: row.starting_high },
      source: row.source,
      weak: row.weak === true,
    },
  ]),
);

export function isCollar(name: string): name is CollarName {
  return (COLLARS as readonly string[]).includes(name);
}

/** The collar of that name. Throws RangeError for a name outside `COLLARS`, which the type rules out. */
export function collarFriction(name: CollarName): CollarFriction {
  const found = LOADED.get(name);
  if (found === undefined) throw new RangeError(`no collar ${String(name)}`);
  return found;
}
