import { describe, expect, it } from 'vitest';
import { inlayHints, LONGEST_HINT, type KeptHints } from '../../server/src/services/inlay-hints.ts';
import { example, snapshotOf } from '../support/cursor.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const lift = (changes: Readonly<Record<string, unknown>> = {}): string => yamlOf(machineWith('lift', changes));

/** The line on which each hint stands, with its text behind. */
function hintLines(text: string, kept?: KeptHints): readonly string[] {
  const snapshot = snapshotOf(text);
  return inlayHints(snapshot, undefined, kept).map((hint) => {
    const { line } = snapshot.document.lines.positionAt(hint.offset);
    return `${text.split(/\r?\n/)[line] ?? ''} → ${hint.text}`;
  });
}

const texts = [lift(), yamlOf(machineWith('ball-lift')), yamlOf(machineWith('router')), example('large-format-printer/first-draft.machine.yaml'), example('inch-router/bench-router.machine.yaml')];

describe('inlay hints', () => {
  it('stand at the end of the lines of elements, one a line, at most 40 characters long', () => {
    for (const text of texts) {
      const snapshot = snapshotOf(text);
      const hints = inlayHints(snapshot);
      expect(hints.length).toBeGreaterThan(0);
      const lines = hints.map((hint) => snapshot.document.lines.lineAt(hint.offset));
      expect(new Set(lines).size).toBe(lines.length);
      for (const [index, hint] of hints.entries()) {
        expect([...hint.text].length, hint.text).toBeLessThanOrEqual(LONGEST_HINT);
        expect(hint.text.trim()).toBe(hint.text);
        const rest = text.slice(hint.offset, snapshot.document.lines.lineEnd(lines[index] ?? 0));
        expect(rest.trim()).toBe('');
        expect(text[hint.offset - 1]).not.toMatch(/\s/);
      }
    }
  });
  it('say what decides on the line of the screw and of the motor', () => {
    const lines = hintLines(lift());
    expect(lines.find((line) => /^\s+screw: →/.test(line))).toMatch(/whirl|buckling/);
    expect(lines.find((line) => /^\s+motor: lift-motor →/.test(line))).toMatch(/margin \d/);
  });
  it('lead with what is looked for first: whirl before buckling', () => {
    expect(hintLines(example('large-format-printer/first-draft.machine.yaml')).find((line) => /^\s+screw: →/.test(line))).toMatch(/→ whirl \d+ % · buckling /);
  });
  it('keep within 40 characters where several elements stand on one line', () => {
    const flow = lift().replace(/\n {4}drive:\n((?: {6,}.*\n)+)/, (_, body: string) => `\n    drive: { ${flowOf(body)} }\n`);
    const snapshot = snapshotOf(flow);
    expect(snapshot.document.problems).toEqual([]);
    for (const hint of inlayHints(snapshot)) expect([...hint.text].length).toBeLessThanOrEqual(LONGEST_HINT);
    expect(inlayHints(snapshot).some((hint) => hint.text.includes(' · '))).toBe(true);
  });
  it('stand behind a remark on the line, so that nothing is pushed aside', () => {
    const text = lift().replace('      screw:\n', '      screw:   # from the shop  \n');
    const hint = inlayHints(snapshotOf(text)).find(({ offset }) => text.slice(0, offset).endsWith('from the shop'));
    expect(hint).toBeDefined();
  });
  it('are the same with CR LF', () => {
    expect(hintLines(lift().replace(/\n/g, '\r\n'))).toEqual(hintLines(lift()));
  });
  it('are silent while a figure cannot be computed', () => {
    expect(hintLines(lift({ 'screw.size': null, 'screw.unsupported-length': null })).some((line) => line.includes('screw:'))).toBe(false);
  });
  it('stay as they were while a value is being typed, and go when it is gone', () => {
    const kept: KeptHints = new Map();
    const before = hintLines(lift(), kept);
    const typing = lift().replace('unsupported-length: 340 mm', 'unsupported-length: 340 m_');
    expect(hintLines(typing, kept)).toEqual(before);
    const heavier = lift().replace('mass: 4 kg', 'mass: 4 k_');
    expect(hintLines(heavier, kept)).toEqual(before);
    expect(hintLines(lift({ 'screw.unsupported-length': null, 'screw.size': null }), kept).some((line) => line.includes('screw:'))).toBe(false);
    expect(hintLines(typing, kept).some((line) => line.includes('screw:'))).toBe(false);
  });
  it('are limited to the lines asked for', () => {
    const text = lift();
    const at = text.indexOf('      screw:');
    const hints = inlayHints(snapshotOf(text), { start: at, end: at + 8 });
    expect(hints).toHaveLength(1);
    expect(text.slice(0, hints[0]?.offset).endsWith('screw:')).toBe(true);
  });
  it('explain themselves when asked', () => {
    const hint = inlayHints(snapshotOf(lift())).find(({ text }) => text.includes('margin'));
    expect(hint?.tooltip()).toContain('Source: ');
  });
  it('are empty for a part list and for an empty text', () => {
    expect(inlayHints(snapshotOf('description-version: 1\nparts: {}\n', {}, 'file:///a.parts.yaml'))).toEqual([]);
    expect(inlayHints(snapshotOf(''))).toEqual([]);
  });
});

/** The body of a block map, two levels deep at most, as the inside of a flow map. */
function flowOf(body: string): string {
  const lines = body.split('\n').filter((line) => line.trim() !== '');
  const depth = (line: string): number => /^ */.exec(line)?.[0].length ?? 0;
  const write = (from: number, indent: number): { text: string; next: number } => {
    const parts: string[] = [];
    let at = from;
    while (at < lines.length && depth(lines[at] ?? '') >= indent) {
      const line = (lines[at] ?? '').trim();
      if (line.endsWith(':') && (lines[at + 1] ?? '').trim().startsWith('- ')) {
        const items: string[] = [];
        for (at++; (lines[at] ?? '').trim().startsWith('- '); at++) items.push((lines[at] ?? '').trim().slice(2));
        parts.push(`${line} [${items.join(', ')}]`);
      } else if (line.endsWith(':')) {
        const inner = write(at + 1, depth(lines[at + 1] ?? ''));
        parts.push(`${line} { ${inner.text} }`);
        at = inner.next;
      } else {
        parts.push(line);
        at++;
      }
    }
    return { text: parts.join(', '), next: at };
  };
  return write(0, 6).text;
}
