import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { otherMachines } from './random-belts-and-racks.ts';
import { machines } from './random-machines.ts';
import { analysedAfter, analyseText, cures, grave, inOrder, name, type Analysed } from './support.ts';

/** The same machines every time: what is measured here is how much is offered, and it must not depend on luck. */
const samples = [
  ['on screws', fc.sample(machines, { numRuns: 20, seed: 20 })],
  ['on belts, racks, crossed belts and gantries', fc.sample(otherMachines, { numRuns: 20, seed: 20 })],
] as const;

/** No machine takes this many fixes unless they go round in a circle. */
const MOST_FIXES = 20;

/** Applies the first fix that is offered for the gravest finding, until none is left or nothing is offered: what stays. */
function mended(text: string): readonly string[] {
  let now: Analysed = analyseText(text);
  for (let count = 0; count < MOST_FIXES; count++) {
    const open = inOrder(grave(now.analysis));
    let next: Analysed | undefined;
    for (const finding of open) {
      const [first] = cures(finding, now);
      next = first && analysedAfter(first, now);
      if (next) break;
    }
    if (!next) return open.map(name);
    now = next;
  }
  return ['round in a circle'];
}

describe.each(samples)('on plausible machines %s', (_, texts) => {
  const offers = { all: 0, without: [] as string[] };

  beforeAll(() => {
    for (const text of texts) {
      const analysed = analyseText(text);
      for (const finding of grave(analysed.analysis)) {
        offers.all++;
        if (cures(finding, analysed).length === 0) offers.without.push(name(finding));
      }
    }
  }, 120_000);

  it('nine errors and warnings of ten have a remedy on offer', () => {
    // There must be something to mend for the share to mean anything.
    expect(offers.all).toBeGreaterThan(2 * texts.length);
    expect(offers.without.length, offers.without.join()).toBeLessThanOrEqual(0.1 * offers.all);
  });
  it('taking the first fix again and again leaves no error and no warning on four of five', () => {
    const left = texts.map(mended).filter((findings) => findings.length > 0);
    expect(left.length, left.join(' | ')).toBeLessThanOrEqual(0.2 * texts.length);
  }, 120_000);
});
