import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { problemCodes } from '../../server/src/language/problem-codes.ts';

const room = join(import.meta.dirname, '../../server/src/language');

/** Sources of the room, without the list of codes itself and what the lead's editing code contains. */
function sources(): { readonly file: string; readonly text: string }[] {
  return readdirSync(room, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && file !== 'problem-codes.ts')
    .map((file) => ({ file, text: readFileSync(join(room, file), 'utf8') }));
}

/** Words in quotes where codes are written: after `code:`, and as first argument of the functions that make problems. */
const written = /(?:code: |code === |\b(?:problem|slip|outOfBounds|#report)\(\s*)'([a-z]+(?:-[a-z]+)+)'/g;

describe('problem codes', () => {
  it('are all explained where they are used', () => {
    const used = new Set(sources().flatMap(({ text }) => [...text.matchAll(written)].map((match) => match[1] ?? '')));
    expect(used.size).toBeGreaterThan(40);
    expect([...used].filter((code) => !(code in problemCodes))).toEqual([]);
  });

  it('are all used where they are explained', () => {
    const all = sources().map(({ text }) => text).join('\n');
    expect(Object.keys(problemCodes).filter((code) => !all.includes(`'${code}'`))).toEqual([]);
  });

  it.each(Object.entries(problemCodes))('%s has a title and an explanation of its own', (code, { title, explanation }) => {
    expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(title.length).toBeGreaterThan(8);
    expect(title.length).toBeLessThanOrEqual(80);
    expect(title).not.toMatch(/[.!]$/);
    expect(explanation).toMatch(/\.$/);
    expect(title + explanation).not.toMatch(/\b(?:illegal|invalid|please|oops)\b/i);
    expect(explanation.length).toBeGreaterThan(60);
  });
});
