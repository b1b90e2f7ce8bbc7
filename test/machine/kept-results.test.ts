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
