// What a person types, one keystroke at a time, into a text of any length.

/**
 * Keystrokes of several kinds, spread over the text: a digit of a value replaced, a letter in a comment, a key half typed and taken back.
 * @param {string} text
 * @param {number} count
 * @returns {{ kind: string, from: number, to: number, text: string }[]}
 */
export function keystrokes(text, count) {
  const speeds = [...text.matchAll(/speed: (\d)/g)].map((match) => match.index + match[0].length - 1);
  const comments = [...text.matchAll(/  # number/g)].map((match) => match.index + match[0].length);
  const strokes = [];
  const shift = []; // lengths that earlier insertions added: { at, by }
  const now = (offset) => offset + shift.reduce((sum, { at, by }) => (at <= offset ? sum + by : sum), 0);
  for (let i = 0; strokes.length < count; i++) {
    const speed = speeds[(i * 7) % speeds.length];
    strokes.push({ kind: 'digit', from: now(speed), to: now(speed) + 1, text: String(1 + (i % 9)) });
    const comment = comments[(i * 5) % comments.length];
    strokes.push({ kind: 'comment', from: now(comment), to: now(comment), text: 'x' });
    shift.push({ at: comment, by: 1 });
    // a key half typed below that comment's line, then taken back
    const line = text.indexOf('\n', comment);
    strokes.push({ kind: 'half key', from: now(line), to: now(line), text: '\n    acc' });
    strokes.push({ kind: 'taken back', from: now(line), to: now(line) + '\n    acc'.length, text: '' });
  }
  return strokes.slice(0, count);
}

export const apply = (text, stroke) => text.slice(0, stroke.from) + stroke.text + text.slice(stroke.to);
