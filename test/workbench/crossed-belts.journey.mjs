// A table with four axes on three kinds of drive: everything of them is on screen, wherever one hovers.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

const file = 'crossed-belt-table/cutting-table.machine.yaml';
const lines = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8').split('\n');
/** Line, from 1, and column, from 1, of the first place where a text stands behind another one. */
const placeOf = (text, behind = '') => {
  const from = behind === '' ? 0 : lines.findIndex((candidate) => candidate.includes(behind));
  const line = lines.findIndex((candidate, index) => index >= from && candidate.includes(text));
  return [line + 1, lines[line].indexOf(text) + 1];
};

export default {
  title: 'two axes on crossed belts, one on a rack, one on a screw',
  examples: ['crossed-belt-table'],
  async run({ workbench, step, shot, page }) {
    await step('the table opens without an error or a warning', async () => {
      await workbench.openFile(file);
      await workbench.until(() => workbench.inlayHints(), (rows) => rows.length > 0, 60_000);
      await page.waitForTimeout(1000);
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
      await shot('1-open');
      await workbench.hidePanel();
    });

    const hovers = [
      ['the layout tells of moves along both axes at once', ['layout:'], [/diagonal/i, /path/i], '2-layout'],
      ['the belt that both share', ['belt:'], [/tension/i, /stiffness/i], '3-belt'],
      ['the axis that rides', ['across:'], [/resonance/i, /margin/i, /full travel/i], '4-axis'],
      ['the rack', ['rack:'], [/error|play/i], '5-rack'],
      ['the pinion', ['pinion:'], [/stress/i, /pitch/i], '6-pinion'],
      ['the brushless motor', ['feed-motor', 'feed:'], [/continuous|RMS/i, /margin/i], '7-brushless'],
      ['the reduction ahead of the rack', ['reduction:'], [/reduction/i], '8-reduction'],
      ['the screw of the knife', ['screw:'], [/lead/i, /holds|creep|drops/i], '9-screw'],
    ];
    for (const [title, [text, behind], words, picture] of hovers) {
      await step(title, async () => {
        const [line, column] = placeOf(text, behind);
        const shown = await workbench.hover(line, column + 1, { shows: words[0] });
        for (const word of words) assert.match(shown, word);
        await shot(picture);
        await workbench.scrollHover(1);
        await shot(`${picture}-end`);
        await workbench.escape();
      });
    }
  },
};
