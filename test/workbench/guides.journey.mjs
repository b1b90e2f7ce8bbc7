// A slider on round shafts that bend: what the guides do, seen over the travel, and what the light bulb offers against it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { commentsOf, placeIn } from './harness/fixtures.mjs';

const file = 'slider-on-shafts/bends.machine.yaml';
const draft = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
const [guides] = placeIn(draft, 'guides:');
const [diameter, key] = placeIn(draft, 'shaft-diameter: 10 mm');
const column = key + 'shaft-diameter: '.length;

export default {
  title: 'round shafts bend, and are made thicker',
  examples: ['slider-on-shafts'],
  async run({ workbench, step, shot }) {
    await step('the sag is a warning at the diameter of the shafts', async () => {
      await workbench.openFile(file);
      const rows = await workbench.until(() => workbench.problems(), (found) => found.some((row) => /Guide shafts sag/.test(row.label)), 60_000);
      const sag = rows.find((row) => /Guide shafts sag/.test(row.label));
      assert.equal(sag.severity, 'Warning');
      assert.deepEqual([sag.line, sag.column], [diameter, column]);
      await shot('1-sag');
    });

    await step('hovering the guides leads with what fails of sag and jamming, and draws it over the travel', async () => {
      await workbench.hidePanel();
      const text = await workbench.hover(guides, 6, { shows: /Sag that varies/ });
      const rows = text.split('\n').filter((row) => row.includes('\t')).slice(1, 4).join('\n');
      for (const title of ['Nearness to jamming', 'Varying sag over the accuracy wanted']) assert.ok(rows.includes(title), text.slice(0, 900));
      await shot('2-hover');
      for (const share of [0.25, 0.5, 0.75]) {
        await workbench.scrollHover(share);
        await shot(`2-hover-${share * 100}`);
      }
      await workbench.escape();
    });

    await step('the light bulb offers thicker shafts, and with them the sag is gone', async () => {
      const offered = await workbench.clickLightBulb(diameter, column);
      await shot('3-bulb');
      assert.equal(new Set(offered).size, offered.length, `offered twice: ${offered.join(' | ')}`);
      const thicker = offered.find((title) => /thicker guide shafts/.test(title)) ?? assert.fail(`offered: ${offered.join(' | ')}`);
      const before = await workbench.counts();
      await workbench.pickQuickFix(thicker);
      await workbench.until(() => workbench.counts(), (now) => now.warnings < before.warnings);
      const rows = await workbench.until(() => workbench.problems(), (found) => !found.some((row) => /shafts sag/i.test(row.label)));
      assert.ok(rows.some((row) => /Drive pulls/.test(row.label)), rows.map((row) => row.label).join(' | ')); // the other finding is still there
    });

    await step('one more fix, and neither error nor warning is left, and every comment', async () => {
      const next = (await workbench.problems()).find((row) => row.severity === 'Warning');
      const cure = (await workbench.until(() => workbench.quickFixes(next.line, next.column), (offered) => offered.length > 0)).find((title) => !title.startsWith('Explain')) ?? assert.fail(`no cure on offer for: ${next.label}`);
      console.log(`          ${next.label.slice(0, 90)} -> ${cure}`);
      await workbench.pickQuickFix(cure);
      await workbench.until(() => workbench.counts(), (now) => now.errors === 0 && now.warnings === 0);
      assert.deepEqual(commentsOf(await workbench.text()), commentsOf(draft));
      await workbench.goTo(guides);
      await shot('4-mended');
      await workbench.save();
    });
  },
};
