// The settings do what they say, read from the folder as a team would share them; and a dark theme can be read.
import assert from 'node:assert/strict';
import { healthyLift, liftMotor, placeIn } from './harness/fixtures.mjs';

const wrong = `${healthyLift}\nparts:\n${liftMotor}`.replace('travel: 200 mm', 'travel: 200 kg');
const settings = { 'axiswright.findings.when': 'off', 'axiswright.inlayHints.enabled': false, 'workbench.colorTheme': 'Default Dark Modern' };

export default {
  title: 'findings and hints are switched off, and a dark theme is on',
  files: { 'heron.machine.yaml': wrong, '.vscode/settings.json': JSON.stringify(settings) },
  async run({ workbench, page, step, shot }) {
    await step('a hover works, and its plot is drawn', async () => {
      await workbench.openFile('heron.machine.yaml');
      const [line, column] = placeIn(wrong, 'motor: lift-motor');
      // Until the server runs there is nothing to be shown.
      await workbench.until(() => workbench.hover(line, column + 2, { shows: /torque/i, timeout: 2000 }).catch(() => ''), (shown) => shown !== '', 60_000);
      const plot = page.locator('.monaco-hover:not(.hidden) img').first();
      await workbench.until(() => plot.evaluate((image) => image.naturalWidth), (width) => width > 0);
      await plot.scrollIntoViewIfNeeded();
      await shot('1-dark-hover');
      await workbench.escape();
    });

    await step('there is no finding and no hint', async () => {
      await page.waitForTimeout(1500);
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
      assert.deepEqual(await workbench.inlayHints(), []);
      await shot('2-dark');
    });

    await step('the status item tells the state of the server', async () => {
      await page.locator('.statusbar-item [class*="codicon-bracket"]').first().hover();
      const box = page.locator('.monaco-hover:not(.hidden)', { hasText: 'Show log' });
      await box.waitFor({ timeout: 15_000 });
      assert.match(await box.innerText(), /Ready|Checks run: \d+/);
      await shot('3-status');
    });
  },
};
