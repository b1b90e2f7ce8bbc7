import { PROFILE_RAILS, profileRail, type ProfileRail } from '../catalogue/profile-rails.ts';

/** Forms as a size is written: `15` is a standard rail, `miniature 12` a miniature one. Sizes that only one form has need no form. */
const SIZE = /^(?:(miniature|standard)\s+)?(\d{1,2})$/i;

/** The profile rail that a size names; undefined for a text that names none. A bare number that both forms have means the standard one. */
export function railOfSize(text: string): ProfileRail | undefined {
  const [, form, digits] = SIZE.exec(text.trim()) ?? [];
  if (digits === undefined) return undefined;
  const size = Number(digits);
  return form === undefined ? (profileRail('standard', size) ?? profileRail('miniature', size)) : profileRail(form.toLowerCase(), size);
}

/** How the size of a rail is written: with its form only where the number alone means another. */
export const railSizeText = (rail: ProfileRail): string => (railOfSize(String(rail.size)) === rail ? String(rail.size) : `${rail.form} ${rail.size}`);

/** All sizes as they are written. */
export const RAIL_SIZE_TEXTS: readonly string[] = PROFILE_RAILS.map(railSizeText);
