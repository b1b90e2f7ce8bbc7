import { nearestNames } from './nearest-names.ts';
import type { Problem } from './problems.ts';
import { implausible } from './quantity-messages.ts';
import { readQuantity, type QuantityProblem, type QuantityReading } from './read-quantity.ts';
import { formOf, propertyOf, type SchemaNode } from './schema/schema-model.ts';
import { notInList } from './schema/structure-messages.ts';
import type { Span } from './spans.ts';
import type { ScalarNode, SyntaxNode } from './syntax-tree.ts';

/** Reads every quantity of a tree and reports what is wrong with it, or unusual. */
export function quantityProblems(root: SyntaxNode | null, schema: SchemaNode, text: string): Problem[] {
  const problems: Problem[] = [];
  // What an alias repeats is judged once for each place of the schema that it stands in.
  const judged = new Map<SyntaxNode, SchemaNode>();
  const visit = (node: SyntaxNode | null, here: SchemaNode | undefined): void => {
    if (node === null || !here || judged.get(node) === here) return;
    if (node.type === 'scalar') {
      const problem = scalarProblem(node, here, text);
      if (problem) problems.push(problem);
      return;
    }
    judged.set(node, here);
    if (node.type === 'list') {
      for (const item of node.items) visit(item, here.items);
      return;
    }
    const form = formOf(here, node);
    for (const entry of node.entries) visit(entry.value, propertyOf(form, entry.key.text, node));
  };
  visit(root, schema);
  return problems;
}

/** What the text of a scalar reads as; undefined where no quantity is due, or where it is one of the words that may stand for one. */
export function scalarQuantity(node: ScalarNode, schema: SchemaNode): QuantityReading | undefined {
  const { kind, choices } = quantityDue(schema);
  return kind === undefined || choices.includes(node.text) ? undefined : readQuantity(node.text, kind);
}

function quantityDue(schema: SchemaNode): { readonly kind: SchemaNode['quantity']; readonly choices: readonly string[] } {
  if (schema.quantity !== undefined) return { kind: schema.quantity, choices: schema.choices.map((choice) => choice.value) };
  const { alternatives } = schema;
  if (alternatives.length === 0) return { kind: undefined, choices: [] };
  return {
    kind: alternatives.find((one) => one.quantity !== undefined)?.quantity,
    choices: alternatives.flatMap((one) => one.choices.map((choice) => choice.value)),
  };
}

function scalarProblem(node: ScalarNode, schema: SchemaNode, text: string): Problem | undefined {
  const reading = scalarQuantity(node, schema);
  if (!reading) return undefined;
  if (!reading.ok) {
    const { choices } = quantityDue(schema);
    // A word where a word or a quantity may stand is more likely a misspelt word.
    const word = choices.length > 0 && (nearestNames(node.text, choices).length > 0 || !/\d/.test(node.text));
    return word ? notInList(node.text, choices, node.span) : placed(reading.problem, node, text);
  }
  if (schema.aboveZero === true && reading.quantity.nominal === 0) {
    return { code: 'value-out-of-domain', severity: 'error', message: `${schema.title} of zero cannot be: nothing can be computed with it. Write its value, or leave it out.`, span: node.span };
  }
  const question = implausible(reading.quantity);
  return question === undefined ? undefined : { code: 'magnitude-implausible', severity: 'information', message: question, span: node.span };
}

function placed(problem: QuantityProblem, node: ScalarNode, text: string): Problem {
  const base = textStart(node, text);
  if (base === undefined) return { code: problem.code, severity: 'error', message: problem.message, span: node.span };
  const span = (part: { start: number; end: number }): Span => ({ start: base + part.start, end: base + part.end });
  const shown = problem.end > problem.start ? span(problem) : node.span;
  const fixes = problem.replacements.map((one) => ({ title: one.title, edits: [{ span: span(one), text: one.text }] }));
  return { code: problem.code, severity: 'error', message: problem.message, span: shown, ...(fixes.length > 0 ? { fixes } : {}) };
}

/** Where the decoded text of a scalar begins in the document; undefined where escapes or folded lines make positions differ. */
export function textStart(node: ScalarNode, text: string): number | undefined {
  const { start, end } = node.span;
  if (end - start === node.text.length) return text.slice(start, end) === node.text ? start : undefined;
  return end - start === node.text.length + 2 && text.slice(start + 1, end - 1) === node.text ? start + 1 : undefined;
}
