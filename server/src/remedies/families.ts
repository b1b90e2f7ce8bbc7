/**
 * Checks that grade one and the same danger, so that only one of them speaks at a time. Something is cured only when none of them speaks
 * that did not before: a motor that no longer stalls but has next to no torque to spare is not mended.
 */
const FAMILIES: readonly (readonly string[])[] = [
  ['drops-unpowered', 'may-creep-unpowered', 'holding-unknown'],
  ['motor-cannot-lift', 'motor-margin-thin'],
  ['slider-jams', 'slider-near-jam'],
  ['frame-unbraced', 'frame-sways-slowly'],
  ['growth-jams', 'misalignment-jams', 'jam-outpulls-drive'],
  ['coupling-carries-the-load', 'motor-shaft-overloaded', 'thrust-through-coupling'],
];

/** The other checks of the same danger. */
export function kinOf(check: string): readonly string[] {
  return FAMILIES.find((family) => family.includes(check))?.filter((other) => other !== check) ?? [];
}

/** Whether a check is about what an axis does with power off. */
export const isAboutHolding = (check: string): boolean => check === 'held-by-friction-alone' || kinOf(check).includes('drops-unpowered') || check === 'drops-unpowered';
