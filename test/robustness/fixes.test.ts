import { describe, expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';
import { applyEdits } from '../../server/src/language/spans.ts';

const uri = 'file:///heron.machine.yaml';
const whole = `description-version: 1
machine: Heron
purpose: prints moulds for canoe ribs
controller: { step-rate: 200 kHz, microsteps: 16 }
masses:
  plate: { mass: 6.2 kg ± 0.2 kg, at: [310 mm, 160 mm] }
  cradle:
    mass: 2.4 kg
axes:
  lift:
    direction: vertical
    travel: 360 mm
    moves: [plate, cradle]
    motion: { speed: 15 mm/s, acceleration: 200 mm/s² }
    catcher: latch
    drive:
      units: 2
      motor: lift-motor
      coupling: { form: jaw, bores: [5 mm, 8 mm] }
      screw:
        size: Tr8x8(P2)
        end-supports: fixed-free
      nut: { material: bronze, friction: 0.08 to 0.15 }
parts:
  lift-motor:
    kind: stepper
    holding-torque: 0.42 N·m
    current: 1.5 A
`;

/** The slips that people make at a place of the text: a character left out, doubled, or swapped with its neighbour. */
function slipsAt(at: number): readonly string[] {
  const here = whole[at] ?? '';
  const next = whole[at + 1] ?? '';
  // Nobody swaps a letter with the end of its line, but a colon with it.
  const swaps = here !== '\n' && (next !== '\n' || here === ':');
  return [next, here + here + next, ...(swaps ? [next + here] : [])].map((typed) => whole.slice(0, at) + typed + whole.slice(at + 2));
}

const allSlips: readonly string[] = Array.from({ length: whole.length - 2 }, (_, at) => slipsAt(at)).flat();

const codesOf = (text: string): readonly string[] => readDocument(uri, text).problems.map((problem) => problem.code);

/** Fixes that mend one of several things, or offer a choice that may open the next question. */
const mayLeaveMore = new Set(['key-unknown', 'value-not-in-list', 'unit-unknown', 'unit-of-wrong-kind', 'range-reversed', 'indent-wrong', 'two-keys-on-one-line']);

describe('a fix', { timeout: 120_000 }, () => {
  it('has nothing to mend in the text from which the others are made', () => {
    expect(codesOf(whole)).toEqual([]);
    expect(allSlips.length).toBeGreaterThan(2_000);
  });

  it('takes its problem away, and brings no other', () => {
    let tried = 0;
    const wrong: string[] = [];
    for (const [index, slip] of allSlips.entries()) {
      const text = index % 5 === 0 ? slip.replaceAll('\n', '\r\n') : slip;
      const { problems } = readDocument(uri, text);
      for (const problem of problems) {
        // Of several choices the first is the likeliest; the others may lead elsewhere.
        const fixes = (problem.fixes ?? []).slice(0, mayLeaveMore.has(problem.code) ? 1 : undefined);
        for (const fix of fixes) {
          const after = applyEdits(text, fix.edits);
          const left = codesOf(after);
          const count = (list: readonly string[]): number => list.filter((code) => code === problem.code).length;
          const before = problems.map((other) => other.code);
          const cured = count(left) <= count(before) - (mayLeaveMore.has(problem.code) ? 0 : 1);
          if (!cured || (!mayLeaveMore.has(problem.code) && left.length > before.length + 1)) wrong.push(`${fix.title} for ${problem.message}: ${left.join(', ')} in ${JSON.stringify(after)}`);
          tried += 1;
        }
      }
    }
    expect(wrong).toEqual([]);
    expect(tried).toBeGreaterThan(1_000);
  });

  it('and one slip in a whole description brings two findings at most', () => {
    const bursts = allSlips.map((text) => readDocument(uri, text).problems.filter((problem) => problem.severity === 'error')).filter((errors) => errors.length > 2);
    expect(bursts).toEqual([]);
  });
});
