// The whole job, as the person lives it: open a first draft, read what is wrong, look why, and apply the cures on offer until nothing is left.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

const file = 'large-format-printer/first-draft.machine.yaml';
const draft = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
const lines = draft.split('\n');
/** Line, from 1, and column, from 1, of the first place where a text stands. */
const placeOf = (text, within = '') => {
  const line = lines.findIndex((candidate) => candidate.includes(text) && candidate.includes(within));
  return [line + 1, lines[line].indexOf(text) + 1];
};
const comments = (text) => text.split('\n').flatMap((line) => /(?:^|\s)(#.*)$/.exec(line)?.[1] ?? []);
/** So many cures are surely enough for this machine; more would mean that they undo each other. */
const mostFixes = 12;

export default {
  title: 'a first draft is checked, understood and mended',
  examples: ['large-format-printer'],
  async run({ workbench, page, step, shot }) {
    await step('the file opens as a machine description and is underlined', async () => {
      await workbench.openFile(file);
      await workbench.until(() => workbench.counts(), (counts) => counts.errors > 0, 60_000);
      assert.equal(await page.locator('#status\\.editor\\.mode').innerText(), 'Machine Description');
    });

    await step('the drop of an unpowered lift is an error on the screw, with its hazard', async () => {
      // 8 mm lead on a pitch diameter of 7 mm (ISO 2904: d - 0.5 P) needs a thread friction of about 8/(7 π) × cos 15° = 0.35 to hold: no nut has that. By hand.
      const [line, column] = placeOf('Tr8x8(P2)');
      const found = (await workbench.until(() => workbench.problems(), (rows) => rows.some((row) => row.severity === 'Error'))).filter((row) => row.severity === 'Error');
      assert.deepEqual(found.map((row) => [row.line, row.column]), [[line, column]]);
      assert.match(found[0].label, /drops with power off/);
      assert.match(found[0].label, /Caution: Gravity-loaded axis/);
      await shot('1-findings');
    });

    await step('hovering the screw shows its figures, verdicts, formulas and sources', async () => {
      await workbench.hidePanel();
      const [line, column] = placeOf('screw:');
      const text = await workbench.hover(line, column + 1, { shows: /buckling/i });
      for (const word of [/lead/i, /efficiency/i, /drops/i, /whirl/i, /buckling/i]) assert.match(text, word);
      await shot('2-hover-screw');
      await workbench.scrollHover(0.4);
      await shot('2-hover-screw-middle');
      await workbench.scrollHover(1);
      await shot('2-hover-screw-end');
      await workbench.escape();
    });

    await step('hovering a designation decodes it, and a value tells what it is', async () => {
      const [line, column] = placeOf('Tr8x8(P2)');
      const designation = await workbench.hover(line, column + 2, { shows: /designation/i });
      assert.match(designation, /8 mm/);
      assert.match(designation, /2 mm/);
      await shot('3-hover-designation');
      await workbench.escape();
      const [speedLine, speedColumn] = placeOf('60 mm/s');
      await workbench.hover(speedLine, speedColumn, { shows: /0\.06 m\/s/ });
      await shot('4-hover-value');
      await workbench.escape();
    });

    await step('hints at the ends of lines keep within forty characters', async () => {
      const hints = await workbench.until(() => workbench.inlayHints(), (rows) => rows.length > 0);
      for (const { text, hint } of hints) assert.ok([...hint].length <= 40, `${text}: ${hint}`);
    });

    await step('the page of a finding opens beside the text', async () => {
      await workbench.focusEditor();
      await workbench.goTo(...placeOf('Tr8x8(P2)'));
      await workbench.command('Axiswright: Explain a Finding');
      await page.locator('.tab.active', { hasText: 'Preview' }).waitFor({ timeout: 20_000 });
      const frame = page.frameLocator('iframe.webview.ready').first().frameLocator('iframe#active-frame');
      await frame.locator('h1').first().waitFor({ timeout: 20_000 });
      await shot('5-page');
      await workbench.closeTab('Preview');
      await workbench.activate(file);
    });

    await step('the fixes on offer, one after another, leave no error and no warning', async () => {
      let applied = 0;
      const atFirst = await workbench.counts();
      assert.ok(atFirst.errors > 0 && atFirst.warnings > 0, 'there is something to mend');
      for (;;) {
        const rows = await workbench.problems();
        const next = rows.find((row) => row.severity === 'Error') ?? rows.find((row) => row.severity === 'Warning');
        if (next === undefined) break;
        assert.ok(applied < mostFixes, `still there after ${applied} fixes: ${next.label}`);
        const offered = await workbench.quickFixes(next.line, next.column);
        const cure = offered.find((title) => !/^(?:Explain|Accept)/.test(title));
        await shot(`6-fix-${applied + 1}`);
        assert.ok(cure !== undefined, `no cure on offer for: ${next.label}; offered: ${offered.join(' | ')}`);
        console.log(`          ${next.label.slice(0, 90)} -> ${cure}`);
        const before = await workbench.counts();
        await workbench.pickQuickFix(cure);
        await workbench.until(() => workbench.counts(), (counts) => counts.errors + counts.warnings < before.errors + before.warnings);
        applied++;
      }
      await page.waitForTimeout(1000); // a finding that is slow to come would come now
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
      await shot('7-mended');
    });

    await step('every comment is where it was, and the order of the entries too', async () => {
      const text = await workbench.text();
      assert.deepEqual(comments(text), comments(draft));
      const kept = lines.filter((line) => text.split('\n').includes(line));
      assert.ok(kept.length > lines.length * 0.7, `only ${kept.length} of ${lines.length} lines are as they were`);
      await workbench.save();
    });
  },
};
