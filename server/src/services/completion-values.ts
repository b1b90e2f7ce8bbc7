import { MATERIALS } from '../catalogue/materials.ts';
import { scalarText } from '../language/edit-entry.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { readUnitOfKind } from '../language/kind-units.ts';
import { kindDetails, type QuantityKind } from '../language/quantity-kinds.ts';
import type { LanguageDocument } from '../language/read-document.ts';
import type { SchemaNode } from '../language/schema/schema-model.ts';
import { childOf, nodeAt, type SyntaxNode } from '../language/syntax-tree.ts';
import { scopeRows } from '../machine/scopes.ts';
import { checkDrafts, displayUnitDrafts, placeDrafts } from './check-help.ts';
import type { CompletionContext } from './completion-context.ts';
import type { Draft } from './completion-item.ts';
import { sizeDrafts } from './completion-sizes.ts';
import { code, escapeMarkdown, escapeShort } from './markdown.ts';
import type { Snapshot } from './snapshot.ts';

/** What can stand as the value that is due: words, names, sizes, units behind a number, examples. */
export function valueDrafts(snapshot: Snapshot, context: CompletionContext, schema: SchemaNode, offset: number): Draft[] {
  const { text } = snapshot.document;
  const typed = text.slice(context.token.start, offset);
  const quantity = schema.quantity ?? schema.alternatives.find((one) => one.quantity !== undefined)?.quantity;
  const choices = [schema, ...schema.alternatives].flatMap((one) => one.choices);
  const words = choices.map(({ value, description }): Draft => ({ label: value, kind: 'choice', detail: description, documentation: '', insertText: value, isSnippet: false }));
  const units = quantity === undefined ? [] : unitDrafts(quantity, typed, text, context, offset);
  if (units.length > 0) return units;
  const named = schema.refersTo === undefined ? [] : nameDrafts(snapshot, schema.refersTo, context);
  const examples = words.length > 0 || named.length > 0 ? quantityExamples(schema, quantity) : [...schema.examples];
  return [...words, ...named, ...(named.length > 0 && quantity === undefined ? [] : exampleDrafts(examples, schema))];
}

function quantityExamples(schema: SchemaNode, quantity: QuantityKind | undefined): string[] {
  return quantity === undefined ? [] : schema.alternatives.flatMap((one) => (one.quantity === undefined ? [] : one.examples));
}

function exampleDrafts(examples: readonly string[], schema: SchemaNode): Draft[] {
  return examples.map((example) => ({ label: example, kind: 'example', detail: 'example', documentation: escapeMarkdown(schema.description), insertText: scalarText(example, true), isSnippet: false }));
}

