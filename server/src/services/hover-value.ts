import type { Finding } from '../checks/judge.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import type { Figure } from '../figures/figure.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { quantityKinds, type QuantityKind } from '../language/quantity-kinds.ts';
import { readQuantity, type Quantity } from '../language/read-quantity.ts';
import type { SchemaNode } from '../language/schema/schema-model.ts';
import type { EntryPath } from '../language/syntax-tree.ts';
import { siUnit } from './display-unit.ts';
import { inputsFrom, nameOfSubject } from './elements.ts';
import { limitsOf, urgency } from './figure-limits.ts';
import { findingsAbout, rowOf } from './hover-element.ts';
import { blocks, codeInTable, code, escapeMarkdown, escapeShort, table } from './markdown.ts';
import { listed } from './missing.ts';
import type { Snapshot } from './snapshot.ts';

/** What a key means: title and description, and the words that it allows. `isName`: the key is a name of the person's own choice. */
export function keyMarkdown(key: string, schema: SchemaNode, isName: boolean): string {
  const choices = [...schema.choices, ...schema.alternatives.flatMap((alternative) => alternative.choices)];
  return blocks(
    `**${escapeMarkdown(schema.title)}** ${isName ? escapeShort(`"${key}"`) : code(key)}: ${escapeMarkdown(schema.description)}`,
    choices.length > 1 && table(['Word', 'Meaning'], choices.slice(0, 12).map((choice) => [codeInTable(choice.value), escapeMarkdown(choice.description)])),
    expectedQuantity(schema),
  );
}

/** What is due where a quantity is: ``A length, such as `420 mm`.`` */
function expectedQuantity(schema: SchemaNode): string | undefined {
  const quantity = schema.quantity ?? schema.alternatives.find((alternative) => alternative.quantity)?.quantity;
  if (quantity === undefined) return undefined;
  const examples = schema.examples.filter((example) => readQuantity(example, quantity).ok).slice(0, 3);
  return `${capital(kindWords(quantity))}${examples.length > 0 ? `, such as ${examples.map(code).join(' or ')}` : ''}.`;
}

/** What a value is: its meaning by the schema (left out below its key, where it stands already), its SI value and range, and what depends on it. */
export function valueMarkdown(text: string, schema: SchemaNode | undefined, path: EntryPath, snapshot: Snapshot, where: 'alone' | 'below its key' = 'alone'): string | undefined {
  const choice = [...(schema?.choices ?? []), ...(schema?.alternatives.flatMap((alternative) => alternative.choices) ?? [])].find((candidate) => candidate.value === text && candidate.description !== schema?.description);
  const quantity = schema && quantityOf(text, schema);
  return (
    blocks(
      where === 'alone' && schema && `**${escapeMarkdown(schema.title)}:** ${escapeMarkdown(schema.description)}`,
      choice && `${codeInTable(text)}: ${escapeMarkdown(choice.description)}`,
      quantity ? quantitySentence(quantity) : where === 'alone' && schema && !choice && expectedQuantity(schema),
      ...dependents(path, snapshot),
    ) || undefined
  );
}

function quantityOf(text: string, schema: SchemaNode): Quantity | undefined {
  for (const node of [schema, ...schema.alternatives]) {
    const reading = node.quantity === undefined ? undefined : readQuantity(text, node.quantity);
    if (reading?.ok) return reading.quantity;
  }
  return undefined;
}

/** The value in SI with its range: `0.06 m/s, from 0.054 to 0.066 m/s`. */
export function quantitySentence({ nominal, low, high, kind, stated }: Quantity): string {
  const unit = siUnit(kind);
  const si = (value: number): string => formatQuantity(value, kind, { unit, digits: 6 });
  if (unit === '') return low === high ? '' : `Nominal ${si(nominal)}, from ${si(low)} to ${si(high)}.`;
  if (low === high) return `In SI units ${si(nominal)}.`;
  const how = stated === 'range' ? 'the middle of the range' : 'nominal';
  return `In SI units ${si(nominal)} (${how}), from ${si(low)} to ${si(high)}.`;
}

/** What rests on what is written at a place or below it, for each drive or heated part: the figures that decide, and how many more. */
export function dependents(path: EntryPath, snapshot: Snapshot): readonly string[] {
  const uses = (snapshot.analysis?.evaluations ?? []).flatMap((evaluation) => {
    const inputs = inputsFrom(evaluation, path, snapshot.uri);
    return inputs.length === 0 ? [] : [{ evaluation, figures: figuresResting(inputs, evaluation, findingsAbout(evaluation, snapshot)) }];
  });
  const [first] = uses;
  if (!first) return [];
  const shown = first.figures.slice(0, 6);
  const names = uses.filter(({ evaluation }) => evaluation.subject.kind !== 'machine').map(({ evaluation }) => escapeShort(nameOfSubject(evaluation.subject)));
  const more = first.figures.length - shown.length;
  // Of the machine as a whole it goes without saying.
  const users = names.length === 0 ? '' : `Used by ${listed(names.slice(0, 6))}${names.length > 6 ? ` and ${names.length - 6} more` : ''}. `;
  return [
    `${users}${shown.length === 0 ? 'No figure rests on it so far.' : 'What depends on it, decisive figures first:'}`,
    ...[table(['Figure', 'Value', 'Limit', 'Used'], shown.map((figure) => rowOf(figure, first.evaluation, findingsAbout(first.evaluation, snapshot))))].filter((block) => block !== undefined),
    ...(more > 0 ? [`And ${more} more ${more === 1 ? 'figure' : 'figures'}.`] : []),
  ];
}

function figuresResting(inputs: readonly string[], evaluation: Evaluation, findings: readonly Finding[]): readonly Figure[] {
  return evaluation
    .figures()
    .filter((figure) => evaluation.result(figure.id).state === 'computed')
    .map((figure) => {
      const limits = limitsOf(figure.id, evaluation);
      return { figure, limits, isLimit: limits.some(({ limit }) => typeof limit.at === 'string' && inputs.includes(limit.at)) };
    })
    .filter(({ figure, isLimit }) => isLimit || evaluation.inputsUnder(figure.id).some((input) => inputs.includes(input)))
    .map((row) => ({ ...row, urgency: urgency(row.figure, evaluation, findings) }))
    // The figure that is held against the value itself leads.
    .sort((a, b) => Number(b.isLimit) - Number(a.isLimit) || a.urgency - b.urgency || a.figure.rank - b.figure.rank || Number(b.limits.length > 0) - Number(a.limits.length > 0))
    .map(({ figure }) => figure);
}

const kindWords = (kind: QuantityKind): string => `${/^[aeiou]/.test(quantityKinds[kind].title) ? 'an' : 'a'} ${quantityKinds[kind].title}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
