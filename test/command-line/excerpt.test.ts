import { describe, expect, it } from 'vitest';
import { printable, widthOf, wrap } from '../../server/src/command-line/cells.ts';
import { excerptOf } from '../../server/src/command-line/excerpt.ts';
import { SourceLines } from '../../server/src/command-line/source-lines.ts';

/** The excerpt of what stands between ‹ and ›, as two lines. */
function marked(text: string, columns = 72): readonly string[] {
  const start = text.indexOf('‹');
  const end = text.indexOf('›') - 1;
  const { source, marks } = excerptOf(new SourceLines(text.replace(/[‹›]/g, '')), { start, end }, columns);
  return [source, marks];
}

describe('marks stand under exactly the span', () => {
  // Expected marks were counted by hand: one cell a letter, two for wide characters (UAX #11), none for combining ones.
  it.each([
    ['  travel: ‹300›', '            ^^^'.slice(2), '  travel: 300'],
    ['‹a›: b', '^', 'a: b'],
    ['µ°Ø: ‹4 kg›', '     ^^^^', 'µ°Ø: 4 kg'],
    ['😀: ‹4 kg›', '    ^^^^', '😀: 4 kg'],
    ['名前: ‹鋼›', '      ^^', '名前: 鋼'],
    ['e\u0301te\u0301: ‹4 kg›', '     ^^^^', 'e\u0301te\u0301: 4 kg'],
    ['👨‍👩‍👧: ‹x›', '    ^', '👨‍👩‍👧: x'],
    ['\t‹travel›: 3', '    ^^^^^^', '    travel: 3'],
    ['ab\t‹c›', '    ^', 'ab  c'],
    ['key: ‹›', '     ^', 'key:'],
    ['a: ‹"x›', '   ^^', 'a: "x'],
  ])('%s', (text, marks, source) => {
    expect(marked(text)).toEqual([source, marks]);
  });

  it('in every kind of line end', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      expect(marked(`first: 1${end}second: ‹2›${end}third: 3${end}`)).toEqual(['second: 2', '        ^']);
    }
  });

  it('to the end of the first line where the span goes on', () => {
    expect(marked('a: ‹b\n  c: d›\n')).toEqual(['a: b', '   ^']);
    expect(marked('a: ‹b\r\n  c: d›\r\n')).toEqual(['a: b', '   ^']);
  });

  it('behind the last character where it begins there', () => {
    expect(marked('a: 1\nb:‹›')).toEqual(['b:', '  ^']);
    expect(marked('‹›')).toEqual(['', '^']);
  });
});

describe('long lines', () => {
  it('are cut at the end where the span is in the first half', () => {
    const [source, marks] = marked(`key: ‹value›${' x'.repeat(200)}`, 40);
    expect(source).toMatch(/^key: value x.*…$/);
    expect(widthOf(source ?? '')).toBeLessThanOrEqual(40);
    expect(marks).toBe('     ^^^^^');
  });

  it('are cut on both sides where it is far inside, and the marks follow', () => {
    const [source = '', marks = ''] = marked(`${'x'.repeat(300)} ‹here› ${'y'.repeat(300)}`, 40);
    expect(source.startsWith('…x')).toBe(true);
    expect(source.endsWith('y…')).toBe(true);
    expect(widthOf(source)).toBeLessThanOrEqual(40);
    expect(source.slice(marks.indexOf('^'), marks.lastIndexOf('^') + 1)).toBe('here');
  });

  it('show the beginning of a span that does not fit', () => {
    const [source = '', marks = ''] = marked(`k: ‹${'z'.repeat(500)}›`, 40);
    expect(source).toMatch(/^k: z+…$/);
    expect(marks).toMatch(/^ {3}\^+$/);
    expect(widthOf(marks)).toBeLessThanOrEqual(40);
  });
});

describe('text of a file on a terminal', () => {
  it('cannot move the cursor, colour, or turn the reading direction', () => {
    expect(printable('a\u001b[31mb\u0007\u0000\u007f')).toBe('a␛[31mb␇␀␡');
    expect(printable('a\nb\tc')).toBe('a␊b␉c');
    expect(printable('\u202egnirts\u2066\u200b\u0085')).toBe('�gnirts���');
    expect(printable('lone \ud800')).toBe('lone �');
  });

  it('keeps letters, accents and emoji', () => {
    for (const text of ['größe µ ° Ø', 'e\u0301', '👨‍👩‍👧', '👩🏽‍🔧', '鋼', '🇩🇪']) expect(printable(text)).toBe(text);
  });
});

describe('wrapped text', () => {
  it('keeps a number with its unit', () => {
    expect(wrap('turns at 118 % of 763 rpm now', 12)).toEqual(['turns at', '118 % of', '763 rpm now']);
    expect(wrap('slow to 40 mm/s', 12)).toEqual(['slow to', '40 mm/s']);
  });

  it('breaks between words by their width', () => {
    expect(wrap('鋼鋼 鋼鋼', 8)).toEqual(['鋼鋼', '鋼鋼']); // four cells, a space, four cells: nine
    expect(wrap('a verylongword b', 6)).toEqual(['a', 'verylongword', 'b']);
    expect(wrap('', 10)).toEqual([]);
  });
});
