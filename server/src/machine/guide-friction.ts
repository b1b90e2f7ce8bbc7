import { guideKind, type GuideKind } from '../catalogue/guide-kinds.ts';
import { sliderForce } from '../mechanics/slider-jamming.ts';
import type { InputReader } from './input.ts';
import { between, exactly, type Bounded } from './values.ts';

const GRAVITY = 9.80665;

/** What is known of the guides of an axis, however its scope is called. */
export interface GuideFrictionInputs {
  readonly mass: Bounded | undefined;
  /** Angle of the travel above horizontal, rad. */
  readonly inclination: Bounded;
  readonly gravity: Bounded;
  readonly bearing: string | undefined;
  readonly friction: Bounded | undefined;
  readonly sealDrag: Bounded | undefined;
  /** Carriages of all rails together. */
  readonly carriages: number;
  readonly guidedLength: Bounded | undefined;
  readonly driveOffset: Bounded | undefined;
}

/** The bearing that is usual for a kind of guide. A plain slide can be any of several. */
export const USUAL_BEARING: Readonly<Record<string, string>> = { 'profile-rail': 'profile-rail', 'round-shaft': 'ball-bushing', 'supported-shaft': 'ball-bushing', wheels: 'wheels', plain: 'dry-slide' };

/** Friction of the guides of another axis, of which only the plain entries are read. */
export function ofScope(read: InputReader, scope: string, mass: string): GuideFrictionInputs {
  const kind = read.choice(`${scope}.kind`);
  const bearing = read.choice(`${scope}.bearing`) ?? (kind === undefined ? undefined : USUAL_BEARING[kind]);
  const row: GuideKind | undefined = guideKind(bearing ?? '');
  const spaced = read.number(`${scope}.carriage-spacing`) !== undefined;
  return {
    mass: read.number(mass),
    inclination: exactly(0),
    gravity: read.number('conditions.gravity') ?? exactly(GRAVITY),
    bearing: kind === undefined ? undefined : bearing,
    friction: read.number(`${scope}.friction`) ?? row?.friction,
    sealDrag: row?.sealDrag,
    carriages: (read.number(`${scope}.rails`)?.nominal ?? 2) * (read.number(`${scope}.carriages`)?.nominal ?? (spaced ? 2 : 1)),
    guidedLength: read.number(`${scope}.guided-length`),
    driveOffset: read.number(`${scope}.drive-offset`),
  };
}

/**
 * What guides take from the force of a drive when nobody says so: friction on the weight across them, or on the edges that a drive beside them
 * presses, and the drag of all seals. Without a kind, rolling guides with wipers 0.3 to 1 % of the load plus a few newtons of seal drag, sliding
 * bushings up to 5 %: from memory.
 */
export function usualGuideFriction(guides: GuideFrictionInputs) {
  const { mass, bearing, friction, sealDrag, carriages } = guides;
  if (!mass) return undefined;
  if (bearing === undefined || !friction || !sealDrag) {
    const weight = mass.nominal * GRAVITY;
    return {
      value: { type: 'number', ...between(0.003 * weight, 0.01 * weight + 3, 0.05 * weight + 10), unit: 'N' },
      source: 'rolling and sliding guides, 0.3 to 5 % of the moved weight and up to 10 N of seal drag; common practice, no published source',
      weak: true,
    } as const;
  }
  const at = (end: keyof Bounded): number => friction[end] * pressedAt(guides, end) + carriages * sealDrag[end];
  return {
    value: { type: 'number', ...between(at('low'), at('nominal'), at('high')), unit: 'N' },
    source: `coefficient of friction on what presses the guides without acceleration, and the seals of ${carriages} ${carriages === 1 ? 'carriage' : 'carriages'}`,
    weak: true,
  } as const;
}

/** Sum of the forces across the guides, N, with all that raises them at one end of its range. */
function pressedAt({ mass, inclination, gravity, friction, guidedLength, driveOffset }: GuideFrictionInputs, end: keyof Bounded): number {
  const weight = (mass?.[end] ?? 0) * gravity[end];
  const [along, across] = [weight * Math.max(0, Math.sin(inclination.nominal)), weight * Math.abs(Math.cos(inclination.nominal))];
  const coefficient = friction?.[end] ?? 0;
  const length = guidedLength?.[end === 'low' ? 'high' : end === 'high' ? 'low' : 'nominal'];
  const offset = driveOffset?.[end];
  if (length === undefined || offset === undefined || !(length > 0) || !(coefficient > 0)) return across;
  const moved = sliderForce({ guidedLength: length, friction: coefficient, driveOffset: offset, load: along, sideForce: across });
  // Where it locks there is no such force; that it locks is told elsewhere.
  return moved.kind === 'moves' ? (moved.force - along) / coefficient : across;
}
