import machineJson from '../../../../schemas/machine.schema.json' with { type: 'json' };
import partsJson from '../../../../schemas/parts.schema.json' with { type: 'json' };
import settingsJson from '../../../../schemas/settings.schema.json' with { type: 'json' };
import { isQuantityKind, type QuantityKind } from '../quantity-kinds.ts';
import { childOf, type EntryPath, type SyntaxNode } from '../syntax-tree.ts';

/** A machine, a list of parts, or the settings of a repository. */
export type FileKind = 'machine' | 'parts' | 'settings';

/** One of the words that an entry allows. */
export interface SchemaChoice {
  readonly value: string;
  readonly description: string;
}

/** What the schema says of one place of a file. Built on demand and remembered, one for each schema object. */
export interface SchemaNode {
  readonly title: string;
  readonly description: string;
  /** As they would be written. */
  readonly examples: readonly string[];
  readonly types: readonly string[];
  readonly quantity?: QuantityKind;
  /** What the text names: `mass`, `part:screw`, `size:screw`, `file:parts`. */
  readonly refersTo?: string;
  /** What the keys of this map name: `mass`, `part`, `axis`. */
  readonly defines?: string;
  /** A quantity of which there is none at zero: a travel, a pitch, a resistance. */
  readonly aboveZero?: boolean;
  readonly choices: readonly SchemaChoice[];
  /** Entries with fixed keys, in the order in which one writes them. */
  readonly properties: readonly SchemaProperty[];
  readonly required: readonly string[];
  /** What stands under names of the person's own choice. */
  readonly named?: SchemaNode;
  readonly items?: SchemaNode;
  /** The entry that decides between several forms, and the form for each of its values. */
  readonly variants?: { readonly key: string; readonly of: ReadonlyMap<string, SchemaNode> };
  /** Where a value may be one thing or another: a word of a list, or a quantity. */
  readonly alternatives: readonly SchemaNode[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
}

export interface SchemaProperty {
  readonly key: string;
  readonly required: boolean;
  readonly schema: SchemaNode;
}

/** A schema as JSON, as far as it is read here. */
export interface RawSchema {
  readonly $id?: string;
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, RawSchema>>;
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly type?: string | readonly string[];
  readonly quantity?: string;
  readonly refersTo?: string;
  readonly defines?: string;
  readonly aboveZero?: boolean;
  readonly enum?: readonly unknown[];
  readonly enumDescriptions?: readonly string[];
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, RawSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: RawSchema | boolean;
  readonly items?: RawSchema;
  readonly oneOf?: readonly RawSchema[];
  readonly anyOf?: readonly RawSchema[];
  readonly discriminator?: { readonly propertyName: string };
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
}

/** A set of schemas that refer to one another by `$id`. */
export class SchemaModel {
  readonly #files: ReadonlyMap<string, RawSchema>;
  readonly #nodes = new Map<RawSchema, SchemaNode>();

  constructor(files: readonly RawSchema[]) {
    this.#files = new Map(files.map((file) => [file.$id ?? '', file]));
  }

  /** The outermost node of a file; throws where there is no such schema, which is a fault of the program. */
  root(id: string): SchemaNode {
    const file = this.#files.get(id);
    if (!file) throw new Error(`There is no schema "${id}".`);
    return this.#node(file, file);
  }

  #node(raw: RawSchema, file: RawSchema): SchemaNode {
    const known = this.#nodes.get(raw);
    if (known) return known;
    const node = new LazyNode(raw, file, this.#resolve, (inner, within) => this.#node(inner, within));
    this.#nodes.set(raw, node);
    return node;
  }

  /** Follows references; what stands beside a reference goes before what it leads to. */
  readonly #resolve = (raw: RawSchema, file: RawSchema): { readonly schema: RawSchema; readonly file: RawSchema } => {
    if (raw.$ref === undefined) return { schema: raw, file };
    const [id = '', pointer = ''] = raw.$ref.split('#');
    const target = id === '' ? file : this.#files.get(id);
    let found: unknown = target;
    for (const key of pointer.split('/').filter((part) => part !== '')) found = (found as Readonly<Record<string, unknown>> | undefined)?.[key];
    if (!target || found === undefined) throw new Error(`The reference "${raw.$ref}" leads nowhere.`);
    const inner = this.#resolve(found as RawSchema, target);
    const { $ref: _, ...beside } = raw;
    return { schema: Object.keys(beside).length === 0 ? inner.schema : { ...inner.schema, ...beside }, file: inner.file };
  };
}

type Resolve = (raw: RawSchema, file: RawSchema) => { readonly schema: RawSchema; readonly file: RawSchema };

