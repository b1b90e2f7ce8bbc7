import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';
import { readQuantity } from '../../server/src/language/read-quantity.ts';
import { quantityKindNames } from '../../server/src/language/quantity-kinds.ts';
import { applyEdits } from '../../server/src/language/spans.ts';
import { childOf, type SyntaxNode } from '../../server/src/language/syntax-tree.ts';
import { descriptions } from '../language/arbitrary-descriptions.ts';

const signs = fc.constantFrom(...'abc:-?#&*!|>\'"%@`{}[],~ \t\n\r\\/<=.0123456789°µΩ±😀\u00a0\u0000\ufeff\u2028\ud800');
const noise = fc.array(fc.oneof({ weight: 6, arbitrary: signs }, { weight: 1, arbitrary: fc.constantFrom('\n  ', '\n', ': ', 'key: ', '- ', '---\n', '{ a: 1', '"', '<<<<<<< x\n') }), { maxLength: 200 }).map((parts) => parts.join(''));

/** A valid description with a few characters damaged. */
const damaged = fc
  .tuple(descriptions(), fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), signs), { minLength: 1, maxLength: 4 }))
  .map(([text, hits]) => hits.reduce((result, [share, sign]) => {
    const at = Math.floor(share * result.length);
    return result.slice(0, at) + sign + result.slice(at + 1);
  }, text));

/** Every place of a tree lies in the text and in what is around it, except where an alias leads elsewhere. */
function checkSpans(node: SyntaxNode | null, start: number, end: number): void {
  if (node === null) return;
  expect(node.span.start).toBeGreaterThanOrEqual(start);
  expect(node.span.end).toBeLessThanOrEqual(end);
  expect(node.span.end).toBeGreaterThanOrEqual(node.span.start);
  if (node.type === 'list') for (const item of node.items) checkSpans(item, 0, end);
  if (node.type === 'map') {
    for (const entry of node.entries) {
      expect(entry.key.span.start).toBe(entry.span.start);
      expect(entry.span.end).toBeGreaterThanOrEqual(entry.key.span.end);
      checkSpans(entry.key, entry.span.start, entry.span.end);
      checkSpans(entry.value, 0, end);
    }
  }
}

function checkDocument(text: string): void {
  const document = readDocument('file:///a.machine.yaml', text);
  checkSpans(document.root, 0, text.length);
  let last = 0;
  for (const problem of document.problems) {
    expect(problem.span.start).toBeGreaterThanOrEqual(last);
    expect(problem.span.end).toBeGreaterThanOrEqual(problem.span.start);
    expect(problem.span.end).toBeLessThanOrEqual(text.length);
    expect(problem.message.length, problem.message).toBeLessThanOrEqual(240);
    expect(problem.message).not.toMatch(/[\0-\x08\x0b-\x1f\n]|undefined|NaN|\[object|\b(?:illegal|invalid|please|oops)\b/i);
    last = problem.span.start;
    for (const fix of problem.fixes ?? []) {
      for (const edit of fix.edits) expect(edit.span.end).toBeLessThanOrEqual(text.length);
      expect(() => applyEdits(text, fix.edits)).not.toThrow();
      const ordered = [...fix.edits].sort((a, b) => a.span.start - b.span.start);
      for (const [index, edit] of ordered.entries()) expect(edit.span.start).toBeGreaterThanOrEqual(ordered[index - 1]?.span.end ?? 0);
    }
  }
  for (const offset of [0, 1, text.length >> 1, text.length]) {
    const place = document.pathAt(offset);
    document.schemaAt(place.path);
    document.quantityAt(place.path);
    for (const part of ['key', 'value', 'entry', 'number', 'unit'] as const) document.spanOf(place.path, part);
    document.lines.positionAt(offset);
  }
}

describe('any text', { timeout: 120_000 }, () => {
  it('of signs that mean something is read without a throw, with all places inside it', () => {
    fc.assert(fc.property(noise, checkDocument), { numRuns: 2_000 });
  });

  it('of any characters is read', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 300 }), checkDocument), { numRuns: 700 });
  });

  it('that is a damaged description is read', () => {
    fc.assert(fc.property(damaged, checkDocument), { numRuns: 1_000 });
  });

  it('as a quantity gives a reading or a problem inside it', () => {
    const parts = fc.constantFrom('5', '1/4', '0.12', '-3', 'e', '1e9', ' ', 'mm', 'µm', 'kg', '/', '·', '^2', '²', '(', ')', '±', '+/-', ' to ', '%', '°', 'C', 'rpm', '"', ',', '.', '€', 'constructor', '__proto__', '\u0000', '😀', '∞', '-', '×10', '⁻⁶');
    fc.assert(
      fc.property(fc.array(parts, { maxLength: 8 }).map((list) => list.join('')), fc.constantFrom(...quantityKindNames), (text, kind) => {
        const reading = readQuantity(text, kind);
        if (reading.ok) {
          const { nominal, low, high } = reading.quantity;
          expect(low).toBeLessThanOrEqual(nominal);
          expect(high).toBeGreaterThanOrEqual(nominal);
          expect([low, nominal, high].every(Number.isFinite)).toBe(true);
        } else {
          expect(reading.problem.end).toBeLessThanOrEqual(text.length);
          expect(reading.problem.message.length, reading.problem.message).toBeLessThanOrEqual(240);
          for (const replacement of reading.problem.replacements) expect(replacement.end).toBeLessThanOrEqual(text.length);
        }
      }),
      { numRuns: 5_000 },
    );
  });

  it('gives a child for every path that it has', () => {
    fc.assert(
      fc.property(descriptions(), (text) => {
        const { root } = readDocument('file:///a.machine.yaml', text);
        if (root?.type === 'map') for (const entry of root.entries) expect(childOf(root, entry.key.text)).toBe(entry.value);
      }),
      { numRuns: 100 },
    );
  });
});
