import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import type { Evaluation } from '../../server/src/figures/evaluation.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

function bed(changes: Readonly<Record<string, unknown>>): Evaluation {
  const [found] = analyse(readDocument('file:///bed.machine.yaml', yamlOf(machineWith('bed', changes))), []).evaluations.filter(({ subject }) => subject.kind === 'drive');
  if (!found) throw new Error('no drive');
  return found;
}
const need = (changes: Readonly<Record<string, unknown>>): number | undefined => bed(changes).bounds('supports.float-need')?.nominal;
const nut = (more: object): object => ({ joint: 'nut-decoupled', at: ['0 mm', '0 mm'], float: '1 mm', ...more });
const cold = { 'carried-part.temperature': '20 °C' };

describe('how far supports slide, by hand', () => {
  // Strain 23.5e-6 · 50 = 0.1175 %. The carriage under a ball at (−50, 100) mm holds both ways: the thermal centre.
  it('grows from the joint that holds both ways', () => {
    expect(need({ 'supports.right shaft': { joint: 'fork', at: ['350 mm', '100 mm'], across: 'y', float: '1 mm' } })).toBeCloseTo(0.4 * 1.175e-3, 9);
    expect(need({ 'supports.screw 1': nut({}) })).toBeCloseTo(Math.hypot(0.05, 0.1) * 1.175e-3, 9);
  });
  // Three balls on slides that meet in the middle, 150 mm from each: there nothing moves.
  it('grows from where radial slides meet', () => {
    const slide = (x: number, y: number, more: object = {}): object => ({ joint: 'ball-on-radial-slide', at: [`${x} mm`, `${y} mm`], ...more });
    const none = { 'supports.left rail': null, 'supports.right shaft': null, 'supports.screw 2': null, 'supports.screw 3': null };
    const [x, y] = [150 * Math.cos(Math.PI / 6), 75];
    expect(need({ ...none, 'supports.screw 1': slide(0, 150, { float: '1 mm' }), 'supports.b': slide(-x, -y), 'supports.c': slide(x, -y) })).toBeCloseTo(0.15 * 1.175e-3, 7);
  });
  // The carriage 0.1 mm out along x and along y. Along x all moves with it: 0.1 mm. Along y the part turns about the fork by 0.1/400, so that nut 1 at (0, 0), 350 mm before the fork and 100 mm beside the line,
  // moves 0.1 · 350/400 = 0.0875 mm along y and 0.1 · 100/400 = 0.025 mm along x. Together √((0.1 + 0.025)² + 0.0875²).
  it('moves with joints that stand out of their place', () => {
    const off = { ...cold, 'supports.left rail': { joint: 'carriage-on-ball', at: ['-50 mm', '100 mm'], offset: '0.1 mm' }, 'supports.screw 1': nut({}) };
    expect(need(off)).toBeCloseTo(1e-3 * Math.hypot(0.125, 0.0875), 9);
  });
  it('counts what the floating joint itself may be out', () => {
    expect(need({ ...cold, 'supports.screw 1': nut({ offset: '0.2 mm' }) })).toBeCloseTo(0.2e-3, 12);
  });
  it('names the support with the least to spare', () => {
    const two = bed({ 'supports.screw 1': nut({}), 'supports.right shaft': { joint: 'fork', at: ['350 mm', '100 mm'], across: 'y', float: '0.6 mm' } }).result('supports.float-use');
    expect(two).toMatchObject({ state: 'computed', note: 'on right shaft' });
  });
  it('says why it cannot tell', () => {
    expect(bed({}).result('supports.float-use')).toMatchObject({ state: 'unable' });
    expect(bed({ 'supports.screw 1': nut({}), 'supports.right shaft': null }).result('supports.float-use')).toMatchObject({ state: 'unable', reason: 'the carried part is not held, so that it could slide anywhere' });
  });
});

describe('what a jam costs the drive, by hand', () => {
  // Two springs of 2 N/µm, each in series with 2 N/µm of part and frame: 1 N/µm each, 0.5 N/µm together on 0.47 mm: 235 N.
  const rails = {
    'supports.left rail': { joint: 'carriage-on-ball', at: ['-50 mm', '100 mm'], stiffness: '2 N/µm' },
    'supports.right shaft': { joint: 'carriage-on-ball', at: ['350 mm', '100 mm'], stiffness: '2 N/µm' },
  };
  it('is halved by a part that gives as much as its joints', () => {
    expect(bed({ ...rails, 'carried-part.stiffness': '2 N/µm' }).bounds('supports.growth-jam-force')?.nominal).toBeCloseTo(235, 3);
    const softer = bed({ ...rails, 'carried-part.stiffness': '2 N/µm' }).result('supports.growth-jam-force');
    expect(softer.state === 'computed' ? softer.note : '').toContain('with what part and frame give');
  });
  it('makes a pressed nut rub round its screw', () => {
    const pressed = bed({
      ...cold, 'guides.friction': '0', 'supports.left rail': { joint: 'carriage-on-ball', at: ['0 mm', '0 mm'], stiffness: '2 N/µm', offset: '0.1 mm' },
      'supports.screw 1': { joint: 'nut-rigid', at: ['0 mm', '0 mm'], stiffness: '2 N/µm' }, 'nut.friction': '0.1',
    });
    // Nut and rail, 2 N/µm each, stand in one place: along x and along y 1 N/µm in series on 0.1 mm, 100 N each, √2 · 100 N = 141.4 N on the nut; the tilts of the nut take no part.
    // Tr12x3: mean diameter 10.5 mm; 0.1 · 141.4 N · π · 10.5 mm/3 mm = 155.5 N, times the efficiency with which torque becomes push.
    const efficiency = pressed.bounds('drive.shaft-efficiency')?.nominal ?? 0;
    expect(pressed.bounds('supports.jam-drag')?.nominal).toBeCloseTo(0.1 * Math.SQRT2 * 100 * Math.PI * 3.5 * efficiency, 4);
  });
});
