import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';
import { applyEdits } from '../../server/src/language/spans.ts';
import { marked } from './outline.ts';

const uri = 'file:///heron.machine.yaml';

/** A small machine without problems; `axis` and `more` are put in. */
function machine(axis: string, more = ''): string {
  return `description-version: 1\nmachine: Heron\naxes:\n  lift:\n    direction: vertical\n    travel: 360 mm\n${axis}${more}`;
}

function problems(text: string, name = uri): string[] {
  return readDocument(name, text).problems.map((problem) => `${problem.severity === 'error' ? '' : `${problem.severity}: `}${marked(problem, text)}`);
}

describe('structure', () => {
  it.each<[string, string, readonly string[]]>([
    ['nothing wrong', machine('    moves: [plate]\n'), []],
    ['an unknown key', machine('    acuracy: 0.05 mm\n'), ['key-unknown "acuracy"']],
    ['a key in the wrong place', machine('    nut: { travel: 3 mm }\n'), ['key-unknown "nut"']],
    ['a required entry missing', 'description-version: 1\nmachine: Heron\naxes:\n  lift:\n    travel: 360 mm\n', ['entry-missing "lift"']],
    ['two of them, one finding', 'description-version: 1\nmachine: Heron\naxes:\n  lift:\n    moves: [a]\n', ['entry-missing "lift"']],
    ['of the whole file', 'machine: Heron\n', ['entry-missing "machine"']],
    ['a misspelt required key, one finding', 'description-version: 1\nmachine: Heron\naxes:\n  lift:\n    direction: vertical\n    travle: 360 mm\n', ['key-unknown "travle"']],
    ['a text where entries are due', machine('    drive: strong\n'), ['value-of-wrong-type "strong"']],
    ['a list where entries are due', machine('    drive: [a, b]\n'), ['value-of-wrong-type "[a, b]"']],
    ['entries where a text is due', machine('', 'purpose: { a: 1 }\n'), ['value-of-wrong-type "purpose"']],
    ['a text where a list is due', machine('    moves: plate\n'), ['value-of-wrong-type "plate"']],
    ['a list where a quantity is due', machine('    accuracy: [1 mm]\n'), ['value-of-wrong-type "[1 mm]"']],
    ['entries where a quantity is due', machine('    accuracy: { a: 1 }\n'), ['value-of-wrong-type "accuracy"']],
    ['a word where a number is due', machine('    drive: { units: two }\n'), ['value-of-wrong-type "two"']],
    ['a number out of bounds', machine('    drive: { units: 0 }\n'), ['value-out-of-bounds "0"']],
    ['too few items', machine('    moves: []\n'), ['value-out-of-bounds "[]"']],
    ['too many items', machine('', 'masses: { plate: { mass: 1 kg, at: [1 mm, 2 mm, 3 mm, 4 mm] } }\n'), ['value-out-of-bounds "[1 mm, 2 mm, 3 mm, 4 mm]"']],
    ['a word that is no choice', machine('    catcher: lach\n'), ['value-not-in-list "lach"']],
    ['a word where a word or an angle may stand', machine('').replace('vertical', 'vertcal'), ['value-not-in-list "vertcal"']],
    ['an angle there', machine('').replace('vertical', '30°'), []],
    ['an angle there without its unit', machine('').replace('vertical', '30'), ['unit-missing "30"']],
    ['another version', machine('').replace('version: 1', 'version: 2'), ['value-not-in-list "2"']],
    ['a name that cannot be one', machine('', 'masses: { "1st": { mass: 1 kg } }\n'), ['value-out-of-form "\\"1st\\""']],
    ['a part without its kind', machine('', 'parts: { m: { current: 1 A } }\n'), ['entry-missing "m"']],
    ['a part of an unknown kind: no burst', machine('', 'parts: { m: { kind: steper, current: 1 A, holding-torque: 1 N·m } }\n'), ['value-not-in-list "steper"']],
    ['an unknown key in a part: its own form counts', machine('', 'parts: { m: { kind: stepper, lead: 1 mm } }\n'), ['key-unknown "lead"']],
    ['a part that is a text', machine('', 'parts: { m: stepper }\n'), ['value-of-wrong-type "stepper"']],
    ['a key without value', machine('    accuracy:\n'), ['warning: value-missing "accuracy"']],
    ['a required key without value', machine('').replace(' 360 mm', ''), ['value-missing "travel"']],
    ['a section without entries', machine('', 'masses:\n'), ['warning: value-missing "masses"']],
    ['an item without value', machine('    moves:\n      - plate\n      -\n'), ['value-of-wrong-type "-"']],
    ['a key begun below its section', machine('    drive:\n      mot\n'), ['colon-missing "mot"']],
    ['nothing at all', '', ['information: entry-missing ""']],
    ['a comment only', '# to be written\n', ['information: entry-missing ""']],
  ])('%s', (_, text, expected) => {
    expect(problems(text)).toEqual(expected);
    expect(problems(text.replaceAll('\n', '\r\n'))).toEqual(expected);
  });

  it('of a part list is judged by its own schema', () => {
    const text = 'description-version: 1\nparts:\n  m: { kind: stepper, current: 1.5 A }\naxes: {}\n';
    expect(problems(text, 'file:///stock.parts.yaml')).toEqual(['key-unknown "axes"']);
    expect(readDocument('file:///stock.parts.yaml', text).fileKind).toBe('parts');
    expect(readDocument('file:///stock.parts.yml', text).fileKind).toBe('parts');
    expect(readDocument('untitled:Untitled-1', text).fileKind).toBe('machine');
  });

  it.each([
    [machine('    acuracy: 0.05 mm\n'), '"acuracy" is not known in "lift". Did you mean "accuracy"?'],
    [machine('    lead: 8 mm\n'), '"lead" is not known in "lift". It belongs in "screw".'],
    [machine('    catcher: lach\n'), '"lach" is not one of the choices. Did you mean "latch"?'],
    [machine('    people-below: yes\n'), '"yes" is not one of the choices. Choose possible or guarded.'],
    [machine('    moves: plate\n'), 'A list is due here, such as [ plate ], but the text "plate" stands there.'],
    [machine('    accuracy:\n'), '"accuracy" has no value. Write one, such as "0.05 mm", or remove the key.'],
    [machine('').replace('version: 1', 'version: 2'), 'This release reads version 1 of the language, not "2". A file of a later version needs a later release.'],
    ['description-version: 1\nmachine: Heron\naxes:\n  lift:\n    moves: [a]\n', '"lift" needs "direction" and "travel": nothing can be computed without them.'],
  ])('is told in plain words', (text, message) => {
    expect(readDocument(uri, text).problems.map((problem) => problem.message)).toEqual([message]);
  });

  it.each([
    [machine('    acuracy: 0.05 mm\n'), machine('    accuracy: 0.05 mm\n')],
    [machine('    catcher: lach\n'), machine('    catcher: latch\n')],
    [machine('    moves: plate\n'), machine('    moves: [plate]\n')],
    [machine('    accuracy: 0.05\n'), machine('    accuracy: 0.05 mm\n')],
    [machine('    accuracy: "0,05 mm"\n'), machine('    accuracy: "0.05 mm"\n')],
    [machine('    layer-height: 0.2 mm - 0.3 mm\n'), machine('    layer-height: 0.2 mm to 0.3 mm\n')],
    [machine('    drive: { screw: { starts:4 } }\n'), machine('    drive: { screw: { starts: 4 } }\n')],
  ])('is cured by its first fix', (text, cured) => {
    const [problem] = readDocument(uri, text).problems;
    const after = applyEdits(text, problem?.fixes?.[0]?.edits ?? []);
    expect(after).toBe(cured);
    expect(problems(after)).toEqual([]);
    expect(applyEdits(after, [])).toBe(after);
  });
});

