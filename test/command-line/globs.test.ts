import { describe, expect, it } from 'vitest';
import { expandBraces, isPattern, readPattern } from '../../server/src/command-line/globs.ts';

// What the signs mean is the shell's own: POSIX.1-2017, Shell and Utilities, 2.13 "Pattern Matching Notation"; braces and ** as in the common shells.

describe('braces', () => {
  it.each([
    ['a{b,c}d', ['abd', 'acd']],
    ['{a,b}{1,2}', ['a1', 'a2', 'b1', 'b2']],
    ['x{a,b{c,d}}', ['xa', 'xbc', 'xbd']],
    ['{a,}.yaml', ['a.yaml', '.yaml']],
    ['{alone}', ['{alone}']],
    ['{}', ['{}']],
    ['a{b,c', ['a{b,c']],
    ['\\{a,b}', ['\\{a,b}']],
    ['{{a},b}', ['{a}', 'b']],
  ])('%s', (pattern, expanded) => {
    expect(expandBraces(pattern)).toEqual(expanded);
  });

  it('refuses to multiply without end', () => {
    expect(() => expandBraces('{a,b}'.repeat(40))).toThrow(RangeError);
  });
});

describe('patterns', () => {
  it.each([
    ['*.machine.yaml', ['a.machine.yaml', '.machine.yaml'], ['a.machine.yml', 'x/a.machine.yaml', 'amachine.yaml']],
    ['a?.yaml', ['ab.yaml', 'a😀.yaml', 'aé.yaml'], ['a.yaml', 'abc.yaml', 'a/.yaml']],
    ['[a-c]x', ['ax', 'bx', 'cx'], ['dx', '-x', 'x']],
    ['[!a-c]x', ['dx', '-x'], ['ax', 'x']],
    ['[]x]y', [']y', 'xy'], ['[y', 'y']],
    ['[ab', ['[ab'], ['a', 'b']],
    ['**/x.yaml', ['x.yaml', 'a/x.yaml', 'a/b/x.yaml'], ['ax.yaml', 'a/ax.yaml']],
    ['**', ['x', 'a/b/c'], []],
    ['*/*.yaml', ['a/b.yaml'], ['b.yaml', 'a/b/c.yaml']],
    ['a\\*b', ['a*b'], ['axb']],
    ['*', ['a.b', 'ö'], ['a/b']],
    ['./*.yaml', ['a.yaml'], ['b/a.yaml']],
  ])('%s', (pattern, fits, fitsNot) => {
    const { fits: test } = readPattern(pattern);
    for (const path of fits) expect(test(path), path).toBe(true);
    for (const path of fitsNot) expect(test(path), path).toBe(false);
  });

  it('begins to look at the folders before the first sign', () => {
    expect(readPattern('a/b/*.yaml')).toMatchObject({ base: 'a/b', depth: 1 });
    expect(readPattern('a/*/c.yaml')).toMatchObject({ base: 'a', depth: 2 });
    expect(readPattern('*.yaml')).toMatchObject({ base: '', depth: 1 });
    expect(readPattern('/*.yaml')).toMatchObject({ base: '/', depth: 1 });
    expect(readPattern('/a/**/b*')).toMatchObject({ base: '/a', depth: Number.POSITIVE_INFINITY });
    expect(readPattern('a\\[1]/*')).toMatchObject({ base: 'a[1]' });
  });

  it.each([['a*', true], ['a?', true], ['[a]', true], ['{a,b}', true], ['a\\*', false], ['plain.machine.yaml', false], ['a\\\\*', true]])('%s is a pattern: %s', (text, expected) => {
    expect(isPattern(text)).toBe(expected);
  });

  it('takes no time for stars upon stars', () => {
    const started = performance.now();
    expect(readPattern(`${'*a'.repeat(200)}b`).fits('a'.repeat(2000))).toBe(false);
    expect(readPattern(`${'**/a/'.repeat(100)}b`).fits(Array.from({ length: 1000 }, () => 'a').join('/'))).toBe(false);
    // By hand: 2000 × 400 and 1000 × 200 comparisons; backtracking over every star would need more than there are atoms.
    expect(performance.now() - started).toBeLessThan(2000);
  });
});
