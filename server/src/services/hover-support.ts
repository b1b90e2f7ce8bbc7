import type { Evaluation } from '../figures/evaluation.ts';
import { nominalUse, type CarrierInUse, type InUse } from '../figures/supports/in-use.ts';
import { layoutOf, wrenchesIn } from '../figures/supports/layout.ts';
import { conflictClauses } from '../figures/supports/redundant.figure.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import type { EntryPath } from '../language/syntax-tree.ts';
import { formOf } from '../machine/support-joint.ts';
import { directionInWords, listInWords } from '../mechanics/constraint-names.ts';
import { conflictsOf } from '../mechanics/constraint-conflicts.ts';
import { percent } from '../checks/check.ts';
import { escapeMarkdown } from './markdown.ts';
import { planOf } from './plan-drawing.ts';
import type { Snapshot } from './snapshot.ts';

/** What one support holds, carries and repeats; undefined where the path is not that of a support that can be read. */
export function supportMarkdown(path: EntryPath, { analysis, uri }: Snapshot): string | undefined {
  if (path.length !== 4 || path[0] !== 'axes' || path[2] !== 'supports') return undefined;
  const of = analysis?.evaluations.filter(({ subject }) => subject.kind === 'drive' && subject.fixed.get('axis')?.[1] === path[1] && subject.placeOf('supports')?.uri === uri) ?? [];
  const evaluation = of.find(({ subject }) => subject.chosen) ?? of[0];
  return evaluation && lines(path[3] ?? '', evaluation);
}

function lines(name: string, evaluation: Evaluation): string | undefined {
  const input = evaluation.input('axis.support-joints');
  const table = input.state === 'known' && input.value.type === 'table' ? input.value : undefined;
  const layout = layoutOf(table?.rows, table?.titles);
  const index = table?.titles?.indexOf(name) ?? -1;
  const support = layout?.supports[index];
  if (!layout || !support) return undefined;
  const wrenches = wrenchesIn(layout, 'drives held');
  const own = wrenches.filter((one) => one.joint === index);
  const held = (kind: (one: (typeof own)[number]) => boolean): string => listInWords(own.filter(kind).map(({ direction }) => directionInWords(direction)));
  const [shifts, turns, driven] = [held(({ holds, soft }) => holds === 'force' && !soft), held(({ holds, soft }) => holds === 'couple' && !soft), held(({ holds }) => holds === 'thread')];
  const said = [shifts === '' ? '' : `shift along ${shifts}`, turns === '' ? '' : `turning about ${turns}`, driven === '' ? '' : `shift along ${driven} while the drive holds`].filter((part) => part !== '');
  const place = planOf(evaluation)?.supports[index];
  const whole = (evaluation.bounds('axis.moved-mass')?.nominal ?? 0) * (evaluation.bounds('conditions.gravity')?.nominal ?? 0);
  const reaction = place?.reaction;
  const carrier = nominalUse(evaluation)?.carriers.find((one) => one.index === index);
  const fights = conflictClauses(conflictsOf(wrenches, layout.scale)).filter(({ owners }) => owners.includes(name));
  return [
    `**${escapeMarkdown(name)}**, ${escapeMarkdown(formOf(support.kind).title)}, holds ${escapeMarkdown(said.length === 0 ? 'nothing' : said.join(', '))}.`,
    reaction === undefined || whole <= 0 ? '' : `Carries ${escapeMarkdown(formatQuantity(reaction, 'force', { unit: 'N', digits: 3 }))} at rest, ${percent(reaction / whole)} of the weight.`,
    carrier ? escapeMarkdown(inUseWords(carrier)) : '',
    ...fights.slice(0, 4).map(({ text }) => `Redundant: ${escapeMarkdown(text)}.`),
    fights.length > 4 ? `And ${fights.length - 4} more.` : '',
  ].filter((line) => line !== '').join('  \n');
}

const newtons = (value: number): string => formatQuantity(value, 'force', { unit: 'N', digits: 3 });

/** "In use 12 N, with parts at 0, 60 mm, to 31 N, with parts at 320, 60 mm." */
function inUseWords({ least, most }: CarrierInUse): string {
  const told = ({ value, situation }: InUse): string => [newtons(value), situation()].filter((part) => part !== '').join(' ');
  return newtons(least.value) === newtons(most.value) ? '' : `In use at least ${told(least)}; at most ${told(most)}.`;
}
