// A bed on three screws and two rails that seizes when it is hot: why, seen from above, and the joints that set it free.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

const file = 'hot-bed/jams-when-hot.machine.yaml';
const draft = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
const lines = draft.split('\n');
const line = lines.findIndex((candidate) => candidate.trim() === 'supports:') + 1;
const comments = (text) => text.split('\n').flatMap((one) => /(?:^|\s)(#.*)$/.exec(one)?.[1] ?? []);

export default {
  title: 'a hot bed jams, and is set free',
  examples: ['hot-bed'],
  async run({ workbench, page, step, shot }) {
    await step('the jam is an error on the supports, with the owners in conflict', async () => {
      await workbench.openFile(file);
      const rows = await workbench.until(() => workbench.problems(), (found) => found.some((row) => row.severity === 'Error'), 60_000);
      const jam = rows.find((row) => row.severity === 'Error');
      assert.equal(jam.line, line);
      assert.match(jam.label, /Jams in work/);
      assert.match(jam.label, /left rail and right rail/);
      await shot('1-jam');
    });

    await step('hovering the supports shows them from above, with shares and what is held twice', async () => {
      await workbench.hidePanel();
      const text = await workbench.hover(line, 6, { shows: /redundant/i });
      for (const word of [/redundant/i, /share|reaction/i, /screw 1/]) assert.match(text, word);
      await shot('2-hover');
      await workbench.scrollHover(0.5);
      await shot('2-hover-middle');
      await workbench.escape();
    });

    await step('the joints on offer leave no error and no warning, and every comment', async () => {
      for (let applied = 0; ; applied++) {
        const rows = await workbench.problems();
        const next = rows.find((row) => row.severity === 'Error') ?? rows.find((row) => row.severity === 'Warning');
        if (next === undefined) break;
        assert.ok(applied < 5, `still there after ${applied} fixes: ${next.label}`);
        const offered = await workbench.quickFixes(next.line, next.column);
        const cure = offered.find((title) => !/^(?:Explain|Accept)/.test(title));
        assert.ok(cure !== undefined, `no cure on offer for: ${next.label}; offered: ${offered.join(' | ')}`);
        console.log(`          ${next.label.slice(0, 90)} -> ${cure}`);
        const before = await workbench.counts();
        await workbench.pickQuickFix(cure);
        await workbench.until(() => workbench.counts(), (counts) => counts.errors + counts.warnings < before.errors + before.warnings);
      }
      await page.waitForTimeout(1000);
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
      assert.deepEqual(comments(await workbench.text()), comments(draft));
      await shot('3-free');
      await workbench.save();
    });
  },
};
