import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../server/src/services/hover.ts';
import { inlayHints } from '../../server/src/services/inlay-hints.ts';
import { example, inside, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const text = yamlOf(machineWith('slider', { 'axis.accuracy': '0.5 mm' }));
const hover = (needle: string): string => (hoverAt(snapshotOf(text), inside(text, needle))?.markdown ?? '').replace(/\u00a0/g, ' ');

describe('guides in the editor', () => {
  it('the hover of the key leads with sag, nearness to jamming and safety', () => {
    const lines = hover('guides:').split('\n').filter((line) => line.startsWith('| '));
    const at = (title: string): number => lines.findIndex((line) => line.startsWith(`| ${title}`));
    expect([at('Sag that varies over the travel'), at('Nearness to jamming'), at('Static safety of the carriages'), at('Rating life of the guides')]).toEqual([2, 3, 4, 5]);
    expect(hover('guides:').split('\n')[0]).toMatch(/^\*\*The set of guides of "lift" passes \d checks of \d\.\*\*/);
  });
  it('what fails leads, and what other elements have no value for is left out', () => {
    const bends = example('slider-on-shafts/bends.machine.yaml');
    const rows = (hoverAt(snapshotOf(bends), inside(bends, 'guides:\n'))?.markdown ?? '').split('\n').filter((line) => line.startsWith('| '));
    expect(rows.slice(2, 5).map((row) => row.split(' *')[0])).toEqual(['| Nearness to jamming', '| Varying sag over the accuracy wanted', '| Use of the angle that a bushing bears']);
    expect(rows.join('\n')).not.toContain('With power off'); // it stands level: that belongs to its drive
  });
  it('has a chart of the sag over the travel with both bounds', () => {
    expect(hover('guides:')).toContain('with ends that can tilt');
  });
  it('its hint tells the sag, or that it jams', () => {
    expect(inlayHints(snapshotOf(text)).map((hint) => hint.text).join()).toMatch(/sags \d+ µm/);
    const jams = yamlOf(machineWith('slider', { 'guides.kind': 'plain', 'guides.bearing': 'dry-slide', 'guides.friction': '0.4', 'guides.drive-offset': '200 mm' }));
    expect(inlayHints(snapshotOf(jams)).map((hint) => hint.text)).toContain('jams');
  });
  it('guides of which only the friction is written have no verdict of their own', () => {
    const bare = yamlOf(machineWith('lift'));
    expect(hoverAt(snapshotOf(bare), inside(bare, 'guides:'))?.markdown).not.toContain('set of guides');
  });
});
