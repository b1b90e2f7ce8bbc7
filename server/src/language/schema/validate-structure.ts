import * as validators from '../../generated/schema-validators.mjs';
import { limits } from '../limits.ts';
import type { Problem } from '../problems.ts';
import { colonMissing } from '../slip-messages.ts';
import type { Span } from '../spans.ts';
import { entryAt, nodeAt, type Entry, type EntryPath, type MapNode, type SyntaxNode } from '../syntax-tree.ts';
import { fileSchema, formOf, schemaBelow, type FileKind, type SchemaNode } from './schema-model.ts';
import { plainValue, type PlainValue } from './plain-value.ts';
import * as say from './structure-messages.ts';

/** One error of a validator, as ajv gives it. */
export interface SchemaError {
  readonly instancePath: string;
  readonly schemaPath: string;
  readonly keyword: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly propertyName?: string;
}

/** Judges a plain value against a schema. */
export type Validate = (value: PlainValue) => readonly SchemaError[];

/** Findings on the structure of a file: entries that are unknown, missing, of another shape, not among the choices. Each at its exact place, one for each cause. */
export function validateStructure(root: SyntaxNode | null, fileKind: FileKind, text: string): Problem[] {
  const validator = validators[fileKind];
  const validate: Validate = (value) => (validator(value) ? [] : (validator.errors ?? []));
  return structureProblems(root, fileSchema(fileKind), validate, text);
}

/** The same for any schema. */
export function structureProblems(root: SyntaxNode | null, schema: SchemaNode, validate: Validate, text: string): Problem[] {
  if (root === null) return [];
  const errors = validate(plainValue(root, schema));
  if (errors.length === 0) return [];
  return new StructureReport(root, schema, text).report(errors);
}

class StructureReport {
  readonly #root: SyntaxNode;
  readonly #schema: SchemaNode;
  readonly #text: string;
  readonly #problems: Problem[] = [];
  readonly #entries = new Map<MapNode, ReadonlyMap<string, Entry>>();
  #homes: Map<string, Set<string>> | undefined;

  constructor(root: SyntaxNode, schema: SchemaNode, text: string) {
    this.#root = root;
    this.#schema = schema;
    this.#text = text;
  }

  report(errors: readonly SchemaError[]): Problem[] {
    const missing = new Map<string, string[]>();
    // More than are ever listed are not looked up one by one.
    for (const error of leading(errors.slice(0, 5 * limits.problems))) {
      if (error.keyword === 'required') {
        const key = String(error.params['missingProperty']);
        missing.set(error.instancePath, [...(missing.get(error.instancePath) ?? []), key]);
      } else {
        this.#one(error);
      }
    }
    for (const [pointer, keys] of missing) this.#missing(pathOf(pointer), keys);
    return this.#problems;
  }

  #one(error: SchemaError): void {
    const path = pathOf(error.instancePath);
    const node = nodeAt(this.#root, path);
    const schema = schemaBelow(this.#schema, path, this.#root);
    if (error.propertyName !== undefined) return this.#name(error.propertyName, path);
    switch (error.keyword) {
      case 'additionalProperties':
      case 'unevaluatedProperties':
        return this.#unknown(path, node, String(error.params['additionalProperty'] ?? error.params['unevaluatedProperty']), schema);
      case 'discriminator':
        return this.#tag(path, schema, String(error.params['tag']));
      case 'type':
        return this.#type(path, node, schema, ([] as string[]).concat(error.params['type'] as string | string[]));
      case 'enum':
      case 'const':
        if (node?.type !== 'scalar') return this.#type(path, node, schema, ['string']);
        if (path.join('/') === 'description-version') return this.#push(say.otherVersion(node.text, schema?.choices[0]?.value ?? '', node.span));
        return this.#push(say.notInList(node.text, schema?.choices.map((choice) => choice.value) ?? [], node.span));
      case 'minimum':
      case 'maximum':
      case 'exclusiveMinimum':
      case 'exclusiveMaximum':
      case 'minItems':
      case 'maxItems':
      case 'minProperties':
      case 'maxProperties':
      case 'uniqueItems':
        return this.#bounds(path, error);
      case 'pattern':
      case 'format':
      case 'minLength':
      case 'maxLength':
        return this.#push(say.textOutOfForm(node?.type === 'scalar' ? node.text : '', schema, this.#valueSpan(path)));
      default:
        if (node === null && entryAt(this.#root, path)) return this.#type(path, node, schema, ['string']);
        // oneOf, not, dependentRequired and other conditions between entries.
        return this.#push(say.contradiction(path.at(-1) ?? '', this.#keySpan(path)));
    }
  }

  #push(problem: Problem): void {
    this.#problems.push(problem);
  }

  #name(name: string, path: EntryPath): void {
    const entry = entryAt(this.#root, [...path, name]);
    this.#push(say.nameOutOfForm(name, entry?.key.span ?? this.#keySpan(path)));
  }

  #unknown(path: EntryPath, map: SyntaxNode | null | undefined, key: string, schema: SchemaNode | undefined): void {
    const form = schema && formOf(schema, map);
    const written = this.#entriesOf(map);
    const entry = written.get(key);
    const known = form?.properties.map((property) => property.key) ?? [];
    this.#push(say.keyUnknown(key, entry?.key.span ?? this.#keySpan(path), path.at(-1) ?? '', known, written, this.#homesOf(key)));
  }

  /** The entries of a map by their keys, remembered while one report is made. */
  #entriesOf(map: SyntaxNode | null | undefined): ReadonlyMap<string, Entry> {
    if (map?.type !== 'map') return new Map();
    const known = this.#entries.get(map);
    if (known) return known;
    const entries = new Map<string, Entry>();
    for (const entry of map.entries) if (!entries.has(entry.key.text)) entries.set(entry.key.text, entry);
    this.#entries.set(map, entries);
    return entries;
  }

