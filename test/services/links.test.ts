import { describe, expect, it } from 'vitest';
import { definitionAt, documentLinks, referencesAt } from '../../server/src/services/links.ts';
import { inside, machineUri, snapshotOf } from '../support/cursor.ts';

const text = `description-version: 1
machine: Test
uses: [stock.parts.yaml, gone.parts.yaml]
supplies: { main: { voltage: 24 V } }
masses: { plate: { mass: 4 kg } }   # the plate
axes:
  lift:
    direction: vertical
    travel: 300 mm
    moves: [plate]
    chosen-drive: fine
    drive-options:
      fine: { motor: small, supply: main, screw: { part: spindle } }
      fast: { motor: small, supply: main, screw: { size: Tr8x8(P2) } }
heating:
  bed: { power: 50 W, supply: main }
parts:
  small: { kind: stepper, current: 1 A }
`;
const list = 'description-version: 1\nparts:\n  spindle: { kind: screw, size: Tr12x3 }\n';
const snapshot = snapshotOf(text, { 'stock.parts.yaml': list });
const shown = (location: { readonly uri: string; readonly span: { readonly start: number; readonly end: number } } | undefined): string | undefined =>
  location && `${location.uri.split('/').at(-1) ?? ''}: ${(location.uri === machineUri ? text : list).slice(location.span.start, location.span.end)}`;
const at = (needle: string, after = ''): number => inside(text, needle, after);

describe('the definition of a name', () => {
  it('is the key of its description: part, mass, supply, drive option', () => {
    for (const [needle, after, line] of [['small', 'fine: {', 'small: {'], ['plate', 'moves:', 'plate: {'], ['main', 'fine: {', 'main: {'], ['fine', 'chosen-drive:', 'fine: {']] as const) {
      const found = definitionAt(snapshot, at(needle, after));
      expect(text.slice(found?.span.start).startsWith(line.slice(0, -3)), needle).toBe(true);
      expect(text.slice(found?.span.start, found?.span.end)).toBe(line.slice(0, -3));
      expect(found?.span.start).toBe(text.indexOf(line));
    }
  });
  it('lies in a part list where the part does', () => {
    expect(shown(definitionAt(snapshot, at('spindle')))).toBe('stock.parts.yaml: spindle');
  });
  it('is itself on the description, and nothing elsewhere', () => {
    expect(shown(definitionAt(snapshot, at('small: {')))).toBe('test.machine.yaml: small');
    for (const needle of ['300 mm', 'Tr8x8', 'vertical', '# the plate']) expect(definitionAt(snapshot, at(needle)), needle).toBeUndefined();
  });
  it('is nothing for a name that leads nowhere', () => {
    const broken = text.replace('moves: [plate]', 'moves: [plat]');
    expect(definitionAt(snapshotOf(broken), inside(broken, 'plat]'))).toBeUndefined();
  });
});

describe('the references of a name', () => {
  it('are its description and every use, from each of them', () => {
    const offsets = [text.indexOf('small: {'), text.indexOf('small', text.indexOf('fine: {')), text.indexOf('small', text.indexOf('fast: {'))];
    for (const offset of offsets) expect(referencesAt(snapshot, offset + 1).map(({ span }) => span.start)).toEqual(offsets);
    expect(referencesAt(snapshot, (offsets[0] ?? 0) + 1, false).map(({ span }) => span.start)).toEqual(offsets.slice(1));
  });
  it('leave equal words in remarks and in other sections alone', () => {
    expect(referencesAt(snapshot, at('plate: {')).map(({ span }) => span.start)).toEqual([text.indexOf('plate: {'), text.indexOf('plate]')]);
  });
  it('of a supply include the heaters on it', () => {
    expect(referencesAt(snapshot, at('main: {'), false)).toHaveLength(3);
  });
});

describe('document links', () => {
  it('lead to the part lists that can be read', () => {
    expect(documentLinks(snapshot).map(({ span, target }) => `${text.slice(span.start, span.end)} → ${target}`)).toEqual(['stock.parts.yaml → file:///work/stock.parts.yaml']);
  });
});
