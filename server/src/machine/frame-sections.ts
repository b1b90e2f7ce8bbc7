import { material, type Material } from '../catalogue/materials.ts';
import type { HandbookRange } from '../catalogue/nut-materials.ts';
import { slottedProfile } from '../catalogue/slotted-profiles.ts';
import { rectangularTube, roundSection, solidRectangle, type Section } from '../mechanics/frame-sections.ts';
import type { Member } from './input.ts';
import { exactly, type Bounded } from './values.ts';

/** What is known of a member's section: by its profile, by its sizes, or by its own values, which go before. */
export interface MemberSection {
  readonly area: Bounded;
  readonly secondUpright: Bounded;
  readonly secondSideways: Bounded;
  readonly torsion: Bounded;
  readonly massPerLength: Bounded;
}

/** What the frame says for all members that do not say it themselves. */
export interface FrameUsual {
  readonly profile: string | undefined;
  readonly material: string | undefined;
  /** Of the conditions. */
  readonly frameMaterial: string | undefined;
}

const ends = ({ low, nominal, high }: HandbookRange): Bounded => ({ low, nominal, high });

/** The slotted profile of a member: its own, or that of the frame where the member says nothing of its section. */
const profileOf = (member: Member, usual: FrameUsual): string | undefined =>
  member.choice('profile') ?? (['width', 'height', 'diameter', 'second-moment-upright'].some((key) => member.choice(key) !== undefined) ? undefined : usual.profile);

/** What a member is made of: slotted profiles are of aluminium where nothing is said of them. Undefined where nobody knows. */
export function materialOf(member: Member, usual: FrameUsual): Material | undefined {
  const name = member.choice('material') ?? usual.material ?? (profileOf(member, usual) === undefined ? usual.frameMaterial : 'aluminium');
  return name === undefined ? undefined : material(name);
}

/** The section of a member of a material; undefined where it lacks something or cannot be. */
export function sectionOf(member: Member, usual: FrameUsual, { density }: Material): MemberSection | undefined {
  const base = ofProfile(profileOf(member, usual)) ?? ofSizes(member);
  const own = (key: string, otherwise: Bounded | undefined): Bounded | undefined => (member.choice(key) === undefined ? otherwise : member.number(key));
  const area = own('area', base?.area);
  const weight = area && { low: area.low * density.low, nominal: area.nominal * density.nominal, high: area.high * density.high };
  const found = {
    area,
    secondUpright: own('second-moment-upright', base?.secondUpright),
    secondSideways: own('second-moment-sideways', base?.secondSideways),
    torsion: own('torsion-constant', base?.torsion),
  };
  const massPerLength = own('mass-per-length', base?.massPerLength ?? weight);
  const { secondUpright, secondSideways, torsion } = found;
  if (!area || !secondUpright || !secondSideways || !torsion || !massPerLength) return undefined;
  return [area, secondUpright, secondSideways, torsion].every(({ low }) => low > 0) ? { area, secondUpright, secondSideways, torsion, massPerLength } : undefined;
}

type Base = Omit<MemberSection, 'massPerLength'> & { readonly massPerLength?: Bounded };

function ofProfile(name: string | undefined): Base | undefined {
  const profile = slottedProfile(name ?? '');
  const aluminium = material('aluminium');
  if (!profile || !aluminium) return undefined;
  const { massPerLength: mass } = profile;
  return {
    area: { low: mass.low / aluminium.density.high, nominal: mass.nominal / aluminium.density.nominal, high: mass.high / aluminium.density.low },
    secondUpright: ends(profile.secondUpright), secondSideways: ends(profile.secondSideways), torsion: ends(profile.torsion), massPerLength: ends(mass),
  };
}

/** Of a tube or bar by its sizes; their tolerances are small beside what joints leave open. */
function ofSizes(member: Member): Base | undefined {
  const [width, height, diameter, wall] = ['width', 'height', 'diameter', 'wall'].map((key) => member.number(key)?.nominal);
  if (member.choice('wall') !== undefined && !(wall !== undefined && wall > 0)) return undefined;
  const section = diameter === undefined ? rectangle(width, height ?? width, wall) : round(diameter, wall);
  return section && { area: exactly(section.area), secondUpright: exactly(section.secondUpright), secondSideways: exactly(section.secondSideways), torsion: exactly(section.torsion) };
}

const round = (diameter: number, wall: number | undefined): Section | undefined =>
  diameter > 0 && (wall === undefined || 2 * wall < diameter) ? roundSection(diameter, wall === undefined ? 0 : diameter - 2 * wall) : undefined;

function rectangle(width: number | undefined, height: number | undefined, wall: number | undefined): Section | undefined {
  if (width === undefined || height === undefined || !(width > 0 && height > 0)) return undefined;
  if (wall === undefined) return solidRectangle(width, height);
  const smaller = Math.min(width, height);
  return 2 * wall < smaller ? rectangularTube(width, height, wall, Math.min(2 * wall, smaller / 2)) : undefined;
}
