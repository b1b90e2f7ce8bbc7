import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeTitle, LONGEST_TITLE } from '../../server/src/remedies/title.ts';
import { example } from '../support/cursor.ts';
import { analyseText, cures } from './support.ts';

/** Numbers stand as #: they are the business of the figures, and no expected number comes from our own program. */
const masked = (title: string): string => title.replace(/(?<![A-Za-z])\d+(?:\.\d+)?/g, '#').replace(/\b(Tr)#(?:x#)?(?:\(P#\))?/g, '$1…');

describe('titles of remedies', () => {
  const analysed = analyseText(example('large-format-printer/first-draft.machine.yaml'));
  const offered = analysed.analysis.findings.map((finding) => ({ check: finding.check, titles: cures(finding, analysed).map(({ title }) => title) })).filter(({ titles }) => titles.length > 0);
  const all = offered.flatMap(({ titles }) => titles);

  const shown = ['screw-whirls', 'drops-unpowered', 'threaded-end-in-plain-bore', 'nut-overpressed-in-motion', 'motor-margin-thin'];

  it('read well on the first draft of the printer', () => {
    expect(offered.filter(({ check }) => shown.includes(check)).map(({ check, titles }) => [check, ...titles.slice(0, 2).map(masked)].join('\n')).join('\n')).toMatchInlineSnapshot(`
      "drops-unpowered
      Fit a # N·m spring-applied brake: #× the load held with power off
      Fit a latch that catches it at any height: it lets go, but falls no farther
      motor-margin-thin
      Set the current to # A peak: #× the torque asked for instead of #×
      Set the current to # A RMS: #× the torque asked for instead of #×
      nut-overpressed-in-motion
      Lengthen the nut's thread to # mm: # MPa on the thread instead of # MPa
      Take a greased nut of bronze: # MPa on the thread instead of # MPa
      screw-whirls
      Slow the axis to # mm/s: # % of the whirl speed instead of # %
      Support the far end: # % of the whirl speed instead of # %
      threaded-end-in-plain-bore
      Turn the end of the screw down to # mm, coupling bored to match: it is centred"
    `);
  });
  it('are an order with its result, at most 100 characters long', () => {
    for (const title of all) {
      expect(title, title).toMatch(/^[A-Z][^:]*(?:: \S.*)?$/);
      expect(title.length, title).toBeLessThanOrEqual(LONGEST_TITLE);
      expect(title, title).not.toMatch(/undefined|NaN|\bunknown\b|[!?]|\s\s|safe|OK/);
    }
  });
  it('tell the result of nearly all, with how it was', () => {
    const withResult = all.filter((title) => title.includes(': '));
    expect(withResult.length / all.length).toBeGreaterThan(0.95);
    expect(withResult.filter((title) => title.includes(' instead of ')).length / all.length).toBeGreaterThan(0.5);
  });
  it('are all different within a finding', () => {
    for (const { titles } of offered) expect(new Set(titles).size).toBe(titles.length);
  });
});

describe('putting a title together', () => {
  it.each([
    [{ orders: ['Support the far end'], lists: [], result: ['41 % of the whirl speed instead of 118 %'], prices: [] }, 'Support the far end: 41 % of the whirl speed instead of 118 %'],
    [{ orders: ['Take the finer lead of Tr8x2', 'Slow the axis to 12 mm/s'], lists: [], result: ['1.6× the torque asked for'], prices: [] }, 'Take the finer lead of Tr8x2 and slow the axis to 12 mm/s: 1.6× the torque asked for'],
    [{ orders: ['Grease the nut', 'Slow down', 'Ease the ramp'], lists: [], result: [], prices: [] }, 'Grease the nut, slow down and ease the ramp'],
    [{ orders: ['Counterbalance 60 N'], lists: [], result: ['1.5×'], prices: ['stored energy'] }, 'Counterbalance 60 N: 1.5×, stored energy'],
    [{ orders: ['Take a 0.9 N·m motor'], lists: ['stock.parts.yaml'], result: ['1.5×'], prices: [] }, 'Take a 0.9 N·m motor in stock.parts.yaml: 1.5×'],
  ])('%j', (parts, title) => {
    expect(composeTitle(parts)).toBe(title);
  });
  it('says less of the result where it would grow too long, and always what it costs', () => {
    const order = 'Take a greased nut of bronze, 24 mm long and slow the axis to 14 mm/s';
    const result = ['42 % of the limit instead of 209 %', '42 % of the limit', '42 %'];
    expect(composeTitle({ orders: [order], lists: [], result, prices: ['more drag'] })).toBe(`${order}: 42 % of the limit, more drag`);
    expect(composeTitle({ orders: [order], lists: [], result, prices: ['more drag', 'noisier'] })).toBe(`${order}: 42 %, more drag, noisier`);
  });
  it('never loses an order, a list or a price', () => {
    const words = fc.array(fc.constantFrom('Slow down', 'Take a bellows coupling', 'Support the far end'), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(words, fc.array(fc.constantFrom('stored energy', 'more drag')), fc.array(fc.string({ maxLength: 90 }), { maxLength: 3 }), (orders, prices, result) => {
        const title = composeTitle({ orders, lists: ['a.parts.yaml'], result, prices });
        for (const order of orders) expect(title.toLowerCase()).toContain(order.toLowerCase());
        for (const price of prices) expect(title).toContain(price);
        expect(title).toContain('in a.parts.yaml');
      }),
    );
  });
});
