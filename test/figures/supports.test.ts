import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import type { Evaluation } from '../../server/src/figures/evaluation.ts';
import { allFigures } from '../../server/src/figures/registry.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { JOINT_FORMS } from '../../server/src/mechanics/constraint-wrenches.ts';
import { JOINT_KINDS, rowOf, supportOf, type SupportJoint } from '../../server/src/machine/support-joint.ts';
import schema from '../../schemas/machine.schema.json' with { type: 'json' };
import { machineWith, yamlOf } from '../support/machines.ts';

function bed(changes: Readonly<Record<string, unknown>> = {}, base = 'bed'): Evaluation {
  const [found] = analyse(readDocument('file:///bed.machine.yaml', yamlOf(machineWith(base, changes))), []).evaluations.filter(({ subject }) => subject.kind === 'drive');
  if (!found) throw new Error('no drive');
  return found;
}

function value(evaluation: Evaluation, id: string): number {
  const result = evaluation.result(id);
  if (result.state !== 'computed') throw new Error(`${id}: ${JSON.stringify(result)}`);
  return result.nominal;
}

const noteOf = (evaluation: Evaluation, id: string): string | undefined => {
  const result = evaluation.result(id);
  return result.state === 'computed' ? result.note : undefined;
};

function hint(evaluation: Evaluation): string | undefined {
  const result = evaluation.result('supports.redundant-held');
  return result.state === 'computed' ? allFigures().get('supports.redundant-held')?.hint?.(result) : undefined;
}

const carriage = (x: string, more: object = {}): object => ({ joint: 'carriage-on-ball', at: [x, '100 mm'], ...more });

describe('the joints', () => {
  it('are those of the schema, in its order', () => {
    expect(schema.$defs.support.properties.joint.enum).toEqual(JOINT_KINDS);
    expect(Object.keys(JOINT_FORMS)).toEqual(JOINT_KINDS);
  });
  it('come out of their row of the table as they went in', () => {
    const joint: SupportJoint = {
      kind: 'fork', at: [0.1, -0.2, 0.3], axis: [0, 0, 1], across: [0, 1, 0], lead: 0.003, stiffness: { low: 1e6, high: 2e6 }, tiltStiffness: { low: 3, high: 4 }, offset: 1e-4, tilt: 2e-3, loadLimit: 50, float: 4e-4,
    };
    expect(supportOf(rowOf(joint))).toEqual(joint);
    expect(supportOf(rowOf({ ...joint, across: undefined, loadLimit: undefined, float: undefined }))).toEqual({ ...joint, across: undefined, loadLimit: undefined, float: undefined });
  });
});

describe('freedoms and redundancies of a bed, counted by hand', () => {
  // A carriage under a ball holds x and y, the fork the turn about z; nuts that float hold one height each while the drives hold.
  it('the exact one: 3 left to the guides, none with drives held, nothing twice', () => {
    const exact = bed();
    expect([value(exact, 'supports.freedoms-guides-alone'), value(exact, 'supports.freedoms-drives-running'), value(exact, 'supports.freedoms-drives-held')]).toEqual([3, 3, 0]);
    expect([value(exact, 'supports.redundant'), value(exact, 'supports.redundant-held'), value(exact, 'supports.redundant-stiff')]).toEqual([0, 0, 0]);
    expect(hint(exact)).toBe('exactly constrained');
  });
  // 5 of the carriage and 1 of the fork on rank 5; with 3 threads 9 on rank 6.
  it('a bolted carriage beside the fork: 1 running, 3 held', () => {
    const stiff = bed({ 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] } });
    expect([value(stiff, 'supports.redundant'), value(stiff, 'supports.redundant-held')]).toEqual([1, 3]);
    expect(noteOf(stiff, 'supports.redundant')).toBe('left rail and right shaft both fix shift along Y');
    expect(value(stiff, 'supports.freedoms-guides-alone')).toBe(1);
  });
  // 5 of the carriage and 3 threads on rank 6: both tilts twice.
  it('a bolted carriage and no fork: nothing running, both tilts held twice', () => {
    const tilts = bed({ 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] }, 'supports.right shaft': null });
    expect([value(tilts, 'supports.redundant'), value(tilts, 'supports.redundant-held')]).toEqual([0, 2]);
    expect(hint(tilts)).toBe('2 redundant: tilt');
  });
  it('needs the direction of what could point either way', () => {
    const unknown = bed({ 'supports.right shaft': { joint: 'fork', at: ['350 mm', '100 mm'] } });
    expect(unknown.result('supports.redundant')).toMatchObject({ state: 'unable' });
    const level = bed({ 'axis.direction': 'horizontal' });
    expect(level.result('supports.redundant')).toMatchObject({ state: 'unable' });
  });
  it('says nothing of an axis without supports', () => {
    expect(bed({}, 'lift').result('supports.redundant').state).toBe('left-out');
  });
});

