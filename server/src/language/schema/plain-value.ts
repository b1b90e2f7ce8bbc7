import type { SyntaxNode } from '../syntax-tree.ts';
import { formOf, propertyOf, type SchemaNode } from './schema-model.ts';

/** A value as the validators want it. Maps have no prototype, so that no key is special. */
export type PlainValue = string | number | boolean | null | readonly PlainValue[] | { readonly [key: string]: PlainValue };

/** A decimal number as YAML 1.2 writes it; what else YAML would take for one stays a text. */
const decimal = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;

/**
 * Plain values for the validators. Whether a scalar is a number or a text is decided by what the schema expects there, never by its
 * looks alone. The tree's own limits bound the work.
 */
export function plainValue(node: SyntaxNode | null, schema: SchemaNode | undefined): PlainValue {
  if (node === null) return null;
  if (node.type === 'scalar') return scalarValue(node.text, schema);
  if (node.type === 'list') {
    const items = schema?.items;
    return node.items.map((item) => plainValue(item, items));
  }
  const form = schema && formOf(schema, node);
  const map = Object.create(null) as Record<string, PlainValue>;
  for (const { key, value } of node.entries) {
    if (!(key.text in map)) map[key.text] = plainValue(value, form && propertyOf(form, key.text, node));
  }
  return map;
}

function scalarValue(text: string, schema: SchemaNode | undefined): PlainValue {
  const types = schema?.types ?? [];
  const wantsNumber = (types.includes('number') || types.includes('integer')) && !types.includes('string');
  if (wantsNumber && decimal.test(text)) return Number(text);
  if (types.includes('boolean') && !types.includes('string') && (text === 'true' || text === 'false')) return text === 'true';
  return text;
}
