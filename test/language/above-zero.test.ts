import { describe, expect, it } from 'vitest';
import { readDocument } from '../../server/src/language/read-document.ts';

const problems = (line: string) =>
  readDocument('file:///m.machine.yaml', `description-version: 1\nmachine: M\naxes:\n  x:\n    direction: horizontal\n    ${line}\n`).problems.map(({ code, severity, message }) => ({ code, severity, message }));

describe('quantities of which there is none at zero', () => {
  it.each(['travel: 0 mm', 'accuracy: 0 mm', 'drive: { belt: { specific-stiffness: 0 N } }'])('%s is an error at the value', (line) => {
    expect(problems(line)).toContainEqual(expect.objectContaining({ code: 'value-out-of-domain', severity: 'error', message: expect.stringContaining('of zero cannot be') as string }));
  });
  it.each(['travel: 300 mm', 'motion: { speed: 0 mm/s to 5 mm/s }', 'process-force: 0 N', 'drive: { coupling: { parallel-offset: 0 mm } }'])('%s is none', (line) => {
    expect(problems(line).filter(({ code }) => code === 'value-out-of-domain')).toEqual([]);
  });
});
