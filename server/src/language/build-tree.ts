import { isAlias, isMap, isPair, isScalar, isSeq, Scalar, type Alias, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { limits } from './limits.ts';
import { nearestNames } from './nearest-names.ts';
import type { Problem } from './problems.ts';
import type { ShadowText } from './shadow-text.ts';
import { shortened } from './slip-messages.ts';
import type { Span } from './spans.ts';
import type { Entry, ListNode, MapNode, ScalarNode, SyntaxNode } from './syntax-tree.ts';

export interface BuiltTree {
  readonly root: SyntaxNode | null;
  readonly problems: readonly Problem[];
  /** Number of values, with what an alias stands for counted at each use. */
  readonly nodes: number;
  /** Something that the parser accepts but nobody means: a text where an entry was begun. */
  readonly suspicious: boolean;
}

/** Turns the parser's nodes into our tree, within the limits, and never into plain values. Positions are those of the written text. */
export function buildTree(contents: unknown, shadow: ShadowText): BuiltTree {
  const builder = new TreeBuilder(shadow);
  const root = builder.node(contents, 0);
  return { root, problems: builder.problems, nodes: builder.nodes, suspicious: builder.suspicious };
}

interface Measured {
  readonly node: SyntaxNode | null;
  readonly nodes: number;
  readonly depth: number;
}

class TreeBuilder {
  readonly problems: Problem[] = [];
  nodes = 0;
  suspicious = false;
  readonly #shadow: ShadowText;
  readonly #anchors = new Map<string, Measured | 'open'>();
  #aliasUses = 0;
  /** Deepest level that was reached since it was last reset; used to know how deep an anchored value goes. */
  #deepest = 0;

  constructor(shadow: ShadowText) {
    this.#shadow = shadow;
  }

  node(node: unknown, depth: number): SyntaxNode | null {
    this.#deepest = Math.max(this.#deepest, depth);
    if (isAlias(node)) return this.#alias(node, depth);
    if (!isMap(node) && !isSeq(node) && !isScalar(node)) return null;
    this.nodes += 1;
    if (this.nodes > limits.nodes) {
      this.#tooMany(this.#span(node));
      return null;
    }
    if (node.tag !== undefined) this.#tag(node);
    const anchor = node.anchor;
    if (anchor === undefined) return this.#plainNode(node, depth);
    const nodesBefore = this.nodes - 1;
    const deepestBefore = this.#deepest;
    this.#deepest = depth;
    this.#anchors.set(anchor, 'open');
    const built = this.#plainNode(node, depth);
    this.#anchors.set(anchor, { node: built, nodes: this.nodes - nodesBefore, depth: this.#deepest - depth });
    this.#deepest = Math.max(this.#deepest, deepestBefore);
    return built;
  }

  #plainNode(node: Node, depth: number): SyntaxNode | null {
    if (isMap(node)) return this.#map(node, depth);
    if (isSeq(node)) return this.#list(node, depth);
    return isScalar(node) ? this.#scalar(node) : null;
  }

  #map(map: YAMLMap, depth: number): MapNode {
    const entries: Entry[] = [];
    const seen = new Map<string, Span>();
    for (const pair of map.items as readonly unknown[]) {
      if (this.nodes > limits.nodes) break;
      const entry = isPair(pair) ? this.#entry(pair, depth, map.flow === true) : undefined;
      if (!entry) continue;
      const first = seen.get(entry.key.text);
      if (first) this.#keyTwice(entry.key, first);
      else seen.set(entry.key.text, entry.key.span);
      entries.push(entry);
    }
    const written = this.#span(map);
    const flow = map.flow === true;
    const first = entries[0];
    const last = entries.at(-1);
    const span = flow || !first || !last ? written : { start: first.span.start, end: last.span.end };
    return { type: 'map', span, flow, entries };
  }

  #entry(pair: Pair, depth: number, flow: boolean): Entry | undefined {
    const key = this.#key(pair.key);
    if (!key) return undefined;
    const value = pair.value === null ? null : this.node(pair.value, depth + 1);
    if (key.text === '<<' && key.style === 'plain') {
      this.#report('merge-key', 'The merge key "<<" is not used here. Write the entries out, or refer to a part or a mass by its name.', key.span);
      return undefined;
    }
    // In brackets a text with a colon inside it and no value is a key that lacks the space after its colon.
    if (flow && value === null && /^[A-Za-z][\w-]*:./.test(key.text)) this.suspicious = true;
    if (!flow && value?.type === 'scalar' && value.style === 'plain') this.#judgeValue(value);
    return { key, value, span: { start: key.span.start, end: value && value.span.start >= key.span.end ? value.span.end : this.#colonEnd(key.span.end) } };
  }

  /** A plain text on lines of its own that reads like the beginning of an entry or of a list. */
  #judgeValue(value: ScalarNode): void {
    if (/^-[A-Za-z"'[{]/.test(value.text) || /^[A-Za-z][\w-]*:[^\s/:]/.test(value.text)) this.suspicious = true;
  }

  #key(key: unknown): ScalarNode | undefined {
    if (isScalar(key)) {
      this.nodes += 1;
      const text = typeof key.value === 'string' ? key.value : '';
      if (key.tag !== undefined) this.#tag(key);
      const span = this.#span(key);
      const node: ScalarNode = { type: 'scalar', span, text, style: styleOf(key) };
      if (key.anchor !== undefined) this.#anchors.set(key.anchor, { node, nodes: 1, depth: 0 });
      if (text === '') this.#report('key-not-a-word', 'A key is missing here.', { start: span.start, end: span.start + 1 });
      return text === '' ? undefined : node;
    }
    if (isAlias(key)) this.#report('key-not-a-word', 'An alias cannot be a key. Write the key itself.', this.#span(key));
    return undefined;
  }

  #list(list: YAMLSeq, depth: number): ListNode {
    const items: (SyntaxNode | null)[] = [];
    let end = 0;
    for (const item of list.items as readonly unknown[]) {
      if (this.nodes > limits.nodes) break;
      const node = this.node(item, depth + 1);
      items.push(node);
      end = Math.max(end, !isAlias(item) && node ? node.span.end : this.#itemEnd(item));
    }
    const written = this.#span(list);
    const flow = list.flow === true;
    return { type: 'list', span: flow || items.length === 0 ? written : { start: written.start, end: Math.max(end, written.start + 1) }, flow, items };
  }

  #itemEnd(item: unknown): number {
    if (isAlias(item)) return this.#span(item).end;
    return isMap(item) || isSeq(item) || isScalar(item) ? this.#span(item).start : 0;
  }

  #scalar(scalar: Scalar): ScalarNode | null {
    const text = typeof scalar.value === 'string' ? scalar.value : '';
    const span = this.#span(scalar);
    const style = styleOf(scalar);
    if (style === 'plain' && (text === '' || text === '~')) return null;
    if (style !== 'block') return { type: 'scalar', span, text, style };
    const written = this.#shadow.text.slice(...(scalar.range?.slice(0, 2) ?? [0, 0]));
    return { type: 'scalar', span: { start: span.start, end: Math.min(span.end, span.start + written.trimEnd().length) }, text, style };
  }

  #alias(alias: Alias, depth: number): SyntaxNode | null {
    const span = this.#span(alias);
    const target = this.#anchors.get(alias.source);
    // An empty name is the parser's error already.
    if (alias.source === '') return null;
    if (target === undefined) {
      this.#unknownAnchor(alias.source, span);
      return null;
    }
    if (target === 'open') {
      this.#report('alias-inside-itself', `"*${shortened(alias.source)}" stands inside what it repeats, so it has no end. Refer to something outside.`, span);
      return null;
    }
    this.#aliasUses += 1;
    if (this.#aliasUses > limits.aliasUses) {
      if (this.#aliasUses === limits.aliasUses + 1) {
        this.#report('too-many-aliases', `From here on aliases are not read: a text may use ${limits.aliasUses} of them. Refer to masses and parts by name.`, span);
      }
      return null;
    }
    if (this.nodes + target.nodes > limits.nodes) {
      this.#tooMany(span);
      return null;
    }
    if (depth + target.depth > limits.depth) {
      this.#report('too-deep', `With what this alias repeats, entries are nested more than ${limits.depth} levels deep. It is not read.`, span);
      return null;
    }
    this.nodes += target.nodes;
    this.#deepest = Math.max(this.#deepest, depth + target.depth);
    return target.node;
  }

  #unknownAnchor(name: string, span: Span): void {
    const near = nearestNames(name, this.#anchors.keys());
    const hint = near.length > 0 ? ` Did you mean ${near.map((candidate) => `"${shortened(candidate)}"`).join(' or ')}?` : ' An anchor is written "&name" before its value.';
    this.#report(
      'anchor-unknown',
      `No anchor "${shortened(name)}" before this line.${hint}`,
      span,
      near.map((candidate) => ({ title: `Change to "*${shortened(candidate)}"`, edits: [{ span, text: `*${candidate}` }] })),
    );
  }

  #keyTwice(key: ScalarNode, first: Span): void {
    this.#report('key-twice', `"${shortened(key.text)}" is written twice; the other is here. Only the first one counts.`, key.span, [], [{ message: 'the first one', span: first }]);
  }

  #tooMany(span: Span): void {
    this.nodes = limits.nodes + 1;
    if (this.problems.some((problem) => problem.code === 'too-many-entries')) return;
    this.#report('too-many-entries', 'From here on nothing is read: a text may hold 200,000 values, counting what aliases repeat.', span);
  }

  #tag(node: Node): void {
    // The parser keeps no place for tags: the nearest one before the value is it.
    const { text } = this.#shadow;
    const valueStart = node.range?.[0] ?? 0;
    const mark = text.lastIndexOf('!', Math.max(0, valueStart - 1));
    const start = mark > 0 && text[mark - 1] === '!' ? mark - 1 : Math.max(0, mark);
    const tag = /^![^\s,[\]{}]*/.exec(text.slice(start, start + 200))?.[0] ?? '!';
    const span = this.#shadow.spanToWritten({ start, end: start + tag.length });
    const fixes = [{ title: 'Remove the tag', edits: [{ span, text: '' }] }];
    this.#report('tag-used', `Tags such as "${shortened(tag)}" have no meaning here: the key decides what a value is. Remove it.`, span, fixes);
  }

  #report(code: string, message: string, span: Span, fixes: Problem['fixes'] = [], related: Problem['related'] = []): void {
    if (this.problems.length >= 10_000) return;
    this.problems.push({ code, severity: 'error', message, span, ...(related.length > 0 ? { related } : {}), ...(fixes.length > 0 ? { fixes } : {}) });
  }

  #span(node: { range?: readonly [number, number, number] | null | undefined }): Span {
    const [start, end] = node.range ?? [0, 0];
    return this.#shadow.spanToWritten({ start, end });
  }

  /** Just after the colon that follows a key ending at `keyEnd` in the written text; the key's own end where there is none. */
  #colonEnd(keyEnd: number): number {
    const match = /^[ \t]*:/.exec(this.written.slice(keyEnd, keyEnd + 200));
    return keyEnd + (match?.[0].length ?? 0);
  }

  get written(): string {
    return this.#shadow.written;
  }
}

function styleOf(scalar: Scalar): ScalarNode['style'] {
  if (scalar.type === Scalar.QUOTE_DOUBLE || scalar.type === Scalar.QUOTE_SINGLE) return 'quoted';
  return scalar.type === Scalar.BLOCK_LITERAL || scalar.type === Scalar.BLOCK_FOLDED ? 'block' : 'plain';
}
