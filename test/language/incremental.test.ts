import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDocument } from '../../server/src/language/incremental.ts';
import { readDocument, type LanguageDocument } from '../../server/src/language/read-document.ts';
import { descriptions } from './arbitrary-descriptions.ts';

/** What a person may type, paste or delete at a place given as a share of the text. */
interface Edit {
  readonly at: number;
  readonly remove: number;
  readonly insert: string;
}

const typed = fc.constantFrom(
  'x', '5', ' ', '  ', '\n', '\r\n', ':', ': ', '"', "'", '{', '}', '[', ']', ',', '#', ' #', '- ', '\t', '|', '>', '&a ', '*a', '!', '%', '@', '---\n', '...\n', '<<<<<<< a\n', '=======\n', '>>>>>>> b\n',
  'travel: 360 mm\n', '\n  lift:\n    travel: 5 mm\n', '° µ Ω 😀', '\u00a0', '\ufeff', '\u0000', '? ', 'word\n', 'mass:5 kg\n', '~',
);
const edits = fc.array(fc.record<Edit>({ at: fc.double({ min: 0, max: 1, noNaN: true }), remove: fc.constantFrom(0, 0, 0, 1, 1, 2, 5, 30), insert: fc.oneof({ weight: 1, arbitrary: fc.constant('') }, { weight: 4, arbitrary: typed }) }), { minLength: 1, maxLength: 12 });

function apply(text: string, edit: Edit): string {
  const at = Math.min(text.length, Math.floor(edit.at * (text.length + 1)));
  return text.slice(0, at) + edit.insert + text.slice(at + edit.remove);
}

function contents(document: LanguageDocument): unknown {
  return { text: document.text, root: document.root, problems: document.problems, repaired: document.repaired, fileKind: document.fileKind };
}

/** Begins like a real description, so that entries with quantities are met as well. */
const real = fc.constantFrom(
  'description-version: 1\nmachine: Heron\nmasses:\n  plate: { mass: 6.2 kg ± 0.2 kg, at: [310 mm, 160 mm] }\n  # a second one\n  cradle: { mass: 2.4 kg }\naxes:\n  lift:\n    direction: vertical\n    travel: 360 mm\n    moves: [plate, cradle]\n    drive:\n      screw: { size: Tr8x8(P2) }\n      nut: { friction: 0.12 ± 0.03 }\n  tilt:\n    direction: 30°\n    travel: 90 mm\nparts:\n  motor:\n    kind: stepper\n    current: 1.5 A\n',
);

describe('editing a document', () => {
  it('gives what reading the new text afresh gives, over thousands of edits', { timeout: 120_000 }, () => {
    let count = 0;
    fc.assert(
      fc.property(fc.oneof(descriptions(), real), fc.boolean(), edits, (start, withCr, changes) => {
        let text = withCr ? start.replaceAll(/\r?\n/g, '\r\n') : start;
        let document = readDocument('file:///a.machine.yaml', text);
        for (const change of changes) {
          text = apply(text, change);
          document = editDocument(document, text);
          expect(contents(document)).toEqual(contents(readDocument('file:///a.machine.yaml', text)));
          count += 1;
        }
      }),
      { numRuns: 700 },
    );
    expect(count).toBeGreaterThan(3_000);
  });

  it('gives the same document for the same text', () => {
    const document = readDocument('file:///a.machine.yaml', 'machine: Heron');
    expect(editDocument(document, 'machine: Heron')).toBe(document);
  });

  it('parses again only the entry that is touched', () => {
    const entry = (index: number): string => `  lift${index}:\n    travel: 360 mm\n    speed: 3\n`;
    const text = `machine: Heron\naxes:\n${Array.from({ length: 200 }, (_, index) => entry(index)).join('')}`;
    const document = readDocument('file:///a.machine.yaml', text);
    const edited = editDocument(document, text.replace('lift100:\n    travel: 360', 'lift100:\n    travel: 365'));
    const fresh = [...edited.parseMemory].filter(([chunk, kept]) => document.parseMemory.get(chunk)?.chunk !== kept.chunk);
    expect(fresh.map(([chunk]) => chunk)).toEqual(['  lift100:\n    travel: 365 mm\n    speed: 3\n']);
  });

  it('keeps no more than the text needs', () => {
    let document = readDocument('file:///a.machine.yaml', 'axes:\n  lift:\n    travel: 1 mm\n');
    for (let step = 0; step < 500; step++) document = editDocument(document, `axes:\n  lift:\n    travel: ${step} mm\n`);
    expect(document.parseMemory.size).toBe(1);
  });
});
