import { limits } from './limits.ts';
import { lineStartAt } from './line-parts.ts';
import { LineIndex } from './line-index.ts';
import { parseWithMemory, type ParseMemory } from './parse-text.ts';
import { placeAt, type PlaceAtOffset } from './place-at.ts';
import type { Problem } from './problems.ts';
import { quantityProblems, scalarQuantity, textStart } from './quantity-problems.ts';
import type { QuantityReading } from './read-quantity.ts';
import { fileSchema, schemaBelow, type FileKind, type SchemaNode } from './schema/schema-model.ts';
import { validateStructure } from './schema/validate-structure.ts';
import type { Span } from './spans.ts';
import { entryAt, nodeAt, type EntryPath, type SyntaxNode } from './syntax-tree.ts';

/** Which part of an entry is meant: its key, its value, both, or the number or unit in the value. */
export type EntryPart = 'key' | 'value' | 'entry' | 'number' | 'unit';

/** One version of a text, with everything that the language itself knows of it. Immutable; what costs is computed when it is first asked for. */
export class LanguageDocument {
  readonly uri: string;
  readonly fileKind: FileKind;
  readonly text: string;
  readonly root: SyntaxNode | null;
  /** Whether the tree was read from a mended copy of the text. */
  readonly repaired: boolean;
  /** What the next version of the text can take over. */
  readonly parseMemory: ParseMemory;
  readonly #syntaxProblems: readonly Problem[];
  #lines: LineIndex | undefined;
  #problems: readonly Problem[] | undefined;

  constructor(uri: string, text: string, memory: ParseMemory | undefined) {
    this.uri = uri;
    this.fileKind = fileKindOf(uri);
    this.text = text;
    const { parsed, memory: kept } = parseWithMemory(text, memory);
    this.root = parsed.root;
    this.repaired = parsed.repaired;
    this.parseMemory = kept;
    this.#syntaxProblems = parsed.problems;
  }

  get lines(): LineIndex {
    this.#lines ??= new LineIndex(this.text);
    return this.#lines;
  }

  /** Problems of syntax, structure and quantities, in the order of the text, one for each root cause. */
  get problems(): readonly Problem[] {
    this.#problems ??= this.#collect();
    return this.#problems;
  }

  /** The quantity at a path; undefined where none is due, or nothing is written. */
  quantityAt(path: EntryPath): QuantityReading | undefined {
    const node = nodeAt(this.root, path);
    const schema = node?.type === 'scalar' ? this.schemaAt(path) : undefined;
    return node?.type === 'scalar' && schema ? scalarQuantity(node, schema) : undefined;
  }

  /** What the schema says of the place at a path; undefined where it knows no such place. */
  schemaAt(path: EntryPath): SchemaNode | undefined {
    return schemaBelow(fileSchema(this.fileKind), path, this.root);
  }

  /** The deepest entry at an offset, and whether the offset is on its key, on its value, or between entries. */
  pathAt(offset: number): PlaceAtOffset {
    return placeAt(this.root, offset);
  }

  /** Where a part of the entry at a path stands in the text; undefined where it does not. A list item has a value only. */
  spanOf(path: EntryPath, part: EntryPart): Span | undefined {
    const entry = entryAt(this.root, path);
    const node = nodeAt(this.root, path);
    switch (part) {
      case 'key':
        return entry?.key.span;
      case 'entry':
        return entry?.span ?? node?.span;
      case 'value':
        return node?.span;
      case 'number':
      case 'unit':
        return this.#quantitySpan(path, part);
    }
  }

  #quantitySpan(path: EntryPath, part: 'number' | 'unit'): Span | undefined {
    const node = nodeAt(this.root, path);
    const reading = this.quantityAt(path);
    const base = node?.type === 'scalar' ? textStart(node, this.text) : undefined;
    if (!reading?.ok || base === undefined) return undefined;
    const span = part === 'number' ? reading.quantity.numberSpan : reading.quantity.unitSpan;
    return { start: base + span.start, end: base + span.end };
  }

  #collect(): readonly Problem[] {
    const syntax = this.#syntaxProblems;
    if (this.root === null) return syntax.length > 0 ? syntax : this.#empty();
    const quiet = quietLines(this.text, syntax);
    const deeper = [...validateStructure(this.root, this.fileKind, this.text), ...quantityProblems(this.root, fileSchema(this.fileKind), this.text)];
    const kept = withoutBursts(deeper.filter((problem) => !quiet.some((span) => followsFrom(problem, span, this.text))), quiet, this.text);
    if (kept.length === 0) return syntax;
    return bounded(inOrder([...syntax, ...kept]));
  }

  #empty(): readonly Problem[] {
    const keys = fileSchema(this.fileKind).required.map((key) => `"${key}"`);
    if (keys.length === 0) return [];
    const list = `${keys.slice(0, -1).join(', ')} and ${keys.at(-1) ?? ''}`;
    return [{ code: 'entry-missing', severity: 'information', message: `The file is empty. It needs ${list}.`, span: { start: 0, end: 0 } }];
  }
}

