import machineSchema from '../../../schemas/machine.schema.json' with { type: 'json' };
import type { QuantityKind } from '../language/quantity-kinds.ts';
import { scopeRow, splitInput } from './scopes.ts';

/** What the schema says of one entry: the one place where titles, kinds and choices are written. */
export interface EntrySchema {
  readonly title: string;
  readonly description: string;
  readonly quantity?: QuantityKind;
  readonly enum?: readonly string[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly type?: string | readonly string[];
}

interface RawSchema extends EntrySchema {
  readonly $ref?: string;
  readonly properties?: Readonly<Record<string, RawSchema>>;
  readonly additionalProperties?: RawSchema | boolean;
  readonly oneOf?: readonly RawSchema[];
  readonly const?: unknown;
  readonly $defs?: Readonly<Record<string, RawSchema>>;
}

// The JSON module's own type is a huge literal; the shape above is what is read of it.
const root = machineSchema as unknown as RawSchema;

function deref(schema: RawSchema | undefined): RawSchema | undefined {
  const ref = schema?.$ref;
  if (ref === undefined) return schema;
  const name = ref.slice(ref.lastIndexOf('/') + 1);
  return deref(root.$defs?.[name]);
}

function stepInto(schema: RawSchema | undefined, key: string): RawSchema | undefined {
  const here = deref(schema);
  if (key === '*') return typeof here?.additionalProperties === 'object' ? deref(here.additionalProperties) : undefined;
  return deref(here?.properties?.[key]);
}

function mapSchema(scope: string): RawSchema | undefined {
  const row = scopeRow(scope);
  let schema: RawSchema | undefined = root;
  for (const key of row.schema) schema = stepInto(schema, key);
  const variants = deref(schema)?.oneOf;
  if (variants && row.part) {
    const { kind } = row.part;
    return variants.map(deref).find((variant) => deref(variant?.properties?.['kind'])?.const === kind);
  }
  return schema;
}

const remembered = new Map<string, EntrySchema | undefined>();

/** The schema of the entry behind an input such as `screw.lead`; undefined when the schema has no such entry. */
export function entrySchema(input: string): EntrySchema | undefined {
  if (remembered.has(input)) return remembered.get(input);
  const { scope, entry } = splitInput(input);
  const found = deref(mapSchema(scope)?.properties?.[entry]);
  remembered.set(input, found);
  return found;
}

/** Every entry that the schema gives a scope, in writing order. */
export function entriesOfScope(scope: string): readonly string[] {
  return Object.keys(mapSchema(scope)?.properties ?? {});
}
