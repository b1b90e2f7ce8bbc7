import type { Vector3 } from '../../mechanics/vector3.ts';
import { figure, unable, type Computed } from '../figure.ts';
import { MEMBER_ON_ITSELF, solvedFrame, type FrameEnds, type SolvedFrame } from './members.ts';
import { worseOf } from './worse.ts';
import { levelDirectionInWords, loosenessInWords, modeInWords } from './members-words.ts';

const onlyWhere = { 'frame.built': ['members'] } as const;
const stiff = { joint: 'frame.joint-stiffness-end', section: 'frame.section-end' } as const;
const needs = { ...stiff, mass: 'frame.mass-end' } as const;
const tables = { points: 'frame.point-places', members: 'frame.member-sections' } as const;
const names = { pointNames: 'frame.point-places' } as const;
const between = { choices: { tool: 'frame.tool' }, optionalChoices: { work: 'frame.work' } } as const;
const sources = [
  { title: 'Przemieniecki, Theory of Matrix Structural Analysis', where: 'direct stiffness method, from memory' },
  { title: 'joints and fasteners: orders of magnitude, no published source', weak: true },
] as const;
const LOOSE = 'the members leave the frame loose';

interface Asked extends Omit<FrameEnds, 'mass'> {
  /** Left out by figures that masses do not change. */
  readonly mass?: number;
  readonly points: readonly (readonly number[])[] | undefined;
  readonly members: readonly (readonly number[])[] | undefined;
  readonly pointNames: readonly string[] | undefined;
}

const solvedOf = ({ points, members, pointNames, joint, section, mass = 0.5 }: Asked): SolvedFrame | string => solvedFrame(points, members, pointNames, { joint, section, mass });

/** From the solved frame; the reason where there is none. */
function of(asked: Asked, compute: (frame: SolvedFrame) => Computed): Computed {
  const frame = solvedOf(asked);
  return typeof frame === 'string' ? unable(frame) : compute(frame);
}

interface Between {
  readonly tool: string;
  readonly work: string | undefined;
}

/** From the solved frame where members meet both tool and work. */
const ofBoth = (asked: Asked & Between, compute: (frame: SolvedFrame) => Computed): Computed =>
  of(asked, (frame) => {
    const met = frame.frame.members.flatMap(({ from, to }) => [from, to]);
    const lost = [asked.tool, asked.work].find((name) => name !== undefined && !met.includes(name));
    return lost === undefined ? compute(frame) : unable(`no member meets the point "${lost}"`);
  });

/** How far the tool moves against the work along an axis; the work at rest where no point carries it. */
function apart({ tool, work }: Between, axis: number, shifts: ReadonlyMap<string, Vector3> | undefined): number | undefined {
  return shifts && (shifts.get(tool)?.[axis] ?? 0) - (work === undefined ? 0 : (shifts.get(work)?.[axis] ?? 0));
}

const unit = (axis: number, size: number): Vector3 => [axis === 0 ? size : 0, axis === 1 ? size : 0, axis === 2 ? size : 0];

const frequency = (which: 0 | 1) =>
  figure({
    id: which === 0 ? 'frame.first-frequency' : 'frame.second-frequency',
    title: which === 0 ? 'First frequency of the frame' : 'Second frequency of the frame',
    symbol: which === 0 ? 'f_F1' : 'f_F2',
    quantity: 'frequency',
    unit: 'Hz',
    meaning: `${which === 0 ? 'Lowest' : 'Second lowest'} frequency at which the frame swings, with its members’ mass at their ends. A member that swings by itself is not followed; a point in its middle lets it.`,
    onlyWhere, needs, tables, names,
    compute: (asked) =>
      of(asked, (frame) => {
        const found = frame.modes();
        if (found.kind === 'mechanism') return unable(LOOSE);
        const mode = found.kind === 'modes' ? found.modes[which] : undefined;
        return mode ? { value: mode.angularFrequency / (2 * Math.PI), note: modeInWords(mode, frame) } : unable('nothing that could swing has mass');
      }),
    formula: '(K − ω² M) φ = 0, f = ω/(2π)',
    sources,
    rank: which === 0 ? 1 : 3,
    ...(which === 0 ? { hint: ({ low, high }: { readonly low: number; readonly high: number }) => `sways ${Number(low.toPrecision(2))}–${Number(high.toPrecision(2))} Hz` } : {}),
  });

const GIVE = 100;

const give = (axis: 0 | 1 | 2) =>
  figure({
    id: `frame.give-${'xyz'.charAt(axis)}`,
    title: `Give along ${'xyz'.charAt(axis)} for 100 N`,
    symbol: `g_${'xyz'.charAt(axis)}`,
    quantity: 'length',
    meaning: `How far tool and work part along ${'xyz'.charAt(axis)} when 100 N press them apart.`,
    onlyWhere, needs: stiff, tables, names,
    ...between,
    compute: (asked) =>
      ofBoth(asked, (frame) => {
        const loads = { [asked.tool]: { force: unit(axis, GIVE) }, ...(asked.work === undefined || asked.work === asked.tool ? {} : { [asked.work]: { force: unit(axis, -GIVE) } }) };
        return apart(asked, axis, frame.shifts(loads)) ?? unable(LOOSE);
      }),
    formula: 'K u = f, f = 100 N at the tool and against it at the work; g = u_tool − u_work',
    sources,
    rank: 2,
  });

