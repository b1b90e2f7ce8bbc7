import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import type { Evaluation } from '../../server/src/figures/evaluation.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { massPlaceOf, massRowOf, type MassPlace } from '../../server/src/machine/mass-place.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const G = 9.80665;

function analysed(changes: Readonly<Record<string, unknown>> = {}, base = 'bed') {
  const analysis = analyse(readDocument('file:///bed.machine.yaml', yamlOf(machineWith(base, changes))), []);
  const [evaluation] = analysis.evaluations.filter(({ subject }) => subject.kind === 'drive');
  if (!evaluation) throw new Error('no drive');
  return { evaluation, checks: analysis.findings.map(({ check }) => check) };
}
const bed = (changes: Readonly<Record<string, unknown>> = {}): Evaluation => analysed(changes).evaluation;

function result(evaluation: Evaluation, id: string) {
  const found = evaluation.result(id);
  if (found.state !== 'computed') throw new Error(`${id}: ${JSON.stringify(found)}`);
  return found;
}
const value = (evaluation: Evaluation, id: string): number => result(evaluation, id).nominal;
const note = (evaluation: Evaluation, id: string): string => result(evaluation, id).note ?? '';

/** A part of 0 to 2 kg anywhere in 300 by 300 mm about (150, 100) mm. */
const part = { 'axis.moves': ['plate', 'carriage'], 'carriage-mass': { mass: '0 kg to 2 kg', at: ['150 mm', '100 mm'], area: ['300 mm', '300 mm'] } };

/**
 * A level axis on four carriages at (±100, ±60) mm about (100, 60), 0 high, with a belt clamp 20 mm higher, along x.
 * 5 kg in the middle at z = 70 mm, so 50 mm above the belt; 2 m/s².
 */
const wagon = (changes: Readonly<Record<string, unknown>> = {}) =>
  analysed({
    'axis.along': 'x',
    'mass.mass': '5 kg',
    'mass.at': ['100 mm', '60 mm', '70 mm'],
    'guides': { 'friction-force': '4 N', kind: 'profile-rail' },
    'axis.supports': {
      'front left': { joint: 'rail-carriage', at: ['200 mm', '120 mm', '0 mm'] },
      'front right': { joint: 'rail-carriage', at: ['200 mm', '0 mm', '0 mm'] },
      'rear left': { joint: 'rail-carriage', at: ['0 mm', '120 mm', '0 mm'] },
      'rear right': { joint: 'rail-carriage', at: ['0 mm', '0 mm', '0 mm'] },
      clamp: { joint: 'belt', at: ['100 mm', '0 mm', '20 mm'] },
    },
    ...changes,
  }, 'belt');

describe('places of masses', () => {
  it('come out of their row as they went in; a short row is a mass that stays', () => {
    const one: MassPlace = { mass: { nominal: 1, low: 0, high: 2 }, x: { nominal: 0.1, low: 0, high: 0.2 }, y: { nominal: -0.3, low: -0.4, high: 0 }, z: { nominal: 0.05, low: 0.04, high: 0.06 } };
    expect(massPlaceOf(massRowOf(one))).toEqual(one);
    expect(massPlaceOf(massRowOf({ ...one, z: undefined }))).toEqual({ ...one, z: undefined });
    expect(massPlaceOf([2, 0.1, 0.2])).toEqual({ mass: { nominal: 2, low: 2, high: 2 }, x: { nominal: 0.1, low: 0.1, high: 0.1 }, y: { nominal: 0.2, low: 0.2, high: 0.2 }, z: undefined });
  });
  // 150 ± 1 mm with an area of 60 mm: from 119 to 181 mm.
  it('have the area about their place, and how uncertain that is besides', () => {
    const input = bed({ 'mass.at': ['150 mm ± 1 mm', '100 mm', '10 mm'], 'mass.area': ['60 mm', '40 mm'] }).input('axis.mass-places');
    const [row] = input.state === 'known' && input.value.type === 'table' ? input.value.rows : [];
    const place = massPlaceOf(row ?? []);
    expect([place.x.low, place.x.nominal, place.x.high].map((one) => Math.round(one * 1e6))).toEqual([119_000, 150_000, 181_000]);
    expect([place.y.low, place.y.high].map((one) => Math.round(one * 1e6))).toEqual([80_000, 120_000]);
    expect(place.z?.nominal).toBeCloseTo(0.01, 12);
  });
});

