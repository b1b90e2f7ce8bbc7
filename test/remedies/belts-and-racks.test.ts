import { describe, expect, it } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analyseText, cures, textAfter } from './support.ts';

/** What a remedy of a check offers on a base machine with some entries changed. */
function offered(base: string, changes: Readonly<Record<string, unknown>>, check: string, remedy: string): { readonly title: string; readonly text: string } {
  const analysed = analyseText(yamlOf(machineWith(base, changes)));
  const finding = analysed.analysis.findings.find((one) => one.check === check);
  const cure = finding && cures(finding, analysed).find(({ remedies }) => remedies.includes(remedy));
  return cure ? { title: cure.title, text: textAfter(cure, analysed) } : { title: 'none', text: '' };
}

describe('values found on belts', () => {
  // 20 teeth of 3 mm are 60 mm a turn; the reduction is 3 to 1; 1.5 kg weigh 14.71 N, of which 1.5 times is 22.07 N.
  it('clamps the rail with the next usual force: 30 N', () => {
    expect(offered('belt-lift', { brake: null }, 'drops-unpowered', 'fit-a-brake').title).toMatch(/^Clamp the rail by a spring-applied brake of 30 N/);
  });
  it('moves a brake from the motor to the rail, with a force in place of its torque', () => {
    const { title, text } = offered('belt-lift', { brake: { 'holding-torque': '1 N·m', at: 'motor' } }, 'broken-belt-drops', 'clamp-the-rail');
    expect(title).toMatch(/^Clamp the rail by a spring-applied brake of 30 N/);
    expect(text).toMatch(/brake:\s+(?:at: rail\s+holding-force: 30 N|holding-force: 30 N\s+at: rail)/);
    expect(text).not.toContain('holding-torque: 1 N·m');
  });
  it('makes a brake at the motor as strong as the load asks for: 22.07 N · 60 mm / (2π · 3) = 0.0702 N·m, 0.1 N·m', () => {
    expect(offered('belt-lift', { brake: { 'holding-torque': '0.05 N·m', at: 'motor' } }, 'may-creep-unpowered', 'fit-a-brake').title).toMatch(/^Fit a 0\.1 N·m brake at the motor: .*, a broken belt still drops it$/);
  });
  it('hangs on a second belt', () => {
    expect(offered('belt-lift', { brake: { 'holding-torque': '1 N·m', at: 'motor' } }, 'broken-belt-drops', 'second-belt').text).toContain('units: 2');
  });
  it('sets the pulleys far enough apart: 80 mm + 700 mm are 780 mm, 780 or 790 mm with two digits', () => {
    expect(offered('belt', { 'axis.travel': '700 mm' }, 'belt-too-short-for-travel', 'room-between-the-pulleys').title).toMatch(/^Set the pulleys 7[89]0 mm apart/);
  });
  it('takes the next width of the profile, and carries over what was measured by the width', () => {
    const changes = { 'belt.specific-stiffness': '60 kN', 'belt.breaking-force': '900 N', 'belt.tension': '260 N', 'drive.shaft-support': 'outboard' };
    const { title, text } = offered('belt', changes, 'belt-overtensioned', 'wider-belt');
    expect(title).toMatch(/^Take a wider belt of 16 mm/);
    expect(title).toMatch(/data estimated$/);
    // By hand: 60 kN · 16/10 and 900 N · 16/10.
    expect(text).toContain('specific-stiffness: 96 kN');
    expect(text).toContain('breaking-force: 1440 N');
  });
  it('makes an idler large enough: 15 teeth of 3 mm, the least of the profile', () => {
    expect(offered('belt', { 'idlers.teeth': 12 }, 'idler-too-small', 'larger-idler').text).toMatch(/idlers:[^]*?teeth: 15/);
  });
  it('spares the shaft of the motor by an outer bearing', () => {
    expect(offered('belt', { 'motor.radial-load-limit': '60 N', 'motor.radial-load-distance': '15 mm', 'pulley.overhang': '15 mm' }, 'motor-shaft-bent-by-belt', 'outer-bearing').text).toContain('shaft-support: outboard');
  });
  it('gears down by whole numbers of teeth', () => {
    const { title, text } = offered('belt', { 'mass.mass': '12 kg' }, 'inertia-ratio-high', 'add-a-belt-reduction');
    const [, ratio] = /^Gear the motor down ([\d.]+) to 1 by a toothed belt/.exec(title) ?? [];
    const [, driving, driven] = /driving-teeth: (\d+)[^]*?driven-teeth: (\d+)/.exec(text) ?? [];
    expect(Number(driven) / Number(driving)).toBeCloseTo(Number(ratio), 9);
  });
});

