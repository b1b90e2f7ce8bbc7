import { childOf, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Machine } from './machine.ts';
import type { PlacedProblem } from './name-problems.ts';

/** Areas about a place that is not written; and more or fewer nuts among the supports than the drive has. */
export function supportProblems(machine: Machine): readonly PlacedProblem[] {
  return [
    ...entriesOf(nodeAt(machine.main.root, ['masses'])).flatMap(([name, mass]) => areaProblems(machine, name, mass)),
    ...entriesOf(nodeAt(machine.main.root, ['axes'])).flatMap(([name, axis]) => nutProblems(machine, ['axes', name], axis)),
  ];
}

const entriesOf = (node: SyntaxNode | null | undefined): readonly (readonly [string, SyntaxNode | null])[] => (node?.type === 'map' ? node.entries.map(({ key, value }) => [key.text, value] as const) : []);

function areaProblems(machine: Machine, name: string, mass: SyntaxNode | null): readonly PlacedProblem[] {
  // An empty "at" is being typed, and is reported as such.
  if (mass?.type !== 'map' || !childOf(mass, 'area') || mass.entries.some(({ key }) => key.text === 'at')) return [];
  return [{
    code: 'area-without-place', severity: 'warning', place: { uri: machine.main.uri, path: ['masses', name, 'area'] }, onKey: true,
    message: `"${name}" may lie anywhere in an area, but it is not written where that is. Write "at": the middle of the area.`,
  }];
}

function nutProblems(machine: Machine, axisPath: EntryPath, axis: SyntaxNode | null): readonly PlacedProblem[] {
  const { uri } = machine.main;
  const supports = entriesOf(childOf(axis, 'supports'));
  const joints = supports.map(([, support]) => childOf(support, 'joint'));
  // While one is half written nobody knows whether it becomes a nut.
  if (joints.some((joint) => joint?.type !== 'scalar' || joint.text === '')) return [];
  const nuts = joints.filter((joint) => joint?.type === 'scalar' && joint.text.startsWith('nut-')).length;
  if (nuts === 0) return [];
  const drives: readonly (readonly [EntryPath, SyntaxNode | null | undefined])[] = [
    [[...axisPath, 'drive'], childOf(axis, 'drive')],
    ...entriesOf(childOf(axis, 'drive-options')).map(([option, drive]) => [[...axisPath, 'drive-options', option], drive] as const),
  ];
  return drives.flatMap(([path, drive]): readonly PlacedProblem[] => {
    // Nuts belong to screws; another option may do without.
    if (drive?.type !== 'map' || !childOf(drive, 'screw')) return [];
    const units = childOf(drive, 'units');
    const written = units?.type === 'scalar' && /^\d+$/.test(units.text) ? Number(units.text) : units ? undefined : 1;
    if (written === undefined || written === nuts) return [];
    const counted = `${nuts} ${nuts === 1 ? 'support is a nut' : 'supports are nuts'}`;
    return [{
      code: 'nuts-miscounted', severity: 'warning',
      place: { uri, path: units ? [...path, 'units'] : [...path, 'screw'] }, onKey: true,
      message: `${counted}, but the drive has ${written} ${written === 1 ? 'unit' : 'units'}, so that the load is not shared by position. Write as many units as nuts.`,
      related: [{ message: 'the nuts are among these', place: { uri, path: [...axisPath, 'supports'] } }],
    }];
  });
}
