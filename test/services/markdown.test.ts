import { describe, expect, it } from 'vitest';
import { code, codeInTable, escapeMarkdown, escapeShort, table } from '../../server/src/services/markdown.ts';

describe('text from a file inside Markdown', () => {
  it('becomes no HTML', () => {
    expect(escapeMarkdown('<script>alert(1)</script>')).toBe('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(escapeMarkdown('&lt;b&gt;')).toBe('&amp;lt;b&amp;gt;');
  });
  it('becomes no link, picture or command', () => {
    expect(escapeMarkdown('[x](command:run)')).toBe('\\[x\\](command:run)');
    expect(escapeMarkdown('![x](http://a.b/c.png)')).toBe('\\!\\[x\\](http\\://a.b/c.png)');
    expect(escapeMarkdown('www.a.b and c@d.e')).toBe('www\\.a.b and c\\@d.e');
  });
  it('becomes no emphasis, code, heading or table cell', () => {
    expect(escapeMarkdown('*a* _b_ `c` ~~d~~ | # e')).toBe('\\*a\\* \\_b\\_ \\`c\\` \\~\\~d\\~\\~ \\| \\# e');
  });
  it('stays on one line, without control characters and marks that turn the reading direction', () => {
    expect(escapeMarkdown('a\r\nb\tc\u0000d\u202ee\u200bf')).toBe('a b cdef');
  });
  it('leaves everyday signs alone', () => {
    expect(escapeMarkdown('Ø 8 mm ± 5 %, 20 °C, µm/(m·K), d₃²')).toBe('Ø 8 mm ± 5 %, 20 °C, µm/(m·K), d₃²');
  });
  it('is cut where it is endless', () => {
    expect([...escapeShort('é'.repeat(5000))]).toHaveLength(120);
  });
});

describe('inline code', () => {
  it('has a fence longer than the backticks inside', () => {
    expect(code('a`b``c')).toBe('```a`b``c```');
    expect(code('`')).toBe('`` ` ``');
  });
  it('does not end a table cell', () => {
    expect(codeInTable('a|b')).toBe('`a\\|b`');
  });
});

describe('a table', () => {
  it('has a header, a rule and rows', () => {
    expect(table(['a', 'b'], [['1', '2']])).toBe('| a | b |\n| :--- | :--- |\n| 1 | 2 |');
  });
  it('is left out without rows', () => {
    expect(table(['a'], [])).toBeUndefined();
  });
});