describe('a vertical axis, by hand', () => {
  // 2 kg · g on each nut; lifted with 0.2 m/s², or lowered.
  it('is lifted and lowered: 2 kg · (g ± 0.2)', () => {
    const still = bed();
    expect(value(still, 'supports.reaction-most-in-use')).toBeCloseTo(2 * (G + 0.2), 6);
    expect(value(still, 'supports.reaction-least-in-use')).toBeCloseTo(2 * (G - 0.2), 6);
    expect(value(still, 'supports.share-least-in-use')).toBeCloseTo(1 / 3, 9);
    expect(value(still, 'supports.distance-to-edge-in-use')).toBeCloseTo(value(still, 'supports.distance-to-edge'), 9);
    expect(value(still, 'supports.reaction-least')).toBeCloseTo(2 * G, 6);
  });
  // Third nut, share y/300: 6 kg at 100 mm gives 2 kg, 2 kg at −50 mm takes a third of a kg: 5/3 kg · (g − 0.2).
  // First nut: share 1 − x/300 − y/600; at x = 0, y = −50 mm: 13/12 of 2 kg, with its third of 6 kg 4.1667 kg · (g + 0.2). So has the second.
  it('with a part that may lie anywhere, or be absent', () => {
    const open = bed(part);
    expect(value(open, 'supports.reaction-most-in-use')).toBeCloseTo((2 + 2 * (13 / 12)) * (G + 0.2), 6);
    expect(note(open, 'supports.reaction-most-in-use')).toBe('on screw 1, with carriage at 0, -50 mm');
    // 0.2 m/s² add 2 %, of which nobody is told; 2 m/s² add a fifth.
    expect(note(bed({ ...part, 'motion.acceleration': '2 m/s²' }), 'supports.reaction-most-in-use')).toBe('on screw 1, with carriage at 0, -50 mm, accelerating upwards');
    // Least: of the third 2 − 1/3 = 1.667 kg; of the first at x = 300, y = 250 mm: share 1 − 1 − 5/12, 2 − 5/6 = 1.1667 kg.
    expect(value(open, 'supports.reaction-least-in-use')).toBeCloseTo((2 - 5 / 6) * (G - 0.2), 6);
    expect(note(open, 'supports.reaction-least-in-use')).toMatch(/^on screw 1, with carriage at 300, 250 mm/);
    // As a share: 1.1667 of 8 kg.
    expect(value(open, 'supports.share-least-in-use')).toBeCloseTo((2 - 5 / 6) / 8, 9);
    // 6 kg at (150, 100) and 2 kg at the corner (300, 250): the load at (187.5, 137.5) mm; line from (300, 0) to (150, 300): 2 x + y = 600, so (600 − 375 − 137.5)/√5 = 39.13 mm.
    expect(value(open, 'supports.distance-to-edge-in-use')).toBeCloseTo(0.0875 / Math.sqrt(5), 6);
  });
  // Most loaded at rest: 6 kg in the middle and 1 kg, the middle of 0 to 2 kg, at the same place: a third. Worst: 4.1667/8 = 52.1 %.
  it('feeds the drives: a third of the load at the written places, 52 % at the most', () => {
    const share = result(bed(part), 'drive.load-share');
    expect(share.nominal).toBeCloseTo(1 / 3, 9);
    expect(share.low).toBeCloseTo(1 / 3, 9);
    expect(share.high).toBeCloseTo((2 + 13 / 6) / 8, 9);
    expect(result(bed(), 'drive.load-share')).toMatchObject({ nominal: expect.closeTo(1 / 3, 9) as number, high: expect.closeTo(1 / 3, 9) as number });
    // 8 kg at the most: F₀ up to 0.5208 · 8 · g (g up to 9.833 m/s²).
    expect(result(bed(part), 'drive.gravity-load').high).toBeCloseTo((2 + 13 / 6) * 9.833, 2);
  });
  it('says that it is at rest only where no acceleration is given', () => {
    expect(note(bed({ 'motion.acceleration': null }), 'supports.reaction-most-in-use')).toContain('at rest only, since no acceleration is given');
  });
  // 6 kg at y = −30 mm has −10 % on the third nut; nothing bolted lifts off.
  it('lifts no support that holds both ways', () => {
    const out = { 'mass.at': ['150 mm', '-30 mm'] };
    expect(analysed(out).checks).toContain('support-lifts-off');
    const sprung = analysed({ ...out, 'nut.design': 'spring-loaded', 'nut.preload': '100 N' });
    expect(sprung.checks).not.toContain('support-lifts-off');
    expect(sprung.evaluation.result('supports.lift-off-load')).toMatchObject({ state: 'unable' });
    expect(value(sprung.evaluation, 'supports.reaction-least-in-use')).toBeCloseTo(-0.6 * (G + 0.2), 6);
  });
});

