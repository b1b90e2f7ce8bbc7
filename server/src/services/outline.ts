import { fileSchema, formOf, propertyOf, type SchemaNode } from '../language/schema/schema-model.ts';
import type { Span } from '../language/spans.ts';
import { childOf, type Entry, type MapNode, type SyntaxNode } from '../language/syntax-tree.ts';
import { inlayHints } from './inlay-hints.ts';
import type { Snapshot } from './snapshot.ts';

/** One line of the outline. Plain data; spans of children lie in that of their parent. */
export interface OutlineItem {
  readonly name: string;
  /** What tells it from others: the travel of an axis, the size of a screw, and the figures that decide. Empty where there is nothing to say. */
  readonly detail: string;
  readonly kind: 'machine' | 'section' | 'axis' | 'drive' | 'element' | 'mass' | 'supply' | 'heater' | 'part';
  /** The whole entry. */
  readonly span: Span;
  /** Its key, which is selected. */
  readonly selection: Span;
  readonly children: readonly OutlineItem[];
}

/** Editors stall on outlines that are longer. */
const MOST_ITEMS = 5_000;

/** Entries whose values tell most of a thing, in the order in which they are shown. */
const TELLING = ['direction', 'travel', 'size', 'part', 'kind', 'frame', 'material', 'design', 'form', 'mass', 'voltage', 'power', 'speed', 'motor', 'units'];

/** Most of those in one detail. */
const MOST_TELLING = 2;

/** The outline of a description: the machine, its axes, their drives and elements, its masses, supplies and parts. */
export function outlineOf(snapshot: Snapshot): readonly OutlineItem[] {
  const { document } = snapshot;
  if (document.root?.type !== 'map') return [];
  const builder = new OutlineBuilder(snapshot);
  const children = builder.entries(document.root, fileSchema(document.fileKind), undefined);
  const name = ['machine', 'list'].map((key) => childOf(document.root, key)).find((node) => node?.type === 'scalar' && node.text !== '');
  if (name?.type !== 'scalar') return children;
  const purpose = childOf(document.root, 'purpose');
  const detail = purpose?.type === 'scalar' ? shortened(purpose.text) : '';
  return [{ name: shortened(name.text), detail, kind: 'machine', span: document.root.span, selection: name.span, children }];
}

class OutlineBuilder {
  readonly #snapshot: Snapshot;
  readonly #hints: ReadonlyMap<number, string>;
  #count = 0;

  constructor(snapshot: Snapshot) {
    this.#snapshot = snapshot;
    this.#hints = new Map(inlayHints(snapshot).map((hint) => [snapshot.document.lines.lineAt(hint.offset), hint.text]));
  }

  /** Items for the entries of a map that are maps themselves, or elements named by a part. */
  entries(map: MapNode, schema: SchemaNode, defines: string | undefined): OutlineItem[] {
    const items: OutlineItem[] = [];
    for (const entry of map.entries) {
      if (this.#count >= MOST_ITEMS) break;
      const inner = propertyOf(formOf(schema, map), entry.key.text, map);
      const item = inner && this.#item(entry, inner, defines ?? '');
      if (item) items.push(item);
    }
    return items;
  }

  #item(entry: Entry, schema: SchemaNode, definedAs: string): OutlineItem | undefined {
    const { value } = entry;
    const namesPart = value?.type === 'scalar' && schema.refersTo?.startsWith('part:') === true && entry.key.text !== 'part';
    // What an alias repeats stands elsewhere, and is shown there.
    const own = value !== null && value.span.start >= entry.span.start && value.span.end <= entry.span.end;
    if (!namesPart && !isShown(value, schema, definedAs)) return undefined;
    this.#count += 1;
    return {
      name: shortened(entry.key.text) || '(no name)',
      detail: this.#detail(entry, namesPart && value.type === 'scalar' ? value.text : tellingOf(value)),
      kind: kindOf(entry.key.text, schema, definedAs),
      span: entry.span,
      selection: entry.key.span,
      children: value?.type === 'map' && own ? this.entries(value, schema, schema.defines) : [],
    };
  }

  #detail(entry: Entry, telling: string): string {
    const hint = this.#hints.get(this.#snapshot.document.lines.lineAt(entry.key.span.start));
    return [shortened(telling), hint ?? ''].filter((part) => part !== '').join(' · ');
  }
}

/** Maps and named things are shown, also while they are empty; single values are not. */
function isShown(value: SyntaxNode | null, schema: SchemaNode, definedAs: string): boolean {
  if (definedAs !== '') return true;
  if (value?.type === 'map') return true;
  return value === null && (schema.properties.length > 0 || schema.named !== undefined);
}

function kindOf(key: string, schema: SchemaNode, definedAs: string): OutlineItem['kind'] {
  switch (definedAs) {
    case 'axis':
    case 'mass':
    case 'supply':
    case 'heater':
    case 'part':
      return definedAs;
    case 'drive-option':
      return 'drive';
    default:
      if (key === 'drive') return 'drive';
      return schema.defines === undefined ? 'element' : 'section';
  }
}

function tellingOf(node: SyntaxNode | null): string {
  const values = TELLING.flatMap((key) => {
    const value = childOf(node, key);
    return value?.type === 'scalar' && value.text !== '' ? [value.text] : [];
  });
  return values.slice(0, MOST_TELLING).join(', ');
}

/** One line without control characters, cut to what an outline has room for. */
function shortened(text: string, most = 60): string {
  const line = [...text.replace(/[\s\u0000-\u001f\u007f-\u009f\u200b-\u200f\u2028-\u202e\u2066-\u2069]+/g, ' ').trim()];
  return line.length <= most ? line.join('') : `${line.slice(0, most - 1).join('')}…`;
}
