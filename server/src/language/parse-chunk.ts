import { Composer, Lexer, Parser, Schema, type CST, type Document, type YAMLParseError } from 'yaml';
import { buildTree } from './build-tree.ts';
import { limits } from './limits.ts';
import { lineStartAt } from './line-parts.ts';
import { parserProblem } from './parser-messages.ts';
import type { Problem } from './problems.ts';
import { repairText } from './repair.ts';
import { ShadowText } from './shadow-text.ts';
import type { SyntaxNode } from './syntax-tree.ts';

/** What a stretch of text holds, with positions relative to its beginning. Depends on the stretch alone. */
export interface ParsedChunk {
  readonly node: SyntaxNode | null;
  readonly problems: readonly Problem[];
  readonly repaired: boolean;
  readonly nodes: number;
}

/** The longest stretch in which slips are mended: longer ones are nobody's typing. */
const longestRepair = 200_000;
/** Most pieces that the lexer may cut from a stretch: four for each value is already dense text. */
const mostLexemes = 4 * limits.nodes;

/**
 * Parses a stretch of YAML. Errors and suspicious readings lead to a second pass over a mended copy; its result is taken when the
 * mending found a slip. What errors then remain are told in our own words, one for the stretch, since one slip causes many.
 */
export function parseChunk(written: string): ParsedChunk {
  const first = parseShadow(new ShadowText(written, []));
  const wrong = first.errors.length > 0 || first.suspicious || first.node?.type === 'scalar';
  if (!wrong || first.cut || written.length > longestRepair) return finish(first, [], first.errors, written);
  const repaired = repairText(written);
  if (repaired.problems.length === 0) return finish(first, [], first.errors, written);
  const second = parseShadow(repaired.shadow);
  // A mending that leaves as much wrong as before has misread the text.
  if (second.errors.length > 0 && second.errors.length >= first.errors.length) return finish(first, [], first.errors, written);
  const remaining = second.errors.filter((error) => !sharesLine(written, error, repaired.problems));
  return finish(second, repaired.problems, remaining, written);
}

interface Attempt {
  readonly node: SyntaxNode | null;
  readonly errors: readonly Problem[];
  readonly problems: readonly Problem[];
  readonly suspicious: boolean;
  /** Stopped early at a limit. */
  readonly cut: boolean;
  readonly nodes: number;
}

function finish(attempt: Attempt, slips: readonly Problem[], errors: readonly Problem[], written: string): ParsedChunk {
  const told = errors.slice(0, 1);
  return {
    node: attempt.node,
    // What the tree holds on the line of an error is a follow-up of it.
    problems: [...slips, ...told, ...attempt.problems.filter((problem) => !sharesLine(written, problem, told))],
    repaired: slips.length > 0 || attempt.cut,
    nodes: attempt.nodes,
  };
}

function sharesLine(text: string, error: Problem, slips: readonly Problem[]): boolean {
  return slips.some((slip) => {
    const from = lineStartAt(text, slip.span.start);
    const to = text.indexOf('\n', slip.span.end);
    return error.span.end >= from && (to < 0 || error.span.start <= to);
  });
}

function parseShadow(shadow: ShadowText): Attempt {
  const { tokens, limit } = readTokens(shadow.text);
  const problems: Problem[] = [];
  if (limit) problems.push({ ...limit, span: shadow.spanToWritten(limit.span) });
  if (limit?.code === 'too-many-entries') return { node: null, errors: [], problems, suspicious: false, cut: true, nodes: limits.nodes + 1 };
  const document = withoutStackTraces(() => compose(tokens, shadow.text.length));
  if (!document) return { node: null, errors: [], problems, suspicious: false, cut: limit !== undefined, nodes: 0 };
  const built = buildTree(document.contents, shadow);
  problems.push(...built.problems);
  const errors = limit ? [] : document.errors.filter((error): error is YAMLParseError => error.name === 'YAMLParseError');
  return {
    node: built.root,
    errors: errors.slice(0, 1_000).map((error) => parserProblem(error, shadow)),
    problems,
    suspicious: built.suspicious,
    cut: limit !== undefined,
    nodes: built.nodes,
  };
}

