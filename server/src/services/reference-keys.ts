import machineSchema from '../../../schemas/machine.schema.json' with { type: 'json' };
import partsSchema from '../../../schemas/parts.schema.json' with { type: 'json' };
import { formatQuantity } from '../language/format-quantity.ts';
import { aKind, kindDetails, type QuantityKind } from '../language/quantity-kinds.ts';
import { describeInput, fallbacksFor } from '../machine/fallback-registry.ts';
import type { Fallback, InputReader } from '../machine/input.ts';
import { scopeRows } from '../machine/scopes.ts';
import type { InputValue } from '../machine/values.ts';
import { blocks, code, codeInTable, escapeMarkdown, table } from './markdown.ts';
import { listed } from './missing.ts';
import { sampleGantry, sampleLayout, sampleMachine } from './sample-machine.ts';

/** As much of a schema as the page of keys shows. */
interface Schema {
  readonly $ref?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly quantity?: QuantityKind;
  readonly enum?: readonly string[];
  readonly enumDescriptions?: readonly string[];
  readonly const?: unknown;
  readonly examples?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly refersTo?: string;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | boolean;
  readonly items?: Schema;
  readonly oneOf?: readonly Schema[];
  readonly anyOf?: readonly Schema[];
  readonly $defs?: Readonly<Record<string, Schema>>;
}

// The JSON modules' own types are huge literals; the shape above is what is read of them.
const machine = machineSchema as unknown as Schema;
const parts = partsSchema as unknown as Schema;

const refersOnTo = (schema: Schema): string | undefined => schema.$ref?.slice(schema.$ref.lastIndexOf('/') + 1);

function deref(schema: Schema): Schema {
  const name = refersOnTo(schema);
  const target = name === undefined ? undefined : machine.$defs?.[name];
  return target ? { ...deref(target), ...(schema.title === undefined ? {} : { title: schema.title }) } : schema;
}

/** One map of a description: its path with NAME for names that the person chooses, and its schema. */
interface Section {
  readonly path: string;
  readonly schema: Schema;
  /** The kind of part, in a variant of parts. */
  readonly kind?: string;
  /** The path of the section that has the same entries. */
  readonly sameAs?: string;
}

