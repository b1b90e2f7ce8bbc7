import { figure } from '../figure.ts';

/** Loads run from `lifting` down to its mirror about the load at rest: friction, work and inertia reverse with the motion. */
const leastOf = (rest: number, lifting: number): number => 2 * rest - lifting;

export default [
  figure({
    id: 'drive.largest-load',
    title: 'Largest axial load',
    symbol: 'F_max',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest axial load on one screw in either direction, with inertia, friction and process force.',
    needs: { rest: 'drive.gravity-load', lifting: 'drive.lifting-load' },
    compute: ({ rest, lifting }) => Math.max(Math.abs(lifting), Math.abs(leastOf(rest, lifting))),
    formula: 'F_max = max(|F₂|, |2 F₀ − F₂|)',
    sources: [{ title: 'statics' }],
    rank: 3,
  }),
  figure({
    id: 'screw.compression',
    title: 'Push on the screw',
    symbol: 'F_d',
    quantity: 'force',
    unit: 'N',
    meaning: 'Largest force that presses together the stretch between thrust bearing and nut; 0 where the load always pulls.',
    needs: { rest: 'drive.gravity-load', lifting: 'drive.lifting-load', inclination: 'axis.inclination' },
    optionalChoices: { motor: 'drive.motor-position', thrust: 'screw.thrust-end' },
    compute: ({ rest, lifting, inclination, motor, thrust }) => {
      const down = lifting;
      const up = -leastOf(rest, lifting);
      const either = Math.max(down, up, 0);
      // Held at both ends: with the nut at two thirds from the lower end, that stretch carries a third of the load, its worst case.
      if (thrust === 'both') return { value: either / 3, note: 'both ends take thrust: a third of the load presses on two thirds of the length, the worst place of the nut' };
      if (inclination <= 0) return either;
      const motorAbove = motor === 'above';
      const hangs = motorAbove === (thrust !== 'far') && !(motor === undefined && thrust === 'far');
      if (hangs) {
        const push = Math.max(up, 0);
        return push > 0 ? push : { value: 0, note: 'the screw hangs from its thrust bearing and stays in tension' };
      }
      const push = Math.max(down, 0);
      return motor === undefined ? { value: push, note: 'where the motor sits is not said: taken as below, the side that presses' } : push;
    },
    formula: 'standing: F_d = F₂; hanging: F_d = F₂ − 2 F₀; not below 0',
    sources: [{ title: 'statics of the stretch between thrust bearing and nut' }],
    rank: 3,
  }),
];
