import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Snapshots, type Snapshot } from '../../server/src/services/snapshot.ts';
import { example, machineUri } from '../support/cursor.ts';

const listUri = new URL('stock.parts.yaml', machineUri).href;

const draft = example('large-format-printer/first-draft.machine.yaml');
const cut = draft.indexOf('\nparts:');

/** The texts that are edited; the last one takes its motor from a part list. */
const starts = [
  draft,
  draft.replaceAll('\n', '\r\n'),
  example('inch-router/bench-router.machine.yaml'),
  draft.slice(0, cut + 1).replace('machine: ', 'uses: [stock.parts.yaml]\nmachine: '),
];
const list = `description-version: 1${draft.slice(cut)}`;

/** What fingers and clipboards put into a text. */
const typed = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom('a', '1', '0', ' ', '\n', '\r\n', ':', ': ', '- ', '#', ' # x', '"', "'", '{', '}', '[', ']', ',', '&a ', '*a', '|', '>', '\t', '%', '!', '?', '~', '…', 'µ', '😀', '\u200b', '---\n', '...\n', '\r') },
  { weight: 1, arbitrary: fc.constantFrom('  size: Tr10x2\n', 'axes:\n  x: { direction: vertical }\n', 'parts: {}\n', '    speed: 5 mm/s\n', ' ± 5 %', ' to 9 mm', '{'.repeat(40), 'moves: [plate, *a]\n', 'uses: [stock.parts.yaml]\n', 'drive-options:\n  a: {}\n') },
  { weight: 1, arbitrary: fc.string({ maxLength: 6 }) },
);

/** One edit; places are shares of the text, so that they stay inside it whatever came before. */
type Edit =
  | { readonly kind: 'insert'; readonly at: number; readonly text: string }
  | { readonly kind: 'delete'; readonly at: number; readonly length: number }
  | { readonly kind: 'move'; readonly at: number; readonly to: number }
  | { readonly kind: 'repeat'; readonly at: number }
  | { readonly kind: 'list'; readonly at: number; readonly text: string };

const share = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });
const edit: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ kind: fc.constant('insert' as const), at: share, text: typed }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('delete' as const), at: share, length: fc.oneof({ weight: 4, arbitrary: fc.integer({ min: 1, max: 6 }) }, { weight: 1, arbitrary: fc.integer({ min: 1, max: 300 }) }) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('move' as const), at: share, to: share }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('repeat' as const), at: share }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('list' as const), at: share, text: typed }) },
);

const insertAt = (text: string, at: number, inserted: string): string => {
  const offset = Math.floor(at * (text.length + 1));
  return text.slice(0, offset) + inserted + text.slice(offset);
};

function edited(text: string, change: Exclude<Edit, { kind: 'list' }>): string {
  const lines = text.split('\n');
  const line = Math.floor(change.at * lines.length);
  switch (change.kind) {
    case 'insert':
      return insertAt(text, change.at, change.text);
    case 'delete': {
      const offset = Math.floor(change.at * (text.length + 1));
      return text.slice(0, offset) + text.slice(offset + change.length);
    }
    case 'move': {
      const moved = lines.splice(line, 1);
      lines.splice(Math.floor(change.to * (lines.length + 1)), 0, ...moved);
      return lines.join('\n');
    }
    case 'repeat':
      lines.splice(line, 0, lines[line] ?? '');
      return lines.join('\n');
  }
}

/** Everything that is computed of a snapshot, as plain data. */
function figuresOf({ analysis }: Snapshot): readonly unknown[] {
  return (analysis?.evaluations ?? []).flatMap((evaluation) =>
    evaluation.registry.ofKind(evaluation.subject.kind).map(({ id }) => {
      const result = evaluation.result(id);
      return [evaluation.subject.id, evaluation.subject.chosen, id, ...(result.state === 'computed' ? [result.nominal, result.low, result.high] : [result])];
    }),
  );
}

describe('random edits', () => {
  it('start from texts with something to compute', () => {
    for (const start of starts) {
      const figures = figuresOf(new Snapshots((uri) => (uri === listUri ? list : undefined)).take(machineUri, start));
      expect(figures.filter((figure) => Array.isArray(figure) && figure.length === 6).length).toBeGreaterThan(60);
    }
  });
  it('never throw, and lead to the same as reading the last text afresh', () => {
    fc.assert(
      fc.property(fc.constantFrom(...starts), fc.array(edit, { minLength: 1, maxLength: 14 }), (start, edits) => {
        let text = start;
        let stock = list;
        const read = (uri: string): string | undefined => (uri === listUri ? stock : undefined);
        const kept = new Snapshots(read);
        let last = kept.take(machineUri, text);
        for (const change of edits) {
          if (change.kind === 'list') stock = insertAt(stock, change.at, change.text);
          else text = edited(text, change);
          last = kept.take(machineUri, text);
        }
        const fresh = new Snapshots(read).take(machineUri, text);
        expect(last.diagnostics).toEqual(fresh.diagnostics);
        expect(figuresOf(last)).toEqual(figuresOf(fresh));
      }),
      { numRuns: 60 },
    );
  }, 120_000);
  it('that are taken back lead to where they began', () => {
    fc.assert(
      fc.property(fc.constantFrom(...starts), fc.array(edit, { minLength: 1, maxLength: 6 }), (start, edits) => {
        const kept = new Snapshots((uri) => (uri === listUri ? list : undefined));
        const first = kept.take(machineUri, start);
        let text = start;
        const texts = edits.flatMap((change) => (change.kind === 'list' ? [] : [(text = edited(text, change))]));
        for (const each of [...texts, ...texts.slice(0, -1).reverse()]) kept.take(machineUri, each);
        const back = kept.take(machineUri, start);
        expect(back.diagnostics).toEqual(first.diagnostics);
        expect(figuresOf(back)).toEqual(figuresOf(first));
      }),
      { numRuns: 12 },
    );
  }, 120_000);
});
