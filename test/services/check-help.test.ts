import { describe, expect, it } from 'vitest';
import { changeable } from '../../server/src/checks/adjusted-check.ts';
import { allChecks } from '../../server/src/checks/registry.ts';
import { kindDetails, type QuantityKind } from '../../server/src/language/quantity-kinds.ts';
import { fileSchema } from '../../server/src/language/schema/schema-model.ts';
import { completionsAt } from '../../server/src/services/completion.ts';
import { hoverAt } from '../../server/src/services/hover.ts';
import { accepted, entry, liftAccepting, settingsUri, snapshotIn, tooFast, tooFastAt } from '../support/accepting.ts';
import { atCursor, inside, machineUri } from '../support/cursor.ts';

const labels = (marked: string, uri = machineUri): readonly string[] => {
  const { text, offset } = atCursor(marked);
  return completionsAt(snapshotIn(text, {}, uri), offset).map(({ label }) => label);
};
const hover = (text: string, needle: string, uri = machineUri): string => hoverAt(snapshotIn(text, {}, uri), inside(text, needle))?.markdown ?? '';

describe('in an entry of accepted', () => {
  it('keys are offered', () => expect(labels(liftAccepting('accepted:\n  - check: x\n    |\n'))).toEqual(['at', 'reason', 'by', 'until']));

  it('checks are offered, those with a finding here first, and no problem of the text', () => {
    const offered = labels(liftAccepting('accepted:\n  - check: |\n'));
    expect(offered.slice(0, 2).sort()).toEqual(['pinch-point', tooFast]);
    expect(offered).toHaveLength(new Set(offered).size);
    expect(offered).toEqual(expect.arrayContaining([...allChecks().map(({ id }) => id), 'magnitude-implausible']));
    expect(offered).not.toContain('unit-missing');
  });

  it('places are offered: those of findings of the check that is named', () => {
    expect(labels(liftAccepting(`accepted:\n  - check: ${tooFast}\n    at: |\n`))).toEqual([tooFastAt]);
    expect(labels(liftAccepting(`accepted:\n  - at: |\n`))).toEqual(expect.arrayContaining([tooFastAt, 'axes/lift']));
  });

  it('the hover of a check tells what it is and on what it rests', () => {
    const told = hover(liftAccepting(accepted(entry())), `check: ${tooFast}`.slice(7));
    expect(told).toContain('Screw turns faster than its maker allows');
    expect(told).toContain('common practice');
    expect(hover(liftAccepting(accepted(entry({ check: 'pinch-point' }))), 'pinch-point')).toContain('people can be hurt');
  });
});

describe('in settings', () => {
  it('keys are offered', () => expect(labels('|', settingsUri)).toEqual(['part-lists', 'checks', 'units', 'fail-on', 'ignore']));

  it('checks are offered that give way, each as a key', () => {
    const offered = labels('checks:\n  |\n', settingsUri);
    expect(offered).toEqual(allChecks().filter((check) => changeable(check) !== 'none').map(({ id }) => id));
    expect(labels(`checks:\n  ${tooFast}: { severity: hint }\n  |\n`, settingsUri)).not.toContain(tooFast);
    expect(labels('checks: { | }\n', settingsUri)).toEqual(offered);
  });

  it('what can be said of a check, and its words', () => {
    expect(labels(`checks:\n  ${tooFast}:\n    |\n`, settingsUri)).toEqual(['severity', 'limit', 'limit-factor']);
    expect(labels(`checks:\n  ${tooFast}:\n    severity: |\n`, settingsUri)).toEqual(['error', 'warning', 'information', 'hint', 'off']);
  });

  it('units of the kind are offered', () => {
    expect(labels('units: { length: | }\n', settingsUri)).toEqual(expect.arrayContaining(['mm', 'in']));
    expect(labels('units:\n  force: |\n', settingsUri)).toEqual([...kindDetails('force').units]);
  });

  it('every kind of quantity that can be named is one, and its example a unit of it', () => {
    const units = fileSchema('settings').properties.find(({ key }) => key === 'units')?.schema.properties ?? [];
    expect(units.length).toBeGreaterThan(10);
    for (const { key, schema } of units) {
      expect(schema.refersTo).toBe(`unit:${key}`);
      for (const example of schema.examples) expect(snapshotIn(`units: { ${key}: ${example} }\n`, {}, settingsUri).settings?.units.get(key as QuantityKind), key).toBe(example);
    }
  });

  it('the hover of a check tells its limits and whether they give way', () => {
    expect(hover(`checks:\n  ${tooFast}: { severity: hint }\n`, tooFast, settingsUri)).toMatch(/Screw turns faster than its maker allows[^]*can change its gravity and its limit/);
    expect(hover('checks:\n  nut-wears-out: { severity: hint }\n', 'nut-wears-out', settingsUri)).toMatch(/comes from a book/);
    expect(hover('fail-on: warning\n', 'warning', settingsUri)).toContain('safe practice');
  });
});
