import type { TextEdit } from './spans.ts';

/** More lines than this between the first and the last change are replaced as one stretch: comparing them all would cost more than it helps. */
const MOST_LINES = 1500;

/** Small edits that turn `before` into `after`: one for each stretch of changed lines, trimmed to the characters that differ. */
export function editsBetween(before: string, after: string): readonly TextEdit[] {
  if (before === after) return [];
  const old = linesOf(before);
  const fresh = linesOf(after);
  let head = 0;
  while (head < old.length && head < fresh.length && old[head] === fresh[head]) head++;
  let tail = 0;
  while (tail < old.length - head && tail < fresh.length - head && old[old.length - 1 - tail] === fresh[fresh.length - 1 - tail]) tail++;
  const a = old.slice(head, old.length - tail);
  const b = fresh.slice(head, fresh.length - tail);
  const hunks = a.length > MOST_LINES || b.length > MOST_LINES ? [{ from: 0, to: a.length, lines: b }] : hunksOf(a, b);
  const starts = offsetsOf(old);
  return hunks.map(({ from, to, lines }) => {
    const start = starts[head + from] ?? before.length;
    const end = starts[head + to] ?? before.length;
    return trimmed(before, { span: { start, end }, text: lines.join('') });
  });
}

const linesOf = (text: string): readonly string[] => text.split(/(?<=\n)/);

function offsetsOf(lines: readonly string[]): readonly number[] {
  let at = 0;
  return lines.map((line) => {
    const start = at;
    at += line.length;
    return start;
  });
}

/** Stretches of `a` to be replaced by lines of `b`, by their longest common subsequence. */
function hunksOf(a: readonly string[], b: readonly string[]): readonly { from: number; to: number; lines: readonly string[] }[] {
  const width = b.length + 1;
  const common = new Uint32Array((a.length + 1) * width);
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--) {
      common[i * width + j] = a[i] === b[j] ? (common[(i + 1) * width + j + 1] ?? 0) + 1 : Math.max(common[(i + 1) * width + j] ?? 0, common[i * width + j + 1] ?? 0);
    }
  }
  const hunks: { from: number; to: number; lines: string[] }[] = [];
  let i = 0;
  let j = 0;
  const open = (): { from: number; to: number; lines: string[] } => {
    const last = hunks.at(-1);
    if (last && last.to === i && !sealed) return last;
    const fresh = { from: i, to: i, lines: [] as string[] };
    hunks.push(fresh);
    sealed = false;
    return fresh;
  };
  let sealed = true;
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) {
      i++;
      j++;
      sealed = true;
    } else if (j < b.length && (i >= a.length || (common[i * width + j + 1] ?? 0) >= (common[(i + 1) * width + j] ?? 0))) {
      open().lines.push(b[j++] ?? '');
    } else {
      const hunk = open();
      i++;
      hunk.to = i;
    }
  }
  return hunks;
}

/** The edit without the characters that its both ends leave as they are. */
function trimmed(before: string, edit: TextEdit): TextEdit {
  const old = before.slice(edit.span.start, edit.span.end);
  let head = 0;
  while (head < old.length && head < edit.text.length && old[head] === edit.text[head]) head++;
  let tail = 0;
  while (tail < old.length - head && tail < edit.text.length - head && old[old.length - 1 - tail] === edit.text[edit.text.length - 1 - tail]) tail++;
  return { span: { start: edit.span.start + head, end: edit.span.end - tail }, text: edit.text.slice(head, edit.text.length - tail) };
}
