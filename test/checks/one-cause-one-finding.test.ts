import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/src/checks/analysis.ts';
import { severityRank, type Finding } from '../../server/src/checks/judge.ts';
import { readDocument } from '../../server/src/language/read-document.ts';
import { machineWith, yamlOf } from '../support/machines.ts';

const findingsOf = (base: string, changes: Readonly<Record<string, unknown>>): readonly Finding[] =>
  analyse(readDocument('file:///test.machine.yaml', yamlOf(machineWith(base, changes))), []).findings;
const atLeast = (severity: Finding['severity'], findings: readonly Finding[]): string[] =>
  findings.filter((finding) => severityRank(finding.severity) <= severityRank(severity)).map(({ check }) => check).sort();

describe('one fault is one finding', () => {
  it('a missing thrust bearing, through coupling, motor and lost motion alike', () => {
    const thrust = ['coupling-carries-the-load', 'motor-shaft-overloaded', 'thrust-through-coupling', 'drive-gives-too-much', 'nut-play-too-large'];
    for (const form of ['beam', 'bellows', 'rigid', 'jaw', 'oldham']) {
      for (const position of ['above', 'below']) {
        for (const direction of ['vertical', 'horizontal']) {
          const found = findingsOf('lift', { 'thrust-bearing.design': 'none', 'coupling.form': form, 'drive.motor-position': position, 'axis.direction': direction, 'axis.accuracy': '0.3 mm' });
          expect(found.filter(({ check }) => thrust.includes(check)).length, `${form} ${position} ${direction}`).toBe(1);
        }
      }
    }
  });

  it('too little torque beyond the corner speed', () => {
    // 60 kg at 63 mm/s: 1260 rpm, twice the corner of 622 rpm.
    const found = findingsOf('lift', { 'motion.speed': '63 mm/s', 'mass.mass': '60 kg' }).map(({ check }) => check);
    expect(found).toContain('motor-cannot-lift');
    for (const check of ['motor-past-its-corner', 'motor-too-fast-to-estimate', 'motor-margin-thin']) expect(found).not.toContain(check);
  });

  it('a current beyond the rating, and the heat that it makes', () => {
    const found = findingsOf('lift', { 'drive.current-setting': '2 A', 'drive.current-setting-as': 'rms' }).map(({ check }) => check);
    expect(found).toContain('motor-current-above-rating');
    expect(found).not.toContain('motor-winding-too-hot');
  });

  it('a nut that is too short', () => {
    const short = { 'screw.size': 'Tr8x8(P2)', 'nut.material': 'pom', 'nut.lubrication': 'dry', 'nut.length': '5 mm', 'mass.mass': '40 kg', 'drive.units': 1, 'motion.duty': '5 %' };
    expect(findingsOf('lift', short).map(({ check }) => check).filter((check) => check.startsWith('nut-overpressed'))).toEqual(['nut-overpressed-at-rest']);
  });

  it('a jam, told by its force or by its drag but not by both', () => {
    const rail = (x: string) => ({ joint: 'rail-carriage', at: [x, '100 mm'], tilt: '0.01 rad', offset: '0.1 mm' });
    const both = { 'supports.left rail': rail('-50 mm'), 'supports.right shaft': rail('350 mm') };
    for (const friction of ['0.01', '0.1', '0.5']) {
      for (const stiffness of [undefined, '0.01 N/µm', '1 N/µm', '100 N/µm']) {
        for (const temperature of ['20 °C', '25 °C', '70 °C']) {
          const found = findingsOf('bed', { ...both, 'guides.friction': friction, 'guides.guided-length': '50 mm', 'carried-part.temperature': temperature, ...(stiffness === undefined ? {} : { 'carried-part.stiffness': stiffness }) }).map(({ check }) => check);
          expect(found.includes('jam-outpulls-drive') && (found.includes('growth-jams') || found.includes('misalignment-jams')), `${friction} ${stiffness ?? 'rigid'} ${temperature}`).toBe(false);
          expect(found.some((check) => ['jam-outpulls-drive', 'growth-jams', 'misalignment-jams'].includes(check))).toBe(true);
        }
      }
    }
  });

  it('lost motion that alone breaks the accuracy', () => {
    const found = findingsOf('lift', { 'axis.direction': 'horizontal', 'screw.grade': 'ground', 'nut.backlash': '0.2 mm', 'axis.accuracy': '0.1 mm' }).map(({ check }) => check);
    expect(found).toContain('nut-play-too-large');
    for (const check of ['position-error-over-accuracy', 'travel-needs-calibration']) expect(found).not.toContain(check);
  });
});

describe('a healthy machine', () => {
  it.each(['lift', 'ball-lift', 'router'])('%s has no error or warning, and at most two informations', (base) => {
    const found = findingsOf(base, {});
    expect(atLeast('warning', found)).toEqual([]);
    expect(atLeast('information', found).length).toBeLessThanOrEqual(2);
  });
  it('held by its thread says so, beside the pinch point', () => {
    // Tr8x1.5 in greased bronze holds 0.1035/0.06586 = 1.57 times (by hand in may-creep-unpowered).
    expect(atLeast('information', findingsOf('lift', { brake: null, 'screw.size': 'Tr8x1.5', 'coupling.bores': ['5 mm', '6 mm'], 'screw.journal-diameter': '6 mm' }))).toEqual(['held-by-friction-alone', 'pinch-point']);
  });
});
