import { describe, expect, it } from 'vitest';
import { editDistance, nearestNames } from '../../server/src/language/nearest-names.ts';

describe('edit distance', () => {
  // Counted by hand: insertions, deletions, replacements, swaps of neighbours.
  it.each([
    ['travel', 'travel', 0], ['travle', 'travel', 1], ['tavel', 'travel', 1], ['traveel', 'travel', 1], ['trabel', 'travel', 1], ['kitten', 'sitting', 3], ['', 'abc', 3], ['abc', '', 3], ['ca', 'abc', 3],
  ])('%s to %s is %i', (a, b, distance) => expect(editDistance(a, b, 10)).toBe(distance));

  it('stops counting beyond the most', () => {
    expect(editDistance('aaaaaaaa', 'bbbbbbbb', 2)).toBe(3);
    expect(editDistance('a', 'aaaaaaaa', 2)).toBe(3);
  });
});

describe('nearest names', () => {
  const keys = ['direction', 'travel', 'moves', 'motion', 'layer-height', 'accuracy', 'unsupported-length', 'end-supports', 'length'];

  it.each([
    ['acuracy', ['accuracy']], ['travle', ['travel']], ['Travel', ['travel']], ['layer_height', ['layer-height']], ['layer height', ['layer-height']], ['unsup', ['unsupported-length']], ['supports', ['end-supports']], ['mot', ['motion']], ['lenght', ['length']], ['xyz', []], ['', []],
  ])('%s: %j', (wrong, near) => expect(nearestNames(wrong, keys)).toEqual(near));

  it('are three at most, the best first', () => {
    expect(nearestNames('plate', ['plates', 'slate', 'plat', 'late', 'plate2'])).toHaveLength(3);
    expect(nearestNames('plate', ['plaxx', 'plates'])).toEqual(['plates']);
  });
});
