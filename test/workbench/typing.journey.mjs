// Half-typed text is the normal case: findings come and go with the keys, one for each mistake, and what is read beside the text does not jump.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { healthyLift, liftMotor, placeIn } from './harness/fixtures.mjs';

const file = 'heron.machine.yaml';
const text = `${healthyLift}\nparts:\n${liftMotor}`;
const place = (wanted) => placeIn(text, wanted);

export default {
  title: 'a description is typed',
  files: { [file]: text },
  async run({ workbench, page, step, shot, folder }) {
    const type = (keys) => page.keyboard.type(keys, { delay: 15 });
    const counts = (errors, warnings) => workbench.until(() => workbench.counts(), (now) => now.errors === errors && now.warnings === warnings);

    await step('a healthy machine has hints and neither error nor warning', async () => {
      await workbench.openFile(file);
      await workbench.until(() => workbench.inlayHints(), (rows) => rows.length > 0, 60_000);
      await counts(0, 0);
    });

    await step('keys, numbers, units, designations, names and comments look different', async () => {
      const runs = await workbench.colours('plate: {');
      const of = (wanted, among = runs) => among.find((run) => run.text.trim() === wanted)?.colour ?? assert.fail(`"${wanted}" is not one run of text: ${JSON.stringify(among)}`);
      const screw = await workbench.colours('size:');
      const motor = await workbench.colours('motor:');
      const colours = { key: of('mass'), number: of('2.4'), comment: of('# weighed'), designation: of('Tr12x2', screw), name: of('lift-motor', motor) };
      assert.equal(new Set(Object.values(colours)).size, 5, JSON.stringify(colours));
      assert.equal(of('kg'), colours.number, 'a unit belongs to its number in this theme');
    });

    await step('a unit of the wrong kind is an error as soon as it is typed, and gone when it is undone', async () => {
      const [line, column] = place('200 mm');
      await workbench.focusEditor();
      await workbench.goTo(line, column + '200 mm'.length);
      await page.keyboard.press('Backspace');
      await page.keyboard.press('Backspace');
      await type('kg');
      await workbench.until(() => workbench.counts(), (now) => now.errors === 1);
      const rows = (await workbench.problems()).filter((row) => row.severity === 'Error');
      assert.deepEqual(rows.map((row) => [row.line, row.column]), [[line, column + '200 '.length]]); // the unit itself
      assert.match(rows[0].label, /mass/i);
      await shot('1-wrong-unit');
      await workbench.focusEditor();
      for (let i = 0; i < 4; i++) await page.keyboard.press('Control+Z');
      await workbench.until(() => workbench.text(), (now) => now === text);
      await counts(0, 0);
    });

    await step('a missing unit has a fix that writes it', async () => {
      const [line, column] = place('5 mm/s,');
      await workbench.focusEditor();
      await workbench.goTo(line, column + '5 mm/s'.length);
      for (let i = 0; i < ' mm/s'.length; i++) await page.keyboard.press('Backspace');
      await workbench.until(() => workbench.counts(), (now) => now.errors === 1);
      const offered = await workbench.quickFixes(line, column);
      await shot('2-missing-unit');
      const cure = offered.find((title) => title.includes('mm/s')) ?? assert.fail(`offered: ${offered.join(' | ')}`);
      await workbench.pickQuickFix(cure);
      await counts(0, 0);
      assert.equal(await workbench.text(), text);
    });

    await step('a key half typed makes at most one finding, and leaves the others alone', async () => {
      const [line] = place('      units: 2');
      await workbench.focusEditor();
      await workbench.goTo(line, '      units: 2'.length + 1);
      await page.keyboard.press('Enter');
      await type('bra');
      await page.keyboard.press('Escape');
      await page.waitForTimeout(1200);
      const now = await workbench.counts();
      assert.ok(now.errors <= 1 && now.warnings === 0, JSON.stringify(now));
      await shot('3-half-key');
      for (let i = 0; i < 'bra'.length; i++) await page.keyboard.press('Backspace');
      await page.keyboard.press('Control+Shift+K');
      await workbench.until(() => workbench.text(), (after) => after === text);
      await counts(0, 0);
    });

    await step('two hundred letters in a comment never take a hint away', async () => {
      const before = await workbench.until(() => workbench.inlayHints(), (rows) => rows.length > 0);
      const [line, column] = place('# weighed');
      await workbench.focusEditor();
      await workbench.goTo(line, column + '# weighed'.length);
      for (let i = 0; i < 20; i++) {
        await page.keyboard.type(' weighed.', { delay: 5 });
        const now = await workbench.inlayHints();
        assert.deepEqual(now.map((row) => row.hint), before.map((row) => row.hint), `after ${(i + 1) * 9} letters`);
      }
      await workbench.replaceText(text);
      await counts(0, 0);
    });

    await step('what is saved is what is shown', async () => {
      await workbench.save();
      if (folder !== undefined) assert.equal(readFileSync(join(folder, file), 'utf8'), text);
    });
  },
};
