import { formatQuantity } from '../language/format-quantity.ts';
import type { EntryPath } from '../language/syntax-tree.ts';
import { barOfRow, pointOfRow } from '../machine/frame-members.ts';
import { escapeMarkdown } from './markdown.ts';
import type { Snapshot } from './snapshot.ts';

/** Where one member of the frame goes, how long it is and what it weighs; undefined where the path is not that of a member that can be read. */
export function memberMarkdown(path: EntryPath, { analysis }: Snapshot): string | undefined {
  if (path.length !== 3 || path[0] !== 'frame' || path[1] !== 'members') return undefined;
  const evaluation = analysis?.evaluations.find(({ subject }) => subject.kind === 'machine');
  const [members, points] = ['frame.member-sections', 'frame.point-places'].map((id) => {
    const input = evaluation?.input(id);
    return input?.state === 'known' && input.value.type === 'table' ? input.value : undefined;
  });
  const name = path[2] ?? '';
  const row = members?.rows[members.titles?.indexOf(name) ?? -1];
  if (!row) return undefined;
  const { from, to, massPerLength } = barOfRow(row);
  const [start, end] = [points?.rows[from], points?.rows[to]];
  if (!start || !end) return undefined;
  const [a, b] = [pointOfRow(start).at, pointOfRow(end).at];
  const length = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
  const weight = massPerLength.nominal > 0 ? `, ${formatQuantity(massPerLength.nominal * length, 'mass', { unit: 'kg', digits: 2 })}` : '';
  const ends = [from, to].map((point) => points?.titles?.[point] ?? '').join(' to ');
  return `**${escapeMarkdown(name)}**, ${escapeMarkdown(`from ${ends}: ${formatQuantity(length, 'length', { unit: 'mm', digits: 4 })} long${weight}.`)}`;
}
