import { stiffnessInSeries, torsionAlongAxis, type StiffnessLink } from '../../mechanics/axial-stiffness.ts';
import { unable, type Computed } from '../figure.ts';
import { shaftsPerMotor } from '../motor/train.ts';

/** What gives between the motor's field and the shaft that carries screw, pulley or pinion; each where it is known. */
export const trainLinkNeeds = {
  reduction: 'drive.reduction-stiffness', coupling: 'coupling.torsional-stiffness', magnetic: 'motor.magnetic-stiffness', ratio: 'drive.reduction-ratio', units: 'drive.units',
} as const;

interface TrainLinks {
  readonly reduction: number | undefined;
  readonly coupling: number | undefined;
  readonly magnetic: number | undefined;
  readonly ratio: number | undefined;
  readonly units: number | undefined;
  readonly motors: string | undefined;
}

/** These links as stiffness along the axis, N/m; `travel` is that of a turn of the shaft, m. */
export function trainLinks(travel: number, { reduction, coupling, magnetic, ratio = 1, units = 1, motors }: TrainLinks): readonly StiffnessLink[] {
  const links: StiffnessLink[] = [];
  // A motor that turns several shafts has the torque of all of them on its one spring, and on the reduction before them.
  const shafts = shaftsPerMotor(motors, units);
  if (coupling !== undefined) links.push({ name: 'the twist of the coupling', stiffness: torsionAlongAxis(coupling, travel) });
  if (reduction !== undefined) links.push({ name: 'the twist of the reduction', stiffness: torsionAlongAxis(reduction / shafts, travel) });
  if (magnetic !== undefined) links.push({ name: "the motor's magnetic spring", stiffness: torsionAlongAxis((magnetic * ratio ** 2) / shafts, travel) });
  return links;
}

/** All links in series, with what makes up most of the give; `without` ends the remark with what is not known. */
export function inSeries(links: readonly StiffnessLink[], without: string): Computed {
  if (links.some((link) => !(link.stiffness > 0))) return unable('one of its links has no stiffness');
  const { total, shares } = stiffnessInSeries(links);
  return { value: total, note: `of the give: ${shares.slice(0, 3).map(({ name, share }) => `${name} ${(share * 100).toFixed(0)} %`).join(', ')}${without}` };
}

/** How much of the give of the whole, of stiffness `total`, the softest link makes up, and which it is. */
export function softestShare(links: readonly StiffnessLink[], total: number): Computed {
  const softest = links.reduce((least, link) => (link.stiffness < least.stiffness ? link : least));
  return { value: total / softest.stiffness, note: softest.name };
}
