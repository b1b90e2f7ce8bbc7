import { showInput } from '../figures/derivation.ts';
import { Evaluation } from '../figures/evaluation.ts';
import { allFigures } from '../figures/registry.ts';
import { parseText } from '../language/parse-text.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { Machine } from '../machine/machine.ts';
import { prettySymbol } from './formula-numbers.ts';
import { blocks, code, escapeMarkdown, escapeShort, table, unbroken } from './markdown.ts';
import { listed, lowerFirst } from './missing.ts';
import { originMarkdown } from './origin-text.ts';

/** Inputs that a screw's designation decides, in the order in which a person reads them. */
const DECODED = ['screw.thread', 'screw.major-diameter', 'screw.pitch', 'screw.starts', 'screw.lead', 'screw.hand', 'screw.pitch-diameter', 'screw.root-diameter'] as const;

/** What a designation means: every dimension that follows from it, with its limits and its source. Undefined for a text that is none. */
export function designationMarkdown(size: string): string | undefined {
  const evaluation = alone(size);
  if (!evaluation) return undefined;
  const bySource = new Map<string, string[]>();
  const rows = DECODED.flatMap((id) => {
    const input = evaluation.input(id);
    if (input.state !== 'known' || (id === 'screw.pitch' && evaluation.choice('screw.thread') === 'ball')) return [];
    const { title, symbol } = describeInput(id);
    const source = input.origin.from === 'standard' ? escapeMarkdown(input.origin.source) : originMarkdown(input);
    bySource.set(source, [...(bySource.get(source) ?? []), lowerFirst(title)]);
    const name = symbol === title.toLowerCase() ? title : `${title} ${prettySymbol(symbol)}`;
    return [[escapeMarkdown(name), escapeMarkdown(showInput(id, evaluation))]];
  });
  // A text that decides nothing is no designation.
  if (evaluation.bounds('screw.major-diameter') === undefined) return undefined;
  return blocks(`**${escapeShort(size)}** is ${escapeMarkdown(inWords(evaluation))}.`, table(['Dimension', 'Value (limits)'], rows), sourcesMarkdown(bySource));
}

/** Where the dimensions come from, those of one source together, since most share one. */
function sourcesMarkdown(bySource: ReadonlyMap<string, readonly string[]>): string {
  return [...bySource].map(([source, titles]) => `- ${escapeMarkdown(capital(listed(titles)))}. Source: ${source}`).join('\n');
}

/** The lead as a row of a screw's table of figures. Undefined where no lead is known. */
export function leadRow(evaluation: Evaluation): readonly string[] | undefined {
  if (evaluation.input('screw.lead').state !== 'known') return undefined;
  const { title, symbol } = describeInput('screw.lead');
  return [`${escapeMarkdown(title)} *${escapeMarkdown(prettySymbol(symbol))}*`, unbroken(escapeMarkdown(showInput('screw.lead', evaluation))), '', ''];
}

/** A screw's lead with its formula, numbers and source, and the other dimensions that matter. Undefined where no lead is known. */
export function leadMarkdown(evaluation: Evaluation): string | undefined {
  const lead = evaluation.input('screw.lead');
  if (lead.state !== 'known') return undefined;
  const { title, symbol } = describeInput('screw.lead');
  const size = evaluation.choice('screw.size');
  const hasParts = evaluation.bounds('screw.pitch') && evaluation.bounds('screw.starts') && evaluation.choice('screw.thread') !== 'ball';
  const value = showInput('screw.lead', evaluation);
  const formula = hasParts
    ? `${code(prettySymbol(`${symbol} = ${describeInput('screw.pitch').symbol} · ${describeInput('screw.starts').symbol}`))}  \n${code(`${prettySymbol(symbol)} = ${showInput('screw.pitch', evaluation)} · ${showInput('screw.starts', evaluation)} = ${value}`)}`
    : code(`${prettySymbol(symbol)} = ${value}`);
  const others = (['screw.major-diameter', 'screw.pitch-diameter', 'screw.root-diameter'] as const).flatMap((id) =>
    evaluation.input(id).state === 'known' ? [`${lowerFirst(describeInput(id).title)} ${showInput(id, evaluation)}`] : [],
  );
  return [
    `**${escapeMarkdown(title)}:** ${formula}`,
    others.length > 0 && `${size === undefined ? '' : `${escapeShort(size)}: `}${escapeMarkdown(listed(others))}`,
    `Source: ${originMarkdown(lead)}`,
  ].filter((line) => line !== false).join('  \n');
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function inWords(evaluation: Evaluation): string {
  const thread = evaluation.choice('screw.thread');
  const hand = evaluation.choice('screw.hand');
  const diameter = showInput('screw.major-diameter', evaluation);
  const lead = evaluation.bounds('screw.lead') ? `, ${showInput('screw.lead', evaluation)} of travel in a turn` : ', whose lead is not said';
  const starts = evaluation.bounds('screw.starts')?.nominal;
  if (thread === 'ball') return `a ball screw of ${diameter} nominal diameter${lead}`;
  const count = starts === undefined ? '' : starts === 1 ? ' with a single start' : ` with ${starts} starts`;
  return `a ${hand === 'left' ? 'left-hand' : 'right-hand'} ${thread ?? 'screw'} thread of ${diameter} diameter${count}${lead}`;
}

const remembered = new Map<string, Evaluation | undefined>();
const MOST_REMEMBERED = 200;

/** A screw of this size by itself, so that the same rules speak that speak in a drive. */
function alone(size: string): Evaluation | undefined {
  if (remembered.has(size)) return remembered.get(size);
  const text = `axes:\n  axis:\n    drive:\n      screw:\n        size: ${JSON.stringify(size)}\n`;
  const machine = new Machine({ uri: 'designation:', text, root: parseText(text).root }, []);
  const subject = machine.subjects.find((candidate) => candidate.kind === 'drive');
  const evaluation = subject && new Evaluation(subject, allFigures());
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(size, evaluation);
  return evaluation;
}