describe('a level axis, by hand', () => {
  // Four alike, in the middle: 5 kg · g / 4 each. m a h / s = 5 · 2 · 0.05 / 0.2 = 2.5 N from the front pair to the rear pair, 1.25 N each.
  it('the inertia of the mass above the belt goes from front to rear', () => {
    const { evaluation } = wagon();
    expect(value(evaluation, 'supports.reaction-most-in-use')).toBeCloseTo((5 * G) / 4 + 1.25, 6);
    expect(value(evaluation, 'supports.reaction-least-in-use')).toBeCloseTo((5 * G) / 4 - 1.25, 6);
    expect(note(evaluation, 'supports.reaction-least-in-use')).toMatch(/^on front (left|right), accelerating towards \+X$/);
  });
  // Without the clamp the push is in the plane of the carriages: 70 mm below the mass, 1.75 N each.
  it('without a belt among the supports it is pushed in their plane', () => {
    const { evaluation } = wagon({ 'supports.clamp': null });
    expect(value(evaluation, 'supports.reaction-most-in-use')).toBeCloseTo((5 * G) / 4 + 1.75, 6);
  });
  it('along y over 120 mm: 5 · 2 · 0.05 / 0.12 / 2', () => {
    const { evaluation } = wagon({ 'axis.along': 'y' });
    expect(value(evaluation, 'supports.reaction-most-in-use')).toBeCloseTo((5 * G) / 4 + 5 * 2 * 0.05 / 0.12 / 2, 6);
  });
  it('takes the way from the direction of the belt where the axis does not say it', () => {
    const { evaluation } = wagon({ 'axis.along': null, 'supports.clamp': { joint: 'belt', at: ['100 mm', '0 mm', '20 mm'], along: 'x' } });
    expect(evaluation.choice('axis.along')).toBe('x');
    expect(value(evaluation, 'supports.reaction-most-in-use')).toBeCloseTo((5 * G) / 4 + 1.25, 6);
  });
  it('says what it leaves out where a height or the direction is not known', () => {
    const { evaluation } = wagon({ 'mass.at': ['100 mm', '60 mm'] });
    expect(value(evaluation, 'supports.reaction-most-in-use')).toBeCloseTo((5 * G) / 4, 6);
    expect(note(evaluation, 'supports.reaction-most-in-use')).toContain('sideways acceleration left out, since heights of masses are not given');
    const balls = { joint: 'ball', at: ['0 mm', '0 mm'] };
    const lost = wagon({ 'axis.along': null, 'axis.supports': { a: balls, b: { ...balls, at: ['200 mm', '0 mm'] }, c: { ...balls, at: ['100 mm', '120 mm'] } } });
    expect(note(lost.evaluation, 'supports.reaction-most-in-use')).toContain('since nobody says along what the axis goes');
  });
  it('finds no fault with rails that have to pull, and one with balls that only lie in their grooves', () => {
    // 500 mm above the push at 20 m/s²: 5 · 20 · 0.5 / 0.2 = 250 N, far more than the weight.
    const high = { 'mass.at': ['100 mm', '60 mm', '520 mm'], 'motion.acceleration': '20 m/s²' };
    const rails = wagon(high);
    expect(value(rails.evaluation, 'supports.reaction-least-in-use')).toBeLessThan(-100);
    expect(rails.checks).not.toContain('support-lifts-off');
    const lying = { joint: 'flat', at: ['0 mm', '0 mm', '0 mm'] };
    const balls = { a: { ...lying, joint: 'cone' }, b: { ...lying, joint: 'vee', at: ['200 mm', '0 mm', '0 mm'] }, c: { ...lying, at: ['100 mm', '120 mm', '0 mm'] }, clamp: { joint: 'belt', at: ['100 mm', '0 mm', '20 mm'] } };
    expect(wagon({ ...high, 'axis.supports': balls }).checks).toContain('support-lifts-off');
  });
});