/** Every key of both kinds of file, a table for each map. */
export function keysReference(): string {
  return `${blocks(
    '# Keys',
    'Every key of a machine description (`*.machine.yaml`) and of a part list (`*.parts.yaml`). NAME stands for a name that you choose. Keys marked * are required.',
    'A quantity is a number and a unit: `420 mm`, `1.5 m/s²` (or `m/s^2`), `0.9 N·m` (or `Nm`), `3/8 in`. It may carry a tolerance (`6.4 kg ± 5 %`, `0.12 ± 0.03`) or be a range (`0.08 to 0.15`). Any prefix and any unit of the right kind is read; the usual ones are listed. Decimals have a point.',
    'The levels are YAML: two spaces in for what belongs to the key above, no tabs, a colon and a space after each key. Short maps may stand on one line in braces, `{ voltage: 24 V, current: 10 A }`; lists stand in brackets, `[plate, cradle]`, or on lines that begin with a dash. `#` begins a remark.',
    '## A whole machine',
    `\`\`\`yaml\n${sampleMachine}\`\`\``,
    '`motor` takes the name of a part. A screw, nut, coupling or brake is described where it is used, or under `parts` and named by `part`: `screw: { part: my-screw, unsupported-length: 340 mm }`; what stands beside `part` goes before what the part says. A name is looked up in the file first, then in the part lists under `uses`.',
    '## A gantry with belt and racks',
    `\`\`\`yaml\n${sampleGantry}\`\`\``,
    'Two axes on crossed belts have no drives of their own. Their motors stand under `layout`:',
    `\`\`\`yaml\n${sampleLayout}\`\`\``,
    'The last column says what stands in for an entry that is not written. A handbook range is a cautious span of usual values: the finding or the hover that uses it shows it, with its source.',
    ...sections('', machine, new Map()).map(sectionMarkdown),
    '# Keys of a part list',
    ...sections('', { ...parts, properties: Object.fromEntries(Object.entries(parts.properties ?? {}).filter(([key]) => key !== 'parts')) }, new Map()).map(sectionMarkdown),
    'Under `parts` stand the same parts as in a machine description.',
  )}\n`;
}

/** A map and the maps inside it, in the order of the schema. What the schema describes once is shown once: `seen` holds where. */
function sections(path: string, given: Schema, seen: Map<string, string>): readonly Section[] {
  const schema = deref(given);
  if (schema.oneOf) return schema.oneOf.flatMap((variant) => variantSections(path, variant, seen));
  if (schema.type === 'array' && schema.items) return deref(schema.items).properties ? sections(`${path}[]`, schema.items, seen) : [];
  if (typeof schema.additionalProperties === 'object') return sections(`${path}.NAME`, schema.additionalProperties, seen);
  if (!schema.properties) return [];
  const definition = refersOnTo(given);
  const before = definition === undefined ? undefined : seen.get(definition);
  if (before !== undefined) return [{ path, schema, sameAs: before }];
  if (definition !== undefined) seen.set(definition, path);
  return [{ path, schema }, ...Object.entries(schema.properties).flatMap(([key, child]) => sections(path === '' ? key : `${path}.${key}`, child, seen))];
}

function variantSections(path: string, variant: Schema, seen: Map<string, string>): readonly Section[] {
  const kind = deref(variant).properties?.['kind']?.const;
  const [own, ...inner] = sections(path, variant, seen);
  return own ? [typeof kind === 'string' ? { ...own, kind } : own, ...inner] : [];
}

function sectionMarkdown({ path, schema, kind, sameAs }: Section): string {
  const scope = scopeOfSection(path, kind);
  const required = new Set(schema.required);
  const rows = Object.entries(schema.properties ?? {}).map(([key, child]) => {
    const entry = deref(child);
    return [
      `${codeInTable(key)}${required.has(key) ? ' *' : ''}`,
      escapeMarkdown(meaningOf(key, entry)),
      valueOf(entry),
      scope === undefined ? '' : defaultOf(`${scope}.${key}`),
    ];
  });
  const title = path === '' ? 'Top level' : `${escapeMarkdown(path)}${kind === undefined ? '' : ` (kind: ${kind})`}`;
  if (sameAs !== undefined) return blocks(`## ${title}`, `The same entries as in ${codeInTable(sameAs)}.`);
  return blocks(`## ${title}`, schema.description === undefined ? undefined : escapeMarkdown(schema.description), table(['Key', 'Meaning', 'Value', 'When it is not written'], rows));
}

/** The description, after the title where that says more than the key. */
function meaningOf(key: string, { title = '', description = '' }: Schema): string {
  return title.toLowerCase() === key.replaceAll('-', ' ') || title === '' ? description : `${title}. ${description}`;
}

/** The scope whose inputs a section holds. */
function scopeOfSection(path: string, kind: string | undefined): string | undefined {
  if (kind !== undefined) return scopeRows.find((row) => row.part?.kinds.includes(kind))?.id;
  const keys = path === '' ? [] : path.split('.').map((key) => (key === 'NAME' ? '*' : key));
  return scopeRows.find((row) => row.schema.join('.') === keys.join('.'))?.id;
}

function valueOf(given: Schema): string {
  const schema = deref(given);
  if (schema.anyOf) return schema.anyOf.map(valueOf).join('; or ');
  if (schema.const !== undefined) return codeInTable(JSON.stringify(schema.const).replace(/^"|"$/g, ''));
  if (schema.enum) return schema.enum.map((word, index) => `${codeInTable(word)}${schema.enumDescriptions?.[index] === undefined ? '' : ` ${escapeMarkdown(schema.enumDescriptions[index])}`}`).join('<br>');
  if (schema.quantity !== undefined) return quantityText(schema.quantity, schema);
  if (schema.type === 'array') return `a list${countText(schema)}: ${schema.items ? (deref(schema.items).properties ? 'of maps, see below' : valueOf(schema.items)) : ''}`;
  if (schema.type === 'integer') return `a whole number${boundsText(schema)}${exampleText(schema)}`;
  if (schema.properties || schema.additionalProperties) return 'a map, see below';
  if (schema.refersTo !== undefined) return `${referenceText(schema.refersTo)}${exampleText(schema)}`;
  return `a text${exampleText(schema)}`;
}