class LazyNode implements SchemaNode {
  readonly title: string;
  readonly description: string;
  readonly examples: readonly string[];
  readonly types: readonly string[];
  readonly quantity?: QuantityKind;
  readonly refersTo?: string;
  readonly defines?: string;
  readonly aboveZero?: boolean;
  readonly choices: readonly SchemaChoice[];
  readonly required: readonly string[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly #schema: RawSchema;
  readonly #make: (raw: RawSchema) => SchemaNode;
  #properties: readonly SchemaProperty[] | undefined;
  #variants: SchemaNode['variants'] | undefined;

  constructor(raw: RawSchema, file: RawSchema, resolve: Resolve, make: (raw: RawSchema, file: RawSchema) => SchemaNode) {
    const resolved = resolve(raw, file);
    const { schema } = resolved;
    this.#schema = schema;
    this.#make = (inner) => make(inner, resolved.file);
    this.title = schema.title ?? '';
    this.description = schema.description ?? '';
    this.examples = (schema.examples ?? []).flatMap(scalarTexts);
    this.types = schema.type === undefined ? [] : typeof schema.type === 'string' ? [schema.type] : schema.type;
    this.choices = choicesOf(schema);
    this.required = schema.required ?? [];
    if (isQuantityKind(schema.quantity)) this.quantity = schema.quantity;
    if (schema.refersTo !== undefined) this.refersTo = schema.refersTo;
    if (schema.defines !== undefined) this.defines = schema.defines;
    if (schema.aboveZero === true) this.aboveZero = true;
    if (schema.minimum !== undefined) this.minimum = schema.minimum;
    if (schema.maximum !== undefined) this.maximum = schema.maximum;
    if (schema.minItems !== undefined) this.minItems = schema.minItems;
    if (schema.maxItems !== undefined) this.maxItems = schema.maxItems;
  }

  get properties(): readonly SchemaProperty[] {
    this.#properties ??= Object.entries(this.#schema.properties ?? {}).map(([key, raw]) => ({ key, required: this.required.includes(key), schema: this.#make(raw) }));
    return this.#properties;
  }

  // A getter may give undefined where the interface has the entry left out; readers see no difference.
  get named(): SchemaNode {
    const inner = this.#schema.additionalProperties;
    return (typeof inner === 'object' ? this.#make(inner) : undefined) as SchemaNode;
  }

  get items(): SchemaNode {
    return (this.#schema.items ? this.#make(this.#schema.items) : undefined) as SchemaNode;
  }

  get variants(): NonNullable<SchemaNode['variants']> {
    if (!this.#variants && this.#schema.oneOf && this.#schema.discriminator) {
      const key = this.#schema.discriminator.propertyName;
      const of = new Map<string, SchemaNode>();
      for (const variant of this.#schema.oneOf.map((raw) => this.#make(raw))) {
        const tag = variant.properties.find((property) => property.key === key);
        for (const choice of tag?.schema.choices ?? []) of.set(choice.value, variant);
      }
      this.#variants = { key, of };
    }
    return this.#variants as NonNullable<SchemaNode['variants']>;
  }

  get alternatives(): readonly SchemaNode[] {
    return (this.#schema.anyOf ?? []).map((raw) => this.#make(raw));
  }
}

function choicesOf(schema: RawSchema): SchemaChoice[] {
  if (schema.const !== undefined) return scalarTexts(schema.const).map((value) => ({ value, description: schema.description ?? '' }));
  return (schema.enum ?? []).flatMap((value, index) => scalarTexts(value).map((text) => ({ value: text, description: schema.enumDescriptions?.[index] ?? '' })));
}

/** Scalars as they would be written; a list of scalars in one example stands for several. */
function scalarTexts(value: unknown): string[] {
  if (typeof value === 'string' || typeof value === 'number') return [String(value)];
  return Array.isArray(value) ? value.filter((item) => typeof item === 'string' || typeof item === 'number').map(String) : [];
}

const model = new SchemaModel([machineJson, partsJson, settingsJson]);

/** What the schema says of a whole file. */
export function fileSchema(fileKind: FileKind): SchemaNode {
  return model.root(`${fileKind}.schema.json`);
}

/** The property that a key has in a map, in the form that the map's own entries decide. */
export function propertyOf(schema: SchemaNode, key: string, map: SyntaxNode | null | undefined): SchemaNode | undefined {
  const form = formOf(schema, map);
  return form.properties.find((property) => property.key === key)?.schema ?? form.named;
}

/** Where a schema has several forms, the one that the map's deciding entry names; the schema itself where there is none. */
export function formOf(schema: SchemaNode, map: SyntaxNode | null | undefined): SchemaNode {
  const { variants } = schema;
  if (!variants) return schema;
  const tag = childOf(map, variants.key);
  return (tag?.type === 'scalar' ? variants.of.get(tag.text) : undefined) ?? schema;
}

/**
 * What the schema says of the place at `path`. Where the form of a map depends on an entry such as `kind`, `tree` decides.
 * Undefined where the schema knows no such place.
 */
export function schemaAt(fileKind: FileKind, path: EntryPath, tree: SyntaxNode | null | undefined): SchemaNode | undefined {
  return schemaBelow(fileSchema(fileKind), path, tree);
}

/** The same, from any node of a schema and the value that stands there. */
export function schemaBelow(from: SchemaNode, path: EntryPath, tree: SyntaxNode | null | undefined): SchemaNode | undefined {
  let schema: SchemaNode | undefined = from;
  let node = tree;
  for (const key of path) {
    if (!schema) return undefined;
    const isItem: boolean = schema.items !== undefined && /^\d+$/.test(key);
    schema = isItem ? schema.items : propertyOf(schema, key, node);
    node = childOf(node, key);
  }
  return schema && formOf(schema, node);
}