const swing = (axis: 0 | 1) =>
  figure({
    id: `frame.swing-${'xyz'.charAt(axis)}`,
    title: `Swing along ${'xyz'.charAt(axis)}`,
    symbol: `x_${'xyz'.charAt(axis)}`,
    quantity: 'length',
    meaning: `How far the tool leans against the work along ${'xyz'.charAt(axis)} while what moves at the tool is accelerated that way.`,
    onlyWhere,
    needs: { ...stiff, acceleration: 'frame.acceleration', moving: 'frame.moving-mass' },
    tables, names,
    ...between,
    compute: (asked) =>
      ofBoth(asked, (frame) => {
        const found = apart(asked, axis, frame.shifts({ [asked.tool]: { force: unit(axis, asked.moving * asked.acceleration) } }));
        return found === undefined ? unable(LOOSE) : Math.abs(found);
      }),
    formula: 'K u = f, f = m_f a_f at the tool; x = |u_tool − u_work|',
    sources,
    rank: 2,
  });

export default [
  frequency(0),
  frequency(1),
  give(0),
  give(1),
  give(2),
  swing(0),
  swing(1),
  figure({
    id: 'frame.ringing',
    title: 'Ringing after a jerk',
    symbol: 'x_r',
    quantity: 'length',
    meaning: 'How far the tool may swing to either side right after the acceleration begins or ends at once: up to twice its steady lean, in the softer of the directions in which level axes push.',
    onlyWhere,
    needs: { x: 'frame.swing-x', y: 'frame.swing-y' },
    choices: { along: 'frame.pushed-along' },
    compute: ({ x, y, along }) => worseOf(2 * x, 2 * y, along),
    formula: 'x_r = 2 max(x_x, x_y), of the directions in which axes push',
    sources: [{ title: 'undamped answer to a step', where: 'Rao, Mechanical Vibrations, chapter 4, from memory' }],
    rank: 1,
  }),
  figure({
    id: 'frame.ringing-use',
    title: 'Share of the tolerance that ringing takes',
    symbol: 'u_r',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Ringing after a jerk over how far the tool may swing.',
    onlyWhere,
    needs: { ringing: 'frame.ringing', tolerance: 'frame.tolerance' },
    compute: ({ ringing, tolerance }) => (tolerance > 0 ? ringing / tolerance : unable('the tolerance must be above zero')),
    formula: 'u_r = x_r/x_tol',
    sources: [{ title: 'follows from both' }],
    rank: 2,
  }),
  figure({
    id: 'frame.sag',
    title: 'Sag at the tool',
    symbol: 'z_s',
    quantity: 'length',
    meaning: 'How far the tool sinks against the work under the weight of members and masses. It stays as it is and can be adjusted away, unless masses travel.',
    onlyWhere,
    needs: { ...needs, gravity: 'conditions.gravity' },
    tables, names,
    ...between,
    compute: (asked) =>
      ofBoth(asked, (frame) => {
        const found = apart(asked, 2, frame.shifts({}, [0, 0, -asked.gravity]));
        return found === undefined ? unable(LOOSE) : 0 - found;
      }),
    formula: 'K u = f, f the weight of members and masses; z_s = u_work − u_tool',
    sources,
    rank: 3,
  }),
  figure({
    id: 'frame.racking-stiffness',
    title: 'Stiffness where it is softest in level direction',
    symbol: 'k_r',
    quantity: 'stiffness',
    unit: 'N/mm',
    meaning: 'Level force for each millimetre at the point and in the direction that give most.',
    onlyWhere, needs: stiff, tables, names,
    compute: (asked) =>
      of(asked, (frame) => {
        const softest = softestLevel(frame);
        return softest === 'loose' ? unable(LOOSE) : softest === undefined ? unable('every point is held') : { value: 1 / softest.compliance, note: `${levelDirectionInWords(softest.direction)}, at "${softest.name}"` };
      }),
    formula: '1/k_r is the largest eigenvalue of the level flexibilities of all points',
    sources,
    rank: 2,
  }),
  figure({
    id: 'frame.mass',
    title: 'Mass of the frame',
    symbol: 'M',
    quantity: 'mass',
    unit: 'kg',
    meaning: 'Mass of all members and of what the points carry.',
    onlyWhere,
    needs: { mass: 'frame.mass-of-all' },
    compute: ({ mass }) => mass,
    formula: 'M = Σ m_l L + Σ m',
    sources: [{ title: 'sum' }],
    rank: 3,
  }),
  figure({
    id: 'frame.looseness',
    title: 'Whether it holds',
    symbol: 'l',
    quantity: 'count',
    meaning: 'Whether members, joints and feet hold the frame at all: 0 when they do, 1 when something can move without resistance.',
    onlyWhere, needs: stiff, tables, names,
    compute: (asked) => {
      const frame = solvedOf(asked);
      // What cannot be read has findings of its own, and so has a member whose both ends name one point.
      if (typeof frame === 'string') return asked.points && asked.members && frame !== MEMBER_ON_ITSELF ? { value: 1, note: frame } : unable(frame);
      if (frame.shifts({})) return 0;
      return { value: 1, note: loosenessInWords(frame) ?? 'something in it turns freely' };
    },
    formula: 'K has a zero eigenvalue',
    sources,
    rank: 3,
    inWords: ({ nominal }) => (nominal > 0 ? 'loose' : 'held'),
  }),
];

interface Softest {
  readonly name: string;
  /** m/N. */
  readonly compliance: number;
  readonly direction: readonly [number, number];
}

function softestLevel(frame: SolvedFrame): Softest | 'loose' | undefined {
  const found = frame.flexibilities();
  if (found === 'mechanism') return 'loose';
  let softest: Softest | undefined;
  for (const [name, [[a, b], [, c]]] of found) {
    const compliance = (a + c) / 2 + Math.hypot((a - c) / 2, b);
    const angle = Math.atan2(2 * b, a - c) / 2;
    if (softest === undefined || compliance > softest.compliance) softest = { name, compliance, direction: [Math.cos(angle), Math.sin(angle)] };
  }
  return softest !== undefined && softest.compliance > 0 ? softest : undefined;
}
