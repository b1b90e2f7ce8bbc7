import { describe, expect, it } from 'vitest';
import { evaluate } from '../support/evaluate.ts';

const ENTRIES = ['screw.lead', 'screw.pitch', 'screw.starts', 'screw.major-diameter', 'screw.pitch-diameter', 'screw.root-diameter'] as const;

function permutations<T>(items: readonly T[]): T[][] {
  return items.length < 2 ? [[...items]] : items.flatMap((item, index) => permutations(items.filter((_, other) => other !== index)).map((rest) => [item, ...rest]));
}

const mm = (value: number | undefined): number | undefined => (value === undefined ? undefined : Number((value * 1000).toFixed(6)));

/** Lead, pitch, starts, d, d2, d3 (mm) of a screw with these entries, asked for in this order. */
function dimensions(screw: Readonly<Record<string, unknown>>, order: readonly string[]): readonly (number | undefined)[] {
  const evaluation = evaluate('lift', { screw: { material: 'steel', ...screw } });
  for (const id of order) evaluation.bounds(id);
  return ENTRIES.map((id) => (id === 'screw.starts' ? evaluation.bounds(id)?.nominal : mm(evaluation.bounds(id)?.nominal)));
}

describe('dimensions of a screw, whatever is asked first', () => {
  // ISO 2901: d2 = d − P/2, d3 = d − P − 2 ac (ac 0.25 mm for P 2 to 5 mm); ISO 2902: lead = starts × pitch. By hand.
  it.each([
    ['a size', { size: 'Tr8x8(P2)' }, [8, 2, 4, 8, 7, 5.5]],
    ['a size and its pitch apart', { size: 'Tr8x8', pitch: '2 mm' }, [8, 2, 4, 8, 7, 5.5]],
    ['a size that leaves one pitch possible', { size: 'Tr8x8' }, [8, 2, 4, 8, 7, 5.5]],
    ['a size that leaves two', { size: 'Tr8x6' }, [6, undefined, undefined, 8, undefined, undefined]],
    ['a size without lead', { size: 'T8' }, [undefined, undefined, undefined, 8, undefined, undefined]],
    ['diameter and pitch', { thread: 'trapezoidal', 'major-diameter': '12 mm', pitch: '3 mm' }, [3, 3, 1, 12, 10.5, 8.5]],
    ['diameter, pitch and starts', { thread: 'trapezoidal', 'major-diameter': '12 mm', pitch: '3 mm', starts: 2 }, [6, 3, 2, 12, 10.5, 8.5]],
    ['diameter, lead and starts', { thread: 'trapezoidal', 'major-diameter': '12 mm', lead: '6 mm', starts: 2 }, [6, 3, 2, 12, 10.5, 8.5]],
    ['diameter, lead and pitch', { thread: 'trapezoidal', 'major-diameter': '12 mm', lead: '6 mm', pitch: '3 mm' }, [6, 3, 2, 12, 10.5, 8.5]],
    ['diameter and a fine lead', { thread: 'square', 'major-diameter': '30 mm', lead: '6 mm' }, [6, 6, 1, 30, 27, 24]],
    ['diameter and a coarse lead, starts open', { thread: 'trapezoidal', 'major-diameter': '8 mm', lead: '8 mm' }, [8, undefined, undefined, 8, undefined, undefined]],
    ['an inch thread', { thread: 'acme', 'major-diameter': '1 in', pitch: '0.2 in' }, [5.08, 5.08, 1, 25.4, 22.86, 19.812]],
  ])('%s', (_, screw, expected) => {
    for (const order of permutations(ENTRIES.slice(0, 4))) expect(dimensions(screw, order), order.join()).toEqual(expected);
    for (const order of permutations(['screw.pitch-diameter', 'screw.root-diameter', 'screw.starts'])) expect(dimensions(screw, order), order.join()).toEqual(expected);
  });

  it('a written dimension wins over the size', () => {
    expect(dimensions({ size: 'Tr8x8(P2)', lead: '4 mm', 'root-diameter': '5.2 mm' }, [])).toEqual([4, 2, 4, 8, 7, 5.2]);
  });

  it('the root reaches down to the smallest of class 7e', () => {
    // ISO 2903, Tr16x4: 11.5 − 0.095 − 1.25 · 0.265 = 11.07375 mm.
    const root = evaluate('lift', { 'screw.size': 'Tr16x4' }).bounds('screw.root-diameter');
    expect(root?.low).toBeCloseTo(11.07375e-3, 9);
    expect(root?.high).toBeCloseTo(11.5e-3, 9);
  });
});
