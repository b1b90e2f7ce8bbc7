import { expect, test } from 'vitest';
import { GUIDE_KINDS } from '../../server/src/catalogue/guide-kinds.ts';
import { plainBushing, PLAIN_BUSHINGS } from '../../server/src/catalogue/plain-bushings.ts';

test('every range rises, is above nothing, names a source and is marked weak; every kind is one of guides', () => {
  for (const row of PLAIN_BUSHINGS) {
    expect(GUIDE_KINDS.some(({ kind }) => kind === row.kind), row.kind).toBe(true);
    for (const range of [row.pressure, row.pressureVelocity, row.speed, row.specificWear, row.wearAllowed]) {
      expect(range.low).toBeGreaterThan(0);
      expect(range.nominal).toBeGreaterThanOrEqual(range.low);
      expect(range.high).toBeGreaterThanOrEqual(range.nominal);
      expect([range.source === '', range.weak]).toEqual([false, true]);
    }
  }
  expect(plainBushing('ball-bushing')).toBeUndefined();
});

test('Mott, Table 16-1 (second-hand): nylon 0.105, filled PTFE 0.35, porous bronze with oil 1.75 MPa·m/s lie within', () => {
  for (const [kind, value] of [['polymer-bushing', 0.105], ['lined-bushing', 0.35], ['bronze-bushing', 1.75]] as const) {
    const range = plainBushing(kind)?.pressureVelocity;
    expect(range?.low).toBeLessThanOrEqual(value * 1e6);
    expect(range?.high).toBeGreaterThanOrEqual(value * 1e6 * (1 - 1e-9));
  }
});
