import { SaxesParser } from 'saxes';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { JunitReport } from '../../server/src/command-line/junit.ts';
import { machineWith, yamlOf } from '../support/machines.ts';
import { axiswright, Folder, quiet, twoErrors } from './support.ts';

vi.setConfig({ testTimeout: 30_000 }); // many processes, on machines that do other things too

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** Reads XML with a parser that refuses what is not well-formed. */
function read(xml: string): Element {
  const top: Element = { name: '', attributes: {}, children: [], text: '' };
  const open = [top];
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element: Element = { name, attributes: attributes, children: [], text: '' };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on('closetag', () => void open.pop());
  parser.on('text', (text) => {
    const element = open.at(-1);
    if (element) element.text += text;
  });
  parser.write(xml).close();
  const [document] = top.children;
  if (!document) throw new Error('no element');
  return document;
}

const lift = yamlOf(machineWith('lift', { brake: null, 'screw.size': 'Tr8x8(P2)', 'screw.speed-limit': '125 rpm', 'motion.speed': '20 mm/s' }));
const folder = new Folder({
  'lift.machine.yaml': `${lift}\naccepted:\n  - { check: screw-too-fast-for-its-maker, at: axes/lift/drive/screw, reason: "tried <long> & \\"hard\\"" }\n`,
  'quiet.machine.yaml': quiet,
  'slip & "co" <1>.machine.yaml': twoErrors,
  'strange.machine.yaml': 'description-version: 1\nmachine: x\naxes:\n  "lift\\e[31m]]>":\n    direction: vertical\n    travel: 1 m\n    moves: ["\\uFFFE<b>&amp;\\r\\n"]\n',
  'binary.machine.yaml': new Uint8Array([0, 255]),
});
afterAll(() => folder.remove());

const cases = (suite: Element | undefined): readonly Element[] => suite?.children ?? [];
const counts = (suite: Element | undefined): object => ({ tests: suite?.attributes['tests'], failures: suite?.attributes['failures'], errors: suite?.attributes['errors'], skipped: suite?.attributes['skipped'] });

describe('findings as JUnit XML', () => {
  it('are well-formed, with a suite for each file, whatever stands in names and texts', async () => {
    const { out, status } = await axiswright(['check', '--format', 'junit', '--no-fixes', '.'], { folder: folder.path });
    expect(status).toBe(2);
    const document = read(out);
    expect(document.children.map(({ attributes }) => attributes['name'])).toEqual(['lift.machine.yaml', 'quiet.machine.yaml', 'slip & "co" <1>.machine.yaml', 'strange.machine.yaml', 'binary.machine.yaml']);
    for (const suite of document.children) {
      const held = (name: string): number => cases(suite).filter(({ children }) => children[0]?.name === name).length;
      expect(counts(suite)).toEqual({ tests: String(cases(suite).length), failures: String(held('failure')), errors: String(held('error')), skipped: String(held('skipped')) });
      const names = cases(suite).map(({ attributes }) => attributes['name']);
      expect(new Set(names).size).toBe(names.length);
    }
  });

  it('fail at the threshold, skip what is accepted, pass what is below, and err where nothing could be checked', async () => {
    const { out } = await axiswright(['check', '--format', 'junit', '--fail-on', 'warning', '.'], { folder: folder.path });
    const [first, second, third, , last] = read(out).children;
    const stateOf = (suite: Element | undefined, code: string): string | undefined => cases(suite).find(({ attributes }) => attributes['name']?.startsWith(`${code} `))?.children[0]?.name;
    expect(stateOf(first, 'drops-unpowered')).toBe('failure');
    expect(stateOf(first, 'screw-too-fast-for-its-maker')).toBe('skipped');
    expect(cases(first).find(({ children }) => children[0]?.name === 'skipped')?.children[0]?.attributes['message']).toBe('accepted: tried <long> & "hard"');
    expect(counts(second)).toMatchObject({ failures: '0', errors: '0' });
    expect(counts(third)).toMatchObject({ failures: '2' });
    expect(counts(last)).toEqual({ tests: '1', failures: '0', errors: '1', skipped: '0' });
    expect(cases(last)[0]?.children[0]?.attributes['message']).toBe('binary.machine.yaml is not a text in UTF-8.');
    const drop = cases(first).find(({ attributes }) => attributes['name']?.startsWith('drops-unpowered'));
    expect(drop?.children[0]?.text).toContain('\nfix: ');
    expect(drop?.children[0]?.text).toMatch(/^lift\.machine\.yaml:\d+:\d+: error: /);
  });

  it('write no character that XML does not know', () => {
    const row = {
      code: 'odd', severity: 'error' as const, message: 'a\u0000b\ud800c]]>\u001bd\ufffee & <f> "g"\r\n\t', cautions: [], span: { start: 0, end: 0 }, start: { line: 1, column: 1 }, end: { line: 1, column: 1 },
      related: [], fixes: [], entry: '\udfff',
    };
    const report = new JunitReport('error');
    const [suite] = read(`${report.begin()}${report.file({ path: 'x\u0007', rows: [row, row], failures: [] })}${report.end({ status: 1, failOn: 'error', counts: { error: 2, warning: 0, information: 0, hint: 0 }, sentence: '', failures: [], unmatched: ['<*>'] })}`).children;
    expect(cases(suite)[0]?.children[0]?.attributes['message']).toBe('a\ufffdb\ufffdc]]>\ufffdd\ufffde & <f> "g"\r\n\t');
    expect(cases(suite).map(({ attributes }) => attributes['name'])).toEqual(['odd at \ufffd', 'odd at \ufffd (2)']);
  });
});
