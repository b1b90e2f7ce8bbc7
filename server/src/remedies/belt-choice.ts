import { BELT_PROFILES, beltProfile, usualCord, type BeltCord, type BeltProfile } from '../catalogue/belt-profiles.ts';
import type { HandbookRange } from '../catalogue/nut-materials.ts';
import type { Option } from './combinations.ts';
import { changeOf, exactText, scaledText } from './entry-proposals.ts';
import { choice, number, type Change, type Inputs, type RemedyContext } from './remedy.ts';
import { isWritten } from './what-moves.ts';

/** A belt as it is chosen: everything else of it follows, or is measured. */
export interface BeltChoice {
  readonly profile: BeltProfile;
  readonly width: number;
  readonly cord: BeltCord;
}

const CORDS: readonly BeltCord[] = ['glass', 'steel', 'reinforced-steel', 'aramid'];

/** The belt of the drive; undefined where it has none, or one that is not described enough to be exchanged. */
export function presentBelt({ before }: RemedyContext): BeltChoice | undefined {
  const profile = beltProfile(before.choice('belt.profile') ?? '');
  const width = before.bounds('belt.width')?.nominal;
  const cord = CORDS.find((one) => one === before.choice('belt.cord'));
  return profile && width !== undefined && width > 0 && cord ? { profile, width, cord } : undefined;
}

/** Data of a belt that grow with its width. */
const BY_WIDTH = ['belt.specific-stiffness', 'belt.breaking-force', 'belt.tension-limit', 'belt.mass-per-length'] as const;

const ranged = ({ low, nominal, high }: HandbookRange, width: number): Inputs[string] => ({ type: 'number', low: low * width, nominal: nominal * width, high: high * width });

/**
 * Exchanges the belt for another one. What was measured of the old belt is carried over by the width where only that changes, and left out
 * where profile or cord change: the handbook's range stands in until the new belt is measured.
 */
export function beltOption(context: RemedyContext, to: BeltChoice, what: string, cost: number, teeth?: number): Option | undefined {
  const from = presentBelt(context);
  if (!from) return undefined;
  const sameKind = to.profile === from.profile && to.cord === from.cord;
  const written = BY_WIDTH.filter((input) => isWritten(context, input));
  const width = exactText(context, 'belt.width', to.width);
  const pulley = to.width > from.width ? widerPulley(context, from.width, to.width) : [];
  const changes = [
    ...(to.profile === from.profile ? [] : [changeOf(context, 'belt.profile', to.profile.profile), ...removed(context, ['belt.pitch', 'belt.backlash'])]),
    ...(to.width === from.width ? [] : [width === undefined ? undefined : changeOf(context, 'belt.width', width), ...pulley]),
    ...(to.cord === from.cord ? [] : [changeOf(context, 'belt.cord', to.cord)]),
    ...(teeth === undefined ? [] : [changeOf(context, 'pulley.teeth', String(teeth)), ...idlerTeeth(context, from.profile, to.profile)]),
    ...(sameKind ? written.map((input) => changeOf(context, input, scaledText(context, input, to.width / from.width))) : removed(context, written)),
  ];
  const known = changes.filter((change) => change !== undefined);
  if (known.length < changes.length) return undefined;
  return { inputs: inputsOf(context, from, to, teeth, written), changes: known, what, cost, ...(sameKind && written.length > 0 ? { price: 'data estimated' } : {}) };
}

function inputsOf(context: RemedyContext, from: BeltChoice, to: BeltChoice, teeth: number | undefined, written: readonly string[]): Inputs {
  const sameKind = to.profile === from.profile && to.cord === from.cord;
  const nominal = (input: string): number => context.before.bounds(input)?.nominal ?? 0;
  const handbook: Readonly<Record<string, HandbookRange | undefined>> = {
    'belt.specific-stiffness': to.profile.specificStiffness(to.cord), 'belt.breaking-force': to.profile.breakingForce(to.cord), 'belt.mass-per-length': to.profile.mass,
  };
  const data = written.flatMap((input) => {
    if (sameKind) return [[input, number((nominal(input) * to.width) / from.width)] as const];
    const range = handbook[input];
    return range ? [[input, ranged(range, to.width)] as const] : [];
  });
  return {
    'belt.width': number(to.width),
    ...(to.profile === from.profile ? {} : { 'belt.profile': choice(to.profile.profile) }),
    ...(to.cord === from.cord ? {} : { 'belt.cord': choice(to.cord) }),
    ...(teeth === undefined ? {} : { 'pulley.teeth': number(teeth) }),
    ...Object.fromEntries(data),
  };
}

