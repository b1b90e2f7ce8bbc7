import { beltProfile, usualCord, type BeltProfile } from '../../catalogue/belt-profiles.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import type { QuantityKind } from '../../language/quantity-kinds.ts';
import { beltPath } from '../belt-path.ts';
import { fallbacks, type Fallback, type InputReader } from '../input.ts';
import { between, exactly, type InputValue } from '../values.ts';

const profileOf = (read: InputReader): BeltProfile | undefined => beltProfile(read.choice('belt.profile') ?? '');

const cordOf = (read: InputReader) => {
  const cord = read.choice('belt.cord');
  return (['glass', 'steel', 'reinforced-steel', 'aramid'] as const).find((candidate) => candidate === cord);
};

const number = (range: { readonly low: number; readonly nominal: number; readonly high: number }, unit?: string): InputValue => ({
  type: 'number', ...between(range.low, range.nominal, range.high), ...(unit === undefined ? {} : { unit }),
});

/** A range of the profile for a metre of width, times the width of this belt. */
const byWidth = (of: (profile: BeltProfile, read: InputReader) => HandbookRange | undefined, unit: string): NonNullable<Fallback['handbook']> => (read) => {
  const profile = profileOf(read);
  const range = profile && of(profile, read);
  const width = read.number('belt.width');
  if (!profile || !range || !width) return undefined;
  const value = number({ low: range.low * width.low, nominal: range.nominal * width.nominal, high: range.high * width.high }, unit);
  return { value, source: `${profile.profile}, by width: ${range.source}`, weak: range.weak };
};

/** A value of the profile, whatever the width. */
const ofProfile = (of: (profile: BeltProfile) => HandbookRange, unit?: string): NonNullable<Fallback['handbook']> => (read) => {
  const profile = profileOf(read);
  if (!profile) return undefined;
  const range = of(profile);
  return { value: number(range, unit), source: `${profile.profile}: ${range.source}`, weak: range.weak };
};

/** A quantity that is written for each of two crossed belts, as one range. */
function bothBelts(read: InputReader, first: string, second: string, unit: string): ReturnType<NonNullable<Fallback['compose']>> {
  const [one, other, ofOne, ofOther] = [read.number(first), read.number(second), read.origin(first), read.origin(second)];
  if (!one || !other || !ofOne || !ofOther) return undefined;
  const value: InputValue = { type: 'number', ...between(Math.min(one.low, other.low), (one.nominal + other.nominal) / 2, Math.max(one.high, other.high)), unit };
  return { value, origin: { from: 'several', parts: [{ title: 'First belt', origin: ofOne }, { title: 'Second belt', origin: ofOther }] } };
}

/** A count of the pulley that the profile recommends. */
function teethOf(input: string, title: string, symbol: string, which: 'least' | 'recommended'): Fallback {
  return {
    input, title, symbol, quantity: 'count' satisfies QuantityKind,
    handbook: (read) => {
      const profile = profileOf(read);
      return profile && { value: { type: 'number', ...exactly(profile.teeth[which]) }, source: `${profile.profile}: ${profile.teeth.source}`, weak: profile.teeth.weak };
    },
  };
}