/** Units that fit behind the number that was typed; the part of a unit that is there already gives way. */
function unitDrafts(kind: QuantityKind, typed: string, text: string, context: CompletionContext, offset: number): Draft[] {
  // The last number of what was typed, behind a sign, a tolerance or the word "to", and the beginning of its unit.
  const match = /(?:^|[\s±+-])(\d[\d.]*(?:e[+-]?\d+)?(?: \d+\/\d+|\/\d+)?|\.\d+)(\s*)([^\s\d±][^\d±]*|)$/i.exec(typed);
  if (!match || /\bto\b/.test(match[3] ?? '')) return [];
  const [, , blank = '', begun = ''] = match;
  const { units, title } = kindDetails(kind);
  const rest = /^[^\s,#\]}]*/.exec(text.slice(offset, context.token.end))?.[0] ?? '';
  const replace = { start: offset - begun.length, end: offset + rest.length };
  return units.map((unit) => {
    const joined = unit === '°' || unit === '"';
    const one = readUnitOfKind(unit, kind);
    const si = kindDetails(kind).si;
    const worth = one.ok && kind !== 'money' && si !== '' && one.unit.offset === 0 && unit !== si ? `1 ${unit} is ${formatQuantity(one.unit.factor, kind, { unit: si, digits: 6 })}` : `unit of ${title}`;
    return { label: unit, kind: 'unit', detail: worth, documentation: '', insertText: blank === '' && begun === '' && !joined ? ` ${unit}` : unit, isSnippet: false, replace };
  });
}

/** Names of what the entry may refer to, with what is known of each. */
function nameDrafts(snapshot: Snapshot, refersTo: string, context: CompletionContext): Draft[] {
  const [group = '', kind = ''] = refersTo.split(':');
  switch (group) {
    case 'part':
      return inDocuments(snapshot, 'parts', (node) => isOfKind(node, kind), 'part');
    case 'mass':
      return inDocuments(snapshot, 'masses', () => true, 'mass').filter((draft) => !isListed(snapshot, context, draft.label));
    case 'axis':
      return inDocuments(snapshot, 'axes', () => true, 'axis').filter((draft) => !isListed(snapshot, context, draft.label));
    case 'supply':
      return inDocuments(snapshot, 'supplies', () => true, 'supply');
    case 'point':
      return namesOf(nodeAt(snapshot.document.root, ['frame', 'points']), () => true).map(({ name }) => nameDraft(name, 'point of the frame', ''));
    case 'support':
      return supportDrafts(nodeAt(snapshot.document.root, [...context.path.slice(0, 2), 'supports'])).filter((draft) => !isListed(snapshot, context, draft.label));
    case 'drive-option':
      return namesOf(nodeAt(snapshot.document.root, [...context.path.slice(0, -1), 'drive-options']), () => true).map(({ name }) => nameDraft(name, 'drive option', ''));
    case 'material':
      return MATERIALS.map((row) => ({ label: row.name, kind: 'name', detail: 'material', documentation: escapeMarkdown(row.source), insertText: row.name, isSnippet: false }));
    case 'check':
      return [...checkDrafts(snapshot)];
    case 'place':
      return [...placeDrafts(snapshot, sibling(snapshot, context, 'check'))];
    case 'unit':
      return [...displayUnitDrafts(kind)];
    case 'size':
      return sizeDrafts(kind, (key) => sibling(snapshot, context, key));
    default:
      return [];
  }
}

function nameDraft(name: string, what: string, documentation: string, tries?: string): Draft {
  return { label: name, kind: 'name', detail: what, documentation, insertText: scalarText(name, true), isSnippet: false, ...(tries === undefined ? {} : { data: { tries } }) };
}

function inDocuments(snapshot: Snapshot, section: string, suits: (node: SyntaxNode | null) => boolean, what: string): Draft[] {
  const seen = new Set<string>();
  return [snapshot.document, ...snapshot.lists].flatMap((document) =>
    namesOf(childOf(document.root, section), suits).flatMap(({ name, node }) => {
      if (seen.has(name)) return [];
      seen.add(name);
      const from = document.uri === snapshot.uri ? '' : ` from ${fileName(document)}`;
      return [nameDraft(name, `${summary(node, what)}${from}`, node ? code(document.text.slice(node.span.start, node.span.end)) : '', what === 'part' ? name : undefined)];
    }),
  );
}

function namesOf(map: SyntaxNode | null | undefined, suits: (node: SyntaxNode | null) => boolean): readonly { readonly name: string; readonly node: SyntaxNode | null }[] {
  return map?.type === 'map' ? map.entries.filter((entry) => suits(entry.value)).map((entry) => ({ name: entry.key.text, node: entry.value })) : [];
}

/** Supports with their joints: those that a drive moves first, since they are what is named. */
function supportDrafts(supports: SyntaxNode | null | undefined): Draft[] {
  const joints = namesOf(supports, () => true).map(({ name, node }) => {
    const joint = childOf(node, 'joint');
    return { name, joint: joint?.type === 'scalar' ? joint.text : '' };
  });
  const [driven, others] = [true, false].map((wanted) => joints.filter(({ joint }) => /^(?:nut|belt)/.test(joint) === wanted));
  return [...(driven ?? []), ...(others ?? [])].map(({ name, joint }) => nameDraft(name, joint === '' ? 'support' : escapeShort(joint).replaceAll('\\', ''), ''));
}

/** Whether a part is of the kind that a scope such as `motor` wants. */
function isOfKind(node: SyntaxNode | null, scope: string): boolean {
  const wanted = scopeRows.find((row) => row.id === scope)?.part?.kinds ?? [scope];
  const kind = childOf(node, 'kind');
  return kind?.type === 'scalar' && wanted.includes(kind.text);
}

/** The text of another entry of the map in which the cursor stands. */
function sibling(snapshot: Snapshot, context: CompletionContext, key: string): string | undefined {
  const node = nodeAt(snapshot.document.root, [...context.path.slice(0, -1), key]);
  return node?.type === 'scalar' && node.text !== '' ? node.text : context.siblings.get(key);
}

/** Names that the list holds already. */
function isListed(snapshot: Snapshot, context: CompletionContext, name: string): boolean {
  const list = nodeAt(snapshot.document.root, context.path.slice(0, -1));
  return list?.type === 'list' && list.items.some((item) => item?.type === 'scalar' && item.text === name && !(item.span.start <= context.token.end && item.span.end >= context.token.start));
}

/** The word that tells most of a thing: the kind of a part, the mass of a body, the voltage of a supply. */
function summary(node: SyntaxNode | null, what: string): string {
  for (const key of ['kind', 'mass', 'voltage']) {
    const value = childOf(node, key);
    if (value?.type === 'scalar' && value.text !== '') return key === 'kind' && what === 'supply' ? what : escapeShort(value.text).replaceAll('\\', '');
  }
  return what;
}

function fileName({ uri }: LanguageDocument): string {
  return decodeURIComponentSafely(uri.slice(uri.lastIndexOf('/') + 1));
}

function decodeURIComponentSafely(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
