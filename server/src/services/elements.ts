import { allChecks } from '../checks/registry.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { allFigures } from '../figures/registry.ts';
import { nodeAt, type EntryPath } from '../language/syntax-tree.ts';
import { placesOf, type Place } from '../machine/origin.ts';
import { scopeRows, type ScopeRow } from '../machine/scopes.ts';
import type { Subject } from '../machine/subject.ts';
import { samePlace } from './places.ts';
import type { Snapshot } from './snapshot.ts';

/** Something of the description that has figures: the screw of a drive, an axis, a heated part … */
export interface Element {
  readonly scope: ScopeRow;
  readonly evaluation: Evaluation;
}

/** What surrounds the elements, and has its say in their figures instead of figures of its own. */
const SURROUNDINGS: ReadonlySet<string> = new Set(['machine', 'conditions', 'controller', 'supply', 'motion', 'partner', 'partner-motion', 'partner-guides', 'carried']);

/** The elements whose key, name or description stands at a place; several where drives share a part. Chosen drives first. */
export function elementsAt(snapshot: Snapshot, place: Place): readonly Element[] {
  const found = (snapshot.analysis?.evaluations ?? []).flatMap((evaluation) =>
    scopeRows.flatMap((scope) => (placesOfElement(scope, evaluation.subject).some((candidate) => samePlace(candidate, place)) ? [{ scope, evaluation }] : [])),
  );
  return found.sort((a, b) => Number(b.evaluation.subject.chosen) - Number(a.evaluation.subject.chosen));
}

/** Every place that stands for the element: its key in the drive, the name of its part there, and the part's own description. */
function placesOfElement(scope: ScopeRow, subject: Subject): readonly Place[] {
  if (SURROUNDINGS.has(scope.id) || !subject.hasScope(scope.id)) return [];
  const key = keyPlaceOf(scope, subject);
  // Guides of which only the friction is written are surroundings too: nothing is computed for them.
  if (scope.id === 'guides' && !(key && textAt(subject, { uri: key.uri, path: [...key.path, 'kind'] }))) return [];
  const places: Place[] = key ? [key] : [];
  if (key && scope.part) {
    const name = { uri: key.uri, path: scope.part.by === 'part-key' ? [...key.path, 'part'] : key.path };
    const text = textAt(subject, name);
    const part = text === undefined ? undefined : subject.machine.named('parts', text)?.place;
    if (text !== undefined) places.push(name);
    if (part) places.push(part);
  }
  return places;
}

/** Where the key of an element stands in its axis or drive, whether its entries are there or in a part; undefined where it is not written. */
export function keyPlaceOf(scope: ScopeRow, subject: Subject): Place | undefined {
  const fixed = subject.fixed.get(scope.id);
  if (fixed) return fixed.length === 0 ? undefined : { uri: subject.machine.main.uri, path: fixed };
  const { within } = scope;
  if (!within) return undefined;
  const holder = [within.scope].flat().find((candidate) => subject.hasScope(candidate));
  const holderPlace = holder === undefined ? undefined : subject.placeOf(holder);
  if (!holderPlace) return undefined;
  const place = { uri: holderPlace.uri, path: [...holderPlace.path, within.key] };
  return nodeAt(subject.machine.document(place.uri)?.root, place.path) === undefined ? undefined : place;
}

function textAt(subject: Subject, place: Place): string | undefined {
  const node = nodeAt(subject.machine.document(place.uri)?.root, place.path);
  return node?.type === 'scalar' && node.text !== '' ? node.text : undefined;
}

/** How an element is called in a sentence: `The screw of "lift"`, `The axis "lift"`, `The heated part "bed"`. */
export function nameOfElement({ scope, evaluation }: Element): string {
  const { subject } = evaluation;
  const own = subject.kind === 'heater' ? scope.id === 'heater' : scope.id === 'axis';
  const holder = holderOf(subject);
  // The verb behind it stands in the singular.
  const title = scope.id === 'guides' ? 'set of guides' : scope.title;
  if (holder === undefined) return `The ${title}`;
  const option = optionOf(subject);
  return `The ${title}${own ? '' : ' of'} "${holder}"${option === undefined ? '' : `, drive option "${option}"`}`;
}

/** Where a subject stands, for "used by": `"lift"`, `"lift" with drive option "belt"`. */
export function nameOfSubject(subject: Subject): string {
  const option = optionOf(subject);
  return `"${holderOf(subject) ?? 'the machine'}"${option === undefined ? '' : ` with drive option "${option}"`}`;
}

/** The name of the axis or heated part to which a subject belongs. */
const holderOf = (subject: Subject): string | undefined => subject.fixed.get(subject.kind === 'heater' ? 'heater' : 'axis')?.at(-1);

/** The name of the drive option that a subject is; undefined for the only drive of an axis. */
function optionOf(subject: Subject): string | undefined {
  const path = subject.fixed.get('drive');
  return path?.at(-2) === 'drive-options' && path.length === 4 ? path.at(-1) : undefined;
}

/** Inputs of an evaluation that rest on what is written at a place or below it: the entry itself, and what follows from it. */
export function inputsFrom(evaluation: Evaluation, path: EntryPath, uri: string): readonly string[] {
  const key = keyOf({ uri, path });
  const places = [...inputPlaces(evaluation)].filter(([place]) => place === key || place.startsWith(`${key}\n`));
  return [...new Set(places.flatMap(([, inputs]) => inputs))];
}

const remembered = new WeakMap<Evaluation, ReadonlyMap<string, readonly string[]>>();

const keyOf = (place: Place): string => `${place.uri}\n${place.path.join('\n')}`;

/** Inputs that hold a limit, such as `screw.speed-limit`. */
const limitInputs = (): readonly string[] => allChecks().flatMap((check) => ('judge' in check ? [] : check.limits.flatMap(({ at }) => (typeof at === 'string' && !allFigures().get(at) ? [at] : []))));

/** Which inputs rest on which places; an evaluation never changes, so it is gathered once. */
function inputPlaces(evaluation: Evaluation): ReadonlyMap<string, readonly string[]> {
  const known = remembered.get(evaluation);
  if (known) return known;
  const inputs = new Set([...evaluation.figures().flatMap((figure) => evaluation.inputsUnder(figure.id)), ...limitInputs()]);
  const byPlace = new Map<string, string[]>();
  for (const id of inputs) {
    const input = evaluation.input(id);
    if (input.state !== 'known') continue;
    for (const place of placesOf(input.origin)) {
      const key = keyOf(place);
      const list = byPlace.get(key) ?? [];
      if (!list.includes(id)) list.push(id);
      byPlace.set(key, list);
    }
  }
  remembered.set(evaluation, byPlace);
  return byPlace;
}