/** Takes entries away that are written and would speak of the old belt. */
const removed = (context: RemedyContext, inputs: readonly string[]): readonly Change[] =>
  inputs.flatMap((input) => {
    const found = context.before.input(input);
    return found.state === 'known' && (found.origin.from === 'here' || found.origin.from === 'part') ? [{ place: found.origin.place, value: null }] : [];
  });

/** A pulley whose width is written grows with the belt. */
function widerPulley(context: RemedyContext, from: number, to: number): readonly (Change | undefined)[] {
  if (!isWritten(context, 'pulley.width')) return [];
  const text = exactText(context, 'pulley.width', (context.before.bounds('pulley.width')?.nominal ?? from) + to - from);
  return [text === undefined ? undefined : changeOf(context, 'pulley.width', text)];
}

/** Toothed idlers of a belt of another pitch: as large as before, and no smaller than is advised. */
function idlerTeeth(context: RemedyContext, from: BeltProfile, to: BeltProfile): readonly (Change | undefined)[] {
  const present = context.before.bounds('idlers.teeth')?.nominal;
  return present === undefined || !isWritten(context, 'idlers.teeth') ? [] : [changeOf(context, 'idlers.teeth', String(teethOn(present * from.pitch, to)))];
}

/** Teeth that make a pulley of about the same circumference. */
const teethOn = (circumference: number, profile: BeltProfile): number => Math.max(profile.teeth.recommended, Math.ceil(circumference / profile.pitch - 1e-6));

/** Widths of this profile beyond the present one, the nearest first, up to four times as wide. */
export function widerBelts(context: RemedyContext): readonly Option[] {
  const from = presentBelt(context);
  if (!from) return [];
  return from.profile.widths.values.filter((width) => width > from.width * 1.001 && width <= 4 * from.width).flatMap((width) => {
    const text = exactText(context, 'belt.width', width);
    return text === undefined ? [] : (beltOption(context, { ...from, width }, `Take a wider belt of ${text}`, 2.5 + Math.log2(width / from.width) / 2) ?? []);
  });
}

/** What a cord is called in an order. */
const CORD_WORDS: Readonly<Record<BeltCord, string>> = { glass: 'glass', steel: 'steel', 'reinforced-steel': 'reinforced steel', aramid: 'aramid' };

/** The other cords in which this profile is made. */
export function otherCords(context: RemedyContext): readonly Option[] {
  const from = presentBelt(context);
  if (!from) return [];
  return from.profile.cords.filter((cord) => cord !== from.cord).flatMap((cord) => beltOption(context, { ...from, cord }, `Take a belt with cords of ${CORD_WORDS[cord]}`, 2.75) ?? []);
}

/** Profiles with a coarser or a fuller tooth, the nearest first: of the same family, and the modified one in place of the trapezoidal. */
function largerProfiles(profile: BeltProfile): readonly BeltProfile[] {
  return BELT_PROFILES.filter(({ family, pitch }) => (family === profile.family && pitch > profile.pitch * 1.001) || (profile.family === 'trapezoidal' && family === 'modified-trapezoidal' && pitch >= profile.pitch * 0.999))
    .sort((a, b) => a.pitch - b.pitch);
}

/** Belts with larger teeth, on pulleys of about the same size. */
export function coarserBelts(context: RemedyContext): readonly Option[] {
  const from = presentBelt(context);
  const teeth = context.before.bounds('pulley.teeth')?.nominal;
  if (!from || teeth === undefined) return [];
  const body = context.before.choice('belt.body') === 'polyurethane' ? 'polyurethane' : 'rubber';
  return largerProfiles(from.profile).slice(0, 3).flatMap((profile) => {
    const width = profile.widths.values.find((candidate) => candidate >= from.width * 0.999) ?? profile.widths.values.at(-1);
    const text = width === undefined ? undefined : exactText(context, 'belt.width', width);
    if (width === undefined || text === undefined) return [];
    const cord = profile.cords.includes(from.cord) ? from.cord : usualCord(profile, body);
    const count = teethOn(teeth * from.profile.pitch, profile);
    return beltOption(context, { profile, width, cord }, `Take a belt ${profile.profile}, ${text} wide, on ${count} teeth`, 3.5 + Math.log2(profile.pitch / from.profile.pitch) / 2, count) ?? [];
  });
}

/** Narrower belts of this profile, the widest first. */
export function narrowerBelts(context: RemedyContext): readonly Option[] {
  const from = presentBelt(context);
  if (!from) return [];
  return from.profile.widths.values.filter((width) => width < from.width * 0.999).reverse().flatMap((width) => {
    const text = exactText(context, 'belt.width', width);
    return text === undefined ? [] : (beltOption(context, { ...from, width }, `Take a narrower belt of ${text}`, 3) ?? []);
  });
}
