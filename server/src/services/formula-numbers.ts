const SUBSCRIPTS: Readonly<Record<string, string>> = {
  '₀': '0', '₁': '1', '₂': '2', '₃': '3', '₄': '4', '₅': '5', '₆': '6', '₇': '7', '₈': '8', '₉': '9',
  'ₐ': 'a', 'ₑ': 'e', 'ₕ': 'h', 'ᵢ': 'i', 'ⱼ': 'j', 'ₖ': 'k', 'ₗ': 'l', 'ₘ': 'm', 'ₙ': 'n', 'ₒ': 'o', 'ₚ': 'p', 'ᵣ': 'r', 'ₛ': 's', 'ₜ': 't', 'ᵤ': 'u', 'ᵥ': 'v', 'ₓ': 'x',
};
const SUBSCRIPT = `[${Object.keys(SUBSCRIPTS).join('')}]`;

/** One spelling for `F₀` and `F_0`, and for the two characters that look like µ. */
export const plainSymbol = (symbol: string): string =>
  symbol.replace(/μ/g, 'µ').replace(new RegExp(`${SUBSCRIPT}+`, 'g'), (run) => `_${[...run].map((character) => SUBSCRIPTS[character] ?? '').join('')}`);

/**
 * A symbol or formula as shown: an index of digits is lowered (`F₀`), any other stands behind an underscore (`F_cr`, `v_max`). Most letters have no
 * lowered form, and a mixture within one table or formula reads worse than either.
 */
export function prettySymbol(symbol: string): string {
  return plainSymbol(symbol).replace(/_(\d+)(?![\p{L}\d_,]*[\p{L}\d])/gu, (_, digits: string) => [...digits].map((digit) => String.fromCharCode(0x2080 + Number(digit))).join(''));
}

type Token = { readonly kind: 'name' | 'number' | 'function' | 'blank' | 'open' | 'close' | 'power' | 'sign'; readonly text: string };

const FUNCTIONS = new Set(['sin', 'cos', 'tan', 'atan', 'asin', 'acos', 'arctan', 'arcsin', 'arccos', 'exp', 'ln', 'max', 'min']);

const LEXEMES: readonly (readonly [Token['kind'], RegExp])[] = [
  ['blank', / +/y],
  ['number', /\d+(?:\.\d+)?/y],
  ['name', new RegExp(`\\p{L}(?:\\p{L}|[0-9_'′]|${SUBSCRIPT})*`, 'uy')],
  ['power', /[⁰¹²³⁴⁵⁶⁷⁸⁹⁻½]+/y],
  ['open', /[([√|]/y],
  ['close', /[)\]]/y],
  ['sign', /[+−\-·×/^,]/y],
];

/**
 * The right-hand side of a formula (all of it where it has no equals sign) with every symbol replaced by its value: `(60 mm/s) / (8 mm)`.
 * Undefined where the text is more than one plain expression, or holds a symbol whose value is not given or not unique:
 * then the values are better listed than put in.
 */
export function numbersPutIn(formula: string, values: readonly { readonly symbol: string; readonly text: string }[]): string | undefined {
  const equals = formula.indexOf(' = ');
  const tokens = tokensOf(equals < 0 ? formula : formula.slice(equals + 3));
  if (!tokens) return undefined;
  const known = new Map<string, string | undefined>();
  for (const { symbol, text } of values) {
    const name = plainSymbol(symbol);
    known.set(name, known.has(name) ? undefined : text);
  }
  let result = '';
  // What stands side by side behind a stroke may belong below it or not; with a point between, it would be read as not.
  const belowStroke: boolean[] = [false];
  for (const [index, token] of tokens.entries()) {
    const next = tokens[index + 1];
    const implied = token.kind === 'blank' ? endsOperand(tokens[index - 1]) && beginsOperand(next) : token.kind === 'number' && next?.kind === 'name' && next.text !== 'π';
    if (implied && belowStroke.at(-1) === true) return undefined;
    if (token.kind === 'open' && token.text !== '√' && token.text !== '|') belowStroke.push(false);
    if (token.kind === 'close') belowStroke.pop();
    if (token.kind === 'sign') belowStroke[belowStroke.length - 1] = token.text === '/';
    if (token.kind === 'name' && token.text !== 'π') {
      const value = known.get(plainSymbol(token.text));
      if (value === undefined) return undefined;
      result += bracketed(value, next);
    } else if (token.kind === 'blank') {
      result += implied ? ' · ' : ' ';
    } else if (token.kind === 'sign' && token.text === ',') {
      result += ',';
    } else {
      result += token.text + (implied ? ' · ' : '');
    }
  }
  return result;
}

function tokensOf(text: string): readonly Token[] | undefined {
  const tokens: Token[] = [];
  let depth = 0;
  for (let at = 0; at < text.length; ) {
    const found = LEXEMES.map(([kind, pattern]) => {
      pattern.lastIndex = at;
      return { kind, text: pattern.exec(text)?.[0] };
    }).find((candidate) => candidate.text !== undefined);
    if (found?.text === undefined) return undefined;
    if (found.text === '(' || found.text === '[') depth++;
    if (found.kind === 'close') depth--;
    // A comma outside brackets, as before "with" or "at most", begins prose.
    if (found.text === ',' && depth === 0) return undefined;
    tokens.push({ kind: found.kind === 'name' && FUNCTIONS.has(found.text) ? 'function' : found.kind, text: found.text });
    at += found.text.length;
  }
  return depth === 0 ? tokens : undefined;
}

const endsOperand = (token: Token | undefined): boolean => token !== undefined && ['name', 'number', 'close', 'power'].includes(token.kind);
const beginsOperand = (token: Token | undefined): boolean => token !== undefined && ['name', 'number', 'function', 'open'].includes(token.kind);

function bracketed(value: string, next: Token | undefined): string {
  return /\s|^-/.test(value) || (next?.kind === 'power' && !/^[\d.]+$/.test(value)) ? `(${value})` : value;
}