describe('quantities', () => {
  it.each<[string, readonly string[]]>([
    ['    accuracy: 0.05\n', ['unit-missing "0.05"']],
    ['    accuracy: "0.05"\n', ['unit-missing "0.05"']],
    ['    accuracy: 0.05 kg\n', ['unit-of-wrong-kind "kg"']],
    ['    accuracy: "😀 0.05 mm"\n', ['not-a-number "😀 0.05 mm"']],
    ['    accuracy: "0.05\\u0020mmm"\n', ['unit-unknown "\\"0.05\\\\u0020mmm\\""']],
    ['    accuracy: 0.05 mm # µ °\n', []],
    ['    motion: { speed: 15 mm/s, acceleration: 200 }\n', ['unit-missing "200"']],
    ['    motion: { speed: 15 mm/s, acceleration: 0.005 m/s² }\n', ['information: magnitude-implausible "0.005 m/s²"']],
    ['    process-force: 0 N to 30 N\n', []],
  ])('%j', (axis, expected) => {
    expect(problems(machine(axis))).toEqual(expected);
  });

  it('are judged at the items of lists too', () => {
    expect(problems(machine('', 'masses: { plate: { mass: 1 kg, at: [310, 160 mm] } }\n'))).toEqual(['unit-missing "310"']);
  });

  it('that an alias repeats are reported once', () => {
    expect(problems(machine('', 'masses:\n  plate: &p { mass: 1 }\n  cradle: *p\n'))).toEqual(['unit-missing "1"']);
  });
});

