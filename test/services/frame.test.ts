import { expect, test } from 'vitest';
import { hoverAt } from '../../server/src/services/hover.ts';
import { inside, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const framed = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('framed', changes));
const hover = (text: string, needle: string): string => (hoverAt(snapshotOf(text), inside(text, needle))?.markdown ?? '').replace(/ /g, ' ');

test('the hover of a box shows how it sways', () => {
  const shown = hover(framed(), 'box:');
  expect(shown).toContain('Sway frequency along x');
  // 1 kg at 3 m/s² against 30 kg · 9.80665 m/s² · 0.2 m/0.5 m = 117.7 m/s².
  expect(shown).toContain('2.5');
});

test('the hover of a gantry shows how it sags', () => {
  expect(hover(framed(), 'gantry:')).toContain('Sag varies over the travel by');
});

test('the hover of the frame says what it is', () => {
  expect(hover(framed(), 'frame:\n  box')).toContain('What holds the machine together');
});
