import { describe, expect, it } from 'vitest';
import { figuresOf, figuresShape, type FigureRow } from '../../server/src/services/figures-table.ts';
import { example, machineUri, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const text = yamlOf(machineWith('lift', { 'motion.speed': '10 mm/s ± 10 %', 'screw.speed-limit': '190 rpm' }));
const rows = figuresOf(snapshotOf(text));
const row = (id: string, from: readonly FigureRow[] = rows): FigureRow => {
  const found = from.find((candidate) => candidate.id === id);
  if (!found) throw new Error(`No row ${id}.`);
  return found;
};

describe('the table of figures', () => {
  it('has a version', () => {
    expect(figuresShape).toBe('figures-1');
  });
  it('gives the value in SI and in the customary unit, with bounds', () => {
    // 10 mm/s over a lead of 3 mm: 3.333 turns a second = 20.944 rad/s = 200 rpm; ± 10 % gives 180 to 220 rpm.
    const speed = row('screw.turning-speed');
    expect(speed).toMatchObject({ state: 'computed', subject: 'axes/lift/drive', chosen: true, siUnit: 'rad/s', unit: 'rpm', rank: 2, quantity: 'rotational-speed' });
    expect(speed.value?.nominal).toBeCloseTo(20.944, 3);
    expect(speed.inUnit?.low).toBeCloseTo(180, 6);
    expect(speed.inUnit?.nominal).toBeCloseTo(200, 6);
    expect(speed.inUnit?.high).toBeCloseTo(220, 6);
    expect(speed.text).toContain('200');
    expect(speed.movedBy).toEqual(['motion.speed']);
  });
  it('says what limit there is and how much of it is used: 220 of 190 rpm is 116 %', () => {
    const [limit] = row('screw.turning-speed').limits;
    expect(limit).toMatchObject({ check: 'screw-too-fast-for-its-maker', bad: 'above', severity: 'warning', state: 'broken', text: 'at most 190 rpm' });
    expect(limit?.used).toBeCloseTo(220 / 190, 6);
  });
  it('unfolds a figure into terms with origin and place', () => {
    const { terms, formula, sources } = row('screw.turning-speed');
    expect(formula).toBe('n = v / l');
    expect(sources[0]?.weak).toBe(false);
    const speed = terms.find((term) => term.id === 'motion.speed');
    const line = text.split('\n').findIndex((candidate) => candidate.includes('speed: 10 mm/s')) + 1;
    expect(speed).toMatchObject({ origin: 'written here', siUnit: 'm/s', weak: false, places: [{ uri: machineUri, line, column: (text.split('\n')[line - 1] ?? '').indexOf('10 mm/s') + 1 }] });
    expect(terms.find((term) => term.id === 'screw.lead')).toMatchObject({ origin: 'standard size', of: 'Tr12x3' });
  });
  it('marks defaults, their source, and the entry that replaces them', () => {
    const friction = rows.flatMap((figure) => figure.terms).find((term) => term.id === 'nut.friction');
    expect(friction).toMatchObject({ origin: 'handbook default', override: 'nut.friction', places: [] });
    expect(friction?.source).not.toBe('');
  });
  it('marks figures among the terms', () => {
    expect(row('drive.cruising-load').terms.find((term) => term.id === 'drive.gravity-load')).toMatchObject({ origin: 'figure', of: 'drive.gravity-load', siUnit: 'N' });
  });
  it('says what is missing, and why there is no value', () => {
    const missing = figuresOf(snapshotOf(yamlOf(machineWith('lift', { 'motion.speed': null }))));
    expect(row('screw.turning-speed', missing)).toMatchObject({ state: 'missing', missing: ['motion.speed'] });
    expect(row('screw.turning-speed', missing).value).toBeUndefined();
    for (const figure of rows.filter(({ state }) => state === 'unable')) expect(figure.reason, figure.id).toMatch(/\S/);
  });
  it('is plain data, complete and the same every time', () => {
    for (const path of ['large-format-printer/first-draft.machine.yaml', 'inch-router/bench-router.machine.yaml']) {
      const once = JSON.stringify(figuresOf(snapshotOf(example(path))));
      expect(JSON.stringify(figuresOf(snapshotOf(example(path))))).toBe(once);
      expect(JSON.parse(once)).toEqual(figuresOf(snapshotOf(example(path))));
      expect(once).not.toContain(':null');
    }
  });
  it('has bounds that hold the nominal value', () => {
    for (const { id, value } of rows) if (value) expect(value.low <= value.nominal && value.nominal <= value.high, id).toBe(true);
  });
  it('is empty for a part list', () => {
    expect(figuresOf(snapshotOf('description-version: 1\nparts: {}\n', {}, 'file:///a.parts.yaml'))).toEqual([]);
  });
});
