import type { Evaluation } from '../figures/evaluation.ts';
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

/** The elements whose key, name or description stands at a place; several where drives share a part. Chosen drives first. */
export function elementsAt(snapshot: Snapshot, place: Place): readonly Element[] {
  const found = (snapshot.analysis?.evaluations ?? []).flatMap((evaluation) =>
    scopeRows.flatMap((scope) => (placesOfElement(scope, evaluation.subject).some((candidate) => samePlace(candidate, place)) ? [{ scope, evaluation }] : [])),
  );
  return found.sort((a, b) => Number(b.evaluation.subject.chosen) - Number(a.evaluation.subject.chosen));
}

/** Every place that stands for the element: its key in the drive, the name of its part there, and the part's own description. */
function placesOfElement(scope: ScopeRow, subject: Subject): readonly Place[] {
  if (scope.id === 'machine' || !subject.hasScope(scope.id)) return [];
  const key = keyPlaceOf(scope, subject);
  const places: Place[] = key ? [key] : [];
  if (key && scope.part) {
    const name = { uri: key.uri, path: scope.part.by === 'part-key' ? [...key.path, 'part'] : key.path };
    const text = textAt(subject, name);
    const part = text === undefined ? undefined : subject.machine.named('parts', text)?.place;
    if (text !== undefined) places.push(name);
    if (part) places.push(part);
  }
  // A section's entry, such as a supply, is described elsewhere than it is named.
  if (scope.section !== undefined && subject.isPresent(scope.id)) places.push(...[subject.placeOf(scope.id)].flatMap((place) => place ?? []));
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
  const last = subject.id.split('/').at(-1) ?? '';
  if (subject.kind === 'heater') return scope.id === 'heater' ? `The heated part "${last}"` : `The ${scope.title} of "${last}"`;
  const axis = subject.fixed.get('axis')?.at(-1);
  if (axis === undefined) return `The ${scope.title}`;
  const option = subject.id.includes('/drive-options/') ? `, drive option "${last}"` : '';
  return scope.id === 'axis' ? `The axis "${axis}"${option}` : `The ${scope.title} of "${axis}"${option}`;
}

/** Where a subject stands, for "used by": `"lift"`, `"lift" with drive option "belt"`. */
export function nameOfSubject(subject: Subject): string {
  const last = subject.id.split('/').at(-1) ?? '';
  const axis = subject.fixed.get('axis')?.at(-1);
  if (axis === undefined) return `"${last}"`;
  return subject.id.includes('/drive-options/') ? `"${axis}" with drive option "${last}"` : `"${axis}"`;
}

/** Inputs of an evaluation that rest on what is written at a place: the entry itself, and what follows from it. */
export function inputsFrom(evaluation: Evaluation, path: EntryPath, uri: string): readonly string[] {
  return inputPlaces(evaluation).get(keyOf({ uri, path })) ?? [];
}

const remembered = new WeakMap<Evaluation, ReadonlyMap<string, readonly string[]>>();

const keyOf = (place: Place): string => `${place.uri}\n${place.path.join('\n')}`;

/** Which inputs rest on which places; an evaluation never changes, so it is gathered once. */
function inputPlaces(evaluation: Evaluation): ReadonlyMap<string, readonly string[]> {
  const known = remembered.get(evaluation);
  if (known) return known;
  const inputs = new Set(evaluation.registry.ofKind(evaluation.subject.kind).flatMap((figure) => evaluation.registry.inputsUnder(figure.id)));
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
