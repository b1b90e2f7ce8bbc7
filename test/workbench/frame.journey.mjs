// A portal that rings after each quick move: how it sways, what a member is, and the diagonals that calm it.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { commentsOf, placeIn } from './harness/fixtures.mjs';

const file = 'open-gantry/sways.machine.yaml';
const draft = readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');
const [frame] = placeIn(draft, 'frame:\n  profile');
const [beam, beamColumn] = placeIn(draft, 'beam:');
const endColumn = beamColumn + 'beam: { from: '.length;

const membersOf = (text) => text.split('\n').filter((line) => /\{ from: .*, to: /.test(line)).length;

export default {
  title: 'an open portal rings, and is braced',
  examples: ['open-gantry'],
  async run({ workbench, step, shot }) {
    await step('the ringing is a warning on the frame', async () => {
      await workbench.openFile(file);
      const rows = await workbench.until(() => workbench.problems(), (found) => found.some((row) => row.severity === 'Warning'), 60_000);
      const warnings = rows.filter((row) => row.severity === 'Warning');
      assert.deepEqual(warnings.map(({ line }) => line), [frame]);
      assert.match(warnings[0].label, /ring/);
      await shot('1-ringing');
    });

    await step('hovering the frame tells how it sways and rings', async () => {
      await workbench.hidePanel();
      const text = await workbench.hover(frame, 2, { shows: /First frequency of the frame/ });
      for (const word of [/Ringing after a jerk/, /held/]) assert.match(text, word);
      await shot('2-hover');
      for (const share of [0.25, 0.5, 0.75]) {
        await workbench.scrollHover(share);
        await shot(`2-hover-${share * 100}`);
      }
      await workbench.escape();
    });

    await step('hovering a member, and the end of one, tells what it is', async () => {
      const text = await workbench.hover(beam, beamColumn + 1, { shows: /long/ });
      assert.match(text.replace(/\u00a0/g, ' '), /^beam, from top left to top right: 700 mm long, [\d.]+ kg\./);
      await workbench.scrollHover(0); // the editor uses its box again as the last hover left it
      await shot('3-member');
      await workbench.escape();
      assert.match(await workbench.hover(beam, endColumn + 1, { shows: /point/i }), /point/i);
      await shot('3-member-end');
      await workbench.escape();
    });

    await step('the diagonals on offer leave no error and no warning, and every comment', async () => {
      for (let applied = 0; ; applied++) {
        const next = (await workbench.problems()).find((row) => row.severity === 'Error' || row.severity === 'Warning');
        if (next === undefined) break;
        assert.ok(applied < 3, `still there after ${applied} fixes: ${next.label}`);
        const offered = await workbench.until(() => workbench.quickFixes(next.line, next.column), (titles) => titles.length > 0);
        await shot(`4-offered-${applied}`);
        const cure = offered.find((title) => !title.startsWith('Explain')) ?? assert.fail(`no cure on offer for: ${next.label}`);
        console.log(`          ${next.label.slice(0, 90)} -> ${cure}`);
        const before = await workbench.counts();
        await workbench.pickQuickFix(cure);
        await workbench.until(() => workbench.counts(), (now) => now.errors + now.warnings < before.errors + before.warnings);
      }
      assert.deepEqual(await workbench.counts(), { errors: 0, warnings: 0 });
      const braced = await workbench.text();
      assert.deepEqual(commentsOf(braced), commentsOf(draft));
      assert.ok(membersOf(braced) > membersOf(draft), 'the diagonals are members');
      await workbench.goTo(placeIn(braced, 'beam:')[0]);
      await shot('5-braced');
      await workbench.save();
    });
  },
};
