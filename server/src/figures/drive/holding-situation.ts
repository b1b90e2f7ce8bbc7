import { backDrivingTorque, collarTorque, selfLockingFactor } from '../../mechanics/power-screw.ts';
import { judgeHolding, type Holding } from '../../mechanics/unpowered-holding.ts';
import { bearingNeeds, contactNeeds, threadContact } from '../screw/contact.ts';

/** What the unpowered verdict rests on, for one screw. */
export const holdingNeeds = { ...contactNeeds, lead: 'screw.lead', load: 'drive.gravity-load', staticRatio: 'nut.static-friction-ratio' } as const;
export const holdingOptions = { ...bearingNeeds, detent: 'motor.detent-at-screw', brake: 'drive.brake-at-screw', backwards: 'drive.reduction-reverse-efficiency' } as const;
export const holdingChoices = { bearing: 'thrust-bearing.design' } as const;

interface Values {
  readonly pitchDiameter: number;
  readonly leadAngle: number;
  readonly friction: number;
  readonly lead: number;
  readonly load: number;
  readonly staticRatio: number;
  readonly bearingFriction: number | undefined;
  readonly bearingDiameter: number | undefined;
  readonly detent: number | undefined;
  readonly brake: number | undefined;
  readonly backwards: number | undefined;
  readonly bearing: string | undefined;
}

/** Friction of a thrust face that counts as holding: only a plain one; a rolling bearing's drag is nothing to rely on. */
export function plainCollarTorque(load: number, values: Pick<Values, 'bearing' | 'bearingFriction' | 'bearingDiameter'>): number {
  const { bearing, bearingFriction, bearingDiameter } = values;
  if (bearing !== 'plain' || bearingFriction === undefined || bearingDiameter === undefined) return 0;
  return collarTorque(load, { friction: bearingFriction, meanDiameter: bearingDiameter });
}

/** The verdict of the mechanics on these values. */
export function holdingOf(values: Values): Holding {
  const load = Math.abs(values.load);
  const factor = selfLockingFactor(values.friction, values.leadAngle);
  return judgeHolding({
    load: values.load,
    frictionlessTorque: (load * values.lead) / (2 * Math.PI),
    drivingTorque: backDrivingTorque({ ...threadContact(values), load }),
    kineticFactor: factor,
    staticFactor: factor * values.staticRatio,
    collarTorque: plainCollarTorque(load, values),
    detentTorque: values.detent ?? 0,
    brakeTorque: values.brake,
    reductionLocks: values.backwards !== undefined && values.backwards <= 0,
  });
}
