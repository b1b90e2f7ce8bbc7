import { fallbacks, type Member } from '../input.ts';
import { isDriveJoint } from '../levelling-problems.ts';
import type { Origin } from '../origin.ts';

const here = (member: Member): { title: string; origin: Origin } => ({ title: member.title, origin: { from: 'here', place: member.place } });

/** Levelling by lifts that move one by one: which supports they are and where, and what was measured at them. */
export default fallbacks(
  {
    // A row for each lift: which of the supports it is, counted from 0 in the order of the text, then x and y in m.
    input: 'levelling.lift-places',
    title: 'Lifts and where they stand',
    symbol: 'r_i',
    compose: (read, lists) => {
      const supports = lists.entries('axis.supports') ?? [];
      const vertical = Math.abs((read.number('axis.inclination')?.nominal ?? 0) - Math.PI / 2) < 1e-6;
      const usual = supports.flatMap((support, index) => (isDriveJoint(support.choice('joint')) && (support.choice('along') ?? (vertical ? 'z' : '')) === 'z' ? [index] : []));
      const named = lists.texts('levelling.lifts')?.map((name) => supports.findIndex((support) => support.title === name));
      const chosen = named ?? usual;
      // A name that leads nowhere, or that stands there twice, is reported where it is written.
      if (chosen.length < 3 || chosen.includes(-1) || new Set(chosen).size < chosen.length) return undefined;
      const rows = chosen.flatMap((index) => {
        const [x, y] = supports[index]?.quantities('at', 'position') ?? [];
        return x && y ? [[index, x.nominal, y.nominal]] : [];
      });
      if (rows.length < chosen.length) return undefined;
      const lifts = chosen.flatMap((index) => supports[index] ?? []);
      return { value: { type: 'table', rows, titles: lifts.map(({ title }) => title) }, origin: { from: 'several', parts: lifts.map(here) } };
    },
  },
  {
    input: 'levelling.measured-heights',
    title: 'Heights measured at the lifts',
    symbol: 'z_i',
    compose: (_read, lists) => {
      const heights = lists.quantities('levelling.heights', 'position');
      if (!heights) return undefined;
      return {
        value: { type: 'table', rows: heights.map(({ value }) => [value.nominal]) },
        origin: { from: 'several', parts: heights.map(({ origin }, index) => ({ title: `height ${index + 1}`, origin })) },
      };
    },
  },
  {
    input: 'levelling.moved-by',
    compose: (read) => {
      const origin = read.origin('drive.motors');
      return read.choice('drive.motors') === 'one-each' && origin ? { value: { type: 'choice', text: 'own-motors' }, origin } : undefined;
    },
  },
  { input: 'levelling.range', symbol: 'c' },
  { input: 'levelling.step', symbol: 's_l' },
  { input: 'levelling.steepest', symbol: 'γ_lim' },
);
