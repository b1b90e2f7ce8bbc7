import { BELT_PROFILES, beltProfile } from '../catalogue/belt-profiles.ts';
import { MOTOR_FLANGES, motorFlange } from '../catalogue/motor-flanges.ts';
import { parseBallScrewDesignation } from '../mechanics/ball-screw.ts';
import { nearestNames } from '../language/nearest-names.ts';
import { childOf, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import { RAIL_SIZE_TEXTS, railOfSize } from './guide-rail-size.ts';
import type { Machine } from './machine.ts';
import type { PlacedProblem } from './name-problems.ts';
import { meaningOf } from './trapezoidal-size.ts';

/** Designations that no standard size has: nothing follows from them, and without a word the person would take them for understood. */
export function sizeProblems(machine: Machine): readonly PlacedProblem[] {
  const { uri, root } = machine.main;
  const problems: PlacedProblem[] = [];
  const look = (map: SyntaxNode | null | undefined, path: EntryPath, key: string, say: (text: string) => Omit<PlacedProblem, 'place'> | undefined): void => {
    const node = childOf(map, key);
    const problem = node?.type === 'scalar' && node.text !== '' ? say(node.text) : undefined;
    if (problem) problems.push({ ...problem, place: { uri, path: [...path, key] } });
  };
  for (const [path, drive] of drives(root)) {
    for (const key of ['screw', 'nut']) look(childOf(drive, key), [...path, key], 'size', screwSizeProblem);
    look(childOf(drive, 'belt'), [...path, 'belt'], 'profile', profileProblem);
    const stages = childOf(drive, 'reduction');
    if (stages?.type === 'list') stages.items.forEach((stage, index) => look(stage, [...path, 'reduction', String(index)], 'profile', profileProblem));
  }
  for (const [name, axis] of entries(nodeAt(root, ['axes']))) look(childOf(axis, 'guides'), ['axes', name, 'guides'], 'size', railProblem);
  for (const [name, part] of entries(nodeAt(root, ['parts']))) {
    look(part, ['parts', name], 'size', screwSizeProblem);
    look(part, ['parts', name], 'frame', frameProblem);
    look(part, ['parts', name], 'profile', profileProblem);
  }
  return problems;
}

function screwSizeProblem(text: string): Omit<PlacedProblem, 'place'> | undefined {
  if (isScrewSize(text)) return undefined;
  const [, diameter, lead] = /(\d+(?:\.\d+)?)\D+(\d+(?:\.\d+)?)\D*$/.exec(text.slice(0, 60)) ?? [];
  const meant = diameter === undefined || lead === undefined ? undefined : `Tr${diameter}x${lead}`;
  const replacements = meant !== undefined && isScrewSize(meant) ? [meant] : [];
  const cure = replacements.length > 0 ? `Did you mean "${replacements.join('')}"?` : 'Write one such as Tr12x3, Tr8x8(P2) or 1605, or "thread", "major-diameter" and "pitch" or "lead" instead.';
  return { code: 'size-unknown', severity: 'error', message: `"${short(text)}" is no screw size that is known here, so nothing follows from it. ${cure}`, replacements };
}

const isScrewSize = (text: string): boolean => meaningOf(text) !== undefined || parseBallScrewDesignation(text).kind === 'ball screw';

function frameProblem(text: string): Omit<PlacedProblem, 'place'> | undefined {
  if (motorFlange(text)) return undefined;
  const known = MOTOR_FLANGES.map((row) => row.size).join(', ');
  return { code: 'size-unknown', severity: 'warning', message: `"${short(text)}" is no motor face that is known here, so nothing follows from it. Known are NEMA ${known}; leave "frame" out for another face.` };
}

function profileProblem(text: string): Omit<PlacedProblem, 'place'> | undefined {
  if (beltProfile(text)) return undefined;
  const names = BELT_PROFILES.map(({ profile }) => profile);
  const bare = text.toLowerCase().replaceAll(/\s/g, '');
  const near = names.filter((name) => name.toLowerCase().replaceAll(/\s/g, '') === bare);
  const replacements = near.length > 0 ? near : nearestNames(text, names);
  const cure = replacements.length > 0 ? `Did you mean ${replacements.slice(0, 2).map((name) => `"${name}"`).join(' or ')}?` : `Known are ${names.join(', ')}; or leave it out and write "pitch".`;
  return { code: 'size-unknown', severity: 'error', message: `"${short(text)}" is no belt profile that is known here, so nothing follows from it. ${cure}`, replacements };
}

function railProblem(text: string): Omit<PlacedProblem, 'place'> | undefined {
  if (railOfSize(text)) return undefined;
  const digits = /\d{1,2}/.exec(text.slice(0, 24))?.[0];
  const form = /mini/i.test(text.slice(0, 24)) ? `miniature ${digits ?? ''}` : (digits ?? '');
  const replacements = RAIL_SIZE_TEXTS.includes(form) ? [form] : [];
  const cure = replacements.length > 0 ? `Did you mean "${replacements.join('')}"?` : `Known are ${RAIL_SIZE_TEXTS.join(', ')}; or leave it out and write the ratings.`;
  return { code: 'size-unknown', severity: 'warning', message: `"${short(text)}" is no rail size that is known here, so nothing follows from it. ${cure}`, replacements };
}

const short = (text: string): string => (text.length > 24 ? `${text.slice(0, 23)}…` : text);

function entries(map: SyntaxNode | null | undefined): readonly (readonly [string, SyntaxNode | null])[] {
  return map?.type === 'map' ? map.entries.map((entry) => [entry.key.text, entry.value] as const) : [];
}

/** Every drive, those among options too, with its path. */
function drives(root: SyntaxNode | null): readonly (readonly [EntryPath, SyntaxNode | null | undefined])[] {
  const shared = [[['layout', 'drive'], nodeAt(root, ['layout', 'drive'])] as const];
  return [...shared, ...entries(nodeAt(root, ['axes'])).flatMap(([name, axis]) => [
    [['axes', name, 'drive'], childOf(axis, 'drive')] as const,
    ...entries(childOf(axis, 'drive-options')).map(([option, drive]) => [['axes', name, 'drive-options', option], drive] as const),
  ])];
}