describe('jam forces of a bed, by hand', () => {
  // Aluminium 23 to 24 µm/(m·K), 20 °C to 70 °C, the frame stays: 23.5e-6 · 50 = 0.1175 %; rail and fork 400 mm apart: 0.47 mm.
  it('grows by 0.47 mm, and by nothing that an exact bed would hold', () => {
    expect(value(bed(), 'supports.growth')).toBeCloseTo(0.47e-3, 8);
    expect(value(bed(), 'supports.growth-jam-force')).toBe(0);
    expect(value(bed(), 'supports.jam-drag')).toBe(0);
  });
  // Two springs of 2 N/µm in series: 1 N/µm · 0.47 mm = 470 N; friction 0.01 on both: 9.4 N.
  it('two rails of 2 N/µm that hold it apart: 470 N, and 9.4 N of drag', () => {
    const jams = bed({ 'supports.left rail': carriage('-50 mm', { stiffness: '2 N/µm' }), 'supports.right shaft': carriage('350 mm', { stiffness: '2 N/µm' }) });
    expect(value(jams, 'supports.growth-jam-force')).toBeCloseTo(470, 3);
    expect(noteOf(jams, 'supports.growth-jam-force')).toMatch(/^hardest between left rail and right shaft;/);
    expect(value(jams, 'supports.jam-drag')).toBeCloseTo(9.4, 5);
  });
  // The screw that floats stands farther off, 550 mm from the rail; the joints that hold are 400 mm apart: 0.1175 % of that.
  it('counts the growth between the two that hold, not over the farthest two', () => {
    const jams = bed({ 'supports.right shaft': carriage('350 mm'), 'supports.screw 2': { joint: 'nut-decoupled', at: ['500 mm', '100 mm'] } });
    expect(value(jams, 'supports.growth-held')).toBeCloseTo(0.47e-3, 8);
    expect(value(jams, 'supports.growth')).toBeCloseTo(0.64625e-3, 8);
    expect(value(bed(), 'supports.growth-held')).toBe(0);
  });
  // Held 400 mm apart along x and 300 mm along y. Two that hold x and y leave the turn: only the distance of 500 mm is held twice, 0.1175 % of it.
  // A bolted carriage holds the turn as well, and a fork x alone: 400 mm of it are held back, whatever lies across.
  it('counts it along the force with which they hold', () => {
    expect(value(bed({ 'supports.right shaft': { joint: 'carriage-on-ball', at: ['350 mm', '400 mm'] } }), 'supports.growth-held')).toBeCloseTo(0.5875e-3, 8);
    const turned = { 'supports.left rail': { joint: 'rail-carriage', at: ['-50 mm', '100 mm'] }, 'supports.right shaft': { joint: 'fork', at: ['350 mm', '400 mm'], across: 'x' } };
    expect(value(bed(turned), 'supports.growth-held')).toBeCloseTo(0.47e-3, 8);
  });
  // A carriage of 20 N/µm against another: 10 N/µm · 0.47 mm = 4700 N; of size 12 they have 20 to 60 N/µm, √(20 · 60)/2 · 0.47 mm = 8141 N.
  it('takes carriages as stiff as the guides say, or as their size is', () => {
    const rails = { 'guides.kind': 'profile-rail', 'supports.left rail': carriage('-50 mm'), 'supports.right shaft': carriage('350 mm') };
    expect(value(bed({ ...rails, 'guides.carriage-stiffness': '20 N/µm' }), 'supports.growth-jam-force')).toBeCloseTo(4700, 0);
    expect(value(bed({ ...rails, 'guides.size': '12' }), 'supports.growth-jam-force')).toBeCloseTo(8140.6, 0);
  });
  // Shafts of 10 mm on holders 400 mm apart, 300 mm of travel: at its end the bushing stands 50 mm from a holder. k = 3 E I L/(a² b²), free to tilt; E 200 to 212 GPa: 384.7 to 407.8 N/mm;
  // one after the other with bushings of 10 to 30 N/µm 370.4 to 402.3, in the middle of equal ratios 386.0 N/mm. Two against each other: 193.0 N/mm · 0.47 mm = 90.7 N.
  it('counts that a shaft on two holders gives: 90.7 N, and not the 4070 N of its bushings alone', () => {
    const bushing = (x: string) => ({ joint: 'self-aligning-bushing', at: [x, '100 mm'] });
    const shafts = { 'guides.kind': 'round-shaft', 'guides.bearing': 'ball-bushing', 'guides.shaft-diameter': '10 mm', 'guides.unsupported-length': '400 mm', 'guides.shaft-ends': 'supported' };
    const both = { 'supports.left rail': bushing('-50 mm'), 'supports.right shaft': bushing('350 mm') };
    expect(value(bed({ ...shafts, ...both }), 'supports.growth-jam-force')).toBeCloseTo(90.72, 1);
    // √(10 · 30)/2 N/µm · 0.47 mm, where the shafts are supported along their length.
    expect(value(bed({ ...shafts, 'guides.kind': 'supported-shaft', ...both }), 'supports.growth-jam-force')).toBeCloseTo(4070.3, 0);
  });
  // A frame that warms by 25 K and grows by 11.7e-6 · 25 less: 0.1175 % − 0.02925 % = 0.08825 %.
  it('counts a warm frame', () => {
    expect(value(bed({ 'conditions.machine-temperature': '45 °C' }), 'supports.growth-strain')).toBeCloseTo(0.88250e-3, 6);
  });
});

