import { analyse, keptOf } from '../checks/analysis.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { editDocument } from '../language/incremental.ts';
import { isMap } from '../language/schema/structure-messages.ts';
import { fileSchema, schemaBelow, type SchemaNode } from '../language/schema/schema-model.ts';
import { applyEdits } from '../language/spans.ts';
import { contextAt, type CompletionContext } from './completion-context.ts';
import { ordered, type CompletionItem } from './completion-item.ts';
import { keyDrafts } from './completion-keys.ts';
import { valueDrafts } from './completion-values.ts';
import type { Snapshot } from './snapshot.ts';

export { withoutTabStops, type CompletionItem } from './completion-item.ts';

/** What can be put in at an offset: keys, words, names, standard sizes, units, templates, in the order in which they are shown. Complete: typing on only narrows it. */
export function completionsAt(snapshot: Snapshot, offset: number): readonly CompletionItem[] {
  const context = contextAt(snapshot.document.text, offset);
  if (context.due === 'nothing') return [];
  const schema = schemaBelow(fileSchema(snapshot.document.fileKind), context.path, snapshot.document.root);
  if (!schema) return [];
  if (context.due === 'key') {
    // A text or an item may begin on a line of its own, where a key could stand as well.
    if (!isMap(schema)) return schema.items ? [] : ordered(valueDrafts(snapshot, context, schema, offset), context.token);
    return context.inPlace ? ordered(keyDrafts(schema, context), context.token) : [];
  }
  if (isMap(schema) || schema.items) return context.path.at(-1) === undefined ? [] : itemKeys(schema, context);
  return ordered(valueDrafts(snapshot, context, schema, offset), context.token);
}

/** Behind a dash or in brackets a map's first key is due as well as its value. */
function itemKeys(schema: SchemaNode, context: CompletionContext): readonly CompletionItem[] {
  const isItem = /^\d+$/.test(context.path.at(-1) ?? '') && isMap(schema);
  return isItem && !context.flow ? ordered(keyDrafts(schema, { ...context, due: 'key', siblings: new Map() }), context.token) : [];
}

/** Most characters of what an axis comes to with an item: editors cut the detail of a list of usual width behind about 38. */
const LONGEST_DETAIL = 36;

/**
 * What the axis at the cursor comes to with a size or a part: "holds 2.1× · whirl 52 % · motor 61 %". Computed when an item is looked
 * at, by reading the text with the item put in. Undefined where nothing can be told.
 */
export function figuresOfCompletion(snapshot: Snapshot, item: CompletionItem): string | undefined {
  if (!item.data || !snapshot.analysis) return undefined;
  const text = applyEdits(snapshot.document.text, [{ span: item.replace, text: item.insertText }]);
  const document = editDocument(snapshot.document, text);
  const { path } = document.pathAt(item.replace.start + item.insertText.length);
  const { evaluations } = analyse(document, snapshot.lists, keptOf(snapshot.analysis), snapshot.analysis.options);
  const about = evaluations.filter((evaluation) => isAbout(evaluation, path));
  const chosen = about.find((evaluation) => evaluation.subject.chosen) ?? about[0];
  return chosen && hintsOf(chosen);
}

/** Whether an evaluation is about the drive, or the axis, in which a path stands. */
function isAbout({ subject }: Evaluation, path: readonly string[]): boolean {
  const own = subject.fixed.get('drive') ?? subject.fixed.get('axis');
  return own !== undefined && own.length > 1 && own.every((key, index) => path[index] === key);
}

/** The short texts of all figures that decide, first ones first, as many as fit. */
function hintsOf(evaluation: Evaluation): string | undefined {
  let line = '';
  for (const figure of evaluation.figures()) {
    const result = figure.hint ? evaluation.result(figure.id) : undefined;
    const text = result?.state === 'computed' ? figure.hint?.(result) : undefined;
    const longer = text === undefined || text === '' ? line : line === '' ? text : `${line} · ${text}`;
    if ([...longer].length <= LONGEST_DETAIL) line = longer;
  }
  return line === '' ? undefined : line;
}
