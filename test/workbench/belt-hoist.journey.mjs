// A vertical axis that hangs on a belt: it drops when the power goes, says so with its hazard, and offers cures that are proven.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

const file = 'belt-hoist/first-draft.machine.yaml';
const draft = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
const lines = draft.split('\n');
/** Line, from 1, and column, from 1, of the first place where a text stands. */
const placeOf = (text) => {
  const line = lines.findIndex((candidate) => candidate.includes(text));
  return [line + 1, lines[line].indexOf(text) + 1];
};
const comments = (text) => text.split('\n').flatMap((line) => /(?:^|\s)(#.*)$/.exec(line)?.[1] ?? []);
const mostFixes = 16;

export default {
  title: 'a hoist on a belt drops, and is mended',
  examples: ['belt-hoist'],
  async run({ workbench, page, step, shot }) {
    await step('the drop is an error with its hazard', async () => {
      await workbench.openFile(file);
      // By hand: 3.6 kg · 9.81 m/s² on 16 teeth of 5 mm is 35 N · 80 mm/2π = 0.45 N·m; the detent of 35 N·mm is a thirteenth of it.
      const errors = (await workbench.until(() => workbench.problems(), (rows) => rows.some((row) => row.severity === 'Error'), 60_000)).filter((row) => row.severity === 'Error');
      const drop = errors.find((row) => /drops with power off/.test(row.label));
      assert.ok(drop, errors.map((row) => row.label).join('\n'));
      assert.match(drop.label, /Caution: Gravity-loaded axis/);
      assert.ok(errors.some((row) => /belt breaks/i.test(row.label)), 'and what a broken belt does is told too');
      await shot('1-findings');
    });

    await step('hovering the belt shows tension, strum and stiffness, with a plot over the travel', async () => {
      await workbench.hidePanel();
      const [line, column] = placeOf('      belt:');
      const text = await workbench.hover(line, column + 7, { shows: /tension/i });
      for (const word of [/tension/i, /strum/i, /stiffness/i, /strain/i]) assert.match(text, word);
      await shot('2-hover-belt');
      await workbench.scrollHover(0.5);
      await shot('2-hover-belt-middle');
      await workbench.scrollHover(1);
      await shot('2-hover-belt-end');
      await workbench.escape();
    });

    await step('hovering the motor shows its torque over the move', async () => {
      const [line, column] = placeOf('dip-motor');
      const text = await workbench.hover(line, column + 1, { shows: /margin/i });
      for (const word of [/torque/i, /radial/i]) assert.match(text, word);
      await shot('3-hover-motor');
      await workbench.scrollHover(1);
      await shot('3-hover-motor-end');
      await workbench.escape();
    });

    await step('at least three proven cures are on offer for the drop', async () => {
      const rows = await workbench.problems();
      const drop = rows.find((row) => /drops with power off/.test(row.label));
      const offered = (await workbench.quickFixes(drop.line, drop.column)).filter((title) => !/^(?:Explain|Accept)/.test(title));
      await shot('4-cures');
      assert.ok(offered.length >= 3, offered.join(' | '));
      await workbench.escape();
    });

    await step('the cures, one after another, leave no error and no warning', async () => {
      for (let applied = 0; ; applied++) {
        const rows = await workbench.problems();
        const next = rows.find((row) => row.severity === 'Error') ?? rows.find((row) => row.severity === 'Warning');
        if (next === undefined) break;
        assert.ok(applied < mostFixes, `still there after ${applied} fixes: ${next.label}`);
        const offered = await workbench.quickFixes(next.line, next.column);
        const cure = offered.find((title) => !/^(?:Explain|Accept)/.test(title));
        assert.ok(cure !== undefined, `no cure on offer for: ${next.label}; offered: ${offered.join(' | ')}`);
        console.log(`          ${next.label.slice(0, 90)} -> ${cure}`);
        const before = await workbench.counts();
        await workbench.pickQuickFix(cure);
        await workbench.until(() => workbench.counts(), (counts) => counts.errors + counts.warnings < before.errors + before.warnings);
      }
      await page.waitForTimeout(1000); // a finding that is slow to come would come now
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
      assert.deepEqual(comments(await workbench.text()), comments(draft));
      await shot('5-mended');
      await workbench.save();
    });
  },
};
