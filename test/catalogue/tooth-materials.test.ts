import { describe, expect, it } from 'vitest';
import { material } from '../../server/src/catalogue/materials.ts';
import { TOOTH_MATERIALS, toothMaterial } from '../../server/src/catalogue/tooth-materials.ts';
import { entrySchema } from '../../server/src/machine/entry-schema.ts';

describe('materials of teeth', () => {
  it('has every material that a rack or pinion may be made of, with its stiffness', () => {
    for (const entry of ['rack.material', 'pinion.material']) {
      const names = entrySchema(entry)?.enum ?? [];
      expect(names.length, entry).toBeGreaterThan(0);
      for (const name of names) {
        expect(toothMaterial(String(name)), String(name)).toBeDefined();
        expect(material(String(name)), String(name)).toBeDefined();
      }
    }
    expect(toothMaterial('wood')).toBeUndefined();
  });

  it('allows less than makes the material yield: teeth are bent over and over', () => {
    for (const { name, stressLimit } of TOOTH_MATERIALS) {
      expect(stressLimit.low).toBeLessThanOrEqual(stressLimit.nominal);
      expect(stressLimit.nominal).toBeLessThanOrEqual(stressLimit.high);
      expect(stressLimit.high, name).toBeLessThan(material(name)?.yieldStrength.high ?? 0);
      expect(stressLimit.source.length).toBeGreaterThan(20);
    }
  });

  it.each([
    // Khurmi and Gupta, A Textbook of Machine Design, chapter 28, allowable static stresses (from memory): ordinary cast iron 56 MPa, forged carbon steel not hardened 140 to 210 MPa, hardened 126 to 350 MPa.
    ['cast-iron', 56], ['steel', 140], ['steel', 210], ['hardened-steel', 126], ['hardened-steel', 350],
  ])('%s holds %i MPa of the textbook', (name, stress) => {
    const limit = toothMaterial(name)?.stressLimit;
    expect(stress * 1e6).toBeGreaterThanOrEqual(limit?.low ?? Infinity);
    expect(stress * 1e6).toBeLessThanOrEqual(limit?.high ?? 0);
  });
});
