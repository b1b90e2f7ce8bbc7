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

/** The entries of a scope's map; those of all kinds of part that may stand there, the first kind's first. */
function entriesIn(scope: string): Readonly<Record<string, RawSchema>> {
  const row = scopeRow(scope);
  let schema: RawSchema | undefined = root;
  for (const key of row.schema) schema = stepInto(schema, key);
  const kinds = row.part?.kinds ?? [];
  const maps = deref(schema)?.oneOf?.map(deref).filter((variant) => kinds.includes(String(deref(variant?.properties?.['kind'])?.const))) ?? [schema];
  return Object.assign({}, ...maps.map((map) => map?.properties ?? {}).reverse()) as Readonly<Record<string, RawSchema>>;
}

const remembered = new Map<string, EntrySchema | undefined>();

/** The schema of the entry behind an input such as `screw.lead`; undefined when the schema has no such entry. */
export function entrySchema(input: string): EntrySchema | undefined {
  if (remembered.has(input)) return remembered.get(input);
  const { scope, entry } = splitInput(input);
  const found = deref(entriesIn(scope)[entry]);
  remembered.set(input, found);
  return found;
}

/** Every entry that the schema gives a scope, in writing order. */
export function entriesOfScope(scope: string): readonly string[] {
  return Object.keys(entriesIn(scope));
}
