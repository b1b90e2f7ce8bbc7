import { describe, expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';
import { applyEdits } from '../../server/src/language/spans.ts';

const uri = 'file:///test.machine.yaml';

/** The problems of a text as `code: message`, and the text after the first fix of the first problem. */
function mended(text: string): { readonly told: readonly string[]; readonly after: string | undefined } {
  const { problems } = readDocument(uri, text);
  const edits = problems[0]?.fixes?.[0]?.edits;
  return { told: problems.map((problem) => `${problem.code}: ${problem.message}`), after: edits && applyEdits(text, edits) };
}

const machine = (lines: string, top = ''): string => `description-version: 1\nmachine: Test\n${top}axes:\n  lift:\n    direction: vertical\n    travel: 300 mm\n${lines}`;

/** Each slip as people make it, and the lines as they should read. */
describe('a value of the wrong shape is put into the right one', () => {
  it.each([
    ['a mass without its key', machine('', 'masses:\n  bed: 3 kg   # weighed\n'), machine('', 'masses:\n  bed: { mass: 3 kg }   # weighed\n')],
    ['a size without its key', machine('    drive:\n      screw: Tr8x8(P2)\n'), machine('    drive:\n      screw: { size: Tr8x8(P2) }\n')],
    ['a material without its key', machine('    drive:\n      nut: brass\n'), machine('    drive:\n      nut: { material: brass }\n')],
    ['microsteps as a part of a step', machine('', 'controller: { microsteps: 1/16 }\n'), machine('', 'controller: { microsteps: 16 }\n')],
    [
      'stages without a dash',
      machine('    drive:\n      reduction:\n        kind: belt\n        # pulleys\n        driving-teeth: 20\n\n        driven-teeth: 40\n      units: 2\n'),
      machine('    drive:\n      reduction:\n        - kind: belt\n          # pulleys\n          driving-teeth: 20\n\n          driven-teeth: 40\n      units: 2\n'),
    ],
    ['a stage without its list', machine('    drive:\n      reduction: { kind: belt, ratio: 2 }\n'), machine('    drive:\n      reduction: [{ kind: belt, ratio: 2 }]\n')],
    ['a bare number above 1 where a share is due', machine('    motion: { speed: 5 mm/s, duty: 20 }\n'), machine('    motion: { speed: 5 mm/s, duty: 20 % }\n')],
    ['a length where a speed is due', machine('    motion: { speed: 5 mm }\n'), machine('    motion: { speed: 5 mm/s }\n')],
    ['a word for a unit', machine('', 'supplies: { main: { voltage: 24 Volts } }\n'), machine('', 'supplies: { main: { voltage: 24 V } }\n')],
    ['more than the word', machine('    drive:\n      nut: { lubrication: lithium grease }\n'), machine('    drive:\n      nut: { lubrication: grease }\n')],
  ])('%s', (_, text, wanted) => {
    const { told, after } = mended(text);
    expect(told).toHaveLength(1);
    expect(after).toBe(wanted);
    expect(mended(wanted).told).toEqual([]);
  });
});

describe('a message says what to do', () => {
  it('of a direction that is not written yet', () => {
    expect(mended('description-version: 1\nmachine: Test\naxes:\n  lift:\n    direction:\n    travel: 300 mm\n').told).toEqual(['value-missing: "direction" has no value. Write one, such as "vertical".']);
  });

  it('of a motor described where its name is due', () => {
    expect(mended(machine('    drive:\n      motor:\n        kind: stepper\n')).told).toEqual(['value-of-wrong-type: A name, such as "lift-motor", is due here, and its entries under "parts", but entries stand there.']);
  });

  it('of a list that is too short', () => {
    expect(mended(machine('    moves: []\n')).told.join()).toContain('At least 1 item is due here. Such as [ plate ].');
  });

  it('of misspelt keys once, not as missing ones again', () => {
    expect(mended('description-version: 1\nMachine: x\naxis: { x: { direction: vertical, travel: 3 mm } }\n').told.map((text) => text.split(':')[0])).toEqual(['key-unknown', 'key-unknown']);
  });

  it('of a later version of the language', () => {
    expect(mended('description-version: 2\nmachine: Test\naxes: {}\n').told.join()).toContain('This release reads version 1 of the language, not "2".');
  });
});
