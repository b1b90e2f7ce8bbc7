import { nearestNames } from '../nearest-names.ts';
import type { Problem, Severity } from '../problems.ts';
import { shortened } from '../slip-messages.ts';
import type { Span } from '../spans.ts';
import { readQuantity } from '../read-quantity.ts';
import type { SchemaNode } from './schema-model.ts';

/** The wording of findings on the structure of a file. */

type Fix = NonNullable<Problem['fixes']>[number];

function problem(code: string, message: string, span: Span, fixes: readonly Fix[] = [], severity: Severity = 'error'): Problem {
  return { code, severity, message, span, ...(fixes.length > 0 ? { fixes } : {}) };
}

function changes(span: Span, texts: readonly string[]): Fix[] {
  return texts.map((text) => ({ title: `Change to "${text}"`, edits: [{ span, text }] }));
}

/** "a, b or c" */
export function either(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1) ?? ''}`;
}

function quoted(words: readonly string[]): string[] {
  return words.map((word) => `"${shortened(word)}"`);
}

/** As many words as fit into the room that a message has. */
function fitting(words: readonly string[], room: number): { readonly shown: readonly string[]; readonly all: boolean } {
  let used = 0;
  const shown = words.filter((word) => (used += word.length + 2) <= room);
  return { shown, all: shown.length === words.length };
}

export function keyUnknown(key: string, span: Span, where: string, known: readonly string[], written: { has(key: string): boolean }, elsewhere: readonly string[]): Problem {
  const free = known.filter((name) => !written.has(name));
  const near = nearestNames(key, free);
  const start = where === '' ? `"${shortened(key)}" is not known here` : `"${shortened(key)}" is not known in "${shortened(where, 20)}"`;
  if (near.length > 0) return problem('key-unknown', `${start}. Did you mean ${either(quoted(near))}?`, span, changes(span, near));
  if (elsewhere.length > 0) return problem('key-unknown', `${start}. It belongs in ${either(quoted(elsewhere.slice(0, 3)))}.`, span);
  const { shown, all } = fitting(free, 90);
  if (shown.length === 0) return problem('key-unknown', `${start}, and no further key is.`, span);
  return problem('key-unknown', `${start}. Keys that are: ${shown.join(', ')}${all ? '' : ' and others'}.`, span);
}

export function entriesMissing(keys: readonly string[], where: string, span: Span): Problem {
  const words = quoted(keys);
  const list = words.length === 1 ? words[0] : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
  const place = where === '' ? 'The description' : `"${shortened(where)}"`;
  return problem('entry-missing', `${place} needs ${list}: nothing can be computed without ${keys.length === 1 ? 'it' : 'them'}.`, span);
}

export function valueMissing(key: string, schema: SchemaNode | undefined, required: boolean, span: Span): Problem {
  const example = schema?.examples[0] ?? schema?.choices[0]?.value;
  const what = schema && isMap(schema) ? 'Its entries go below, two spaces in' : example === undefined ? 'Write one after the colon' : `Write one, such as "${shortened(example)}"`;
  return problem('value-missing', `"${shortened(key)}" has no value. ${what}${required ? '' : ', or remove the key'}.`, span, [], required ? 'error' : 'warning');
}

export function isMap(schema: SchemaNode): boolean {
  return schema.types.includes('object') || schema.properties.length > 0 || schema.named !== undefined || schema.variants !== undefined;
}

/** A value of another shape than the schema wants. */
export function wrongType(written: { readonly type: 'map' | 'list' | 'scalar'; readonly text: string }, schema: SchemaNode | undefined, types: readonly string[], span: Span, fixes: readonly Fix[] = []): Problem {
  const has = written.type === 'map' ? 'entries stand' : written.type === 'list' ? 'a list stands' : written.text === '' ? 'nothing stands' : `the text "${shortened(written.text, 20)}" stands`;
  const example = schema?.examples[0] ?? schema?.choices[0]?.value;
  const such = example === undefined || types.includes('object') ? '' : `, such as "${shortened(example, 24)}"`;
  const due = types.includes('object')
    ? dueMap(schema)
    : types.includes('array')
      ? schema?.items && isMap(schema.items)
        ? written.type === 'map' ? 'A list is due here, with "- " before the first entry of each item' : 'A list is due here, each item on a line that begins with "- "'
        : `A list is due here${such === '' ? ', such as [ a, b ]' : `, such as [ ${shortened(example ?? '', 24)} ]`}`
      : types.includes('integer')
        ? `A whole number is due here${such}`
        : types.includes('boolean')
          ? 'true or false is due here'
          : types.includes('number') && !types.includes('string')
            ? `A number is due here${such}`
            : schema?.refersTo?.startsWith('part:') === true && written.type === 'map'
              ? `A name${such === '' ? '' : `${such},`} is due here, and its entries under "parts"`
              : `A single value is due here${such}`;
  return problem('value-of-wrong-type', `${due}, but ${has} there.`, span, fixes);
}

function dueMap(schema: SchemaNode | undefined): string {
  const required = schema?.properties.filter((property) => property.required).map((property) => property.key) ?? [];
  const others = (schema?.properties ?? []).map((property) => property.key).filter((key) => key !== 'kind');
  const keys = (required.length > 0 ? required : others).slice(0, 3);
  return keys.length === 0 ? 'Named entries are due here, two spaces in' : `Entries such as ${either(quoted(keys))} are due here`;
}

export function notInList(text: string, choices: readonly string[], span: Span): Problem {
  const near = nearestNames(text, choices);
  const { shown, all } = fitting(choices, 110);
  const hint = near.length > 0 ? `Did you mean ${either(quoted(near))}?` : `Choose ${all ? either(shown) : `among ${shown.join(', ')} and others`}.`;
  const start = choices.length === 1 ? `Only "${shortened(choices[0] ?? '')}" can stand here, not "${shortened(text)}"` : `"${shortened(text)}" is not one of the choices`;
  const fixes = near.length > 0 ? near : choices.length <= 5 ? choices : [];
  return problem('value-not-in-list', choices.length === 1 ? `${start}.` : `${start}. ${hint}`, span, changes(span, fixes));
}

/** A version of the language that is not this one. */
export function otherVersion(text: string, version: string, span: Span): Problem {
  return problem('value-not-in-list', `This release reads version ${version} of the language, not "${shortened(text)}". A file of a later version needs a later release.`, span, changes(span, [version]));
}

/** A word alone where a map is due: the entry that it probably is the value of, and the text of the map then. */
export function asEntry(text: string, schema: SchemaNode | undefined, span: Span): readonly Fix[] {
  const fits = (property: SchemaNode['properties'][number]): boolean => {
    const { choices, quantity, refersTo = '' } = property.schema;
    if (choices.some((choice) => choice.value === text)) return property.key !== 'kind' || property.required;
    if (quantity !== undefined) return property.required && /\s*[^\d.±%\s]/.test(text) && readQuantity(text, quantity).ok;
    return refersTo.startsWith('size:') && /^[A-Za-z]*[\d(][^{}[\],#]*$/.test(text);
  };
  return (schema?.properties ?? []).filter(fits).slice(0, 2).map(({ key }) => ({ title: `Write "{ ${key}: ${shortened(text)} }"`, edits: [{ span, text: `{ ${key}: ${text} }` }] }));
}

export function outOfBounds(what: string, span: Span): Problem {
  return problem('value-out-of-bounds', what, span);
}

export function nameOutOfForm(name: string, span: Span): Problem {
  return problem('value-out-of-form', `"${shortened(name)}" cannot be a name here: a letter first, then letters, digits, blanks and "_", ".", "-", at most 64 in all.`, span);
}

export function textOutOfForm(text: string, schema: SchemaNode | undefined, span: Span): Problem {
  const example = schema?.examples[0];
  return problem('value-out-of-form', `"${shortened(text)}" does not have the form that is due here${example === undefined ? '' : `, such as "${shortened(example)}"`}.`, span);
}

export function contradiction(where: string, span: Span): Problem {
  return problem('entries-contradict', `The entries of "${shortened(where)}" exclude one another, or one of several is missing. Give exactly one of them.`, span);
}
