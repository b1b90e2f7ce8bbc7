/** Load on each carriage by least complementary energy over what statics leaves open. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { carriageLoads, carriagesOnRails } from '../../server/src/mechanics/carriage-loads.ts';

const number = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

test('four carriages of different stiffness: statics plus the twist with the least energy', () => {
  fc.assert(fc.property(
    fc.tuple(number(0.2, 5), number(0.2, 5), number(0.2, 5), number(0.2, 5)),
    fc.record({ fy: number(-50, 50), fz: number(-100, 100), mx: number(-20, 20), my: number(-20, 20), mz: number(-20, 20) }),
    (k, wrench) => {
      const [b, l] = [0.3, 0.2];
      const carriages = carriagesOnRails(2, 2, b, l).map((one, i) => ({ ...one, stiffness: k[i] as number }));
      const loads = carriageLoads(carriages, wrench);
      if (loads === 'not held') throw new Error('held');
      // One solution of the balances, even shares; M = r × F: roll is y F, pitch is -x F.
      const start = carriages.map(({ x, y }) => wrench.fz / 4 + (wrench.mx / (2 * b)) * Math.sign(y) - (wrench.my / (2 * l)) * Math.sign(x));
      const twist = carriages.map(({ x, y }) => Math.sign(x) * Math.sign(y));
      // d/dX sum (R + X t)²/k = 0.
      const open = -start.reduce((sum, r, i) => sum + (r * (twist[i] as number)) / (k[i] as number), 0) / k.reduce((sum, one) => sum + 1 / one, 0);
      loads.forEach(({ fz, mx, my }, i) => {
        expect(Math.abs(fz - ((start[i] as number) + open * (twist[i] as number)))).toBeLessThan(1e-8);
        expect(Math.abs(mx)).toBe(0);
        expect(Math.abs(my)).toBe(0);
      });
      // All balances.
      const sum = (value: (i: number) => number): number => loads.reduce((total, _, i) => total + value(i), 0);
      const at = (i: number) => ({ ...(carriages[i] as { x: number; y: number }), ...(loads[i] as { fy: number; fz: number }) });
      expect(sum((i) => at(i).fy)).toBeCloseTo(wrench.fy, 8);
      expect(sum((i) => at(i).x * at(i).fy)).toBeCloseTo(wrench.mz, 8);
      expect(sum((i) => at(i).y * at(i).fz)).toBeCloseTo(wrench.mx, 8);
      expect(sum((i) => -at(i).x * at(i).fz)).toBeCloseTo(wrench.my, 8);
    },
  ));
});
