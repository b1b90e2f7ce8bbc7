import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

/** `code message` of the problems with names and sizes in a small machine. */
function problems({ screw = '{ size: Tr8x2 }', moves = '[plate]', motor = 'lift-motor', part = 'kind: stepper' }): readonly string[] {
  const text = [
    'description-version: 1', 'machine: Test', 'masses: { plate: { mass: 4 kg } }', 'axes:', '  lift:', '    direction: vertical', '    travel: 300 mm', `    moves: ${moves}`,
    `    drive: { motor: ${motor}, screw: ${screw} }`, `parts: { lift-motor: { ${part} } }`, '',
  ].join('\n');
  return analyse(readDocument('file:///test.machine.yaml', text), []).problems.map((problem) => `${problem.code} ${problem.message}`);
}

describe('sizes', () => {
  it.each(['Tr8x2', 'Tr8x8(P2)', 'T8', 'T8 lead 8', 'tr 12 x 3 LH', '1605', '"802"'])('%s is understood', (size) => {
    expect(problems({ screw: `{ size: ${size} }` })).toEqual([]);
  });

  it.each([
    ['M8', 'Write one such as Tr12x3'],
    ['Tr8 by 8', 'Did you mean "Tr8x8"?'],
    ['8-2', 'Did you mean "Tr8x2"?'],
    ['big one', 'Write one such as Tr12x3'],
  ])('%s is not, and says what to write', (size, cure) => {
    const [found, ...others] = problems({ screw: `{ size: ${size} }` });
    expect(others).toEqual([]);
    expect(found).toMatch(/^size-unknown /);
    expect(found).toContain(cure);
  });

  it('of a motor face', () => {
    expect(problems({ part: 'kind: stepper, frame: nema17' })).toEqual([]);
    expect(problems({ part: 'kind: stepper, frame: 42 mm' }).join()).toMatch(/^size-unknown "42 mm" is no motor face that is known here/);
  });
});

describe('names', () => {
  it('a single mass without brackets is moved all the same', () => {
    expect(problems({ moves: 'plate' })).toEqual([]);
  });

  it('a part whose kind there is not is no part of another kind: its kind is what is wrong', () => {
    expect(problems({ part: 'kind: stepper motor' })).toEqual([]);
    expect(problems({ part: 'kind: nut' }).join()).toMatch(/^part-of-wrong-kind "lift-motor" is a nut/);
  });

  it('says where to describe what is described nowhere', () => {
    const found = problems({ motor: 'spindle', part: 'kind: nut' });
    expect(found).toContain('unknown-name No motor is called "spindle". Describe it under "parts", with a "kind" of stepper, dc-motor or brushless.');
  });
});

describe('axes that are named beside themselves', () => {
  const axis = (drive: string) => `    direction: horizontal\n    travel: 300 mm\n${drive}`;
  const codes = (text: string) => analyse(readDocument('file:///m.machine.yaml', `description-version: 1\nmachine: M\n${text}`), []).problems.map(({ code, message }) => `${code} ${message}`);
  it('in a layout', () => {
    expect(codes(`layout:\n  kind: crossed-belts\n  axes: [x, x]\n  drive: {}\naxes:\n  x:\n${axis('')}`)).toContain('axis-on-itself Crossed belts join two axes, and "x" is named twice. Name the other axis.');
  });
  it('on a gantry', () => {
    expect(codes(`axes:\n  x:\n${axis('    drive: { carries: x }\n')}`)).toContain('axis-on-itself The axis "x" cannot ride on itself. Name the axis that it carries across.');
  });
});

describe('points of a frame', () => {
  const problems = (changes: Readonly<Record<string, unknown>>) => {
    const document = readDocument('file:///frame.machine.yaml', yamlOf(machineWith('portal', changes)));
    return analyse(document, []).problems.map(({ code, message, place }) => `${code} ${place.path.join('/')}: ${message}`);
  };
  it('are looked for at members, tool and work', () => {
    expect(problems({ 'frame.tool': 'tol' })).toEqual(['unknown-name frame/tool: No point of the frame is called "tol". Did you mean "tool"?']);
    expect(problems({ 'frame.work': 'zzz' })[0]).toContain('unknown-name frame/work');
    const lost = problems({ 'frame.members': { left: { from: 'foot left', to: 'top lft' } } });
    expect(lost[0]).toContain('unknown-name frame/members/left/to: No point of the frame is called "top lft". Did you mean "top left"');
  });
  it('are two for each member', () => {
    expect(problems({ 'frame.members': { left: { from: 'foot left', to: 'foot left' } } })).toEqual(['member-without-length frame/members/left/to: The member "left" begins and ends at "foot left". Name the point at its other end.']);
  });
});
