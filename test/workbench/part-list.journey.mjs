// A machine that draws its motor from a part list in another folder: names lead there, and a change there is felt here, with and without a disk.
import assert from 'node:assert/strict';
import { healthyLift, liftMotor, placeIn } from './harness/fixtures.mjs';

const machine = healthyLift.replace('machine: Heron\n', 'machine: Heron\nuses: [stock/shop.parts.yaml]\n');
const list = `# The workshop's stock. Invented.\ndescription-version: 1\nlist: shop\nparts:\n${liftMotor}`;

export default {
  title: 'a part comes from a list in another file',
  files: { 'heron.machine.yaml': machine, 'stock/shop.parts.yaml': list },
  async run({ workbench, page, step, shot }) {
    await step('the machine is computed with the part from the list', async () => {
      await workbench.openFile('heron.machine.yaml');
      const hints = await workbench.until(() => workbench.inlayHints(), (rows) => rows.some((row) => row.text.includes('motor:')), 60_000);
      assert.match(hints.find((row) => row.text.includes('motor:')).hint, /margin/);
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
    });

    await step('going to the definition of the motor opens the list at its entry', async () => {
      const [line, column] = placeIn(machine, 'lift-motor');
      await workbench.focusEditor();
      await workbench.goTo(line, column + 3);
      await page.keyboard.press('F12');
      await page.locator('.tab.active[data-resource-name="shop.parts.yaml"]').waitFor({ timeout: 15_000 });
      const [there] = placeIn(list, 'lift-motor');
      await workbench.until(() => page.locator('#status\\.editor\\.selection').innerText(), (label) => label.includes(`Ln ${there},`));
      await shot('1-definition');
    });

    await step('a part that loses its name in the list is missed in the machine at once', async () => {
      const [line, column] = placeIn(list, 'lift-motor');
      await workbench.focusEditor();
      await workbench.goTo(line, column);
      await page.keyboard.type('x');
      await workbench.until(() => workbench.counts(), (now) => now.errors >= 1);
      const rows = (await workbench.problems()).filter((row) => row.severity === 'Error');
      const [place] = [placeIn(machine, 'lift-motor')];
      assert.deepEqual(rows.map((row) => [row.line, row.column]), [place]);
      await shot('2-missing');
      await workbench.activate('shop.parts.yaml');
      await page.keyboard.press('Control+Z');
      await workbench.until(() => workbench.counts(), (now) => now.errors === 0);
    });
  },
};
