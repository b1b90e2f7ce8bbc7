/**
 * Patterns for paths, the same on every system, whatever the shell has left of them:
 *   *  any part of a name    ?  one character    [abc] [a-z] [!a]  one of these, or none of them
 *   ** any folders           {one,two}  each of these                backslash: the next sign as it is
 * Paths have forward slashes. A dot at the beginning of a name is a character like any other.
 */

/** Whether a text holds a sign that stands for other characters. */
export const isPattern = (text: string): boolean => /(?<!\\)(?:\\\\)*[*?[{]/.test(text);

/** Alternatives of one pattern at most; more are a slip. */
export const MAX_ALTERNATIVES = 1000;

/** `a{b,c}d` as `abd` and `acd`. Braces without a comma inside stand for themselves. Throws a RangeError beyond 1000 alternatives. */
export function expandBraces(pattern: string): string[] {
  const braces = firstBraces(pattern);
  if (!braces) return [pattern];
  const head = pattern.slice(0, braces.open);
  const tails = expandBraces(pattern.slice(braces.close + 1));
  const expanded = braces.choices.flatMap(expandBraces).flatMap((choice) => tails.map((tail) => head + choice + tail));
  if (expanded.length > MAX_ALTERNATIVES) throw new RangeError(`it stands for more than ${MAX_ALTERNATIVES} patterns`);
  return expanded;
}

/** The first braces that hold a comma of their own. */
function firstBraces(pattern: string): { readonly open: number; readonly close: number; readonly choices: readonly string[] } | undefined {
  for (let open = 0; open < pattern.length; open++) {
    if (pattern[open] === '\\') open++;
    else if (pattern[open] === '{') {
      const found = choicesFrom(pattern, open);
      if (found && found.choices.length > 1) return { open, ...found };
    }
  }
  return undefined;
}

function choicesFrom(pattern: string, open: number): { readonly close: number; readonly choices: readonly string[] } | undefined {
  const choices: string[] = [];
  let depth = 0;
  let start = open + 1;
  for (let at = open; at < pattern.length; at++) {
    const sign = pattern[at];
    if (sign === '\\') at++;
    else if (sign === '{') depth++;
    else if (sign === ',' && depth === 1) {
      choices.push(pattern.slice(start, at));
      start = at + 1;
    } else if (sign === '}' && --depth === 0) return { close: at, choices: [...choices, pattern.slice(start, at)] };
  }
  return undefined;
}

type Token = { readonly type: 'any' } | { readonly type: 'one'; readonly fits: (character: string) => boolean };

/** A pattern taken apart at its slashes. */
export interface PathPattern {
  /** The folders before the first sign that stands for something: where to begin looking. '' for the current folder. */
  readonly base: string;
  /** Levels below the base that a match can have; Infinity with `**`. */
  readonly depth: number;
  /** Whether a path relative to the base fits. */
  readonly fits: (path: string) => boolean;
}

/** Reads a pattern without braces. */
export function readPattern(pattern: string): PathPattern {
  const parts = pattern.split('/');
  let plain = 0;
  while (plain < parts.length - 1 && !isPattern(parts[plain] ?? '')) plain++;
  const base = parts.slice(0, plain).map((part) => part.replace(/\\(.)/g, '$1'));
  const rest = parts.slice(plain).filter((part) => part !== '' && part !== '.').map((part) => (part === '**' ? '**' : tokensOf(part)));
  return {
    base: base.length === 1 && base[0] === '' ? '/' : base.join('/'),
    depth: rest.includes('**') ? Number.POSITIVE_INFINITY : rest.length,
    fits: (path) => fitsPath(path.split('/'), rest),
  };
}

function tokensOf(part: string): readonly Token[] {
  const characters = [...part];
  const tokens: Token[] = [];
  for (let at = 0; at < characters.length; at++) {
    const sign = characters[at] ?? '';
    if (sign === '*') {
      if (tokens.at(-1)?.type !== 'any') tokens.push({ type: 'any' });
    } else if (sign === '?') tokens.push({ type: 'one', fits: () => true });
    else {
      const set = sign === '[' ? setFrom(characters, at) : undefined;
      if (set) {
        tokens.push({ type: 'one', fits: set.fits });
        at = set.close;
      } else {
        const literal = sign === '\\' ? (characters[++at] ?? '\\') : sign;
        tokens.push({ type: 'one', fits: (character) => character === literal });
      }
    }
  }
  return tokens;
}

/** `[a-z_]` from its bracket on; undefined when it is not closed and so stands for itself. */
function setFrom(characters: readonly string[], open: number): { readonly close: number; readonly fits: (character: string) => boolean } | undefined {
  const inverted = characters[open + 1] === '!' || characters[open + 1] === '^';
  const first = open + (inverted ? 2 : 1);
  const close = characters.indexOf(']', first + 1); // a bracket in the first place is a member
  if (close < 0) return undefined;
  const ranges: (readonly [string, string])[] = [];
  for (let at = first; at < close; at++) {
    const from = characters[at] ?? '';
    if (characters[at + 1] === '-' && at + 2 < close) {
      ranges.push([from, characters[at + 2] ?? '']);
      at += 2;
    } else ranges.push([from, from]);
  }
  return { close, fits: (character) => ranges.some(([from, to]) => from <= character && character <= to) !== inverted };
}

/** Both matchers remember the last `*` only and go back to it: in time of length times length, never more. */
function fitsWith<T, U>(items: readonly T[], pattern: readonly U[], isAny: (part: U) => boolean, fits: (part: U, item: T) => boolean): boolean {
  let at = 0;
  let part = 0;
  let anyAt = -1;
  let resume = 0;
  while (at < items.length) {
    const current = pattern[part];
    if (part < pattern.length && isAny(current as U)) {
      anyAt = part++;
      resume = at;
    } else if (part < pattern.length && fits(current as U, items[at] as T)) {
      part++;
      at++;
    } else if (anyAt >= 0) {
      part = anyAt + 1;
      at = ++resume;
    } else return false;
  }
  while (part < pattern.length && isAny(pattern[part] as U)) part++;
  return part === pattern.length;
}

const fitsName = (name: string, tokens: readonly Token[]): boolean =>
  fitsWith([...name], tokens, (token) => token.type === 'any', (token, character) => token.type === 'one' && token.fits(character));

const fitsPath = (names: readonly string[], parts: readonly ('**' | readonly Token[])[]): boolean =>
  fitsWith(names, parts, (part) => part === '**', (part, name) => part !== '**' && fitsName(name, part));
