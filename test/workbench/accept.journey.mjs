// A finding is accepted: three questions are asked, the entry is written, and the finding is information; settings of the repository beside it.
import assert from 'node:assert/strict';

const file = 'lift.machine.yaml';
const text = `description-version: 1
machine: Heron
masses: { plate: { mass: 4 kg } }
axes:
  lift:
    direction: vertical
    travel: 300 mm
    moves: [plate]
    motion: { speed: 10 mm/s, acceleration: 200 mm/s² }
    drive:
      screw: { size: Tr12x3, speed-limit: 100 rpm }
`;
const line = text.split('\n').findIndex((one) => one.includes('speed-limit')) + 1;
const column = text.split('\n')[line - 1].indexOf('100 rpm') + 1;

export default {
  title: 'a deviation is accepted',
  files: { [file]: text, 'axiswright.yaml': 'checks:\n  pinch-point: { severity: off }\n' },
  async run({ workbench, page, step, shot }) {
    const isThere = (row) => /Screw turns at/.test(row.label);

    await step('the fix asks for the reason, the name and the last day', async () => {
      await workbench.openFile(file);
      await workbench.until(() => workbench.problems(), (found) => found.some((row) => isThere(row) && row.severity === 'Warning'), 60_000);
      await workbench.hidePanel();
      const offered = await workbench.quickFixes(line, column);
      assert.ok(offered.some((title) => title.startsWith('Accept with a reason')), offered.join(' | '));
      await workbench.pickQuickFix('Accept with a reason');
      const box = page.locator('.quick-input-widget input[type=text]');
      for (const answer of ['it turns for a minute a day', 'R. Okafor', '2999-12-31']) {
        await box.waitFor();
        await box.fill(answer);
        await shot(`1-${answer.slice(0, 4).trim()}`);
        await page.keyboard.press('Enter');
        await page.waitForTimeout(300);
      }
    });

    await step('the entry stands at the end, and the finding is information', async () => {
      const written = await workbench.until(() => workbench.text(), (found) => found.includes('accepted:'));
      assert.equal(written, `${text}accepted:\n  - check: screw-too-fast-for-its-maker\n    at: axes/lift/drive/screw/speed-limit\n    reason: it turns for a minute a day\n    by: R. Okafor\n    until: 2999-12-31\n`);
      const rows = await workbench.until(() => workbench.problems(), (found) => found.some((row) => isThere(row) && row.severity === 'Info'));
      assert.match(rows.find(isThere).label, /accepted: it turns for a minute a day/);
      await shot('2-accepted');
      await workbench.save();
    });

    await step('settings are checked like a description', async () => {
      await workbench.openFile('axiswright.yaml');
      const rows = await workbench.until(() => workbench.problems(), (found) => found.some((row) => /pinch-point/.test(row.label)));
      assert.match(rows.find((row) => /pinch-point/.test(row.label)).label, /people can be hurt/);
      await workbench.hidePanel();
      assert.match(await workbench.hover(2, 5, { shows: /accepted with a reason/i }), /Pinch|pinch/);
      await shot('3-settings');
    });
  },
};
