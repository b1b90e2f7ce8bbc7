import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { NewValue } from '../../server/src/language/edit-entry.ts';
import { example } from '../support/cursor.ts';
import { again, analysedAfter, analyseText, cures, listUri, textAfter, uri, type Analysed } from './support.ts';

const root = fileURLToPath(new URL('../../examples/', import.meta.url));
const examples = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.machine.yaml')).sort();

/** Every remedy of every finding of a text, with the state before. */
const allCures = (before: Analysed) => before.analysis.findings.flatMap((finding) => cures(finding, before));

const comments = (text: string): readonly string[] => text.match(/(?:(?<=\s)|^)#[^\r\n]*/gm) ?? [];

/** Lines that only one of two texts has, in order, by the longest run of lines that both have. */
function difference(before: string, after: string): { readonly gone: readonly string[]; readonly fresh: readonly string[] } {
  const [a, b] = [before.split('\n'), after.split('\n')];
  const common = a.map(() => b.map(() => 0));
  const at = (i: number, j: number): number => common[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--) {
    const line = common[i];
    for (let j = b.length - 1; line && j >= 0; j--) line[j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  }
  const gone: string[] = [];
  const fresh: string[] = [];
  for (let i = 0, j = 0; i < a.length || j < b.length; ) {
    if (i < a.length && a[i] === b[j]) [i, j] = [i + 1, j + 1];
    else if (j >= b.length || (i < a.length && at(i + 1, j) >= at(i, j + 1))) gone.push(a[i++] ?? '');
    else fresh.push(b[j++] ?? '');
  }
  return { gone, fresh };
}

/** Keys and texts of a value. */
const wordsOf = (value: NewValue | null): readonly string[] =>
  value === null ? [] : typeof value === 'string' ? [value] : Array.isArray(value) ? value.flatMap((item: NewValue) => wordsOf(item)) : Object.entries(value).flatMap(([key, inner]) => [key, ...wordsOf(inner)]);

/** Whether a line is another one with something put in: in braces a new entry stands behind its neighbour. */
function isWithin(line: string, longer: string): boolean {
  const same = [...line].findIndex((character, index) => longer[index] !== character);
  return same >= 0 && longer.length > line.length && longer.endsWith(line.slice(same));
}

function leavesTheRest(before: Analysed): void {
  const { text } = before.documents.main;
  for (const cure of allCures(before)) {
    const changed = textAfter(cure, before);
    expect(comments(changed), cure.title).toEqual(comments(text));
    expect(/(?<!\r)\n/.test(changed), cure.title).toBe(/(?<!\r)\n/.test(text));
    expect(changed.endsWith('\n'), cure.title).toBe(text.endsWith('\n'));
    const { gone, fresh } = difference(text, changed);
    // A map on the way to a new entry stands on a line of its own.
    const words = cure.changes.flatMap(({ place, value }) => [...place.path.slice(Math.min(2, place.path.length - 1)), ...wordsOf(value)]);
    for (const line of gone) expect(words.some((word) => line.includes(word)) || fresh.some((now) => isWithin(line, now)), `${cure.title} changes the line "${line}"`).toBe(true);
    // The comment of a line that goes stays on its own.
    for (const line of fresh) expect(line.trim().startsWith('#') || words.some((word) => line.includes(word)), `${cure.title} adds the line "${line}"`).toBe(true);
    expect(gone.length, cure.title).toBeLessThanOrEqual(cure.changes.length);
    expect(again(cure, analysedAfter(cure, before)).get(uri), `${cure.title}, done twice`).toBe(changed);
  }
}

describe('a remedy', () => {
  it('finds something to do in the examples', () => {
    expect(examples.flatMap((path) => allCures(analyseText(example(path)))).length).toBeGreaterThan(10);
  }, 30_000);
  it.each(examples)('changes only the lines that it must, and no comment, in %s', (path) => {
    leavesTheRest(analyseText(example(path)));
  });
  it('keeps carriage returns, and a last line that does not end', () => {
    leavesTheRest(analyseText(example('large-format-printer/first-draft.machine.yaml').trimEnd().replaceAll('\n', '\r\n')));
  });
});

describe('in braces', () => {
  const text = [
    'description-version: 1',
    'machine: Heron # the second one',
    'controller: { step-rate: 100 kHz, microsteps: 16 } # on loan',
    'supplies: { main: { kind: extra-low-voltage, voltage: 24 V } }',
    'masses: { head: { mass: 9 kg } } # with the cover',
    'axes:',
    '  lift: { direction: vertical, travel: 300 mm, moves: [head],',
    '    motion: { speed: 40 mm/s, acceleration: 300 mm/s², duty: 20 % }, # measured',
    '    drive: { motor: m, supply: main, current-setting: 1 A, current-setting-as: peak,',
    '      coupling: { form: beam, bores: [6 mm, 8 mm] }, # from the drawer',
    '      screw: { size: Tr8x8(P2), unsupported-length: 360 mm, end-supports: fixed-free },',
    '      nut: { material: pom, length: 8 mm } } }',
    'parts: { m: { kind: stepper, frame: NEMA 17, holding-torque: 0.3 N·m, current: 1.5 A, resistance: 2 Ω, inductance: 3 mH, rotor-inertia: 40 g·cm², shaft-diameter: 5 mm } }',
    '',
  ].join('\n');

  it('changes only the lines that it must, and no comment', () => {
    const before = analyseText(text);
    expect(allCures(before).length).toBeGreaterThan(10);
    leavesTheRest(before);
  });
  it('stays on the lines that are there', () => {
    const before = analyseText(text);
    for (const cure of allCures(before)) expect(textAfter(cure, before).split('\n'), cure.title).toHaveLength(text.split('\n').length);
  });
});

describe('a part of a shared list', () => {
  const draft = example('large-format-printer/first-draft.machine.yaml').replaceAll('\r\n', '\n');
  const cut = draft.indexOf('\nparts:');
  const list = `# What the shop has in stock.\ndescription-version: 1${draft.slice(cut)}`;
  const before = analyseText(draft.slice(0, cut + 1), list);
  const touching = allCures(before).filter(({ texts }) => texts.has(listUri));

  it('is changed in the list, and the title says so', () => {
    expect(touching.length).toBeGreaterThan(0);
    for (const { title, changes } of allCures(before)) {
      expect(/ in stock\.parts\.yaml\b/.test(title), title).toBe(changes.some(({ place }) => place.uri === listUri));
      expect(title.length, title).toBeLessThanOrEqual(100);
    }
  });
  it('keeps the comments of the list, and is the same when it is changed twice', () => {
    for (const cure of touching) {
      const changed = cure.texts.get(listUri) ?? '';
      expect(comments(changed), cure.title).toEqual(comments(list));
      expect(again(cure, analysedAfter(cure, before)).get(listUri), cure.title).toBe(changed);
    }
  });
  it('leaves the machine alone where nothing there changes', () => {
    for (const { texts, changes, title } of touching) expect(texts.has(uri), title).toBe(changes.some(({ place }) => place.uri === uri));
  });
});
