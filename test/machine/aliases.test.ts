import { describe, expect, it } from 'vitest';
import { analyse, keptOf } from '../../server/src/checks/analysis.ts';
import { readDocument } from '../../server/src/language/read-document.ts';

const text = (teeth: number): string => `description-version: 1
machine: Twins
masses: { plate: { mass: 1 kg } }
axes:
  a:
    direction: horizontal
    travel: 300 mm
    moves: [plate]
    motion: { speed: 100 mm/s, acceleration: 1 m/s² }
    drive:
      reduction: &stages
        - { kind: belt, driving-teeth: 20, driven-teeth: ${teeth} }
      belt: { profile: T5, width: 10 mm }
      pulley: { teeth: 20 }
  b:
    direction: horizontal
    travel: 300 mm
    moves: [plate]
    motion: { speed: 100 mm/s, acceleration: 1 m/s² }
    drive:
      reduction: *stages
      belt: { profile: T5, width: 10 mm }
      pulley: { teeth: 20 }
`;

describe('what is kept between two versions of a text', () => {
  it('is computed anew where an alias stands for something else now', () => {
    const read = (teeth: number) => readDocument('file:///twins.machine.yaml', text(teeth));
    const after = analyse(read(60), [], keptOf(analyse(read(40), [])));
    // 100 mm in a turn over a stage of 60 to 20: 33.3 mm for a turn of the motor.
    const travel = (axis: string) => after.evaluations.find(({ subject }) => subject.id === `axes/${axis}/drive`)?.bounds('axis.travel-per-turn')?.nominal;
    expect(travel('a')).toBeCloseTo(0.1 / 3, 9);
    expect(travel('b')).toBeCloseTo(0.1 / 3, 9);
  });
});
