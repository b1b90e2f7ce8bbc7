import { nearestNames } from '../language/nearest-names.ts';
import type { Severity } from '../language/problems.ts';
import { childOf, entryOf, nodeAt, type EntryPath, type MapNode, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Machine } from './machine.ts';
import type { NameProblemCode } from './name-problem-codes.ts';
import type { Place } from './origin.ts';
import { scopeRows } from './scopes.ts';
import { frameProblems } from './frame-problems.ts';
import { levellingProblems } from './levelling-problems.ts';
import { sizeProblems } from './size-problems.ts';
import { supportProblems } from './support-problems.ts';

/** A problem with names and with what belongs together, at a place by path. */
export interface PlacedProblem {
  readonly code: NameProblemCode;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  /** Underline the key instead of the value. */
  readonly onKey?: boolean;
  readonly related?: readonly { readonly message: string; readonly place: Place }[];
  /** Texts that the underlined value could be replaced with, likeliest first. */
  readonly replacements?: readonly string[];
}

/** Names that lead nowhere, sizes that there are not, parts of the wrong kind, drives that contradict each other, and what nothing uses. */
export function nameProblems(machine: Machine): readonly PlacedProblem[] {
  const uses = collectUses(machine);
  return [...uses.flatMap((use) => problemOfUse(use, machine)), ...sizeProblems(machine), ...axisProblems(machine), ...axesOnThemselves(machine), ...frameProblems(machine), ...levellingProblems(machine), ...supportProblems(machine), ...unused(machine, uses)];
}

interface Use {
  readonly section: string;
  readonly name: string;
  /** The kinds of part that serve there. */
  readonly kinds?: readonly string[];
  readonly place: Place;
}

const knownKinds: ReadonlySet<string> = new Set(scopeRows.flatMap((row) => row.part?.kinds ?? []));
const kindTitles: Readonly<Record<string, string>> = { stepper: 'stepper motor', 'dc-motor': 'DC motor', brushless: 'brushless motor' };
const titleOfKind = (kind: string): string => kindTitles[kind] ?? kind;
const titleOfKinds = (kinds: readonly string[]): string => (kinds.length > 1 ? 'motor' : titleOfKind(kinds[0] ?? 'part'));

/** Every place where a name refers to an entry of a section. */
function collectUses(machine: Machine): readonly Use[] {
  const uses: Use[] = [];
  const add = (section: string, node: SyntaxNode | null | undefined, path: EntryPath, kinds?: readonly string[]): void => {
    if (node?.type !== 'scalar' || node.text === '') return;
    uses.push({ section, name: node.text, place: { uri: machine.main.uri, path }, ...(kinds === undefined ? {} : { kinds }) });
  };
  const addDrive = (drivePath: EntryPath, drive: SyntaxNode): void => {
    for (const row of scopeRows) {
      const key = row.within?.key;
      if (key === undefined || ![row.within?.scope].flat().includes('drive')) continue;
      const node = childOf(drive, key);
      if (row.part?.by === 'own-text') add('parts', node, [...drivePath, key], row.part.kinds);
      else if (row.part) add('parts', childOf(node, 'part'), [...drivePath, key, 'part'], row.part.kinds);
      else if (row.section !== undefined) add(row.section, node, [...drivePath, key]);
    }
  };
  for (const [axisPath, axis] of mapsIn(machine, ['axes'])) {
    const moves = childOf(axis, 'moves');
    // A single name, where its brackets are missing, is meant as one.
    if (moves?.type === 'scalar') add('masses', moves, [...axisPath, 'moves']);
    if (moves?.type === 'list') moves.items.forEach((item, index) => add('masses', item, [...axisPath, 'moves', String(index)]));
    for (const [drivePath, drive] of drivesOf(axisPath, axis)) addDrive(drivePath, drive);
  }
  const layout = childOf(machine.main.root, 'layout');
  const shared = childOf(layout, 'axes');
  if (shared?.type === 'list') shared.items.forEach((item, index) => add('axes', item, ['layout', 'axes', String(index)]));
  const sharedDrive = childOf(layout, 'drive');
  if (sharedDrive) addDrive(['layout', 'drive'], sharedDrive);
  for (const [path, heater] of mapsIn(machine, ['heating'])) add('supplies', childOf(heater, 'supply'), [...path, 'supply']);
  return uses;
}