function quantityText(kind: QuantityKind, schema: Schema): string {
  const { units, bare } = kindDetails(kind);
  const inUnits = units.length === 0 ? '' : ` in ${units.map(codeInTable).join(', ')}`;
  return `${aKind(kind)}${inUnits}${bare === true ? `${inUnits === '' ? '' : ' or'} as a bare number` : ''}${exampleText(schema)}`;
}

const references: Readonly<Record<string, string>> = { mass: 'the name of a mass', axis: 'the name of an axis', point: 'the name of a point of the frame', support: 'the name of a support of the axis', supply: 'the name of a supply', 'drive-option': 'the name of a drive option', material: 'the name of a material', 'file:parts': 'the path of a part list' };

function referenceText(refersTo: string): string {
  const [group = '', kind = ''] = refersTo.split(':');
  if (group === 'part') return `the name of a part of kind ${(scopeRows.find((row) => row.id === kind)?.part?.kinds ?? [kind]).map(codeInTable).join(', ')}`;
  if (group === 'size') return `the designation of a standard size (${escapeMarkdown(kind)})`;
  return references[refersTo] ?? 'a name';
}

const countText = ({ minItems, maxItems }: Schema): string => {
  if (minItems === undefined || maxItems === undefined) return '';
  return minItems === maxItems ? ` of ${minItems}` : ` of ${minItems} to ${maxItems}`;
};

const boundsText = ({ minimum, maximum }: Schema): string =>
  minimum !== undefined && maximum !== undefined ? ` from ${minimum} to ${maximum}` : minimum !== undefined ? ` of ${minimum} or more` : '';

function exampleText({ examples }: Schema): string {
  const texts = (examples ?? []).flat().map(String).slice(0, 3);
  return texts.length === 0 ? '' : `, such as ${listed(texts.map(codeInTable)).replace(/ and (?=[^ ]*`[^`]*`$)/, ' or ')}`;
}

/** What stands in for an entry, asked with nothing else known; what it asks for then is what it depends on. */
function defaultOf(input: string): string {
  const declared = fallbacksFor(input);
  // In the order in which they are tried.
  const told = [
    ...declared.flatMap(({ compose }) => (compose ? ['follows from other entries'] : [])),
    ...declared.flatMap(({ standard }) => (standard ? ['from the standard size'] : [])),
    ...declared.flatMap(({ handbook }) => (handbook ? [handbookText(input, handbook)] : [])),
  ];
  return [...new Set(told)].join('; else ');
}

function handbookText(input: string, handbook: NonNullable<Fallback['handbook']>): string {
  const asked = new Set<string>();
  const ask = (id: string): undefined => {
    asked.add(id);
    return undefined;
  };
  const reader: InputReader = { number: ask, choice: ask, origin: ask, isWritten: () => false };
  const answer = handbook(reader);
  const by = asked.size === 0 ? '' : `, depending on ${listed([...asked].map((id) => codeInTable(id)))}`;
  if (!answer) return `a handbook range${by}`;
  return `${valueText(answer.value, input)} (${escapeMarkdown(answer.source)}${answer.weak === true && !answer.source.includes('memory') ? '; from memory or thinly sourced' : ''})${by}`;
}

function valueText(value: InputValue, input: string): string {
  if (value.type === 'choice') return code(value.text);
  if (value.type === 'table') return `${value.rows.length} points`;
  const { quantity } = describeInput(input);
  const text = (si: number): string => (quantity ? formatQuantity(si, quantity, value.unit === undefined ? {} : { unit: value.unit }) : String(si));
  return escapeMarkdown(value.low === value.high ? text(value.nominal) : `${text(value.nominal)} (${text(value.low)} to ${text(value.high)})`);
}
