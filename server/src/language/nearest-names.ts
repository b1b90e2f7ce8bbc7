/**
 * Number of single-character changes (insert, delete, replace, swap of neighbours) that turn `a` into `b`,
 * or `most + 1` as soon as it is sure to exceed `most`. Restricted Damerau–Levenshtein distance.
 */
export function editDistance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let beforePrevious: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1];
      let distance = Math.min(at(previous, column) + 1, at(current, column - 1) + 1, at(previous, column - 1) + (same ? 0 : 1));
      const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1];
      if (swapped) distance = Math.min(distance, at(beforePrevious, column - 2) + 1);
      current.push(distance);
      least = Math.min(least, distance);
    }
    if (least > most) return most + 1;
    beforePrevious = previous;
    previous = current;
  }
  return Math.min(at(previous, b.length), most + 1);
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Infinity;
}

/**
 * The `count` names closest to `wrong`, best first: within a third of its length in changes (at least one, at most three),
 * or beginning with what was typed, or sharing a whole word of a hyphenated name, or being a word of what was typed. Empty when nothing is near.
 */
export function nearestNames(wrong: string, names: Iterable<string>, count = 3): string[] {
  const typed = wrong.toLowerCase().slice(0, 64);
  if (typed === '') return [];
  const most = Math.min(3, Math.max(1, Math.floor(typed.length / 3)));
  const ranked: { name: string; rank: number; order: number }[] = [];
  let order = 0;
  for (const name of names) {
    order += 1;
    const rank = nearness(typed, name.toLowerCase(), most);
    if (rank !== undefined) ranked.push({ name, rank, order });
  }
  ranked.sort((a, b) => a.rank - b.rank || a.order - b.order);
  return ranked.slice(0, count).map((entry) => entry.name);
}

/** Lower is nearer; undefined is not near at all. */
function nearness(typed: string, name: string, most: number): number | undefined {
  if (typed === name) return 0;
  const spelled = editDistance(typed.replaceAll(/[ _]/g, '-'), name, most);
  if (spelled <= most) return spelled;
  if (typed.length >= 2 && name.startsWith(typed)) return most + 1;
  const words = name.split('-');
  if (words.length > 1 && typed.length >= 4 && words.includes(typed)) return most + 2;
  // "lithium grease", "stepper motor", "leadscrew": the name with a word before or behind it.
  if (name.length >= 4 && typed.split(/[ _-]/).includes(name)) return most + 3;
  if (name.length >= 5 && typed.endsWith(name)) return most + 4;
  return undefined;
}