/** `"kind: nut"`; where several kinds serve, `a kind of stepper, dc-motor or brushless`. */
const kindWords = (kinds: readonly string[]): string => (kinds.length === 1 ? `"kind: ${kinds[0]}"` : `a "kind" of ${kinds.slice(0, -1).join(', ')} or ${kinds.at(-1)}`);

const SECTION_WORDS: Readonly<Record<string, string>> = { masses: 'mass', supplies: 'supply', axes: 'axis' };

function problemOfUse(use: Use, machine: Machine): readonly PlacedProblem[] {
  const found = machine.named(use.section, use.name);
  const documents = [machine.main, ...machine.lists];
  if (!found) {
    const names = documents.flatMap((document) => namesOf(nodeAt(document.root, [use.section]), use.kinds));
    const near = nearestNames(use.name, names);
    const describe = `Describe it under "${use.section}"${use.kinds === undefined ? '' : `, with ${kindWords(use.kinds)}`}`;
    const known = names.length === 0 ? describe : near.length > 0 ? `Did you mean ${near.map((name) => `"${name}"`).join(' or ')}` : `Known are ${names.slice(0, 5).join(', ')}; or describe it under "${use.section}"`;
    const word = use.section === 'parts' ? titleOfKinds(use.kinds ?? ['part']) : (SECTION_WORDS[use.section] ?? 'entry');
    return [{ code: 'unknown-name', severity: 'error', message: `No ${word} is called "${use.name}". ${known}${near.length > 0 ? '?' : '.'}`, place: use.place, replacements: near }];
  }
  if (use.kinds === undefined) return [];
  const kind = childOf(found.node, 'kind');
  // A kind that there is not is reported where it is written.
  if (kind?.type !== 'scalar' || !knownKinds.has(kind.text) || use.kinds.includes(kind.text)) return [];
  return [{
    code: 'part-of-wrong-kind',
    severity: 'error',
    message: `"${use.name}" is a ${titleOfKind(kind.text)}, but a ${titleOfKinds(use.kinds)} is needed here.`,
    place: use.place,
    related: [{ message: `"${use.name}" is described here`, place: { uri: found.place.uri, path: [...found.place.path, 'kind'] } }],
    replacements: documents.flatMap((document) => namesOf(nodeAt(document.root, ['parts']), use.kinds)).slice(0, 5),
  }];
}

function axisProblems(machine: Machine): readonly PlacedProblem[] {
  const problems: PlacedProblem[] = [];
  for (const [path, axis] of mapsIn(machine, ['axes'])) {
    const at = (key: string): Place => ({ uri: machine.main.uri, path: [...path, key] });
    const options = entryOf(axis, 'drive-options');
    const chosen = childOf(axis, 'chosen-drive');
    const name = path.at(-1) ?? '';
    if (isShared(machine, name) && (options ?? entryOf(axis, 'drive'))) {
      problems.push({
        code: 'drive-twice', severity: 'error', place: at(options ? 'drive-options' : 'drive'), onKey: true,
        message: `The axis "${name}" has a drive of its own, and shares the one under "layout", so it is not clear what is to be built. Keep one of them.`,
        related: [{ message: 'the shared drive is here', place: { uri: machine.main.uri, path: ['layout', 'drive'] } }],
      });
    } else if (options && entryOf(axis, 'drive')) {
      problems.push({
        code: 'drive-twice', severity: 'error', place: at('drive'), onKey: true,
        message: `The axis "${name}" has both "drive" and "drive-options", so it is not clear what is to be built. Keep one of them.`,
        related: [{ message: 'the options are here', place: at('drive-options') }],
      });
    }
    if (options?.value?.type === 'map') {
      const names = namesOf(options.value);
      if (chosen?.type !== 'scalar') {
        problems.push({ code: 'no-drive-chosen', severity: 'information', place: at('drive-options'), onKey: true, message: `No option is chosen for "${name}", so its drive is not checked. Add "chosen-drive" with one of ${names.join(', ')}.` });
      } else if (!names.includes(chosen.text)) {
        problems.push({ code: 'unknown-name', severity: 'error', place: at('chosen-drive'), message: `No drive option is called "${chosen.text}". There are ${names.join(', ')}.`, replacements: nearestNames(chosen.text, names) });
      }
    }
    if (!entryOf(axis, 'moves')) {
      problems.push({ code: 'axis-moves-nothing', severity: 'hint', place: { uri: machine.main.uri, path }, onKey: true, message: `The axis "${name}" moves no mass, so loads and torques are not computed. Name what it carries under "moves".` });
    }
  }
  return problems;
}

