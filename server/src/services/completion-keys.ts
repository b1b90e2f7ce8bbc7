import { kindDetails } from '../language/quantity-kinds.ts';
import { isMap } from '../language/schema/structure-messages.ts';
import type { SchemaNode, SchemaProperty } from '../language/schema/schema-model.ts';
import { checkKeyDrafts } from './check-help.ts';
import type { CompletionContext } from './completion-context.ts';
import { inSnippet, type Draft } from './completion-item.ts';
import { templateDrafts } from './completion-templates.ts';
import { keyMarkdown } from './hover-value.ts';

/** Keys of the map in which one is due, and templates for it: required ones first, then in writing order, none that is there already. */
export function keyDrafts(schema: SchemaNode, context: CompletionContext): Draft[] {
  const has = (key: string): boolean => context.siblings.has(key);
  const form = formBySiblings(schema, context.siblings);
  const properties = propertiesOf(form).filter(({ key }) => !has(key));
  const keys = [...properties.filter((property) => property.required), ...properties.filter((property) => !property.required)].map((property) => keyDraft(property, context));
  if ((context.colonFollows || context.flow) && schema.defines !== 'check') return keys;
  const ofMachine = context.path.length === 0 && schema.properties.some(({ key }) => key === 'axes');
  const templates = [
    ...(ofMachine && context.siblings.size === 0 ? templateDrafts('', has) : []),
    ...(ofMachine && context.siblings.size > 0 && !has('layout') ? templateDrafts('layout', has) : []),
    ...(schema.defines === undefined ? [] : templateDrafts(schema.defines, has)),
    ...(properties.some(({ key }) => key === 'drive') && !has('drive-options') ? templateDrafts('drive', has) : []),
  ];
  if (schema.defines === 'check') return [...checkKeyDrafts(context)];
  // Where the person chooses the names, a template is the best that can be offered.
  return keys.length === 0 ? templates : [...keys, ...templates];
}

/** Where an entry such as `kind` decides the form, that entry alone until it is there. */
function propertiesOf(form: SchemaNode): readonly SchemaProperty[] {
  const { variants } = form;
  if (!variants) return form.properties;
  const [first] = [...variants.of.values()].flatMap((variant) => variant.properties.filter((property) => property.key === variants.key));
  return first ? [{ ...first, required: true }] : [];
}

/** The form of a map that its own entries decide, from the lines around the cursor. */
export function formBySiblings(schema: SchemaNode, siblings: ReadonlyMap<string, string>): SchemaNode {
  const { variants } = schema;
  const tag = variants && siblings.get(variants.key);
  return (tag === undefined ? undefined : variants?.of.get(tag)) ?? schema;
}

function keyDraft({ key, required, schema }: SchemaProperty, context: CompletionContext): Draft {
  const value = valueSnippet(schema, context);
  return {
    label: key,
    kind: 'key',
    detail: `${required ? 'required · ' : ''}${schema.description === '' ? schema.title : schema.description}`,
    documentation: keyMarkdown(key, schema, false),
    insertText: context.colonFollows ? key : `${key}:${value}`,
    isSnippet: !context.colonFollows && value.includes('$'),
    ...(context.colonFollows || value !== ' ' ? {} : { asksOn: true }),
  };
}

/** What follows the colon of a new key: a blank where a single value is due, brackets or further lines where more is. */
function valueSnippet(schema: SchemaNode, context: CompletionContext): string {
  if (schema.items) {
    if (isMap(schema.items)) return context.flow ? ' [{ $1 }]' : '\n  - $1';
    const places = Math.min(Math.max(schema.minItems ?? 1, 1), 6);
    return ` [${Array.from({ length: places }, (_, index) => tabStop(index + 1, schema.items)).join(', ')}]`;
  }
  if (isMap(schema)) return context.flow ? ' { $1 }' : '\n  $1';
  if (schema.choices.length === 1) return ` ${schema.choices[0]?.value ?? ''}`;
  return ' ';
}

/** A tab stop of a list of fixed length says what is due by an example. */
function tabStop(number: number, item: SchemaNode | undefined): string {
  const example = item?.quantity === undefined || kindDetails(item.quantity).bare === true ? undefined : item.examples[0];
  return example === undefined ? `$${number}` : `\${${number}:${inSnippet(example)}}`;
}
