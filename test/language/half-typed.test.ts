import { describe, expect, it } from 'vitest';
import { parseText } from '../../server/src/language/parse-text.ts';
import { applyEdits } from '../../server/src/language/spans.ts';
import { marked, outline } from './outline.ts';

interface Case {
  readonly typed: string;
  readonly text: string;
  /** What can be read of it. */
  readonly tree: string;
  /** One for each slip: code and marked text. */
  readonly problems: readonly string[];
  /** The text after the first fix of every problem, where there is one. */
  readonly mended?: string;
}

/** The texts of the library report, section 5, "Half-typed texts", rebuilt from their descriptions; what is expected is written by hand. */
const cases: readonly Case[] = [
  { typed: 'a key without colon on the last line', text: 'machine: Heron\ndir', tree: '{machine: Heron, dir: null}', problems: ['colon-missing "dir"'], mended: 'machine: Heron\ndir:' },
  { typed: 'a key without colon above other keys', text: 'dir\ntravel: 420 mm', tree: '{dir: null, travel: 420 mm}', problems: ['colon-missing "dir"'], mended: 'dir:\ntravel: 420 mm' },
  { typed: 'the same inside an entry', text: 'lift:\n  dir\n  travel: 420 mm', tree: '{lift: {dir: null, travel: 420 mm}}', problems: ['colon-missing "dir"'], mended: 'lift:\n  dir:\n  travel: 420 mm' },
  { typed: 'the same between two keys', text: 'lift:\n  speed: 1\n  dir\n  travel: 420 mm\nnext: 2', tree: '{lift: {speed: 1, dir: null, travel: 420 mm}, next: 2}', problems: ['colon-missing "dir"'] },
  { typed: 'the same as the last key of an entry', text: 'lift:\n  speed: 1\n  dir', tree: '{lift: {speed: 1, dir: null}}', problems: ['colon-missing "dir"'] },
  { typed: 'the same three levels down', text: 'axes:\n  lift:\n    travel: 1\n    dri\n  tilt:\n    travel: 2', tree: '{axes: {lift: {travel: 1, dri: null}, tilt: {travel: 2}}}', problems: ['colon-missing "dri"'] },
  { typed: 'the same with entries below', text: 'axes:\n  lift\n    travel: 3 mm', tree: '{axes: {lift: {travel: 3 mm}}}', problems: ['colon-missing "lift"'], mended: 'axes:\n  lift:\n    travel: 3 mm' },
  { typed: 'a first word and nothing else', text: 'mach', tree: '{mach: null}', problems: ['colon-missing "mach"'], mended: 'mach:' },
  { typed: 'no space after the colon', text: 'mass:5 kg\ntravel: 4 mm', tree: '{mass: 5 kg, travel: 4 mm}', problems: ['space-after-colon-missing "mass:5 kg"'], mended: 'mass: 5 kg\ntravel: 4 mm' },
  { typed: 'the same as the only entry', text: 'plate:\n  mass:5 kg', tree: '{plate: {mass: 5 kg}}', problems: ['space-after-colon-missing "mass:5 kg"'], mended: 'plate:\n  mass: 5 kg' },
  { typed: 'the same in braces', text: 'plate: { mass:5 kg, at: [1, 2] }', tree: '{plate: {mass: 5 kg, at: [1, 2]}}', problems: ['space-after-colon-missing "mass:5 kg"'], mended: 'plate: { mass: 5 kg, at: [1, 2] }' },
  { typed: 'a key and its colon, last line', text: 'travel:', tree: '{travel: null}', problems: [] },
  { typed: 'a key and its colon above others', text: 'travel:\nspeed: 3', tree: '{travel: null, speed: 3}', problems: [] },
  { typed: 'an open double quote on the last line', text: 'name: "lift', tree: '{name: "lift"}', problems: ['quote-open "\\""'], mended: 'name: "lift"' },
  { typed: 'an open single quote on the last line', text: "name: 'lift", tree: '{name: "lift"}', problems: ['quote-open "\'"'], mended: "name: 'lift'" },
  { typed: 'an open double quote above other keys', text: 'name: "lift\ntravel: 3\nspeed: 4', tree: '{name: "lift", travel: 3, speed: 4}', problems: ['quote-open "\\""'], mended: 'name: "lift"\ntravel: 3\nspeed: 4' },
  { typed: 'the same inside an entry', text: 'lift:\n  name: "lift\n  travel: 3\nspeed: 4', tree: '{lift: {name: "lift", travel: 3}, speed: 4}', problems: ['quote-open "\\""'] },
  { typed: 'an open single quote above other keys', text: "name: 'lift\ntravel: 3", tree: '{name: "lift", travel: 3}', problems: ['quote-open "\'"'] },
  { typed: 'an open quote in braces', text: 'lift: { name: "up, travel: 3 }\nspeed: 4', tree: '{lift: {name: "up", travel: 3}, speed: 4}', problems: ['quote-open "\\""'] },
  { typed: 'an open brace on the last line', text: 'plate: { mass: 1, at: 2', tree: '{plate: {mass: 1, at: 2}}', problems: ['bracket-open "{"'], mended: 'plate: { mass: 1, at: 2}' },
  { typed: 'an open brace above other keys', text: 'plate: { mass: 1, at: 2\ncradle: 3\nframe: 4', tree: '{plate: {mass: 1, at: 2}, cradle: 3, frame: 4}', problems: ['bracket-open "{"'] },
  { typed: 'an open bracket', text: 'moves: [plate, cradle\nspeed: 3', tree: '{moves: [plate, cradle], speed: 3}', problems: ['bracket-open "["'], mended: 'moves: [plate, cradle]\nspeed: 3' },
  { typed: 'a bracket and the brace around it open', text: 'lift:\n  plate: { at: [1, 2\n  speed: 3', tree: '{lift: {plate: {at: [1, 2]}, speed: 3}}', problems: ['bracket-open "{"'], mended: 'lift:\n  plate: { at: [1, 2]}\n  speed: 3' },
  { typed: 'a brace only', text: 'plate: {\nspeed: 3', tree: '{plate: {}, speed: 3}', problems: ['bracket-open "{"'] },
  { typed: 'dashes without their space, twice', text: 'moves:\n  -bed\n  -plate', tree: '{moves: [bed, plate]}', problems: ['space-after-dash-missing "-bed"', 'space-after-dash-missing "-plate"'], mended: 'moves:\n  - bed\n  - plate' },
  { typed: 'a dash only', text: 'moves:\n  -', tree: '{moves: [null]}', problems: [] },
  { typed: 'one space too few', text: 'lift:\n  speed: 1\n travel: 2', tree: '{lift: {speed: 1, travel: 2}}', problems: ['indent-wrong "travel"'], mended: 'lift:\n  speed: 1\n  travel: 2' },
  { typed: 'one space too many', text: 'lift:\n  travel: 420 mm\n   drive: 1', tree: '{lift: {travel: 420 mm, drive: 1}}', problems: ['indent-wrong "drive"'], mended: 'lift:\n  travel: 420 mm\n  drive: 1' },
  { typed: 'one space too many on several lines', text: 'lift:\n  travel: 1\n   drive: 2\n   speed: 3\n  name: up', tree: '{lift: {travel: 1, drive: 2, speed: 3, name: up}}', problems: ['indent-wrong "drive"'], mended: 'lift:\n  travel: 1\n  drive: 2\n  speed: 3\n  name: up' },
  { typed: 'entries below a key that has a value', text: 'lift:\n  drive: up\n    motor: 2\n    units: 3\n  name: x', tree: '{lift: {drive: up, name: x}}', problems: ['indent-wrong "motor"'] },
  { typed: 'tabs as indentation', text: 'lift:\n\ttravel: 1\n\tspeed: 2', tree: '{lift: {travel: 1, speed: 2}}', problems: ['tab-as-indent "\\t"'], mended: 'lift:\n  travel: 1\n  speed: 2' },
  { typed: 'an alias without its anchor', text: 'plate: *nope\nspeed: 3', tree: '{plate: null, speed: 3}', problems: ['anchor-unknown "*nope"'] },
  { typed: 'an asterisk only', text: 'plate: *\nspeed: 3', tree: '{plate: null, speed: 3}', problems: ['anchor-name-missing "*"'] },
  { typed: 'an ampersand only', text: 'plate: &\nspeed: 3', tree: '{plate: null, speed: 3}', problems: ['anchor-name-missing "&"'] },
  { typed: 'a value that begins with @', text: 'name: @home\nspeed: 3', tree: '{name: "@home", speed: 3}', problems: ['value-start-reserved "@"'], mended: "name: '@home'\nspeed: 3" },
  { typed: 'a value that begins with %', text: 'duty: %5', tree: '{duty: "%5"}', problems: ['value-start-reserved "%"'], mended: "duty: '%5'" },
  { typed: 'two keys on one line', text: 'note: speed: fast', tree: '{note: {speed: fast}}', problems: ['two-keys-on-one-line "speed"'], mended: 'note:\n  speed: fast' },
  { typed: 'two keys on one line, entries below', text: 'screw: lead: 8 mm\n  starts: 4', tree: '{screw: {lead: 8 mm, starts: 4}}', problems: ['two-keys-on-one-line "lead"'], mended: 'screw:\n  lead: 8 mm\n  starts: 4' },
  { typed: 'a colon on the next line', text: 'masses\n:  plate: 1\n   cradle: 2', tree: '{masses: {plate: 1, cradle: 2}}', problems: ['colon-missing "masses"', 'indent-wrong "cradle"'] },
  { typed: 'a question mark only', text: '? ', tree: '{}', problems: ['key-not-a-word ""'] },
  { typed: 'a tilde only', text: '~', tree: 'null', problems: [] },
  { typed: 'a comment only', text: '# to be written', tree: 'null', problems: [] },
  { typed: 'nothing', text: '', tree: 'null', problems: [] },
  { typed: 'three dots in the middle', text: 'speed: 1\n...\nmass: 2', tree: '{speed: 1}', problems: ['several-documents "mass: 2"'] },
  { typed: 'three hyphens in the middle', text: 'speed: 1\n---\nmass: 2', tree: '{speed: 1}', problems: ['several-documents "---"'] },
  { typed: 'a tolerance without its value', text: 'accuracy: ± 0.1 mm', tree: '{accuracy: ± 0.1 mm}', problems: [] },
  { typed: 'a number sign without a space before it', text: 'travel: 5 mm#long', tree: '{travel: 5 mm#long}', problems: [] },
  { typed: 'round brackets in braces', text: 'screw: { size: Tr8x8(P2), starts: 4 }', tree: '{screw: {size: Tr8x8(P2), starts: 4}}', problems: [] },
  { typed: 'a space before the colon', text: 'travel : 5 mm', tree: '{travel: 5 mm}', problems: [] },
  { typed: 'a byte order mark', text: '\ufefftravel: 5 mm\nspeed: 3', tree: '{travel: 5 mm, speed: 3}', problems: [] },
  // Not in the report, met while building.
  { typed: 'a closing bracket of the other kind', text: 'at: [1, 2}\nspeed: 3', tree: '{at: [1, 2], speed: 3}', problems: ['bracket-stray "}"'], mended: 'at: [1, 2]\nspeed: 3' },
  { typed: 'a map without its opening brace', text: 'nut: material: bronze, length: 3 mm }\nspeed: 3', tree: '{nut: {material: bronze, length: 3 mm}, speed: 3}', problems: ['bracket-missing "material"'], mended: 'nut: { material: bronze, length: 3 mm }\nspeed: 3' },
  { typed: 'a closing bracket too many', text: 'lift: { at: [1, 2]] }\nspeed: 3', tree: '{lift: {at: [1, 2]}, speed: 3}', problems: ['bracket-stray "]"'], mended: 'lift: { at: [1, 2] }\nspeed: 3' },
  { typed: 'the other bracket inside braces', text: 'lift: { at: [1, 2} }\nspeed: 3', tree: '{lift: {at: [1, 2]}, speed: 3}', problems: ['bracket-stray "}"'], mended: 'lift: { at: [1, 2] }\nspeed: 3' },
  { typed: 'no colon before a brace', text: 'plate { mass: 5 kg, at: [1, 2] }\nspeed: 3', tree: '{plate: {mass: 5 kg, at: [1, 2]}, speed: 3}', problems: ['colon-missing "plate"'], mended: 'plate: { mass: 5 kg, at: [1, 2] }\nspeed: 3' },
  { typed: 'no colon before a bracket', text: 'lift:\n  moves [plate]\n  speed: 3', tree: '{lift: {moves: [plate], speed: 3}}', problems: ['colon-missing "moves"'], mended: 'lift:\n  moves: [plate]\n  speed: 3' },
  { typed: 'a closing bracket alone', text: 'at: ]\nspeed: 3', tree: '{at: null, speed: 3}', problems: ['bracket-stray "]"'], mended: 'at: \nspeed: 3' },
  { typed: 'a text goes on behind its quote', text: 'name: "up" and down\nspeed: 3', tree: '{name: "up", speed: 3}', problems: ['text-not-understood "and down"'] },
  { typed: 'a comma too many', text: 'at: [1, , 2]', tree: '{at: [1, 2]}', problems: ['comma-stray ","'] },
  { typed: 'the same key twice', text: 'mass: 1\nspeed: 2\nmass: 3', tree: '{mass: 1, speed: 2, mass: 3}', problems: ['key-twice "mass"'] },
  { typed: 'the same key twice in braces', text: 'plate: { mass: 1, mass: 2 }', tree: '{plate: {mass: 1, mass: 2}}', problems: ['key-twice "mass"'] },
  { typed: 'an item without dash among others', text: 'moves:\n  - bed\n  plate\nspeed: 3', tree: '{moves: [bed, plate], speed: 3}', problems: ['dash-missing "plate"'], mended: 'moves:\n  - bed\n  - plate\nspeed: 3' },
  { typed: 'an open quote in open brackets', text: 'lift: { names: ["up, down\nspeed: 4', tree: '{lift: {names: ["up", down]}, speed: 4}', problems: ['bracket-open "{"', 'quote-open "\\""'] },
  { typed: 'an open quote at the end of open brackets', text: 'lift: { names: ["up\nspeed: 4', tree: '{lift: {names: ["up"]}, speed: 4}', problems: ['quote-open "\\""'], mended: 'lift: { names: ["up"]}\nspeed: 4' },
];

