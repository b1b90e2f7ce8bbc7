import { describe, expect, it } from 'vitest';
import { Appearing, PATIENCE } from '../../server/src/protocol/appearing.ts';
import type { Editing } from '../../server/src/protocol/documents.ts';
import type { Diagnostic } from '../../server/src/services/diagnostics.ts';

/** Lines of ten characters. */
const lines = { positionAt: (offset: number) => ({ line: Math.floor(offset / 10), character: offset % 10 }), offsetAt: () => 0 };

const slip = (code: string, line: number): Diagnostic => ({ uri: '', code, severity: 'error', message: '', span: { start: line * 10, end: line * 10 + 5 }, related: [], fixes: [] });
const engineering = (code: string, line: number, subject = 'axes/lift/drive'): Diagnostic => ({
  ...slip(code, line),
  finding: { check: code, title: '', severity: 'error', certain: true, message: '', subject, place: { uri: '', path: [] }, related: [], cautions: [] },
});
const typingOn = (line: number, at: number): Editing => ({ lines: [{ first: line, last: line }], at });
const codes = ({ shown }: { shown: readonly Diagnostic[] }): readonly string[] => shown.map(({ code }) => code);

describe('findings appear', () => {
  it('all at once when a text is opened', () => {
    expect(codes(new Appearing().select([slip('a', 1), engineering('b', 2)], lines, undefined, 0))).toEqual(['a', 'b']);
  });

  it('slips at once, new engineering findings on the typed line after the pause', () => {
    const appearing = new Appearing();
    const all = [slip('a', 1), engineering('b', 1), engineering('c', 2)];
    const first = appearing.select(all, lines, typingOn(1, 1_000), 1_100);
    expect(codes(first)).toEqual(['a', 'c']);
    expect(first.wait).toBe(PATIENCE - 100);
    const later = appearing.select(all, lines, typingOn(1, 1_000), 1_000 + PATIENCE);
    expect(codes(later)).toEqual(['a', 'b', 'c']);
    expect(later.wait).toBeUndefined();
  });

  it('and what is shown already stays while its line is typed, wherever it moves', () => {
    const appearing = new Appearing();
    appearing.select([engineering('b', 1)], lines, undefined, 0);
    expect(codes(appearing.select([engineering('b', 3)], lines, typingOn(3, 10), 20))).toEqual(['b']);
  });

  it('what is cured is gone at once, and counts as new when it comes back', () => {
    const appearing = new Appearing();
    appearing.select([engineering('b', 1)], lines, undefined, 0);
    expect(codes(appearing.select([], lines, typingOn(1, 10), 20))).toEqual([]);
    expect(codes(appearing.select([engineering('b', 1)], lines, typingOn(1, 30), 40))).toEqual([]);
  });

  it('the same check of another drive is another finding', () => {
    const appearing = new Appearing();
    appearing.select([engineering('b', 1, 'axes/lift/drive')], lines, undefined, 0);
    expect(codes(appearing.select([engineering('b', 1, 'axes/slide/drive')], lines, typingOn(1, 10), 20))).toEqual([]);
  });
});
