// Levelling by three screws is typed with what completion offers; then how far it reaches and what each screw must do is read, and guides that forbid it are told.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { placeIn } from './harness/fixtures.mjs';

const file = 'hot-bed/exact.machine.yaml';
const held = 'hot-bed/jams-when-hot.machine.yaml';
const read = (path) => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const carried = '    carried-part: { material: aluminium, temperature: 75 °C }';
const above = read(file).split('\n').indexOf(carried) + 1;
const levelling = above + 1;

export default {
  title: 'a bed on three screws is levelled',
  examples: ['hot-bed'],
  async run({ workbench, page, step, shot }) {
    const type = (keys) => page.keyboard.type(keys, { delay: 60 });
    const rows = () => page.locator('.suggest-widget.visible .monaco-list-row').evaluateAll((all) => all.map((row) => ({ label: row.getAttribute('aria-label') ?? '', focused: row.classList.contains('focused') })));
    const offers = (word) => workbench.until(rows, (now) => now.some(({ label }) => label.startsWith(word)));
    /** Takes what begins with a word once it is the one that Enter would take. */
    const take = async (word) => {
      await offers(word);
      for (let i = 0; i < 8 && !(await rows()).some(({ label, focused }) => focused && label.startsWith(word)); i++) await page.keyboard.press('ArrowDown');
      await workbench.until(rows, (now) => now.some(({ label, focused }) => focused && label.startsWith(word)));
      await page.keyboard.press('Enter');
      await page.locator('.suggest-widget.visible').waitFor({ state: 'detached' });
    };
    const ask = async (word) => {
      if (!(await rows()).some(({ label }) => label.startsWith(word))) await page.keyboard.press('Control+Space');
      return (await offers(word)).map(({ label }) => label);
    };

    await step('the entry is typed with completion', async () => {
      await workbench.openFile(file);
      await workbench.until(() => workbench.inlayHints(), (hints) => hints.length > 0, 60_000);
      await workbench.focusEditor();
      await workbench.goTo(above, carried.length + 1);
      await page.keyboard.press('Enter');
      await type('level');
      await take('levelling');
      await type('lif');
      await offers('lifts');
      await shot('1-key');
      await take('lifts');
    });

    await step('the lifts are completed by the names of the supports, each once', async () => {
      for (const name of ['screw 1', 'screw 2', 'screw 3']) {
        const offered = await ask(name);
        if (name === 'screw 2') {
          await shot('2-lifts');
          assert.ok(offered.some((label) => label.startsWith('left rail')) && !offered.some((label) => label.startsWith('screw 1')), offered.join(' | '));
        }
        await take(name);
        if (name !== 'screw 3') await page.keyboard.press('Tab');
      }
      await workbench.until(() => workbench.lines(), (lines) => lines.some((line) => /^ {6}lifts: \[screw 1, screw 2, screw 3\]$/.test(line)));
    });

    await step('the rest is typed, and nothing is wrong with it', async () => {
      await page.keyboard.press('Escape');
      await page.keyboard.press('End');
      await page.keyboard.press('Enter');
      await type('moved');
      await take('moved-by');
      await ask('own-motors');
      await shot('3-moved-by');
      await take('own-motors');
      await page.keyboard.press('End');
      await page.keyboard.press('Enter');
      await type('range: 4 mm');
      await page.keyboard.press('Escape');
      await page.keyboard.press('Enter');
      await type('heights: [0 mm, 0.8 mm, 0.3 mm');
      await page.keyboard.press('Escape');
      const text = await workbench.text();
      assert.match(text, /\n {4}levelling:\n {6}lifts: \[screw 1, screw 2, screw 3\]\n {6}moved-by: own-motors\n {6}range: 4 mm\n {6}heights: \[0 mm, 0.8 mm, 0.3 mm\]\n/);
      await workbench.until(() => workbench.inlayHints(), (hints) => hints.some(({ text: shown, hint }) => shown.includes('levelling:') && hint.includes('free to tilt')));
      await workbench.until(() => workbench.counts(), (now) => now.errors === 0 && now.warnings === 0);
    });

    await step('hovering it shows the range, and what each lift has to do', async () => {
      const text = (await workbench.hover(levelling, 6, { shows: /free to tilt/ })).replace(/\u00a0/g, ' ');
      // By hand: the plane through (60, 20, 0), (340, 20, 0.8), (200, 350, 0.3) mm; its height in the middle, 1.1/3 mm, stays.
      for (const move of ['screw 1 +0.367 mm', 'screw 2 −0.433 mm', 'screw 3 +0.0667 mm']) assert.match(text, new RegExp(`To level it: [^\\n]*${move.replace('+', '\\+').replace('.', '\\.')}`));
      for (const title of ['Tilt that can be taken away', 'Use of the range of the lifts']) assert.ok(text.includes(title), title);
      await shot('4-hover');
      for (const share of [0.25, 0.5, 0.75]) {
        await workbench.scrollHover(share);
        await shot(`4-hover-${share * 100}`);
      }
      await workbench.escape();
      await workbench.save();
    });

    await step('where rails hold the tilt, the entry tells who forbids it', async () => {
      const text = read(held).replace(carried, `${carried}\n    levelling: { lifts: [screw 1, screw 2, screw 3], moved-by: own-motors, range: 4 mm }`);
      await workbench.openFile(held);
      await workbench.replaceText(text);
      const fights = (row) => row.line === placeIn(text, 'levelling:')[0];
      const found = (await workbench.until(() => workbench.problems(), (all) => all.some(fights))).find(fights);
      assert.match(found.label, /left rail/);
      await shot('5-held');
      await workbench.hidePanel();
      const [line, column] = placeIn(text, 'levelling:');
      assert.match(await workbench.hover(line, column + 1, { shows: /of 3 held/ }), /left rail/);
      await shot('6-held-hover');
      await workbench.escape();
    });
  },
};