describe('values found on crossed belts', () => {
  it('sets both belts to the mean of 80 N and 110 N', () => {
    expect(offered('crossed', { 'layout.path-tensions': ['80 N', '110 N'] }, 'belt-paths-unequal', 'equal-belts').title).toMatch(/^Set both belts to 95 N/);
  });
  it('leads both over the mean of 2.4 m and 3 m', () => {
    expect(offered('crossed', { 'layout.path-lengths': ['2.4 m', '3 m'] }, 'belt-paths-unequal', 'equal-belts').title).toMatch(/^Lead both belts alike over 2\.7 m/);
  });
});

describe('values found on racks', () => {
  // 2/sin² 20° = 17.1 teeth are not undercut (Budynas and Nisbett, section 13-7): 18 is the next whole number.
  it('takes a pinion of 18 teeth', () => {
    expect(offered('rack', { 'pinion.teeth': 14 }, 'pinion-undercut', 'larger-pinion').title).toMatch(/^Take a larger pinion of 18 teeth/);
  });
  it('springs the pinion in, and takes the play away that was written', () => {
    const { title, text } = offered('rack', { 'rack.preload': null, 'rack.backlash': '0.3 mm', 'axis.accuracy': '0.1 mm' }, 'rack-play-over-accuracy', 'spring-the-pinion-in');
    expect(title).toMatch(/^Spring the pinion into the rack with \d+ N/);
    expect(text).not.toContain('backlash: 0.3 mm');
  });
  it('widens the narrower part alone', () => {
    const { title, text } = offered('rack', { 'pinion.face-width': '6 mm', 'pinion.material': 'brass', 'mass.mass': '20 kg' }, 'rack-tooth-overstressed', 'wider-teeth');
    expect(title).toMatch(/^Take a pinion [\d.]+ mm wide/);
    expect(text).toMatch(/rack:[^]*?face-width: 12 mm/);
  });
});

describe('a drive with two transmissions', () => {
  it('keeps the one that is reckoned with, and takes the other out with all that belongs to it', () => {
    const screw = { screw: { size: 'Tr12x3', 'unsupported-length': '540 mm' }, nut: { material: 'bronze', length: '20 mm' } };
    const { title, text } = offered('belt', screw, 'two-transmissions', 'one-transmission');
    const keepsScrew = title.startsWith('Keep the screw, take the belt out');
    expect(title).toMatch(/^Keep the (?:screw, take the belt|belt, take the screw) out: all figures stay$/);
    for (const gone of keepsScrew ? ['belt:', 'pulley:', 'idlers:'] : ['screw:', 'nut:']) expect(text).not.toContain(gone);
  });
});

describe('remedies of screws', () => {
  it('propose nothing of screws and nuts on belts, and nothing of belts on screws', () => {
    const titles = (base: string, changes: Readonly<Record<string, unknown>>): readonly string[] => {
      const analysed = analyseText(yamlOf(machineWith(base, changes)));
      return analysed.analysis.findings.flatMap((finding) => cures(finding, analysed).map(({ title }) => title));
    };
    const hard = { 'mass.mass': '25 kg', 'motion.acceleration': '6 m/s²', 'motion.speed': '900 mm/s', 'axis.accuracy': '0.1 mm', brake: null };
    const onBelt = [...titles('belt', hard), ...titles('belt-lift', hard), ...titles('rack', hard)];
    expect(onBelt.length).toBeGreaterThan(10);
    expect(onBelt.filter((title) => /screw|nut\b|\bTr\d|lead of|thrust/i.test(title))).toEqual([]);
    const onScrew = titles('lift', { 'mass.mass': '60 kg', 'motion.speed': '90 mm/s', 'screw.size': 'Tr8x8(P2)', brake: null });
    expect(onScrew.length).toBeGreaterThan(10);
    expect(onScrew.filter((title) => /pulley|pinion|\brack|second belt|rail|wider belt/i.test(title))).toEqual([]);
  });
});
