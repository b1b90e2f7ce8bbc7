import { limits } from './limits.ts';
import { parseChunk, type ParsedChunk } from './parse-chunk.ts';
import type { Problem } from './problems.ts';
import { shiftNode, shiftProblem } from './shift.ts';
import { shortened } from './slip-messages.ts';
import type { Span } from './spans.ts';
import { splitBlocks, type Block } from './split-blocks.ts';
import type { Entry, MapNode, ScalarNode, SyntaxNode } from './syntax-tree.ts';
import { guardText } from './text-guard.ts';

export interface ParsedText {
  /** Usually a map; null when nothing could be read. */
  readonly root: SyntaxNode | null;
  /** Sorted by place, one for each root cause, at most `limits.problems` and a last one that counts the rest. */
  readonly problems: readonly Problem[];
  /** Whether the tree was read from a mended copy, because of slips that are among the problems. */
  readonly repaired: boolean;
}

/**
 * Reads a text as YAML 1.2, whatever it is: never throws, and ends in a time that the limits bound. What parses is in the tree, with
 * positions in the text as written; slips of half-typed text are reported once each and do not swallow their neighbours.
 */
export function parseText(text: string): ParsedText {
  return parseWithMemory(text, undefined).parsed;
}

/** Chunks that were parsed before, by their text: parsing a chunk depends on nothing else. Holds those of one text only. */
export type ParseMemory = ReadonlyMap<string, RememberedChunk>;

interface RememberedChunk {
  readonly chunk: ParsedChunk;
  /** Where the chunk last stood, and its entries at that place, so that what does not move is not copied again. */
  readonly start: number;
  readonly node: SyntaxNode | null;
}

/** `parseText`, taking over from `memory` what has not changed; the result is the same as without. */
export function parseWithMemory(text: string, memory: ParseMemory | undefined): { readonly parsed: ParsedText; readonly memory: ParseMemory } {
  const guarded = guardText(text);
  const blocks = splitBlocks(guarded.text, guarded.read);
  const assembly = new Assembly(guarded.text, memory);
  const root = blocks ? assembly.map(blocks) : assembly.whole(guarded.read);
  const problems = tidy([...guarded.problems, ...assembly.problems], text.length);
  return { parsed: { root, problems, repaired: guarded.repaired || assembly.repaired }, memory: assembly.remembered };
}

/** Puts the tree of a text together from its blocks. */
class Assembly {
  readonly problems: Problem[] = [];
  readonly remembered = new Map<string, RememberedChunk>();
  repaired = false;
  readonly #text: string;
  readonly #memory: ParseMemory | undefined;
  /** Where keys were reported as repeated. */
  readonly #twice = new Set<number>();
  #nodes = 0;

  constructor(text: string, memory: ParseMemory | undefined) {
    this.#text = text;
    this.#memory = memory;
  }

  whole(span: Span): SyntaxNode | null {
    const node = this.#chunk(span);
    // A text alone is the first word of a description, not a description.
    if (node?.type !== 'scalar') return node;
    this.problems.push({
      code: 'text-not-understood',
      severity: 'error',
      message: 'A description consists of keys and values, such as "machine: Heron". This is a text alone.',
      span: node.span,
    });
    return null;
  }