/** The name of the settings of a repository. */
export const settingsName = 'axiswright.yaml';

/** What a file is, by its name. */
export function fileKindOf(uri: string): FileKind {
  if (/\.parts\.ya?ml$/i.test(uri)) return 'parts';
  return uri.slice(uri.lastIndexOf('/') + 1) === settingsName ? 'settings' : 'machine';
}

/** Reads a text as a description, whatever it is: never throws, and ends in a time that the limits bound. */
export function readDocument(uri: string, text: string): LanguageDocument {
  return new LanguageDocument(uri, text, undefined);
}

/** Problems that do not hide what stands on their line. */
const apart = new Set(['key-twice', 'yaml-version', 'directive-unknown', 'more-problems', 'several-documents', 'lone-carriage-return', 'invisible-character']);

/** The lines on which a slip leaves the structure uncertain. */
function quietLines(text: string, syntax: readonly Problem[]): Span[] {
  return syntax
    .filter((problem) => !apart.has(problem.code))
    .map(({ span }) => {
      const end = text.indexOf('\n', span.end);
      return { start: lineStartAt(text, span.start), end: end < 0 ? text.length : end };
    });
}

/** Whether a finding on the structure may be a consequence of the slip on these lines: it stands there, or misses an entry that may be meant there. */
function followsFrom(problem: Problem, lines: Span, text: string): boolean {
  if (problem.span.start <= lines.end && problem.span.end >= lines.start) return true;
  if (problem.code !== 'entry-missing' && problem.code !== 'value-missing') return false;
  // The map whose entry is missing goes on as long as lines are indented more than its key.
  const keyLine = lineStartAt(text, problem.span.start);
  if (lines.start < keyLine) return false;
  const indent = /^[ ]*/.exec(text.slice(keyLine, problem.span.start))?.[0].length ?? 0;
  for (let at = text.indexOf('\n', problem.span.end) + 1; at > 0 && at <= lines.start; at = text.indexOf('\n', at) + 1) {
    const line = /^( *)([^\s#])?/.exec(text.slice(at, at + 200));
    if (line?.[2] !== undefined && (line[1]?.length ?? 0) <= indent && problem.span.start > 0 && at !== lines.start) return false;
    if (at === lines.start) return problem.span.start === 0 || (line?.[1]?.length ?? 0) > indent || line?.[2] === undefined;
  }
  return false;
}

/** More findings than this behind one slip, in the same section, are taken to be its consequences. */
const mostBehindSlip = 2;

/** Leaves out findings on the structure where many follow one slip: it has probably moved entries to where they do not belong. */
function withoutBursts(problems: readonly Problem[], slips: readonly Span[], text: string): readonly Problem[] {
  if (slips.length === 0) return problems;
  const behind = new Map<Span, Problem[]>();
  for (const problem of problems) {
    const slip = slips.findLast((lines) => lines.end < problem.span.start);
    // A key in the first column begins another section, which the slip does not reach.
    if (slip && !/^[^\s#]/m.test(text.slice(slip.end + 1, lineStartAt(text, problem.span.start)))) behind.set(slip, [...(behind.get(slip) ?? []), problem]);
  }
  const left = new Set([...behind.values()].filter((list) => list.length > mostBehindSlip).flat());
  return problems.filter((problem) => !left.has(problem));
}

function inOrder(problems: readonly Problem[]): Problem[] {
  const sorted = [...problems].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end || (a.code < b.code ? -1 : a.code > b.code ? 1 : 0));
  // An alias repeats an entry, and with it what is wrong there.
  return sorted.filter((problem, index) => {
    const before = sorted[index - 1];
    return !before || before.code !== problem.code || before.span.start !== problem.span.start || before.message !== problem.message;
  });
}

function bounded(problems: readonly Problem[]): readonly Problem[] {
  const more = problems.filter((problem) => problem.code !== 'more-problems');
  const before = problems.length - more.length;
  if (more.length <= limits.problems) return problems;
  const rest = more.slice(limits.problems);
  const [next] = rest;
  if (!next) return more;
  const counted = before === 0 ? `…and ${rest.length} more.` : '…and many more.';
  return [...more.slice(0, limits.problems), { code: 'more-problems', severity: 'information', message: `${counted} They are listed once the ones above are cured.`, span: next.span }];
}
