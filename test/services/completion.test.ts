import { describe, expect, it } from 'vitest';
import { fileSchema, type SchemaNode } from '../../server/src/language/schema/schema-model.ts';
import { completionsAt, figuresOfCompletion, withoutTabStops, type CompletionItem } from '../../server/src/services/completion.ts';
import { templates } from '../../server/src/services/completion-templates.ts';
import { atCursor, machineUri, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

function items(marked: string, lists: Readonly<Record<string, string>> = {}, uri = machineUri): readonly CompletionItem[] {
  const { text, offset } = atCursor(marked);
  const found = completionsAt(snapshotOf(text, lists, uri), offset);
  for (const item of found) {
    // What the cursor's token is must be around the cursor and on its line.
    expect(item.replace.start, item.label).toBeLessThanOrEqual(offset);
    expect(item.replace.end, item.label).toBeGreaterThanOrEqual(offset);
    expect(text.slice(item.replace.start, item.replace.end)).not.toContain('\n');
  }
  expect(found.map((item) => item.sortText)).toEqual([...found.map((item) => item.sortText)].sort());
  return found;
}

const labels = (marked: string, lists?: Readonly<Record<string, string>>, uri?: string): string[] => items(marked, lists, uri).map((item) => item.label);

/** The text after an item is taken, as a host without snippets makes it: further lines get the indent of the cursor's line. */
function taken(marked: string, label: string): string {
  const { text } = atCursor(marked);
  const item = items(marked).find((candidate) => candidate.label === label);
  if (!item) throw new Error(`"${label}" is not offered, but ${labels(marked).join(', ')}.`);
  const lineStart = text.lastIndexOf('\n', item.replace.start - 1) + 1;
  const indent = /^ */.exec(text.slice(lineStart))?.[0] ?? '';
  const inserted = (item.isSnippet ? withoutTabStops(item.insertText) : item.insertText).replaceAll('\n', `\n${indent}`);
  return text.slice(0, item.replace.start) + inserted + text.slice(item.replace.end);
}

const schemaAt = (...keys: readonly string[]): SchemaNode | undefined =>
  keys.reduce<SchemaNode | undefined>((node, key) => (key === '*' ? node?.named : node?.properties.find((property) => property.key === key)?.schema), fileSchema('machine'));
const keysOf = (...keys: readonly string[]): string[] => {
  const node = schemaAt(...keys);
  const required = node?.properties.filter((property) => property.required) ?? [];
  const others = node?.properties.filter((property) => !property.required) ?? [];
  return [...required, ...others].map((property) => property.key);
};

const head = 'description-version: 1\nmachine: Heron\n';
const axes = `${head}axes:\n  lift:\n    direction: vertical\n    drive:\n      units: 2\n      screw:\n        size: Tr12x3\n  tilt:\n    travel: 90 mm\n`;

describe('keys', () => {
  it('come in writing order, required ones first, and a template for an empty file', () => {
    const offered = labels('|');
    expect(offered.slice(0, -1)).toEqual(keysOf());
    expect(offered.at(-1)).toBe('machine with one lifting axis');
    expect(offered.slice(0, 3)).toEqual(['description-version', 'machine', 'axes']);
  });

  it('leave out what is there', () => {
    expect(labels(`${head}|`)).toEqual([...keysOf().filter((key) => key !== 'description-version' && key !== 'machine'), 'two axes on crossed belts']);
    expect(labels(`|\n${head}`)).toEqual([...keysOf().filter((key) => key !== 'description-version' && key !== 'machine'), 'two axes on crossed belts']);
  });

  /** The cursor at every indent behind the same lines: what is due follows from the column. */
  const behind = `${head}axes:\n  lift:\n    direction: vertical\n    drive:\n      units: 2\n      screw:\n        size: Tr12x3\n`;
  const withoutOwn = (keys: readonly string[], ...own: readonly string[]): string[] => keys.filter((key) => !own.includes(key));
  it.each<[number, readonly string[]]>([
    [0, [...withoutOwn(keysOf(), 'description-version', 'machine', 'axes'), 'two axes on crossed belts']],
    [1, []],
    [2, ['axis on screws', 'axis on a belt']],
    [3, []],
    [4, withoutOwn(keysOf('axes', '*'), 'direction', 'drive')],
    [5, []],
    [6, withoutOwn(keysOf('axes', '*', 'drive'), 'units', 'screw')],
    [7, []],
    [8, withoutOwn(keysOf('axes', '*', 'drive', 'screw'), 'size')],
    // Below "size", which has a value, nothing can stand.
    [9, []],
    [10, []],
  ])('at indent %i', (indent, expected) => {
    expect(labels(`${behind}${' '.repeat(indent)}|`)).toEqual(expected);
    expect(labels(`${behind}${' '.repeat(indent)}|\nnotes: x\n`)).toEqual(indent === 0 ? withoutOwn(expected, 'notes') : expected);
    expect(labels(`${behind.replaceAll('\n', '\r\n')}${' '.repeat(indent)}|\r\n`)).toEqual(expected);
  });

  it('between others, with the ones above and below left out', () => {
    expect(labels(axes.replace('    drive:', '    |\n    drive:'))).toEqual(withoutOwn(keysOf('axes', '*'), 'direction', 'drive'));
    expect(labels(axes.replace('      units: 2\n', '      |\n'))).toEqual(withoutOwn(keysOf('axes', '*', 'drive'), 'screw'));
  });

  it('while a word is typed, with the word as what gives way', () => {
    const marked = axes.replace('    drive:', '    tra|\n    drive:');
    expect(labels(marked)).toContain('travel');
    expect(taken(marked, 'travel')).toContain('\n    travel: \n    drive:');
  });

  it('of a key that has its colon, without another', () => {
    const marked = axes.replace('travel: 90 mm', 'tr|avel: 90 mm');
    expect(taken(marked, 'accuracy')).toBe(axes.replace('travel: 90 mm', 'accuracy: 90 mm'));
  });

  it('open what comes next: a map, a list, a list of fixed length', () => {
    expect(taken(axes.replace('    drive:', '    |\n    drive:'), 'motion')).toContain('    motion:\n      \n    drive:');
    expect(taken(axes.replace('    drive:', '    |\n    drive:'), 'moves')).toContain('    moves: []\n');
    expect(taken(`${head}masses:\n  plate:\n    |`, 'at')).toContain('    at: [310 mm, 310 mm]');
    expect(taken(axes.replace('      units: 2\n', '      |\n'), 'reduction')).toContain('      reduction:\n        - \n');
  });

  it('in braces, on one line and on several', () => {
    const motion = keysOf('axes', '*', 'motion');
    expect(labels(`${head}axes:\n  lift:\n    motion: { | }\n`)).toEqual(motion);
    expect(labels(`${head}axes:\n  lift:\n    motion: {|\n`)).toEqual(motion);
    expect(labels(`${head}axes:\n  lift:\n    motion: { speed: 3 mm/s, | }\n`)).toEqual(motion.filter((key) => key !== 'speed'));
    expect(labels(`${head}axes:\n  lift:\n    motion: { acc|, speed: 3 mm/s }\n`)).toEqual(motion.filter((key) => key !== 'speed'));
    expect(labels(`${head}axes:\n  lift:\n    motion: {\n      speed: 3 mm/s,\n      |\n    }\n`)).toEqual(motion.filter((key) => key !== 'speed'));
    expect(labels(`${head}axes:\n  lift:\n    drive: { screw: { size: Tr12x3, | } }\n`)).toEqual(keysOf('axes', '*', 'drive', 'screw').filter((key) => key !== 'size'));
    expect(taken(`${head}axes:\n  lift:\n    motion: { acc| }\n`, 'acceleration')).toContain('{ acceleration:  }');
    expect(taken(`${head}axes:\n  lift:\n    drive: { | }\n`, 'screw')).toContain('{ screw: {  } }');
  });

  it('in braces that are still open, with what stands below untouched', () => {
    const marked = `${head}axes:\n  lift:\n    drive: { mo|\n    layer-height: 0.25 mm\n  tilt:\n    travel: 3 mm\n`;
    expect(labels(marked)).toEqual(keysOf('axes', '*', 'drive'));
    expect(taken(marked, 'motor')).toContain('    drive: { motor: \n    layer-height: 0.25 mm\n');
  });

  it('of a part follow its kind', () => {
    expect(labels(`${head}parts:\n  m:\n    |`)).toEqual(['kind']);
    const stepper = labels(`${head}parts:\n  m:\n    kind: stepper\n    |`);
    expect(stepper).toContain('holding-torque');
    expect(stepper).not.toContain('lead');
    expect(labels(`${head}parts:\n  m:\n    |\n    kind: screw`)).toContain('lead');
    expect(labels(`${head}parts:\n  m: { kind: nut, | }`)).toContain('friction');
    expect(labels('description-version: 1\nparts:\n  m:\n    kind: stepper\n    |', {}, 'file:///work/stock.parts.yaml')).toContain('holding-torque');
  });

  it('of items of a list', () => {
    expect(labels(`${head}axes:\n  lift:\n    drive:\n      reduction:\n        - |`).slice(0, 2)).toEqual(['kind', 'ratio']);
    expect(labels(`${head}axes:\n  lift:\n    drive:\n      reduction:\n        - kind: belt\n          |`)).not.toContain('kind');
    expect(labels(`${head}axes:\n  lift:\n    drive:\n      reduction:\n        - kind: belt\n          ratio: 2\n        - |`)).toContain('kind');
    expect(labels(`${head}axes:\n  lift:\n    drive:\n      reduction:\n      - kind: belt\n      - kind: spur\n        |`)).toContain('ratio');
  });

  it('say what they mean, and which are required', () => {
    const travel = items(`${head}axes:\n  lift:\n    |`).find((item) => item.label === 'travel');
    expect(travel).toMatchObject({ kind: 'key', detail: 'required · How far the axis moves.', asksOn: true });
    expect(travel?.documentation).toContain('**Travel**');
    expect(travel?.documentation).toContain('`420 mm`');
  });

  it.each([
    ['in a comment', `${head}# |`],
    ['behind a comment', `${head}axes: # |`],
    ['in a block of text', `${head}notes: |-\n  some |text\n`.replace('|-', '>-')],
    ['behind a key and a blank word', `${head}axes:\n  lift: \n    travel 3 |`],
    ['right behind a dash', `${head}axes:\n  lift:\n    moves:\n      -|`],
    ['below a place that the schema does not know', `${head}nonsense:\n  |`],
    ['before what stands on the line', `${head}axes:\n |   lift:\n`],
  ])('are not offered %s', (_, marked) => {
    expect(labels(marked)).toEqual([]);
  });
});

describe('values', () => {
  it('are the words that the entry allows, with their meaning', () => {
    const offered = items(`${head}axes:\n  lift:\n    catcher: |`);
    expect(offered.map((item) => item.label)).toEqual(['none', 'mechanical-stop', 'latch']);
    expect(offered[2]?.detail).toBe('A latch or pawl holds it at every height.');
    expect(taken(`${head}axes:\n  lift:\n    catcher: no|ne # x\n`, 'latch')).toContain('catcher: latch # x');
    expect(taken(`${head}axes:\n  lift:\n    catcher:|\n`, 'latch')).toContain('catcher:latch');
  });

  it('are words and examples of a quantity where either may stand', () => {
    expect(labels(`${head}axes:\n  lift:\n    direction: |`)).toEqual(['vertical', 'horizontal', '30°']);
  });

  it('may begin on the next line', () => {
    expect(labels(`${head}axes:\n  lift:\n    catcher:\n      |`)).toEqual(['none', 'mechanical-stop', 'latch']);
  });

  it('are names of masses, without those that are listed', () => {
    const masses = 'masses:\n  plate: { mass: 4 kg }\n  cradle: { mass: 2 kg }\n';
    expect(labels(`${head}${masses}axes:\n  lift:\n    moves: [|]`)).toEqual(['plate', 'cradle']);
    expect(labels(`${head}${masses}axes:\n  lift:\n    moves: [plate, |]`)).toEqual(['cradle']);
    expect(labels(`${head}${masses}axes:\n  lift:\n    moves: [pl|]`)).toEqual(['plate', 'cradle']);
    expect(labels(`${head}${masses}axes:\n  lift:\n    moves:\n      - plate\n      - |\n`)).toEqual(['cradle']);
    expect(labels(`${head}${masses}axes:\n  lift:\n    moves:\n    - cr|\n`)).toEqual(['plate', 'cradle']);
    expect(items(`${head}${masses}axes:\n  lift:\n    moves: [|]`)[0]).toMatchObject({ detail: '4 kg', kind: 'name' });
  });

  it('are names of parts of the right kind, from part lists too', () => {
    const marked = `${head}uses: [stock.parts.yaml]\naxes:\n  lift:\n    drive:\n      motor: |\nparts:\n  strong: { kind: stepper }\n  thin: { kind: screw }\n`;
    const lists = { 'stock.parts.yaml': 'description-version: 1\nparts:\n  weak: { kind: stepper }\n  strong: { kind: stepper }\n' };
    expect(labels(marked, lists)).toEqual(['strong', 'weak']);
    expect(items(marked, lists)[1]?.detail).toBe('stepper from stock.parts.yaml');
    expect(labels(marked.replace('motor: |', 'screw: { part: | }'), lists)).toEqual(['thin']);
  });

  it('are names of supplies, materials and drive options', () => {
    expect(labels(`${head}supplies:\n  main: { voltage: 24 V }\naxes:\n  lift:\n    drive:\n      supply: |\n`)).toEqual(['main']);
    expect(labels(`${head}axes:\n  lift:\n    drive:\n      screw:\n        material: |\n`)).toContain('steel');
    expect(labels(`${head}axes:\n  lift:\n    drive-options:\n      thin: {}\n      thick: {}\n    chosen-drive: |\n`)).toEqual(['thin', 'thick']);
  });

  it('are standard sizes with their dimensions', () => {
    const sizes = items(`${head}axes:\n  lift:\n    drive:\n      screw:\n        size: |\n`);
    const thread = sizes.find((item) => item.label === 'Tr12x3');
    // ISO 2904: Tr12x3 has d3 = 8.5 mm; one start, so the lead is the pitch.
    expect(thread).toMatchObject({ kind: 'size', detail: 'lead 3 mm, root 8.5 mm', data: { tries: 'Tr12x3' } });
    expect(sizes.map((item) => item.label)).toContain('1605');
    expect(labels(`${head}parts:\n  m:\n    kind: stepper\n    frame: |\n`)).toContain('NEMA 17');
  });

  it('are examples of a quantity before a number is typed', () => {
    expect(labels(`${head}axes:\n  lift:\n    travel: |`)).toEqual(['420 mm']);
    expect(labels(`${head}machine: |`.replace('machine: Heron\n', ''))).toContain('Heron');
  });

  it.each([
    ['travel: 360 |', 'travel: 360 mm'],
    ['travel: 360|', 'travel: 360 mm'],
    ['travel: 360 m|', 'travel: 360 mm'],
    ['travel: 360 |cm', 'travel: 360 mm'],
    ['travel: 360 c|m # x', 'travel: 360 mm # x'],
    ['travel: 1 1/2 |', 'travel: 1 1/2 mm'],
    ['travel: 1/4|', 'travel: 1/4 mm'],
    ['travel: 360 mm ± 0.5 |', 'travel: 360 mm ± 0.5 mm'],
    ['travel: 300 mm to 400 |', 'travel: 300 mm to 400 mm'],
    ['travel: "360 |"', 'travel: "360 mm"'],
  ])('are units behind a number: %s', (typed, expected) => {
    expect(taken(`${head}axes:\n  lift:\n    ${typed}\n`, 'mm')).toBe(`${head}axes:\n  lift:\n    ${expected}\n`);
  });

  it('are units of the right kind, metric first', () => {
    expect(labels(`${head}axes:\n  lift:\n    motion: { speed: 15 | }`)).toEqual(['mm/s', 'm/s', 'mm/min', 'm/min', 'in/s', 'in/min']);
    expect(labels(`${head}masses:\n  plate: { mass: 6.2 kg ± 0.2 |, at: [1 mm, 2 mm] }`)).toEqual(['kg', 'g', 't', 'lb', 'oz']);
    expect(labels(`${head}masses:\n  plate: { at: [310 |, 160 mm] }`)[0]).toBe('mm');
    expect(taken(`${head}parts:\n  m:\n    kind: stepper\n    step-angle: 1.8|\n`, '°')).toContain('step-angle: 1.8°');
    expect(items(`${head}axes:\n  lift:\n    travel: 3 |`).find((item) => item.label === 'in')?.detail).toBe('1 in is 0.0254 m');
  });
});

describe('templates', () => {
  it('give a description without findings of the language', () => {
    const text = taken('|', 'machine with one lifting axis');
    const snapshot = snapshotOf(text);
    expect(snapshot.document.problems).toEqual([]);
    expect(snapshot.diagnostics.filter((diagnostic) => diagnostic.severity === 'error' && diagnostic.finding === undefined)).toEqual([]);
  });

  it.each([
    ['axis on screws', `${head}axes:\n  |\n`],
    ['drive by screws', `${head}axes:\n  lift:\n    direction: vertical\n    travel: 1 mm\n    |\n`],
    ['drive option by screws', `${head}axes:\n  lift:\n    direction: vertical\n    travel: 1 mm\n    drive-options:\n      |\n`],
    ['stepper motor', `${head}axes: {}\nparts:\n  |\n`],
    ['mass', `${head}axes: {}\nmasses:\n  |\n`],
    ['supply', `${head}axes: {}\nsupplies:\n  |\n`],
    ['heated part', `${head}axes: {}\nheating:\n  |\n`],
  ])('%s is whole', (label, marked) => {
    expect(snapshotOf(taken(marked, label)).document.problems.filter((problem) => problem.severity === 'error')).toEqual([]);
  });

  it('have tab stops that count from one, each once', () => {
    for (const [marked, label] of [['|', 'machine with one lifting axis'], [`${head}axes:\n  |\n`, 'axis on screws']] as const) {
      const snippet = items(marked).find((item) => item.label === label)?.insertText ?? '';
      const stops = [...snippet.matchAll(/\$\{(\d+)/g)].map((match) => Number(match[1]));
      expect(stops).toEqual(stops.map((_, index) => index + 1));
    }
    expect(templates.length).toBeGreaterThan(5);
  });

  it('are told from keys by hosts without snippets', () => {
    expect(withoutTabStops('a: ${1:x \\} y}, b: ${2|one,two|}$0 \\$5')).toBe('a: x } y, b: one $5');
  });
});

describe('a size that is looked at', () => {
  it('tells what the axis comes to with it', () => {
    const { text: plain, offset } = atCursor(yamlOf(machineWith('lift')).replace('Tr12x3', '|'));
    const snapshot = snapshotOf(plain);
    const found = completionsAt(snapshot, offset);
    const thin = found.find((item) => item.label === 'Tr8x1.5');
    const thick = found.find((item) => item.label === 'Tr16x4');
    const [a, b] = [thin, thick].map((item) => item && figuresOfCompletion(snapshot, item));
    expect(a).toMatch(/whirl/);
    expect(b).toMatch(/whirl/);
    expect(a).not.toBe(b);
    expect([...(a ?? '')].length).toBeLessThanOrEqual(60);
    // Nothing has changed in the snapshot itself.
    expect(completionsAt(snapshot, offset).map((item) => item.label)).toEqual(found.map((item) => item.label));
  });
});

describe('any place of a description', () => {
  it('gives an answer without a throw, with tokens on one line', () => {
    const text = yamlOf(machineWith('lift'));
    const snapshot = snapshotOf(text);
    for (let offset = 0; offset <= text.length; offset++) {
      for (const item of completionsAt(snapshot, offset)) {
        expect(item.replace.start).toBeLessThanOrEqual(offset);
        expect(item.replace.end).toBeGreaterThanOrEqual(offset);
        expect(text.slice(item.replace.start, item.replace.end)).not.toContain('\n');
      }
    }
  });

  it('and of a description cut off anywhere', () => {
    const text = yamlOf(machineWith('lift'));
    for (let length = 0; length <= text.length; length += 3) {
      const cut = text.slice(0, length);
      expect(() => completionsAt(snapshotOf(cut), length)).not.toThrow();
    }
  });
});