describe('half-typed texts', () => {
  it('are at least the 42 of the report', () => {
    expect(cases.length).toBeGreaterThanOrEqual(42);
  });

  for (const lineEnd of ['\n', '\r\n']) {
    describe(lineEnd === '\n' ? 'with LF' : 'with CR LF', () => {
      it.each(cases)('$typed', ({ text: written, tree, problems, mended }) => {
        const text = written.replaceAll('\n', lineEnd);
        const parsed = parseText(text);
        expect(parsed.problems.map((problem) => marked(problem, text))).toEqual(problems);
        expect(outline(parsed.root)).toBe(tree);
        if (mended !== undefined) {
          const edits = parsed.problems.flatMap((problem) => problem.fixes?.[0]?.edits ?? []);
          const after = applyEdits(text, edits);
          // A text of one line does not tell which line end to use.
          expect(after).toBe(text.includes('\n') ? mended.replaceAll('\n', lineEnd) : mended);
          expect(parseText(after).problems).toEqual([]);
        }
      });
    });
  }

  it('with old Mac line ends are read line by line and reported once', () => {
    const text = 'machine: Heron\rspeed: 3\rmass: 4';
    const parsed = parseText(text);
    expect(outline(parsed.root)).toBe('{machine: Heron, speed: 3, mass: 4}');
    expect(parsed.problems.map((problem) => problem.code)).toEqual(['lone-carriage-return']);
    const after = applyEdits(text, parsed.problems[0]?.fixes?.[0]?.edits ?? []);
    expect(after).toBe('machine: Heron\nspeed: 3\nmass: 4');
  });

  it('never bring a burst while a description is typed character by character', () => {
    const whole = 'machine: Heron\naxes:\n  lift:\n    direction: vertical\n    moves: [plate, cradle]\n    motion: { speed: "15 mm/s", acceleration: 200 mm/s² }\n    notes: it\'s new\nparts:\n  - a: 1\n';
    for (let length = 1; length <= whole.length; length++) {
      const { problems } = parseText(whole.slice(0, length));
      expect(problems.length, JSON.stringify(whole.slice(0, length))).toBeLessThanOrEqual(1);
    }
  });

  it('never bring a burst while an entry is typed in the middle of others', () => {
    const before = 'machine: Heron\naxes:\n  lift:\n    travel: 360 mm\n';
    const typed = '    drive: { motor: "lift motor", coupling: { bores: [5 mm, 8 mm] } }';
    const after = '\n    layer-height: 0.25 mm\n  tilt:\n    travel: 90°\nmasses:\n  plate: { mass: 6 kg }\n';
    for (let length = 1; length <= typed.length; length++) {
      const text = before + typed.slice(0, length) + after;
      const { problems, root } = parseText(text);
      expect(problems.length, JSON.stringify(typed.slice(0, length))).toBeLessThanOrEqual(1);
      // The neighbours are never lost.
      expect(outline(root), JSON.stringify(typed.slice(0, length))).toMatch(/layer-height: 0\.25 mm.*tilt: \{travel: 90°\}\}, masses: \{plate: \{mass: 6 kg\}\}\}$/);
    }
  });
});
