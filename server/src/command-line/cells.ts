/** Text as a terminal shows it: in cells. A Chinese character or an emoji takes two, a combining accent none. */

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The characters of a text as a person counts them: an accent belongs to its letter, an emoji may be several code points. */
export const charactersOf = (text: string): string[] => (isNarrow(text) ? [...text] : [...segmenter.segment(text)].map((part) => part.segment));

const isPlain = (text: string): boolean => /^[\x20-\x7e]*$/.test(text);

/** Latin and Greek letters, punctuation, arrows and mathematical signs: one cell each, whatever stands beside them. What we write is of these; to take longer text apart costs. */
const isNarrow = (text: string): boolean => /^[\x20-\x7e\u00a1-\u00ac\u00ae-\u02ff\u0370-\u03ff\u2010-\u2027\u2030-\u205e\u2070-\u209c\u2190-\u22ff]*$/.test(text);

// Wide and Fullwidth of UAX #11 (East Asian Width), told by script and block, since the property itself is not to be had in expressions.
const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Script=Bopomofo}\p{Script=Yi}\p{Emoji_Presentation}\u{2E80}-\u{303E}\u{FF01}-\u{FF60}\u{FFE0}-\u{FFE6}]/u;
const halfWide = /[\u{FF61}-\u{FFDC}\u{FFE8}-\u{FFEE}]/u;
const emojiStyle = '\u{FE0F}';

/** Cells of one character as `charactersOf` gives it. */
function cellsOf(character: string): number {
  if (isPlain(character)) return character.length;
  if (/^[\p{Mn}\p{Me}\p{Cf}]+$/u.test(character)) return 0;
  if (halfWide.test(character)) return 1;
  return wide.test(character) || character.includes(emojiStyle) ? 2 : 1;
}

export const widthOf = (text: string): number => (isNarrow(text) ? text.length : charactersOf(text).reduce((sum, character) => sum + cellsOf(character), 0));

/** Pads with spaces to a number of cells; longer text stays as it is. */
export const padEnd = (text: string, cells: number): string => text + ' '.repeat(Math.max(0, cells - widthOf(text)));
export const padStart = (text: string, cells: number): string => ' '.repeat(Math.max(0, cells - widthOf(text))) + text;

/** The longest beginning that fits, with `…` for what was cut. */
export function shorten(text: string, cells: number): string {
  if (widthOf(text) <= cells) return text;
  let kept = '';
  for (const character of charactersOf(text)) {
    if (widthOf(kept) + cellsOf(character) > cells - 1) break;
    kept += character;
  }
  return `${kept}…`;
}

/**
 * Text from a file made fit for a terminal: control characters are shown as their pictures (␛ for escape), and marks that change the reading
 * direction or cannot be seen as �, so that nothing in a file can move the cursor, colour the screen, or show text in another order.
 * Line ends and tabs count as control characters; joiners inside an emoji stay.
 */
export function printable(text: string): string {
  if (isPlain(text)) return text;
  return text
    .replace(/[\u0000-\u001f]/g, (control) => String.fromCharCode(0x2400 + control.charCodeAt(0)))
    .replace(/\u007f/g, '\u2421')
    .replace(/[\u0080-\u009f\u2028\u2029]|[^\P{Cf}\u200d]|(?<![\p{Extended_Pictographic}\p{Emoji_Modifier}]\ufe0f?)\u200d/gu, '\ufffd')
    .replace(/\p{Cs}/gu, '\ufffd');
}

/** Breaks text between words into lines of at most `cells`, the first of at most `firstCells`. A word that is longer stands on a line of its own, unbroken. A number keeps its unit. */
export function wrap(text: string, cells: number, firstCells = cells): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of keepUnits(text.replaceAll(hold, ' ')).split(' ')) {
    if (word === '') continue;
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && widthOf(longer) > (lines.length === 0 ? firstCells : cells)) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines.map((done) => done.replaceAll(hold, ' '));
}

/** Wrapped text behind an indentation, lines after the first a little deeper. */
export const hang = (text: string, indent: number, cells: number, deeper = 2): string[] =>
  wrap(text, cells - indent - deeper, cells - indent).map((line, index) => `${' '.repeat(indent + (index === 0 ? 0 : deeper))}${line}`);

const hold = '\u00a0';

/** Short words that often follow a number and are no units. */
const noUnits = new Set(['a', 'and', 'at', 'by', 'error', 'errors', 'file', 'files', 'figure', 'for', 'from', 'has', 'in', 'is', 'it', 'less', 'line', 'more', 'needed', 'of', 'on', 'or', 'the', 'times', 'to', 'turns', 'when', 'with']);

/** `40 mm/s` and `118 %` are not broken over two lines. */
const keepUnits = (text: string): string =>
  text.replace(/(\d) (%|[a-zA-Zµ°Ω][^\s,;:.()]{0,6})(?![^\s,;:.()])/g, (whole, digit: string, word: string) => (noUnits.has(word) ? whole : `${digit}${hold}${word}`));