describe('what each support carries, by hand', () => {
  // Nuts at (0, 0), (300, 0), (150, 300) mm, 6 kg: the share of the third is y/300.
  it('a third each in the middle, 89.4 mm from the nearest edge', () => {
    const even = bed();
    expect(value(even, 'supports.share-least')).toBeCloseTo(1 / 3, 9);
    expect(value(even, 'supports.share-most')).toBeCloseTo(1 / 3, 9);
    // |300 · 150 − 150 · 100| / √(150² + 300²)
    expect(value(even, 'supports.distance-to-edge')).toBeCloseTo(0.0894427, 6);
  });
  it('feeds the most loaded screw: 47.5 % at y = 15 mm, not a third', () => {
    const uneven = bed({ 'mass.at': ['150 mm', '15 mm'] });
    expect(value(uneven, 'drive.load-share')).toBeCloseTo(0.475, 9);
    // 0.475 · 6 kg · 9.80665 m/s²
    expect(value(uneven, 'drive.gravity-load')).toBeCloseTo(27.949, 3);
    expect(value(uneven, 'supports.reaction-least')).toBeCloseTo(0.05 * 6 * 9.80665, 6);
    // On the way up at 0.2 m/s²: 0.475 · 6 · 10.00665.
    expect(value(uneven, 'supports.reaction-most')).toBeCloseTo(28.519, 3);
  });
  it('shares equally where a mass has no place, or nuts and drives differ in number', () => {
    expect(value(bed({ 'mass.at': null }), 'drive.load-share')).toBeCloseTo(1 / 3, 12);
    expect(value(bed({ 'mass.at': ['150 mm', '15 mm'], 'drive.units': 2 }), 'drive.load-share')).toBe(0.5);
    expect(bed({ 'mass.at': null }).result('supports.share-most')).toMatchObject({ state: 'unable' });
  });
  it('takes the mounting of the nuts from their joints, unless it is written', () => {
    expect(bed({ 'nut.mounting': null }, 'bed').choice('nut.mounting')).toBe('decoupled');
  });
});
