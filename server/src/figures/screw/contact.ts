import type { LoadlessContact } from '../../mechanics/power-screw.ts';
import { unable, type Unable } from '../figure.ts';

/** What every torque and efficiency of a screw rests on; all threads, sliding and ball. */
export const contactNeeds = { pitchDiameter: 'screw.pitch-diameter', leadAngle: 'screw.lead-angle', friction: 'screw.effective-friction' } as const;

/** The thrust bearing; left out where its diameter is unknown. */
export const bearingNeeds = { bearingFriction: 'thrust-bearing.friction', bearingDiameter: 'thrust-bearing.mean-diameter' } as const;

interface ContactValues {
  readonly pitchDiameter: number;
  readonly leadAngle: number;
  readonly friction: number;
}

interface BearingValues {
  readonly bearingFriction: number | undefined;
  readonly bearingDiameter: number | undefined;
}

export const threadContact = ({ pitchDiameter, leadAngle, friction }: ContactValues): LoadlessContact => ({ pitchDiameter, leadAngle, effectiveFriction: friction });

export function contactWithBearing(values: ContactValues & BearingValues): LoadlessContact {
  const { bearingFriction, bearingDiameter } = values;
  const collar = bearingFriction === undefined || bearingDiameter === undefined ? undefined : { friction: bearingFriction, meanDiameter: bearingDiameter };
  return { ...threadContact(values), collar };
}

/** A torque that does not exist where the flank jams. */
export const orJammed = (torque: number | undefined): number | Unable => torque ?? unable('the thread is so steep and rough that it jams: no torque turns it against the load');
