import { nearestNames } from '../language/nearest-names.ts';
import { childOf, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Machine } from './machine.ts';
import type { PlacedProblem } from './name-problems.ts';

/** Members, tool and work that name points which there are not, and members that begin and end at one point. */
export function frameProblems(machine: Machine): readonly PlacedProblem[] {
  const frame = nodeAt(machine.main.root, ['frame']);
  if (frame?.type !== 'map') return [];
  const points = childOf(frame, 'points');
  const names = points?.type === 'map' ? points.entries.map(({ key }) => key.text) : [];
  const members = childOf(frame, 'members');
  const problem = (node: SyntaxNode | null | undefined, path: EntryPath): readonly PlacedProblem[] =>
    node?.type !== 'scalar' || node.text === '' || names.includes(node.text) ? [] : [noSuchPoint(node.text, names, { uri: machine.main.uri, path })];
  return [
    ...['tool', 'work'].flatMap((key) => problem(childOf(frame, key), ['frame', key])),
    ...(members?.type === 'map' ? members.entries : []).flatMap(({ key, value }) => {
      const path = ['frame', 'members', key.text];
      const [from, to] = ['from', 'to'].map((end) => childOf(value, end));
      const same = from?.type === 'scalar' && to?.type === 'scalar' && from.text !== '' && from.text === to.text;
      const lost = [...problem(from, [...path, 'from']), ...problem(to, [...path, 'to'])];
      return same && lost.length === 0
        ? [{ code: 'member-without-length' as const, severity: 'error' as const, place: { uri: machine.main.uri, path: [...path, 'to'] }, message: `The member "${key.text}" begins and ends at "${to.text}". Name the point at its other end.` }]
        : lost;
    }),
  ];
}

function noSuchPoint(name: string, names: readonly string[], place: PlacedProblem['place']): PlacedProblem {
  const near = nearestNames(name, names);
  const known = names.length === 0 ? 'Describe it under "points"' : near.length > 0 ? `Did you mean ${near.map((one) => `"${one}"`).join(' or ')}` : `Known are ${names.slice(0, 5).join(', ')}; or describe it under "points"`;
  return { code: 'unknown-name', severity: 'error', message: `No point of the frame is called "${name}". ${known}${near.length > 0 ? '?' : '.'}`, place, replacements: near };
}