  map(blocks: readonly Block[]): MapNode | null {
    const entries: Entry[] = [];
    for (const block of blocks) {
      if (this.#nodes > limits.nodes || this.problems.length > limits.problemsBeforeStop) break;
      if (block.header) entries.push(this.#sectionEntry(block.header.key, block.header.children));
      else this.#entriesOf(block.span, entries);
    }
    this.#reportTwice(entries);
    const first = entries[0];
    const last = entries.at(-1);
    return first && last ? { type: 'map', span: { start: first.span.start, end: last.span.end }, flow: false, entries } : null;
  }

  #sectionEntry(keySpan: Span, children: readonly Block[]): Entry {
    this.#nodes += 1;
    const key: ScalarNode = { type: 'scalar', span: keySpan, text: this.#text.slice(keySpan.start, keySpan.end), style: 'plain' };
    const value = this.map(children);
    return { key, value, span: { start: keySpan.start, end: value ? value.span.end : keySpan.end + 1 } };
  }

  #entriesOf(span: Span, entries: Entry[]): void {
    const before = this.problems.length;
    const node = this.#chunk(span);
    if (node?.type === 'map') {
      entries.push(...node.entries);
    } else if (node && this.problems.length === before) {
      this.#report({
        code: 'text-not-understood',
        severity: 'error',
        message: `A key and a colon are due here, not "${shortened(this.#text.slice(node.span.start, node.span.end), 20)}".`,
        span: { start: node.span.start, end: Math.min(node.span.end, lineEnd(this.#text, node.span.start)) },
      });
    }
  }

  #chunk(span: Span): SyntaxNode | null {
    const text = this.#text.slice(span.start, span.end);
    const known = this.remembered.get(text) ?? this.#memory?.get(text);
    const chunk = known?.chunk ?? parseChunk(text);
    const node = known && known.start === span.start ? known.node : shiftNode(chunk.node, span.start);
    if (!this.remembered.has(text)) this.remembered.set(text, known && known.start === span.start ? known : { chunk, start: span.start, node });
    this.repaired ||= chunk.repaired;
    this.#nodes += chunk.nodes;
    if (this.#nodes > limits.nodes && chunk.nodes <= limits.nodes) {
      this.#report({
        code: 'too-many-entries',
        severity: 'error',
        message: 'From here on nothing is read: a text may hold 200,000 values.',
        span: { start: span.start, end: Math.min(span.end, lineEnd(this.#text, span.start)) },
      });
      return null;
    }
    for (const problem of chunk.problems) this.#report(shiftProblem(problem, span.start));
    return node;
  }

  #report(problem: Problem): void {
    if (problem.code === 'key-twice') this.#twice.add(problem.span.start);
    this.problems.push(problem);
  }

  /** Keys that came together from several blocks; a block has looked through its own already. */
  #reportTwice(entries: readonly Entry[]): void {
    const seen = new Map<string, Span>();
    for (const { key } of entries) {
      const first = seen.get(key.text);
      if (!first) {
        seen.set(key.text, key.span);
      } else if (!this.#twice.has(key.span.start)) {
        this.#report({
          code: 'key-twice',
          severity: 'error',
          message: `"${shortened(key.text)}" is written twice; the other is here. Only the first one counts.`,
          span: key.span,
          related: [{ message: 'the first one', span: first }],
        });
      }
    }
  }
}

function lineEnd(text: string, from: number): number {
  const at = text.indexOf('\n', from);
  return at < 0 ? text.length : from + text.slice(from, at).trimEnd().length;
}

/** Sorts, joins what is one cause in many places, and counts what is beyond the limit. Spans never reach beyond the text. */
function tidy(found: readonly Problem[], length: number): readonly Problem[] {
  const inText = joinTabs(found).map((problem) =>
    problem.span.end <= length ? problem : { ...problem, span: { start: Math.min(problem.span.start, length), end: length } },
  );
  const sorted = inText.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  const listed = sorted.slice(0, limits.problems);
  const rest = sorted.slice(limits.problems);
  const next = rest[0];
  if (!next) return listed;
  const more: Problem = {
    code: 'more-problems',
    severity: 'information',
    message: `…and ${rest.length} more. They are listed once the ones above are cured.`,
    span: next.span,
  };
  return [...listed, more];
}

function joinTabs(found: readonly Problem[]): Problem[] {
  const tabs = found.filter((problem) => problem.code === 'tab-as-indent');
  const first = tabs[0];
  if (!first || tabs.length === 1) return [...found];
  const edits = tabs.flatMap((problem) => problem.fixes?.[0]?.edits ?? []);
  const title = first.fixes?.[0]?.title;
  const joined: Problem = title === undefined ? first : { ...first, fixes: [{ title, edits }] };
  return found.flatMap((problem) => (problem.code !== 'tab-as-indent' ? [problem] : problem === first ? [joined] : []));
}
