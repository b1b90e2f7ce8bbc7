// A table on four bolted nuts: the supports from above with what each carries, and the change that leaves it exactly held.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { commentsOf, placeIn } from './harness/fixtures.mjs';

const file = 'four-nuts/as-built.machine.yaml';
const draft = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
const [supports] = placeIn(draft, 'supports:');
const [screw, column] = placeIn(draft, 'screw 2:');

export default {
  title: 'a table on four nuts binds, and is set free',
  examples: ['four-nuts'],
  async run({ workbench, page, step, shot }) {
    await step('both findings stand on the supports', async () => {
      await workbench.openFile(file);
      const rows = await workbench.until(() => workbench.problems(), (found) => found.some((row) => row.severity === 'Warning'), 60_000);
      assert.deepEqual(new Set(rows.filter((row) => row.severity === 'Warning').map(({ line }) => line)), new Set([supports]));
      await shot('1-findings');
    });

    await step('hovering the supports shows them from above, with what each carries', async () => {
      await workbench.hidePanel();
      const text = await workbench.hover(supports, 6, { shows: /redundant/i });
      for (const word of [/14 redundant/, /Least load on one support/, /Largest load on one support/]) assert.match(text, word);
      await shot('2-hover');
      const plan = page.locator('.monaco-hover:not(.hidden) img').first();
      assert.match((await plan.getAttribute('alt')) ?? '', /seen from above: screw 1/);
      assert.ok(await plan.evaluate((image) => image.complete && image.naturalWidth > 0), 'the plan is drawn');
      await plan.scrollIntoViewIfNeeded();
      await shot('2-plan');
      await workbench.escape();
    });

    await step('hovering one nut tells what it holds and carries', async () => {
      const text = await workbench.hover(screw, column + 1, { shows: /Carries/ });
      assert.match(text.replace(/\u00a0/g, ' '), /Carries [\d.]+ N at rest, 25 % of the weight/); // one of four at the corners about the middle
      assert.match(text, /Redundant: screw 1, screw 2, screw 3 and screw 4 all fix/);
      await shot('3-nut');
      await workbench.escape();
    });

    await step('what is on offer leaves no error and no warning', async () => {
      const offered = await workbench.until(() => workbench.quickFixes(supports, 6), (titles) => titles.length > 0);
      await shot('4-offered');
      const cure = offered.find((title) => /exactly constrained/.test(title)) ?? assert.fail(`offered: ${offered.join(' | ')}`);
      await workbench.pickQuickFix(cure);
      await workbench.until(() => workbench.counts(), (now) => now.errors === 0 && now.warnings === 0);
      const kept = commentsOf(await workbench.text());
      for (const comment of commentsOf(draft)) assert.ok(kept.includes(comment), `lost: ${comment}`);
      await workbench.goTo(supports);
      await shot('5-free');
      await workbench.save();
    });
  },
};
