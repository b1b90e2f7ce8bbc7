import type { TableCarriage } from '../../mechanics/carriage-loads.ts';
import type { CarriageCases, LoadedCarriage } from './carriages.ts';
import type { RailFrame, Triple } from './lie.ts';

/** Directions that are nearer to each other are the same. */
const ROUNDING = 1e-9;

const inMillimetres = (metres: number): string => `${Number((metres * 1000).toPrecision(4))} mm`;

/** The direction of the machine that a direction of the rails is nearest to: `+x`. */
function directionOf(vector: Triple, sign: number): string {
  const index = vector.reduce((most, value, i) => (Math.abs(value) > Math.abs(vector[most] ?? 0) + ROUNDING ? i : most), 0);
  return `${sign * (vector[index] ?? 0) < 0 ? '−' : '+'}${'xyz'[index]}`;
}

/** `the upper carriage towards +x`: how a person finds it. */
function nameOf({ x, y }: TableCarriage, frame: RailFrame): string {
  const upright = Math.abs(frame.along[2]) > 1 - ROUNDING;
  const level = upright && x !== 0 ? `${x > 0 ? 'upper' : 'lower'} ` : '';
  const towards = [...(upright || x === 0 ? [] : [directionOf(frame.along, Math.sign(x))]), ...(y === 0 ? [] : [directionOf(frame.across, Math.sign(y))])];
  return `${level}carriage${towards.length === 0 ? '' : ` towards ${towards.join(' and ')}`}`;
}

/** What belongs to a load on a carriage: which one, with which mass where, or what was assumed. */
export function remarkOn(cases: CarriageCases, at: LoadedCarriage | undefined): string | undefined {
  if (!at?.lie) return cases.assumed;
  const { lie, corners, carriage } = at;
  const open = lie.masses.flatMap(({ title, places }, i) => {
    const [x, y] = places[corners[i] ?? 0] ?? [];
    return places.length > 1 && x !== undefined && y !== undefined ? [`${title} at ${inMillimetres(x)}, ${inMillimetres(y)}`] : [];
  });
  const moved = cases.loads.some((other) => other.lie !== undefined && other.lie !== lie);
  const where = moved ? 'most loaded carriage' : nameOf(carriage, lie.frame);
  const heights = lie.withoutHeight ? ['heights that are not written taken as that of the rails'] : [];
  return [`on the ${where}`, ...(open.length === 0 ? [] : [`with ${open.join(' and ')}`]), ...heights].join(', ');
}