  #homesOf(key: string): string[] {
    this.#homes ??= homesOfKeys(this.#schema);
    return [...(this.#homes.get(key) ?? [])];
  }

  #missing(path: EntryPath, keys: readonly string[]): void {
    // Where a key of the same map is misspelt, the missing one is probably it, and the spelling is what is reported.
    const map = nodeAt(this.#root, path);
    const meant = new Set(this.#problems.flatMap((problem) => (problem.code === 'key-unknown' && isIn(problem.span, map) ? (problem.fixes ?? []).map((fix) => fix.edits[0]?.text ?? '') : [])));
    const lacking = keys.filter((key) => !meant.has(key));
    if (lacking.length > 0) this.#push(say.entriesMissing(lacking, path.at(-1) ?? '', this.#keySpan(path)));
  }

  #tag(path: EntryPath, schema: SchemaNode | undefined, key: string): void {
    const tag = entryAt(this.#root, [...path, key]);
    // A missing tag is reported as a missing entry already.
    if (!tag) return;
    const choices = [...(schema?.variants?.of.keys() ?? [])];
    if (tag.value?.type === 'scalar') this.#push(say.notInList(tag.value.text, choices, tag.value.span));
    else this.#type([...path, key], tag.value, undefined, ['string']);
  }

  #type(path: EntryPath, node: SyntaxNode | null | undefined, schema: SchemaNode | undefined, types: readonly string[]): void {
    const key = path.at(-1) ?? '';
    if (node === null || node === undefined) {
      const parent = schemaBelow(this.#schema, path.slice(0, -1), this.#root);
      const isItem = /^\d+$/.test(key) && nodeAt(this.#root, path.slice(0, -1))?.type === 'list';
      if (isItem) this.#push(say.wrongType({ type: 'scalar', text: '' }, schema, types, this.#keySpan(path)));
      else this.#push(say.valueMissing(key, schema, parent?.required.includes(key) === true, this.#keySpan(path)));
      return;
    }
    if (types.includes('object') && this.#isBegunKey(path, node)) return this.#push(colonMissing(node.type === 'scalar' ? node.text : '', node.span));
    const span = node.type === 'map' && path.length > 0 ? this.#keySpan(path) : node.span;
    this.#push(say.wrongType({ type: node.type, text: node.type === 'scalar' ? node.text : '' }, schema, types, span, this.#shapeFixes(node, schema, types)));
  }

  #shapeFixes(node: SyntaxNode, schema: SchemaNode | undefined, types: readonly string[]): NonNullable<Problem['fixes']> {
    const asList = listFix(node, types);
    if (asList.length > 0) return asList;
    if (node.type === 'map' && types.includes('array')) return itemFix(node, this.#text);
    if (node.type !== 'scalar' || node.style !== 'plain' || node.span.end - node.span.start !== node.text.length) return [];
    if (types.includes('object')) return say.asEntry(node.text, schema, node.span);
    // Microsteps are often given as a part of a step.
    const part = types.includes('integer') ? /^1\/(\d{1,3})$/.exec(node.text)?.[1] : undefined;
    return part === undefined ? [] : [{ title: `Change to "${part}"`, edits: [{ span: node.span, text: part }] }];
  }

  /** A word alone on the line below a key whose entries are due there: the first of them, half typed. */
  #isBegunKey(path: EntryPath, node: SyntaxNode): boolean {
    const key = entryAt(this.#root, path)?.key;
    if (!key || node.type !== 'scalar' || node.style !== 'plain' || !/^[A-Za-z][\w -]*$/.test(node.text)) return false;
    return this.#text.slice(key.span.end, node.span.start).includes('\n');
  }

  #bounds(path: EntryPath, error: SchemaError): void {
    const limit = Number(error.params['limit']);
    const count = `${limit} ${limit === 1 ? 'item' : 'items'}`;
    const message: Readonly<Record<string, string>> = {
      minimum: `The smallest value that makes sense here is ${limit}.`,
      maximum: `The largest value that makes sense here is ${limit}.`,
      exclusiveMinimum: `The value must be more than ${limit}.`,
      exclusiveMaximum: `The value must be less than ${limit}.`,
      minItems: `At least ${count} are due here.`.replace('item are', 'item is'),
      maxItems: `At most ${count} are allowed here.`.replace('item are', 'item is'),
      minProperties: 'More entries are due here.',
      maxProperties: 'Fewer entries are allowed here.',
      uniqueItems: 'An item stands here twice.',
    };
    const schema = schemaBelow(this.#schema, path, this.#root);
    const sample = error.keyword === 'minItems' && schema?.examples[0] !== undefined ? ` Such as [ ${schema.examples[0].replace(/^\[ *| *\]$/g, '')} ].` : '';
    this.#push(say.outOfBounds(`${message[error.keyword] ?? 'The value is out of bounds.'}${sample}`, this.#valueSpan(path)));
  }

  #valueSpan(path: EntryPath): Span {
    const node = nodeAt(this.#root, path);
    return node && (node.type === 'scalar' || node.flow) ? node.span : this.#keySpan(path);
  }

  /** The key at `path`; of a list item its first word, of the outermost map its first key. */
  #keySpan(path: EntryPath): Span {
    const entry = entryAt(this.#root, path);
    if (entry) return entry.key.span;
    const node = nodeAt(this.#root, path);
    if (node?.type === 'map') return firstKey(node) ?? { start: node.span.start, end: node.span.start + 1 };
    if (node) return node.type === 'scalar' ? node.span : { start: node.span.start, end: node.span.start + 1 };
    const parent = path.length === 0 ? this.#root : nodeAt(this.#root, path.slice(0, -1));
    return parent ? { start: parent.span.start, end: parent.span.start + 1 } : { start: 0, end: 0 };
  }
}

/** Errors that are causes: a choice of forms that fails brings the errors of every form along. */
function leading(errors: readonly SchemaError[]): SchemaError[] {
  const choices = errors.filter((error) => error.keyword === 'anyOf' || error.keyword === 'oneOf');
  return errors.filter((error) => {
    if (error.keyword === 'propertyNames') return false;
    return !choices.some((choice) => error !== choice && error.schemaPath.startsWith(`${choice.schemaPath}/`) && error.instancePath.startsWith(choice.instancePath));
  });
}

function pathOf(pointer: string): EntryPath {
  return pointer === '' ? [] : pointer.slice(1).split('/').map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
}

function isIn(span: Span, node: SyntaxNode | null | undefined): boolean {
  return node?.type === 'map' && node.entries.some((entry) => entry.key.span.start === span.start);
}

function firstKey(map: MapNode): Span | undefined {
  return map.entries[0]?.key.span;
}

/** A dash before the first of the entries that stand where a list of entries is due, and the others moved under it. */
function itemFix(map: MapNode, text: string): NonNullable<Problem['fixes']> {
  const first = firstKey(map);
  if (!first) return [];
  if (map.flow) return [{ title: 'Make it a list', edits: [{ span: { start: map.span.start, end: map.span.start }, text: '[' }, { span: { start: map.span.end, end: map.span.end }, text: ']' }] }];
  const edits = [{ span: { start: first.start, end: first.start }, text: '- ' }];
  for (let at = text.indexOf('\n', first.start); at >= 0 && at + 1 < map.span.end; at = text.indexOf('\n', at + 1)) {
    if (/^[ \t]*[^\s]/.test(text.slice(at + 1, map.span.end))) edits.push({ span: { start: at + 1, end: at + 1 }, text: '  ' });
  }
  return [{ title: 'Make it the first item of a list', edits }];
}

/** Brackets around a single text where a list is due. */
function listFix(node: SyntaxNode, types: readonly string[]): NonNullable<Problem['fixes']> {
  if (node.type !== 'scalar' || node.style === 'block' || !types.includes('array')) return [];
  const open = { span: { start: node.span.start, end: node.span.start }, text: '[' };
  const close = { span: { start: node.span.end, end: node.span.end }, text: ']' };
  // Where only the closing bracket was typed, the opening one is all that is missing.
  return [{ title: 'Make it a list', edits: node.text.endsWith(']') ? [open] : [open, close] }];
}

/** For every key, the maps in which it is known: for a key that was written in the wrong place. */
function homesOfKeys(schema: SchemaNode): Map<string, Set<string>> {
  const homes = new Map<string, Set<string>>();
  const seen = new Set<SchemaNode>();
  const visit = (node: SchemaNode, name: string): void => {
    if (seen.has(node)) return;
    seen.add(node);
    for (const property of node.properties) {
      if (name !== '') homes.set(property.key, (homes.get(property.key) ?? new Set()).add(name));
      visit(property.schema, property.key);
    }
    for (const inner of [node.named, node.items, ...(node.variants?.of.values() ?? []), ...node.alternatives]) {
      if (inner) visit(inner, inner.title === '' ? name : inner.title.toLowerCase());
    }
  };
  visit(schema, '');
  return homes;
}
