/** Spare joints and exchanges, reasoned by hand. */
import { describe, expect, test } from 'vitest';
import { exchangesOf, exchangesToExact, spareJoints } from '../../server/src/mechanics/constraint-exchange.ts';
import type { Joint } from '../../server/src/mechanics/constraint-wrenches.ts';
import { exactBed, fourPlaces, jammingBed, rails, screws, shafts, threePlaces, Z } from './constraint-layouts.ts';

describe('spare joints', () => {
  test('of an exact layout none, of the jamming bed any', () => {
    expect(spareJoints(exactBed, 'drives held')).toEqual([]);
    expect(spareJoints(jammingBed, 'drives held')).toEqual([0, 1, 2, 3, 4]);
  });
  test('guides alone: of two rails either; of two shafts none, since the turn needs both', () => {
    expect(spareJoints(rails(2), 'guides alone')).toEqual([0, 1]);
    expect(spareJoints(shafts(2), 'guides alone')).toEqual([]);
  });
  test('of four feet any', () => {
    expect(spareJoints(fourPlaces.map((at, i): Joint => ({ owner: `foot ${i}`, kind: 'flat', at, axis: Z })), 'guides alone')).toEqual([0, 1, 2, 3]);
  });
});

describe('exchanges', () => {
  test('one rail and one rigid nut: decoupling the nut makes it exact, 5 + 1', () => {
    const [best] = exchangesOf([...rails(1), ...screws('nut-rigid', [[0, 0, 0]])], 'drives held', 0);
    expect([best?.to, best?.count.redundant, best?.count.rank]).toEqual(['nut-decoupled', 0, 6]);
  });
  test('two shafts: a fork on one leaves 4 + 1 = 5, exact', () => {
    const [best] = exchangesOf(shafts(2), 'guides alone', 1);
    expect([best?.to, best?.count.rank, best?.count.redundant, best?.joints.length]).toEqual(['fork', 5, 0, 1]);
  });
  test('three balls on the ground: all on radial slides, 6 and exact', () => {
    const balls = threePlaces.map((at, i): Joint => ({ owner: `ball ${i}`, kind: 'ball', at, axis: Z }));
    const [best] = exchangesOf(balls, 'guides alone', 0);
    expect([best?.to, best?.joints.length, best?.count.rank, best?.count.redundant]).toEqual(['ball-on-radial-slide', 3, 6, 0]);
  });
  test('never with a freedom more than intended: four decoupled nuts alone would slide away', () => {
    for (const exchange of exchangesOf(screws('nut-rigid', fourPlaces), 'drives held', 0)) expect(exchange.count.free.length).toBe(0);
  });
  test('of an exact layout none', () => {
    expect(exchangesOf(exactBed, 'drives held', 0)).toEqual([]);
  });
});

describe('series of exchanges', () => {
  test('the jamming bed becomes exact: all nuts decoupled first, 25 − 12 = 13 wrenches, 7 redundant; then rails', () => {
    const steps = exchangesToExact(jammingBed, 'drives held', 0);
    expect(steps[0]).toMatchObject({ joints: [2, 3, 4], from: 'nut-rigid', to: 'nut-decoupled', count: { wrenches: 13, rank: 6, redundant: 7 } });
    // Exact layouts: three decoupled nuts leave two shifts and the turn, 2 + 1 wrenches on the two rails.
    expect(steps.at(-1)?.count).toMatchObject({ wrenches: 6, rank: 6, redundant: 0, free: [] });
  });
  test('four rigid nuts without a guide cannot be cured by their nuts alone: some nut has to hold the turn', () => {
    const steps = exchangesToExact(screws('nut-rigid', fourPlaces), 'drives held', 0);
    // Two rigid nuts hold the turn by their distance: 5 + 5 + 1 + 1 = 12 of which 6 count. One alone leaves the helix about itself.
    expect(steps.at(-1)?.count).toMatchObject({ wrenches: 12, rank: 6, redundant: 6 });
  });
});
