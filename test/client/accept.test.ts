// The three questions that are asked before a finding is accepted.
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { Memento } from 'vscode';
import { acceptCommand, isDay, type Acceptance } from '../../client/src/accept.ts';

interface Box {
  readonly value?: string;
  readonly validateInput?: (text: string) => string | undefined;
}

const { asked, answers, warnings } = vi.hoisted(() => ({ asked: [] as Box[], answers: [] as (string | undefined)[], warnings: [] as string[] }));

vi.mock('vscode', () => ({
  l10n: { t: (text: string) => text },
  window: {
    showInputBox: (box: Box) => {
      asked.push(box);
      return Promise.resolve(answers.shift());
    },
    showWarningMessage: (text: string) => void warnings.push(text),
  },
}));

const remembered = new Map<string, unknown>();
const memory = { keys: () => [], get: (key: string, usual: unknown) => remembered.get(key) ?? usual, update: (key: string, value: unknown) => Promise.resolve(void remembered.set(key, value)) } as unknown as Memento;
let written: Acceptance[];
const accept = (given: readonly (string | undefined)[], works = true): Promise<void> => {
  answers.push(...given);
  return acceptCommand({ code: 'nut-wears-out' }, '2027-05-25', { accept: (acceptance) => Promise.resolve(void written.push(acceptance)).then(() => works) }, memory);
};

beforeEach(() => {
  written = [];
  remembered.clear();
  for (const list of [asked, answers, warnings]) list.length = 0;
});

describe('accepting', () => {
  test('asks for reason, name and last day, and has it written', async () => {
    await accept([' it is renewed every spring ', 'R. Okafor', '2027-06-30']);
    expect(written).toEqual([{ finding: { code: 'nut-wears-out' }, reason: 'it is renewed every spring', by: 'R. Okafor', until: '2027-06-30' }]);
    expect(warnings).toEqual([]);
  });

  test('proposes half a year, and the name that was given last', async () => {
    await accept(['x', 'R. Okafor', '']);
    await accept(['y', 'R. Okafor', '']);
    expect(asked.map(({ value }) => value)).toEqual([undefined, '', '2027-05-25', undefined, 'R. Okafor', '2027-05-25']);
  });

  test('takes no empty reason, and no day that is none', async () => {
    await accept(['x', '', '']);
    const [reason, , day] = asked;
    expect([reason?.validateInput?.(' '), reason?.validateInput?.('x')]).toEqual([expect.any(String), undefined]);
    expect(['', '2027-06-30', '2027-02-30', 'soon'].map((text) => day?.validateInput?.(text) === undefined)).toEqual([true, true, false, false]);
  });

  test.each([[[undefined]], [['x', undefined]], [['x', 'y', undefined]]])('given up at any question (%j) writes nothing', async (given) => {
    await accept(given);
    expect(written).toEqual([]);
  });

  test('says so when the text no longer has the finding', async () => {
    await accept(['x', '', ''], false);
    expect(warnings).toHaveLength(1);
  });

  test('knows the days of the calendar', () => expect(['2028-02-29', '2027-02-29', '2027-13-01', '2027-1-1'].map(isDay)).toEqual([true, false, false, false]));
});
