import { describe, expect, it } from 'vitest';
import { analyse, type Analysis } from '../../server/src/checks/analysis.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const look = (text: string): Analysis => analyse(readDocument('file:///test.machine.yaml', text), []);
const bed = (changes: Readonly<Record<string, unknown>> = {}): Analysis => look(yamlOf(machineWith('bed', changes)));
/** `code at path: message` of what is said of supports and their masses. */
const said = ({ problems }: Analysis): readonly string[] => problems.map(({ code, place, message }) => `${code} at ${place.path.join('/')}: ${message}`);

describe('an area', () => {
  it('says nothing without the place about which it lies', () => {
    expect(said(bed({ 'mass.at': null, 'mass.area': ['100 mm', '80 mm'] }))).toEqual([
      'area-without-place at masses/plate/area: "plate" may lie anywhere in an area, but it is not written where that is. Write "at": the middle of the area.',
    ]);
  });
  it('is as it should be with it', () => {
    expect(said(bed({ 'mass.area': ['100 mm', '80 mm'] }))).toEqual([]);
  });
});

describe('nuts among the supports', () => {
  it('are as many as the drive has units, or that is said where the units are', () => {
    expect(said(bed())).toEqual([]);
    expect(said(bed({ 'drive.units': 2 }))).toEqual([
      'nuts-miscounted at axes/lift/drive/units: 3 supports are nuts, but the drive has 2 units, so that the load is not shared by position. Write as many units as nuts.',
    ]);
    expect(said(bed({ 'drive.units': null }))[0]).toMatch(/^nuts-miscounted at axes\/lift\/drive\/screw: 3 supports are nuts, but the drive has 1 unit,/);
  });
  it('are not counted while one of the supports is half written', () => {
    expect(said(bed({ 'supports.screw 3': { at: ['150 mm', '300 mm'] } })).filter((one) => one.startsWith('nuts-'))).toEqual([]);
  });
});

describe('while one of several is half written, the others are not judged as if it were not there', () => {
  const without = (text: string, name: string): string => {
    const lines = text.split('\n');
    const from = lines.findIndex((line) => line.trim() === `${name}:`);
    const depth = lines[from]?.search(/\S/) ?? 0;
    const length = lines.slice(from + 1).findIndex((line) => line.search(/\S/) <= depth);
    return [...lines.slice(0, from + 1), ...lines.slice(from + 1 + length)].join('\n');
  };
  it('a support: three nuts and a rail hold the bed, and it is not called loose', () => {
    const found = look(without(yamlOf(machineWith('bed')), 'screw 3'));
    expect(found.evaluations.find(({ subject }) => subject.kind === 'drive')?.result('supports.freedoms-drives-held')).toMatchObject({ state: 'unable' });
    expect(found.findings.map(({ check }) => check)).not.toContain('under-constrained');
  });
  it('a member of the frame', () => {
    const found = look(without(yamlOf(machineWith('portal')), 'beam'));
    expect(found.findings.map(({ check }) => check)).not.toContain('frame-is-loose');
  });
});

it('a lift that is an upright guide is told', () => {
  const levelled = (third: string, along = {}): readonly string[] =>
    said(bed({ 'supports.guide': { joint: 'fork', at: ['400 mm', '100 mm'], across: 'y', ...along }, 'levelling.lifts': ['screw 1', 'screw 2', third] }));
  expect(levelled('guide')).toEqual([
    'lift-holds-no-height at axes/lift/levelling/lifts/2: "guide" is a guide: it lets the part run up and down, so it cannot lift there. Name the nuts or other supports that hold the height.',
  ]);
  expect(levelled('guide', { along: 'x', across: 'z' })).toEqual([]);
  expect(levelled('screw 3')).toEqual([]);
  expect(said(bed({ 'axis.direction': 'horizontal', 'supports.guide': { joint: 'fork', at: ['400 mm', '100 mm'], across: 'y' }, 'levelling.lifts': ['screw 1', 'screw 2', 'guide'] })).join()).not.toContain('lift-holds-no-height');
});

it('a stage that is half written leaves the ratio unknown, not as if there were no such stage', () => {
  const ratio = (stages: string) => {
    const text = yamlOf(machineWith('lift')).replace('    drive:\n', `    drive:\n      reduction:${stages}`);
    return look(text).evaluations.find(({ subject }) => subject.kind === 'drive')?.subject.reader.number('drive.reduction-ratio')?.nominal;
  };
  expect(ratio('\n        - { kind: belt, ratio: 2 }\n        - { kind: belt, ratio: 3 }\n')).toBe(6);
  expect(ratio('\n        - { kind: belt, ratio: 2 }\n        -\n')).toBeUndefined();
  expect(ratio(' []\n')).toBe(1);
});
