import { describe, expect, it } from 'vitest';
import { plotAlt, plotDataUri, plotSvg, type AnyChart } from '../../server/src/services/plot.ts';
import type { Chart } from '../../server/src/figures/figure.ts';

type Values = { readonly top: number };

/** Torque falling over speed; invented. */
const chart = (changes: Partial<Chart<Values>> = {}): AnyChart => ({
  title: 'Torque over speed',
  alt: ({ top }: Values) => `falls from ${top} N·m`,
  x: { title: 'Motor speed', quantity: 'rotational-speed', unit: 'rpm', from: () => 0, to: () => 100 },
  y: { title: 'Torque', quantity: 'torque' },
  curves: [{ title: 'available', y: (x: number, { top }: Values) => top / (1 + x / 50) }],
  ...changes,
});

const values = { top: 0.42 };
const svgOf = (made: AnyChart): string => plotSvg(made, values) ?? '';

/** Tags closed in the order in which they were opened, attributes quoted: enough to know that a reader of XML takes it. */
function wellFormed(svg: string): boolean {
  const open: string[] = [];
  const rest = svg.replace(/<(\/?)([a-z]+)((?:\s+[a-z:-]+="[^"<]*")*)\s*(\/?)>/gi, (_, close: string, tag: string, _attributes: string, empty: string) => {
    if (close === '/') return open.pop() === tag ? '' : '<';
    if (empty === '') open.push(tag);
    return '';
  });
  return open.length === 0 && !/[<>]/.test(rest) && !/&(?!amp;|lt;|gt;|quot;)/.test(rest);
}

describe('a plot', () => {
  it('is well-formed, has a size, a title, axes with units and a text for those who do not see it', () => {
    const svg = svgOf(chart());
    expect(wellFormed(svg)).toBe(true);
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="440" height="\d+"/);
    for (const text of ['Torque over speed', 'Motor speed in rpm', 'Torque in N·m', 'available', 'falls from 0.42 N·m']) expect(svg).toContain(text);
  });
  it('numbers its axes in the units named: 100 rad/s is 955 rpm', () => {
    // 100 rad/s · 60/(2π) = 954.93 rpm, so the last round number below is 900.
    expect(svgOf(chart())).toContain('>900<');
    expect(svgOf(chart())).not.toContain('>1000<');
  });
  it('tells curves apart by dashes, not by colour alone', () => {
    const dashes = svgOf(chart({ curves: [1, 2, 3].map((k) => ({ title: `c${k}`, y: (x: number) => x * k })) })).match(/<path fill="none" stroke="#[0-9a-f]+" stroke-width="1.8"(?: stroke-dasharray="[^"]+")?/g);
    expect(new Set(dashes).size).toBe(3);
    expect(dashes?.filter((dash) => dash.includes('dasharray'))).toHaveLength(2);
  });
  it('escapes every text', () => {
    const svg = svgOf(chart({ title: '<script>&"', curves: [{ title: 'a<b>', y: (x) => x }] }));
    expect(wellFormed(svg)).toBe(true);
    expect(svg).not.toContain('<script>');
  });
  it('marks operating points by shape and label, and names close ones in the legend instead', () => {
    const apart = svgOf(chart({ points: [{ title: 'wanted', x: () => 50, y: () => 0.1 }] }));
    expect(apart).toMatch(/<circle[^>]+>/);
    expect(apart).toContain('>wanted</text>');
    const close = svgOf(chart({ points: [{ title: 'first', x: () => 50, y: () => 0.1 }, { title: 'second', x: () => 50, y: () => 0.11 }] }));
    // The two labels stand in the legend rows below the axis, at least 44 px below the plot's lower edge at 172 (46 above it, 126 high).
    for (const title of ['first', 'second']) expect(Number(new RegExp(`y="([\\d.]+)">${title}</text>`).exec(close)?.[1])).toBeGreaterThan(172 + 44);
  });
  it('says of a point outside that it is beyond', () => {
    expect(svgOf(chart({ points: [{ title: 'wanted', x: () => 500, y: () => 0.1 }] }))).toContain('wanted (beyond)');
  });
  it('keeps a curve readable that shoots up at one end', () => {
    const svg = svgOf(chart({ y: { title: 'y', quantity: 'ratio' }, curves: [{ title: 'c', y: (x) => 1 / (x + 1e-6) ** 2 }] }));
    // Uncut, the scale would end at 1e12 and the curve lie on the axis.
    expect(svg).not.toMatch(/e\+\d+</);
  });
  it('leaves gaps where a curve has no value or throws', () => {
    const svg = svgOf(chart({ curves: [{ title: 'c', y: (x) => { if (x > 60) throw new RangeError('outside'); return x < 20 ? Number.NaN : 1; } }] }));
    expect(wellFormed(svg)).toBe(true);
    expect(svg).not.toMatch(/NaN|Infinity/);
  });
  it('is nothing where there is nothing to draw', () => {
    expect(plotSvg(chart({ curves: [{ title: 'c', y: () => Number.NaN }] }), values)).toBeUndefined();
    expect(plotSvg(chart({ x: { title: 'x', quantity: 'ratio', from: () => 1, to: () => 1 } }), values)).toBeUndefined();
    expect(plotSvg(chart({ x: { title: 'x', quantity: 'ratio', from: () => 0, to: () => Number.NaN } }), values)).toBeUndefined();
  });
  it('starts a scale of temperature where the curve is, not at absolute zero', () => {
    const svg = svgOf(chart({ y: { title: 'Case', quantity: 'temperature' }, curves: [{ title: 'c', y: (x) => 293.15 + x / 4 }] }));
    expect(svg).toContain('Case in °C');
    expect(svg).not.toContain('>-200<');
  });
});

describe('the size of a plot', () => {
  it('fits the 250 px of an editor\'s hover where the legend has one row', () => {
    expect(Number(/ height="(\d+)"/.exec(svgOf(chart()))?.[1])).toBeLessThanOrEqual(240);
  });
  it('has no legend for a band that is nowhere wide', () => {
    const curves = [{ title: 'c', y: () => 1 }];
    const flat = svgOf(chart({ curves, band: { title: 'estimate', low: () => 1, high: () => 1 } }));
    expect(flat).not.toContain('estimate');
    expect(svgOf(chart({ curves, band: { title: 'estimate', low: () => 1, high: () => 1.5 } }))).toContain('estimate');
  });
});

describe('the data URI of a plot', () => {
  it('is base64 of the SVG, below 6 kB even with a band and many points', () => {
    const full = chart({
      curves: [1, 2, 3, 4].map((k) => ({ title: `curve number ${k}`, y: (x: number) => Math.sin(x / 10) + k })),
      band: { title: 'range of the estimate', low: (x: number) => Math.sin(x / 9), high: (x: number) => 2 + Math.sin(x / 9) },
      points: [1, 2, 3].map((k) => ({ title: `point ${k}`, x: () => 20 * k, y: () => k })),
    });
    const uri = plotDataUri(full, values) ?? '';
    expect(uri).toMatch(/^data:image\/svg\+xml;base64,[A-Za-z0-9+/]+=*$/);
    expect(uri.length).toBeLessThan(6000);
    expect(wellFormed(Buffer.from(uri.replace(/^[^,]+,/, ''), 'base64').toString('utf8'))).toBe(true);
  });
  it('has a text of one line', () => {
    expect(plotAlt(chart({ alt: () => 'one\ntwo' }), values)).toBe('Torque over speed. one two');
  });
});