describe('one finding for each cause', () => {
  it.each<[string, string, readonly string[]]>([
    ['an unknown key without its colon', machine('    acuracy\n'), ['colon-missing "acuracy"']],
    ['a required entry half typed', 'description-version: 1\nmachine: Heron\naxes:\n  lift:\n    direction: vertical\n    trav\n  tilt:\n    direction: 30°\n    travel: 1 mm\n', ['colon-missing "trav"']],
    ['a joined key and value of the wrong kind', machine('    acuracy:0.05 kg\n'), ['space-after-colon-missing "acuracy:0.05 kg"']],
    ['a section half typed', 'description-version: 1\nmachine: Heron\nax\n', ['colon-missing "ax"']],
    ['an open brace', machine('    motion: { speed\n    accuracy: 1 mm\n'), ['bracket-open "{"']],
    ['another entry stays judged', machine('    acuracy\n    drive: { units: two }\n'), ['colon-missing "acuracy"', 'value-of-wrong-type "two"']],
  ])('%s', (_, text, expected) => {
    expect(problems(text)).toEqual(expected);
  });

  it('and never more than are listed', () => {
    const text = machine('', `masses:\n${Array.from({ length: 400 }, (_, index) => `  m${index}: { mass: 1 }\n`).join('')}`);
    const found = readDocument(uri, text).problems;
    expect(found).toHaveLength(201);
    expect(found.at(-1)).toMatchObject({ code: 'more-problems', message: '…and 200 more. They are listed once the ones above are cured.' });
  });
});

describe('the examples', () => {
  const folder = join(import.meta.dirname, '../../examples');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => /\.(?:machine|parts)\.yaml$/.test(file));

  it.each(files)('%s is read without a problem, with CR LF too', (file) => {
    const text = readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n');
    expect(problems(text, `file:///${file}`)).toEqual([]);
    expect(problems(text.replaceAll('\n', '\r\n'), `file:///${file}`)).toEqual([]);
  });
});

describe('places', () => {
  const text = machine('    moves: [plate, cradle]\n    drive:\n      coupling: { bores: [5 mm, "8 mm"] }\n      nut:\n\n', 'masses:\n  plate: &p { mass: 6.2 kg ± 0.2 kg }\n  cradle: *p\n');
  const document = readDocument(uri, text);
  const at = (marker: string, by = 0): number => text.indexOf(marker) + by;

  it.each<[string, number, readonly string[], string]>([
    ['a key', at('travel'), ['axes', 'lift', 'travel'], 'key'],
    ['just behind a key', at('travel', 6), ['axes', 'lift', 'travel'], 'key'],
    ['behind its colon', at('travel', 7), ['axes', 'lift', 'travel'], 'value'],
    ['a value', at('360'), ['axes', 'lift', 'travel'], 'value'],
    ['just behind a value', at('360 mm', 6), ['axes', 'lift', 'travel'], 'value'],
    ['an item', at('cradle'), ['axes', 'lift', 'moves', '1'], 'value'],
    ['between items', at('[plate', 7), ['axes', 'lift', 'moves'], 'between'],
    ['an item inside brackets', at('"8 mm"', 2), ['axes', 'lift', 'drive', 'coupling', 'bores', '1'], 'value'],
    ['behind a colon without value', at('nut:', 4), ['axes', 'lift', 'drive', 'nut'], 'value'],
    ['a name of one\'s own', at('plate: &p'), ['masses', 'plate'], 'key'],
    ['the last line', text.length, [], 'between'],
  ])('%s', (_, offset, path, on) => {
    expect(document.pathAt(offset)).toEqual({ path, on });
  });

  it.each<[readonly string[], 'key' | 'value' | 'entry' | 'number' | 'unit', string | undefined]>([
    [['axes', 'lift', 'travel'], 'key', 'travel'],
    [['axes', 'lift', 'travel'], 'value', '360 mm'],
    [['axes', 'lift', 'travel'], 'entry', 'travel: 360 mm'],
    [['axes', 'lift', 'travel'], 'number', '360'],
    [['axes', 'lift', 'travel'], 'unit', 'mm'],
    [['axes', 'lift', 'drive', 'coupling', 'bores', '1'], 'value', '"8 mm"'],
    [['axes', 'lift', 'drive', 'coupling', 'bores', '1'], 'unit', 'mm'],
    [['axes', 'lift', 'drive', 'coupling', 'bores', '1'], 'key', undefined],
    [['masses', 'plate', 'mass'], 'number', '6.2'],
    [['axes', 'lift', 'moves'], 'number', undefined],
    [['axes', 'lift', 'direction'], 'number', undefined],
    [['nothing'], 'entry', undefined],
  ])('%j %s', (path, part, expected) => {
    const span = document.spanOf(path, part);
    expect(span && text.slice(span.start, span.end)).toBe(expected);
  });

  it('give quantities in SI', () => {
    const travel = document.quantityAt(['axes', 'lift', 'travel']);
    expect(travel?.ok && travel.quantity.nominal).toBeCloseTo(0.36, 12);
    const mass = document.quantityAt(['masses', 'cradle', 'mass']);
    expect(mass?.ok && [mass.quantity.low, mass.quantity.high]).toEqual([6, 6.4]);
    expect(document.quantityAt(['axes', 'lift', 'direction'])).toBeUndefined();
    expect(document.quantityAt(['machine'])).toBeUndefined();
    expect(document.quantityAt([])).toBeUndefined();
  });

  it('give what the schema says', () => {
    expect(document.schemaAt(['axes', 'lift', 'travel'])?.quantity).toBe('length');
    expect(document.lines.positionAt(at('travel'))).toEqual({ line: 5, character: 4 });
  });
});