/** Whether an axis is one of two that share their motors. */
function isShared(machine: Machine, axis: string): boolean {
  const shared = nodeAt(machine.main.root, ['layout', 'axes']);
  return shared?.type === 'list' && shared.items.some((item) => item?.type === 'scalar' && item.text === axis);
}

/** A layout whose two axes are one, and a gantry that is said to carry itself. */
function axesOnThemselves(machine: Machine): readonly PlacedProblem[] {
  const problem = (path: EntryPath, message: string): PlacedProblem => ({ code: 'axis-on-itself', severity: 'error', place: { uri: machine.main.uri, path }, message });
  const shared = nodeAt(machine.main.root, ['layout', 'axes']);
  const [one, other] = shared?.type === 'list' ? shared.items : [];
  const twice = one?.type === 'scalar' && other?.type === 'scalar' && one.text !== '' && one.text === other.text;
  const carried = mapsIn(machine, ['axes']).flatMap(([axisPath, axis]) =>
    drivesOf(axisPath, axis).flatMap(([drivePath, drive]) => {
      const carries = childOf(drive, 'carries');
      const own = carries?.type === 'scalar' && carries.text === axisPath.at(-1);
      return own ? [problem([...drivePath, 'carries'], `The axis "${carries.text}" cannot ride on itself. Name the axis that it carries across.`)] : [];
    }),
  );
  return twice ? [problem(['layout', 'axes', '1'], `Crossed belts join two axes, and "${one.text}" is named twice. Name the other axis.`), ...carried] : carried;
}

function unused(machine: Machine, uses: readonly Use[]): readonly PlacedProblem[] {
  const named = new Set(uses.map((use) => `${use.section}/${use.name}`));
  const report = (section: string, code: NameProblemCode, message: (name: string) => string): readonly PlacedProblem[] =>
    mapsIn(machine, [section]).flatMap(([path]) => {
      const name = path.at(-1) ?? '';
      return named.has(`${section}/${name}`) ? [] : [{ code, severity: 'hint' as const, place: { uri: machine.main.uri, path }, onKey: true, message: message(name) }];
    });
  return [
    ...report('masses', 'mass-without-axis', (name) => `No axis moves the mass "${name}". Name it under the "moves" of an axis, or take it out.`),
    ...report('parts', 'unused-part', (name) => `Nothing uses the part "${name}".`),
  ];
}

function mapsIn(machine: Machine, path: EntryPath): readonly (readonly [EntryPath, MapNode])[] {
  const node = nodeAt(machine.main.root, path);
  if (node?.type !== 'map') return [];
  return node.entries.flatMap((entry) => (entry.value?.type === 'map' ? [[[...path, entry.key.text], entry.value] as const] : []));
}

function drivesOf(axisPath: EntryPath, axis: MapNode): readonly (readonly [EntryPath, SyntaxNode])[] {
  const single = childOf(axis, 'drive');
  const options = childOf(axis, 'drive-options');
  const named = options?.type === 'map' ? options.entries.flatMap((entry) => (entry.value ? [[[...axisPath, 'drive-options', entry.key.text], entry.value] as const] : [])) : [];
  return single ? [[[...axisPath, 'drive'], single], ...named] : named;
}

/** Names of the entries of a section; only parts of these kinds where kinds are given. */
function namesOf(section: SyntaxNode | null | undefined, kinds?: readonly string[]): readonly string[] {
  if (section?.type !== 'map') return [];
  return section.entries.flatMap((entry) => {
    const itsKind = childOf(entry.value, 'kind');
    return kinds === undefined || (itsKind?.type === 'scalar' && (kinds.includes(itsKind.text) || !knownKinds.has(itsKind.text))) ? [entry.key.text] : [];
  });
}