/** The library makes an error object for each fault, up to tens of thousands in hostile text; their stack traces would cost most of the time. */
function withoutStackTraces<T>(work: () => T): T {
  const before = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return work();
  } finally {
    Error.stackTraceLimit = before;
  }
}

/** Every scalar stays text; tags are refused, not resolved. One for all chunks: making it costs as much as parsing a short one. */
const textOnly = new Schema({ schema: 'failsafe', resolveKnownTags: false });

function compose(tokens: readonly CST.Token[], length: number): Document.Parsed | undefined {
  const composer = new Composer({
    version: '1.2',
    schema: textOnly,
    // Pretty errors and the library's own check of keys take seconds on hostile text.
    prettyErrors: false,
    uniqueKeys: false,
    stringKeys: true,
    logLevel: 'silent',
  });
  let document: Document.Parsed | undefined;
  for (const composed of composer.compose(tokens, true, length)) document ??= composed;
  return document;
}

/**
 * The concrete syntax of a text, cut off where it is nested deeper or is longer than the limits allow. This comes before composing,
 * which is recursive and can end the process when it is given thousands of levels.
 */
function readTokens(text: string): { readonly tokens: readonly CST.Token[]; readonly limit: Problem | undefined } {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  let offset = 0;
  let lexemes = 0;
  let brackets = 0;
  let signsOnLine = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    lexemes += 1;
    const sign = lexeme[0];
    if (sign === '[' || sign === '{') brackets += 1;
    else if (sign === ']' || sign === '}') brackets -= 1;
    else if (lexeme === '-' || lexeme === '?') signsOnLine += 1;
    else if (sign === '\n' || sign === '\r') signsOnLine = 0;
    if (brackets > limits.depth || signsOnLine > limits.depth) return { tokens: [...tokens, ...parser.end()], limit: tooDeep(offset) };
    if (lexemes > mostLexemes) return { tokens: [], limit: tooMany(offset) };
    // Marks of the lexer's own take no room in the text.
    if (sign !== '\u0002' && sign !== '\u0018' && sign !== '\u001f') offset += lexeme.length;
  }
  tokens.push(...parser.end());
  const deep = cutDeep(tokens);
  return { tokens, limit: deep === undefined ? undefined : tooDeep(deep) };
}

/** Removes what is nested deeper than allowed from the concrete syntax; returns the first place where it did. */
function cutDeep(tokens: readonly CST.Token[]): number | undefined {
  let cut: number | undefined;
  const pending: { token: CST.Token | null | undefined; depth: number }[] = [];
  for (const token of tokens) if (token.type === 'document') pending.push({ token: token.value, depth: 0 });
  for (let next = pending.pop(); next; next = pending.pop()) {
    const { token, depth } = next;
    if (!token || !('items' in token)) continue;
    for (const item of token.items) {
      for (const part of ['key', 'value'] as const) {
        const child = item[part];
        if (!child || !('items' in child)) continue;
        if (depth + 1 >= limits.depth) {
          cut = Math.min(cut ?? child.offset, child.offset);
          delete item[part];
        } else {
          pending.push({ token: child, depth: depth + 1 });
        }
      }
    }
  }
  return cut;
}

function tooDeep(offset: number): Problem {
  return {
    code: 'too-deep',
    severity: 'error',
    message: `Entries are nested more than ${limits.depth} levels deep here. Nothing deeper is read; a description needs fewer than ten.`,
    span: { start: offset, end: offset + 1 },
  };
}

function tooMany(offset: number): Problem {
  return {
    code: 'too-many-entries',
    severity: 'error',
    message: 'There are more values here than can be read: a text may hold 200,000. None of this entry is read.',
    span: { start: offset, end: offset + 1 },
  };
}
