import type { LanguageDocument } from '../language/read-document.ts';
import { fileSchema, formOf, propertyOf, type SchemaNode } from '../language/schema/schema-model.ts';
import { entryAt, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Place } from '../machine/origin.ts';
import { samePlace } from './places.ts';
import type { Snapshot } from './snapshot.ts';

/** Sections in which the things that a value may name are described. */
const SECTIONS: Readonly<Record<string, EntryPath>> = { part: ['parts'], mass: ['masses'], supply: ['supplies'], axis: ['axes'], point: ['frame', 'points'] };

/** Where the thing that a value names, or that stands at a key itself, is described; undefined where it is no name or leads nowhere. */
export function placeOfName(snapshot: Snapshot, path: EntryPath): Place | undefined {
  const refersTo = snapshot.document.schemaAt(path)?.refersTo;
  const node = nodeAt(snapshot.document.root, path);
  return refersTo === undefined || node?.type !== 'scalar' ? undefined : described(snapshot, refersTo, node.text, path);
}

function described(snapshot: Snapshot, refersTo: string, name: string, path: EntryPath): Place | undefined {
  const documents = [snapshot.document, ...snapshot.lists];
  const section = SECTIONS[refersTo.replace(/:.*/, '')];
  const target = nearby(refersTo, name, path) ?? (section && [...section, name]);
  const found = target && documents.find((document) => entryAt(document.root, target));
  return found && target ? { uri: found.uri, path: target } : undefined;
}

/** What is described in the same axis as its name. */
function nearby(refersTo: string, name: string, path: EntryPath): EntryPath | undefined {
  if (refersTo === 'drive-option') return [...path.slice(0, -1), 'drive-options', name];
  return refersTo === 'support' ? [...path.slice(0, 2), 'supports', name] : undefined;
}

/** A value that names something described elsewhere. */
export interface NameUse {
  readonly path: EntryPath;
  readonly name: string;
  /** As the schema says: `mass`, `part:screw`, `supply`, `drive-option`. */
  readonly refersTo: string;
}

const remembered = new WeakMap<LanguageDocument, readonly NameUse[]>();

/** Every value of a document that names something, in the order of the text. */
export function namesIn(document: LanguageDocument): readonly NameUse[] {
  let uses = remembered.get(document);
  if (!uses) {
    const found: NameUse[] = [];
    collect(document.root, fileSchema(document.fileKind), [], found);
    uses = found;
    remembered.set(document, uses);
  }
  return uses;
}

function collect(node: SyntaxNode | null, schema: SchemaNode | undefined, path: EntryPath, found: NameUse[]): void {
  if (!node || !schema) return;
  if (node.type === 'scalar') {
    if (schema.refersTo !== undefined && node.text !== '') found.push({ path, name: node.text, refersTo: schema.refersTo });
  } else if (node.type === 'list') {
    node.items.forEach((item, index) => collect(item, schema.items, [...path, String(index)], found));
  } else {
    for (const entry of node.entries) collect(entry.value, propertyOf(formOf(schema, node), entry.key.text, node), [...path, entry.key.text], found);
  }
}

/** Every place of the snapshot's own text that names what is described at `target`. */
export function usesOfPlace(snapshot: Snapshot, target: Place): readonly Place[] {
  const { document, uri } = snapshot;
  return namesIn(document).flatMap((use) => {
    if (use.name !== target.path.at(-1)) return [];
    const place = described(snapshot, use.refersTo, use.name, use.path);
    return place && samePlace(place, target) ? [{ uri, path: use.path }] : [];
  });
}
