import { expect, test } from 'vitest';
import { completionsAt } from '../../server/src/services/completion.ts';
import { hoverAt } from '../../server/src/services/hover.ts';
import { definitionAt } from '../../server/src/services/links.ts';
import { example, inside, snapshotOf } from '../support/cursor.ts';
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

test('the hover of a frame of members shows how it sways and that it holds', () => {
  const shown = hover(yamlOf(machineWith('portal', { 'frame.acceleration': '2 m/s²', 'frame.moving-mass': '1 kg', 'frame.tolerance': '0.2 mm' })), 'frame:\n  profile');
  for (const part of ['First frequency of the frame', 'Ringing after a jerk', 'Whether it holds', 'held']) expect(shown).toContain(part);
});

test('the hover of a member tells where it goes, how long it is and what it weighs', () => {
  // From (0, 0, 300) to (600, 0, 300) mm.
  expect(hover(yamlOf(machineWith('portal')), 'beam:')).toMatch(/^\*\*beam\*\*, from top left to top right: 600 mm long, [\d.]+ kg\.\n/);
  // One whose end leads nowhere is told by its meaning alone.
  expect(hover(yamlOf(machineWith('portal', { 'frame.members': { beam: { from: 'top left', to: 'nowhere' } } })), 'beam:')).toMatch(/^\*\*Member\*\*/);
});

test('what a member bears on is told without naming the machine as its user', () => {
  const shown = hover(yamlOf(machineWith('portal')), 'beam:');
  expect(shown).toContain('What depends on it, decisive figures first:');
  expect(shown).not.toContain('Used by');
});

test('a word without a symbol is told by its name in the numbers of a formula', () => {
  const shown = hover(example('open-gantry/sways.machine.yaml'), 'frame:\n  profile');
  expect(shown).toContain('= both');
  expect(shown).not.toMatch(/, = |with = /);
});

test('the name of a point leads to where it is described', () => {
  const text = yamlOf(machineWith('portal'));
  const found = definitionAt(snapshotOf(text), inside(text, 'top left', 'members:'));
  expect(text.slice(found?.span.start, found?.span.end)).toBe('top left');
  expect(found?.span.start).toBe(text.indexOf('top left:'));
});

test('completion offers the points for the ends of a member', () => {
  const text = yamlOf(machineWith('portal', { 'frame.members': { left: { from: 'foot left', to: 'x' } } }));
  const labels = completionsAt(snapshotOf(text), inside(text, 'x', 'to: ')).map(({ label }) => label);
  expect(labels).toEqual(expect.arrayContaining(['foot left', 'top left', 'tool']));
});
