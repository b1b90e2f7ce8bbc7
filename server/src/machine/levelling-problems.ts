import { nearestNames } from '../language/nearest-names.ts';
import { childOf, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Machine } from './machine.ts';
import type { PlacedProblem } from './name-problems.ts';

/** Lifts that no support is called, that are named twice, or that hold no height; heights that do not fit the lifts; one motor for lifts that should move one by one. */
export function levellingProblems(machine: Machine): readonly PlacedProblem[] {
  const axes = nodeAt(machine.main.root, ['axes']);
  if (axes?.type !== 'map') return [];
  return axes.entries.flatMap(({ key, value }) => {
    const levelling = childOf(value, 'levelling');
    if (levelling?.type !== 'map') return [];
    const path = ['axes', key.text, 'levelling'];
    return [...liftProblems(machine, value, levelling, path), ...sharedMotor(machine, value, levelling, path)];
  });
}

const textsOf = (node: SyntaxNode | null | undefined): readonly (readonly [string, number])[] =>
  node?.type === 'list' ? node.items.flatMap((item, index) => (item?.type === 'scalar' && item.text !== '' ? [[item.text, index] as const] : [])) : [];

function liftProblems(machine: Machine, axis: SyntaxNode | null, levelling: SyntaxNode, path: EntryPath): readonly PlacedProblem[] {
  const { uri } = machine.main;
  const supports = childOf(axis, 'supports');
  const entries = supports?.type === 'map' ? supports.entries : [];
  const names = entries.map(({ key }) => key.text);
  const written = textsOf(childOf(levelling, 'lifts'));
  const problems = written.flatMap(([name, index], i): readonly PlacedProblem[] => {
    const place = { uri, path: [...path, 'lifts', String(index)] };
    if (!names.includes(name)) return [noSuchSupport(name, names, place)];
    const first = written.findIndex(([other]) => other === name);
    if (first === i) return isUprightGuide(entries.find(({ key }) => key.text === name)?.value ?? null, axis) ? [liftsNothing(name, place)] : [];
    return [{
      code: 'lift-named-twice', severity: 'error', place, message: `The lift "${name}" is named twice. Name each lift once.`,
      related: [{ message: 'it is named here first', place: { uri, path: [...path, 'lifts', String(written[first]?.[1] ?? 0)] } }],
    }];
  });
  const heights = childOf(levelling, 'heights');
  const lifts = written.length > 0 ? written.length : entries.filter(({ value }) => isDrive(value)).length;
  if (problems.length > 0 || heights?.type !== 'list' || heights.items.length === lifts || lifts === 0) return problems;
  return [{
    code: 'heights-miscounted', severity: 'error', place: { uri, path: [...path, 'heights'] }, onKey: true,
    message: `There are ${lifts} lifts and ${heights.items.length} measured heights, so it is not clear which belongs to which. Write one height for each lift.`,
  }];
}

/** Joints that run along a rail or shaft and hold nothing that way. */
const RUNNING = new Set(['rail-carriage', 'carriage-on-ball', 'wheel-carriage', 'vee-wheel', 'flat-wheel', 'one-bushing', 'two-bushings', 'self-aligning-bushing', 'fork']);

/** Whether a support runs up and down. One that lies level may well carry; where nothing is written it follows the axis. */
function isUprightGuide(support: SyntaxNode | null, axis: SyntaxNode | null): boolean {
  const [joint, along, direction] = [childOf(support, 'joint'), childOf(support, 'along'), childOf(axis, 'direction')];
  if (joint?.type !== 'scalar' || !RUNNING.has(joint.text)) return false;
  return along?.type === 'scalar' ? along.text === 'z' : direction?.type === 'scalar' && direction.text === 'vertical';
}

const liftsNothing = (name: string, place: PlacedProblem['place']): PlacedProblem => ({
  code: 'lift-holds-no-height', severity: 'warning', place, message: `"${name}" is a guide: it lets the part run up and down, so it cannot lift there. Name the nuts or other supports that hold the height.`,
});

/** Whether a support is a nut or a belt, which levels where no lift is named. */
export const isDrive = (support: SyntaxNode | null): boolean => {
  const joint = childOf(support, 'joint');
  return joint?.type === 'scalar' && isDriveJoint(joint.text);
};

/** The same of the word for the joint. */
export const isDriveJoint = (joint: string | undefined): boolean => joint === 'belt' || joint?.startsWith('nut-') === true;

function noSuchSupport(name: string, names: readonly string[], place: PlacedProblem['place']): PlacedProblem {
  const near = nearestNames(name, names);
  const known = names.length === 0 ? 'Describe it under "supports"' : near.length > 0 ? `Did you mean ${near.map((one) => `"${one}"`).join(' or ')}` : `Known are ${names.slice(0, 5).join(', ')}; or describe it under "supports"`;
  return { code: 'unknown-name', severity: 'error', message: `No support of this axis is called "${name}". ${known}${near.length > 0 ? '?' : '.'}`, place, replacements: near };
}

function sharedMotor(machine: Machine, axis: SyntaxNode | null, levelling: SyntaxNode, path: EntryPath): readonly PlacedProblem[] {
  const { uri } = machine.main;
  const movedBy = childOf(levelling, 'moved-by');
  const motors = childOf(childOf(axis, 'drive'), 'motors');
  if (movedBy?.type !== 'scalar' || movedBy.text !== 'own-motors' || motors?.type !== 'scalar' || motors.text !== 'shared') return [];
  // Lifts beside the drive may have motors of their own.
  const lifts = textsOf(childOf(levelling, 'lifts'));
  if (lifts.length > 0 && !lifts.some(([name]) => isDrive(nodeAt(machine.main.root, [...path.slice(0, -1), 'supports', name]) ?? null))) return [];
  return [{
    code: 'one-motor-for-all-lifts', severity: 'error', place: { uri, path: [...path, 'moved-by'] },
    message: 'The lifts are moved by their own motors, but the drive has one motor for all its units, so that none moves alone. Give each a motor, or write "hand".',
    related: [{ message: 'one motor for all is written here', place: { uri, path: [...path.slice(0, -1), 'drive', 'motors'] } }],
    replacements: ['hand'],
  }];
}
