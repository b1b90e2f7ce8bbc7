import { roundSecondMoment, type GuideShaft } from '../../mechanics/guide-shaft.ts';
import { carriageOverTravel, type CarriageOnShaft, type CarriageOverTravel } from '../../mechanics/guide-shaft-travel.ts';

/** Everything that a bending guide shaft needs, as `needs` of a figure. */
export const shaftNeeds = {
  mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', travel: 'axis.travel',
  rails: 'guides.rails', carriages: 'guides.carriages', length: 'guides.unsupported-length', diameter: 'guides.shaft-diameter', bore: 'guides.shaft-bore',
  modulus: 'guides.shaft-modulus', density: 'guides.shaft-density', fixity: 'guides.end-fixity',
} as const;
export const shaftOptional = { spacing: 'guides.carriage-spacing' } as const;
export const onRoundShafts = { 'guides.kind': ['round-shaft'] } as const;

export interface ShaftValues {
  readonly mass: number; readonly gravity: number; readonly inclination: number; readonly travel: number; readonly rails: number; readonly carriages: number;
  readonly length: number; readonly diameter: number; readonly bore: number; readonly modulus: number; readonly density: number; readonly fixity: number;
  readonly spacing: number | undefined;
}

/** Below this share of the weight across the guides an axis counts as upright. */
const UPRIGHT = 1e-6;

export interface Bending { readonly shaft: GuideShaft; readonly carriage: CarriageOnShaft; readonly from: number; readonly to: number }

/** The shaft, what one of them carries, and the way of the carriage along it; or why there is none, as a clause. */
export function bendingOf(values: ShaftValues): Bending | string {
  const { mass, gravity, inclination, travel, rails, carriages, length, diameter, bore, modulus, density, fixity, spacing } = values;
  if (!(length > 0 && diameter > 0 && modulus > 0 && density > 0 && rails >= 1 && bore >= 0 && travel >= 0)) return 'the shafts need lengths, a diameter and a material above zero';
  if (bore >= diameter) return 'the bore is as wide as the shaft';
  const across = gravity * Math.cos(inclination);
  if (Math.abs(across) < UPRIGHT * gravity) return 'the axis is upright, so no weight lies across its guides';
  const bearingDistance = carriages > 1 ? (spacing ?? 0) : 0;
  const room = length - bearingDistance - travel;
  if (room < 0) return 'travel and carriage are longer than the free length of the shafts';
  const bendingStiffness = modulus * roundSecondMoment(diameter, bore);
  const middle = length / 2;
  const end = fixity >= 1 ? ('fixed' as const) : { tiltStiffness: (fixity / (1 - fixity)) * ((4 * bendingStiffness) / length) };
  return {
    shaft: { left: end, right: end, length, bendingStiffness, loadPerLength: density * ((Math.PI * (diameter ** 2 - bore ** 2)) / 4) * across },
    carriage: { force: (mass * across) / rails, bearingDistance },
    from: middle - travel / 2,
    to: middle + travel / 2,
  };
}

let last: { readonly key: string; readonly result: CarriageOverTravel | string } | undefined;

/** What the shaft does over the travel. Several figures ask at the same values one after the other, so the last answer is kept. */
export function overTravel(values: ShaftValues): CarriageOverTravel | string {
  const key = Object.values(shaftOrder(values)).join(' ');
  if (last?.key === key) return last.result;
  const bending = bendingOf(values);
  const result = typeof bending === 'string' ? bending : carriageOverTravel(bending.shaft, bending.carriage, bending.from, bending.to);
  last = { key, result };
  return result;
}

const shaftOrder = ({ mass, gravity, inclination, travel, rails, carriages, length, diameter, bore, modulus, density, fixity, spacing }: ShaftValues) =>
  [mass, gravity, inclination, travel, rails, carriages, length, diameter, bore, modulus, density, fixity, spacing ?? NaN];
