import { describe, expect, it } from 'vitest';
import { analyse, type KeptResults } from '../../server/src/checks/analysis.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const uri = 'file:///kept.machine.yaml';
const listUri = 'file:///stock.parts.yaml';

/** The base machine with its motor moved into a part list. */
function split(): { readonly main: string; readonly list: string } {
  const machine = machineWith('lift');
  const { parts, ...rest } = machine;
  return { main: yamlOf({ ...rest, uses: ['stock.parts.yaml'] }), list: yamlOf({ 'description-version': 1, parts }) };
}

describe('results kept from one version to the next', () => {
  it('are computed again when a part list appears', () => {
    const { main, list } = split();
    const kept: KeptResults = new Map();
    const document = readDocument(uri, main);
    const without = analyse(document, [], kept);
    const withList = analyse(document, [readDocument(listUri, list)], kept);
    const fresh = analyse(document, [readDocument(listUri, list)]);
    expect(withList.findings).toEqual(fresh.findings);
    expect(without.problems.map((problem) => problem.code)).toContain('unknown-name');
    const drive = withList.evaluations.find((evaluation) => evaluation.subject.kind === 'drive');
    expect(drive?.result('motor.torque-margin').state).toBe('computed');
  });
  it('are computed again when it goes', () => {
    const { main, list } = split();
    const kept: KeptResults = new Map();
    const document = readDocument(uri, main);
    analyse(document, [readDocument(listUri, list)], kept);
    const drive = analyse(document, [], kept).evaluations.find((evaluation) => evaluation.subject.kind === 'drive');
    expect(drive?.result('motor.torque-margin').state).toBe('missing');
  });
  it('are kept where nothing that they rest on has changed', () => {
    const { main, list } = split();
    const kept: KeptResults = new Map();
    const first = analyse(readDocument(uri, main), [readDocument(listUri, list)], kept);
    const second = analyse(readDocument(uri, main.replace('machine: Test lift', 'machine: Another lift')), [readDocument(listUri, list)], kept);
    const drive = (analysis: typeof first) => analysis.evaluations.find((evaluation) => evaluation.subject.kind === 'drive');
    expect(drive(second)).toBe(drive(first));
  });
});

describe('a frame that takes its acceleration from the axes', () => {
  const text = (acceleration: string, mass: string): string => {
    const machine = machineWith('portal');
    const axes = { across: { direction: 'horizontal', travel: '300 mm', moves: ['plate'], motion: { speed: '100 mm/s', acceleration } } };
    return yamlOf({ ...machine, masses: { plate: { mass } }, axes });
  };
  it.each([['1 m/s²', '4 kg'], ['2 m/s²', '3 kg']])('is computed again when an axis or a mass changes (%s, %s)', (acceleration, mass) => {
    const kept: KeptResults = new Map();
    analyse(readDocument(uri, text('2 m/s²', '4 kg')), [], kept);
    const now = analyse(readDocument(uri, text(acceleration, mass)), [], kept);
    const fresh = analyse(readDocument(uri, text(acceleration, mass)), []);
    const swing = ({ evaluations: [machine] }: typeof now) => machine?.result('frame.swing-x');
    expect(swing(now)).toEqual(swing(fresh));
    expect(swing(now)?.state).toBe('computed');
  });
  it('is kept when something else changes', () => {
    const kept: KeptResults = new Map();
    const [before] = analyse(readDocument(uri, text('2 m/s²', '4 kg')), [], kept).evaluations;
    const [after] = analyse(readDocument(uri, text('2 m/s²', '4 kg').replace('200 kHz', '100 kHz')), [], kept).evaluations;
    expect(after).toBe(before);
  });
});

describe('a machine of many axes', () => {
  it.each(['axes', 'supplies'])('computes only what rests on the change: one of its %s is edited', (section) => {
    const machine = machineWith('lift') as { readonly axes: Readonly<Record<string, unknown>>; readonly supplies: Readonly<Record<string, unknown>> };
    const [axis] = Object.values(machine.axes);
    const [supply] = Object.values(machine.supplies);
    const text = yamlOf({ ...machine, axes: { ...machine.axes, second: structuredClone(axis), third: structuredClone(axis) }, supplies: { ...machine.supplies, spare: structuredClone(supply) } });
    const kept: KeptResults = new Map();
    const before = analyse(readDocument(uri, text), [], kept);
    const edited = section === 'axes' ? text.replace(/(\n {2}third:[^]*?travel: )\S+/, '$1290') : text.replace(/(\n {2}spare:[^]*?current: )\S+/, '$19');
    expect(edited).not.toBe(text);
    const after = analyse(readDocument(uri, edited), [], kept);
    const fresh = after.evaluations.filter((evaluation) => evaluation.subject.kind === 'drive' && !before.evaluations.includes(evaluation)).map(({ subject }) => subject.id);
    expect(fresh).toEqual(section === 'axes' ? ['axes/third/drive'] : []);
  });
});
