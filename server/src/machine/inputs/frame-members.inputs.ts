import { frameJoint, FRAME_JOINTS } from '../../catalogue/frame-joints.ts';
import { HELD_WAYS, rowOfBar, rowOfPoint, type FrameBar, type FramePoint } from '../frame-members.ts';
import { materialOf, sectionOf, type FrameUsual } from '../frame-sections.ts';
import { fallbacks, type Fallback, type InputReader, type ListReader, type Member } from '../input.ts';
import type { Origin } from '../origin.ts';
import { between, exactly, isUncertain, type Bounded } from '../values.ts';

const here = (member: Member): { title: string; origin: Origin } => ({ title: member.title, origin: { from: 'here', place: member.place } });

function pointOf(member: Member): FramePoint | undefined {
  const [x, y, z] = member.quantities('at', 'position') ?? [];
  const held = member.choice('held') === undefined ? 'free' : HELD_WAYS.find((way) => way === member.choice('held'));
  const mass = member.choice('mass') === undefined ? exactly(0) : member.number('mass');
  return x && y && z && held && mass ? { at: [x.nominal, y.nominal, z.nominal], held, mass } : undefined;
}

/** From the softest to the stiffest bracket of profiles; welds and pins are not what one has without saying so. */
const ANY_BRACKET = between(500, Math.sqrt(500 * 30_000), 30_000);

/** What screws and plates leave of a member against pull; as of the braces of a box, an order of magnitude. Welds leave all. */
const FASTENED = between(0.1, 0.3, 1);

function barOf(member: Member, names: readonly string[], usual: FrameUsual, frameJointName: string | undefined): FrameBar | undefined {
  const [from, to] = ['from', 'to'].map((key) => names.indexOf(member.choice(key) ?? '')) as [number, number];
  const itsMaterial = materialOf(member, usual);
  const section = itsMaterial && sectionOf(member, usual, itsMaterial);
  const jointName = member.choice('joint') ?? frameJointName;
  const joint = jointName === undefined ? ANY_BRACKET : frameJoint(jointName)?.stiffness;
  const stiffness = member.choice('joint-stiffness') === undefined ? joint : member.number('joint-stiffness');
  const fastening = member.choice('fastening') === undefined ? (jointName === 'welded' ? exactly(1) : FASTENED) : member.number('fastening');
  if (from < 0 || to < 0 || !section || !stiffness || !fastening || !(fastening.low > 0)) return undefined;
  const { youngsModulus, shearModulus } = itsMaterial;
  return { from, to, longerSide: 1 + ['x', 'y', 'z'].indexOf(member.choice('longer-side') ?? ''), youngsModulus, shearModulus, ...section, joint: stiffness, fastening };
}

/** All members; undefined where one cannot be read, since the frame would look softer without it. */
function barsOf(read: InputReader, lists: ListReader): { readonly members: readonly Member[]; readonly bars: readonly FrameBar[] } | undefined {
  const members = lists.entries('frame.members') ?? [];
  const names = (lists.entries('frame.points') ?? []).map(({ title }) => title);
  const usual = { profile: read.choice('frame.profile'), material: read.choice('frame.material'), frameMaterial: read.choice('conditions.frame-material') };
  const bars = members.flatMap((member) => barOf(member, names, usual, read.choice('frame.joint')) ?? []);
  return members.length > 0 && bars.length === members.length ? { members, bars } : undefined;
}

/** Where all members stand between the ends of what is open of them: exact where nothing is open. */
const end = (input: string, title: string, symbol: string, source: string, open: (bar: FrameBar, point: FramePoint | undefined) => readonly Bounded[]): Fallback => ({
  input,
  title,
  symbol,
  quantity: 'share',
  compose: (read, lists) => {
    const found = barsOf(read, lists);
    const points = lists.entries('frame.points') ?? [];
    if (!found) return undefined;
    const known = found.bars.every((bar) => ![...open(bar, undefined), ...points.flatMap((member) => open(bar, pointOf(member)))].some(isUncertain));
    return known ? { value: { type: 'number', ...exactly(0.5) }, origin: { from: 'several', parts: found.members.map(here) } } : undefined;
  },
  handbook: () => ({ value: { type: 'number', ...between(0, 0.5, 1) }, source, weak: true }),
});

export default fallbacks(
  {
    input: 'frame.built',
    title: 'How the frame is described',
    symbol: '',
    compose: (read) => (read.isWritten('frame.members') ? { value: { type: 'choice', text: 'members' }, origin: { from: 'several', parts: [] } } : undefined),
  },
  {
    input: 'frame.point-places',
    title: 'Points: place, foot and mass of each',
    symbol: 'P',
    compose: (_read, lists) => {
      const members = lists.entries('frame.points') ?? [];
      const points = members.flatMap((member) => pointOf(member) ?? []);
      if (members.length === 0 || points.length < members.length) return undefined;
      return { value: { type: 'table', rows: points.map(rowOfPoint), titles: members.map(({ title }) => title) }, origin: { from: 'several', parts: members.map(here) } };
    },
  },
  {
    input: 'frame.member-sections',
    title: 'Members: both points, section and material of each',
    symbol: 'S',
    compose: (read, lists) => {
      const found = barsOf(read, lists);
      return found && { value: { type: 'table', rows: found.bars.map(rowOfBar), titles: found.members.map(({ title }) => title) }, origin: { from: 'several', parts: found.members.map(here) } };
    },
  },
  {
    input: 'frame.mass-of-all',
    title: 'Mass of members and of what the points carry',
    symbol: 'M_F',
    quantity: 'mass',
    compose: (read, lists) => {
      const found = barsOf(read, lists);
      const members = lists.entries('frame.points') ?? [];
      const points = members.flatMap((member) => pointOf(member) ?? []);
      if (!found || points.length < members.length) return undefined;
      const sum = (at: keyof Bounded): number =>
        points.reduce((all, { mass }) => all + mass[at], 0) +
        found.bars.reduce((all, { from, to, massPerLength }) => all + massPerLength[at] * Math.hypot(...[0, 1, 2].map((i) => (points[to]?.at[i] ?? 0) - (points[from]?.at[i] ?? 0))), 0);
      return { value: { type: 'number', low: sum('low'), nominal: sum('nominal'), high: sum('high'), unit: 'kg' }, origin: { from: 'several', parts: [...found.members, ...members].map(here) } };
    },
  },
  end('frame.joint-stiffness-end', 'Where the joints lie between soft and stiff', 'κ_j', `from the soft end, 0 %, to the stiff end, 100 %, of every joint and its screws; ${FRAME_JOINTS[0]?.stiffness.source ?? ''}`, (bar) => [bar.joint, bar.fastening]),
  end('frame.section-end', 'Where the sections lie between weak and strong', 'κ_s', 'from the weak end, 0 %, to the strong end, 100 %, of material and section of every member', (bar) => [bar.youngsModulus, bar.secondUpright, bar.secondSideways, bar.torsion]),
  end('frame.mass-end', 'Where the masses lie between light and heavy', 'κ_m', 'from the light end, 0 %, to the heavy end, 100 %, of every member and every mass at a point', (bar, point) => [bar.massPerLength, ...(point ? [point.mass] : [])]),
);