describe('by another method: every place of a grid put into a description of its own', () => {
  /** Reactions at rest on three nuts, by moments about two of them. */
  const shareOf = (x: number, y: number): readonly [number, number, number] => [1 - x / 0.3 - y / 0.6, x / 0.3 - y / 0.6, y / 0.3];
  it('finds the same extremes for two masses that may lie elsewhere', () => {
    const open = bed({ ...part, 'mass.area': ['40 mm', '20 mm'] });
    let [least, most] = [Infinity, -Infinity];
    const steps = (middle: number, size: number): number[] => Array.from({ length: 5 }, (_, i) => middle + size * (i / 4 - 0.5));
    for (const px of steps(0.15, 0.04)) for (const py of steps(0.1, 0.02)) for (const x of steps(0.15, 0.3)) for (const y of steps(0.1, 0.3)) for (const mass of [0, 1, 2]) for (const a of [-0.2, 0, 0.2]) {
      const [plate, carried] = [shareOf(px, py), shareOf(x, y)];
      for (const i of [0, 1, 2] as const) {
        const reaction = (6 * plate[i] + mass * carried[i]) * (G + a);
        [least, most] = [Math.min(least, reaction), Math.max(most, reaction)];
      }
    }
    expect(value(open, 'supports.reaction-least-in-use')).toBeCloseTo(least, 6);
    expect(value(open, 'supports.reaction-most-in-use')).toBeCloseTo(most, 6);
  });
  it('is never passed by the figure at rest of a machine with the mass put there', () => {
    const [low, high] = ['supports.reaction-least-in-use', 'supports.reaction-most-in-use'].map((id) => value(bed({ 'mass.area': ['200 mm', '160 mm'] }), id)) as [number, number];
    const found: number[] = [];
    for (const x of [50, 117, 150, 250]) for (const y of [20, 61, 100, 180]) {
      const put = bed({ 'mass.at': [`${x} mm`, `${y} mm`] });
      found.push(value(put, 'supports.reaction-least'), value(put, 'supports.share-most') * 6 * G);
    }
    expect(Math.min(...found)).toBeGreaterThanOrEqual(low);
    expect(Math.max(...found)).toBeLessThanOrEqual(high);
    // The first nut at (250, 180) mm: 1 − 250/300 − 180/600 = −13.3 % of 6 kg; it pulls hardest while it is lifted.
    expect(Math.min(...found)).toBeCloseTo(-0.8 * G, 6);
    expect(low).toBeCloseTo(-0.8 * (G + 0.2), 6);
  });
});