export default fallbacks(
  {
    input: 'belt.run',
    title: 'How the belt runs',
    symbol: '',
    // Crossed belts have more stretches than are described.
    compose: (read) => ({
      value: { type: 'choice', text: read.choice('layout.role') === undefined ? 'open' : 'crossed' },
      origin: { from: 'handbook', source: 'crossed in a layout of crossed belts, else open', weak: false, place: undefined },
    }),
  },
  {
    input: 'belt.pitch',
    symbol: 'p_b',
    standard: (read) => {
      const profile = profileOf(read);
      return profile && { value: { type: 'number', ...exactly(profile.pitch), unit: 'mm' }, size: profile.profile, sizeInput: 'belt.profile', source: profile.standard };
    },
  },
  { input: 'belt.width', symbol: 'b' },
  {
    input: 'belt.arrangement',
    handbook: () => ({ value: { type: 'choice', text: 'loop' }, source: 'a loop round driving pulley and far idler, since nothing else is said' }),
  },
  {
    input: 'belt.body',
    handbook: (read) => {
      const profile = profileOf(read);
      return profile && { value: { type: 'choice', text: profile.usualBody }, source: `usual for ${profile.profile}, from memory`, weak: true };
    },
  },
  {
    input: 'belt.cord',
    handbook: (read) => {
      const profile = profileOf(read);
      if (!profile) return undefined;
      const body = read.choice('belt.body') === 'polyurethane' ? 'polyurethane' : 'rubber';
      return { value: { type: 'choice', text: usualCord(profile, body) }, source: `usual for ${profile.profile} in ${body}, from memory`, weak: true };
    },
  },
  {
    input: 'belt.specific-stiffness',
    symbol: 'c_b',
    handbook: byWidth((profile, read) => {
      const cord = cordOf(read);
      return cord && profile.specificStiffness(cord);
    }, 'kN'),
  },
  {
    input: 'belt.breaking-force',
    symbol: 'F_B',
    handbook: byWidth((profile, read) => {
      const cord = cordOf(read);
      return cord && profile.breakingForce(cord);
    }, 'N'),
  },
  { input: 'belt.mass-per-length', symbol: "m'", handbook: byWidth((profile) => profile.mass, 'g/m') },
  {
    input: 'belt.tooth-capacity',
    title: 'Load that one tooth bears',
    symbol: 'f_z',
    quantity: 'force',
    handbook: byWidth((profile) => profile.toothLoad, 'N'),
  },
  {
    input: 'belt.mesh-limit',
    title: 'Teeth that can share the load',
    symbol: 'z_max',
    quantity: 'count',
    handbook: (read) => {
      const polyurethane = read.choice('belt.body') === 'polyurethane';
      return polyurethane
        ? { value: { type: 'number', ...exactly(12) }, source: 'polyurethane by the metre: data pages, read' }
        : { value: { type: 'number', ...exactly(6) }, source: 'as for a joined belt; data pages of polyurethane belts, read', weak: true };
    },
  },
  { input: 'belt.backlash', symbol: 'Δ_b', handbook: ofProfile((profile) => profile.backlash, 'mm') },
  {
    input: 'belt.pitch-line-differential',
    title: 'Cord above the tips of the pulley',
    symbol: 'u',
    quantity: 'length',
    handbook: (read) => {
      const profile = profileOf(read);
      if (!profile) return undefined;
      const { value, source, weak } = profile.pitchLineDifferential;
      return { value: { type: 'number', ...exactly(value), unit: 'mm' }, source: `${profile.profile}: ${source}`, weak };
    },
  },
  {
    input: 'belt.tooth-error',
    title: 'Error from tooth to tooth',
    symbol: 'e_z',
    quantity: 'length',
    handbook: () => ({ value: number({ low: 5e-6, nominal: 10e-6, high: 30e-6 }, 'mm'), source: 'usual error of the pitch of pulley and belt, from memory; no published source', weak: true }),
  },
  {
    input: 'belt.length-tolerance',
    symbol: 'τ_b',
    handbook: () => ({ value: number({ low: 0.0001, nominal: 0.0005, high: 0.001 }, '%'), source: 'one maker gives ±0.5 mm/m, another 0.1 mm/m; the high end is ours' }),
  },
  {
    input: 'belt.efficiency',
    symbol: 'η_b',
    handbook: () => ({ value: number({ low: 0.95, nominal: 0.97, high: 0.99 }, '%'), source: 'toothed belts, from memory; 0.95 to 0.98 or 0.97 to 0.99 in different handbooks', weak: true }),
  },
  {
    input: 'belt.tension',
    symbol: 'T_0',
    // Of two crossed belts whose tensions are given one by one: what both have between them.
    compose: (read) => bothBelts(read, 'layout.first-path-tension', 'layout.second-path-tension', 'N'),
  },
  { input: 'belt.tension-limit', symbol: 'T_lim' },
  {
    input: 'belt.center-distance',
    symbol: 'C',
    compose: (read) => beltPath(read).centerDistance,
  },
  { input: 'belt.nearest-distance', symbol: 'x_0' },
  { input: 'belt.path-length', symbol: 'L_b', compose: (read) => bothBelts(read, 'layout.first-path-length', 'layout.second-path-length', 'm') ?? beltPath(read).pathLength },
  teethOf('pulley.least-teeth', 'Least teeth for this profile', 'z_min', 'least'),
  teethOf('pulley.recommended-teeth', 'Teeth recommended for this profile', 'z_rec', 'recommended'),
);
