import { describe, expect, it } from 'vitest';
import { machineWith, yamlOf } from '../support/machines.ts';
import { analysedAfter, analyseText, cures } from './support.ts';

/** What is offered for a finding, with numbers as #; each carried out and analysed afresh. */
function offered(check: string, changes: Readonly<Record<string, unknown>>): readonly string[] {
  const before = analyseText(yamlOf(machineWith('slider', changes)));
  const finding = before.analysis.findings.find((one) => one.check === check);
  if (!finding) throw new Error(`no ${check}: ${before.analysis.findings.map((one) => one.check).join()}`);
  return cures(finding, before).map((cure) => {
    expect(analysedAfter(cure, before).analysis.findings.filter((one) => one.check === check), cure.title).toEqual([]);
    return cure.title.replaceAll(/\d+(?:\.\d+)?/g, '#');
  });
}

const starts = (titles: readonly string[], beginnings: readonly string[]): void => {
  for (const beginning of beginnings) expect(titles.some((title) => title.startsWith(beginning)), `${beginning}\n${titles.join('\n')}`).toBe(true);
};

describe('guides', () => {
  it('that sag are held nearer or clamped, made thicker, or supported', () => {
    const titles = offered('guide-sags', { 'mass.mass': '4 kg', 'guides.shaft-diameter': '12 mm', 'axis.accuracy': '1 mm', 'axis.travel': '400 mm' });
    starts(titles, ['Set the holders nearer, # mm', 'Clamp the shaft ends', 'Take thicker guide shafts of # mm', 'Support the shafts along', 'Take profile rails of size #']);
  });
  it.each([['slider-jams', '300 mm'], ['slider-near-jam', '180 mm']])('that jam (%s) get other bearings, a nearer drive, a longer guide', (check, offset) => {
    const titles = offered(check, { 'guides.bearing': 'bronze-bushing', 'guides.friction': '0.2', 'guides.drive-offset': offset });
    starts(titles, ['Take b', 'Move the drive to # mm', 'Lengthen the guide to # mm, carriages # mm apart, the shafts to # mm']);
  });
  it('that wear out early get a larger rating', () => {
    starts(offered('guide-life-short', { 'guides.dynamic-rating': '100 N', 'guides.rated-travel': '50 km', 'guides.life': '500000 km' }), ['Take carriages rated # N dynamic']);
  });
  it('that are pressed too hard get a larger rail', () => {
    const rail = { 'mass.mass': '40 kg', 'motion.acceleration': '20 m/s²', 'guides.kind': 'profile-rail', 'guides.bearing': null, 'guides.size': 'miniature 7', 'guides.drive-offset': '300 mm' };
    starts(offered('guide-static-safety-low', rail), ['Take rails of size #', 'Move the drive to # mm']);
  });
  it('out of parallel get a floating second rail, or no preload', () => {
    const rail = { 'guides.kind': 'profile-rail', 'guides.bearing': null, 'guides.size': '15' };
    const before = analyseText(yamlOf(machineWith('slider', { ...rail, 'guides.preload': 'light', 'guides.parallel-within': '0.03 mm', 'guides.carriage-stiffness': '1 N/µm' })));
    const finding = before.analysis.findings.find(({ check }) => check === 'rails-out-of-line');
    if (!finding) throw new Error('no finding');
    const [cure] = cures(finding, before).filter(({ title }) => title.startsWith('Let the second rail give way across'));
    if (!cure) throw new Error('no cure');
    // It stays out of line; what is left says so and no more.
    expect(analysedAfter(cure, before).analysis.findings.filter(({ check }) => check === 'rails-out-of-line').map(({ severity }) => severity)).toEqual(['information']);
    starts(offered('rails-out-of-line', { ...rail, 'guides.preload': 'light', 'guides.parallel-within': '0.015 mm', 'guides.carriage-stiffness': '1 N/µm', 'guides.second-rail': 'floating' }), ['Take carriages without preload']);
  });
  it('that bind get a floating second rail', () => {
    const stiff = { 'guides.kind': 'supported-shaft', 'guides.bearing': 'bronze-bushing', 'guides.friction': '0.2', 'guides.carriage-stiffness': '10 N/µm', 'guides.parallel-within': '0.02 mm' };
    starts(offered('rails-bind', stiff), ['Let the second rail give way across']);
  });
  it.each([
    ['bushing-overpressed', { 'guides.pressure-limit': '20 kPa' }, ['Take bushings # mm long', 'Take thicker guide shafts', 'Take ball bushings']],
    ['bushing-overheats', { 'guides.heat-limit': '0.0018 MPa·m/s' }, ['Slow the axis to # mm/s', 'Take bushings # mm long', 'Take thicker guide shafts', 'Take ball bushings']],
    ['bushing-wears-out', { 'guides.specific-wear': '0.000001 mm³/(N·m)', 'guides.wear-allowed': '0.05 mm', 'guides.life': '2600 km' }, ['Take bushings # mm long', 'Take thicker guide shafts', 'Take ball bushings']],
  ])('of plain bushings: %s', (check, changes, beginnings) => {
    starts(offered(check, { 'mass.mass': '4 kg', 'guides.bearing': 'bronze-bushing', 'guides.carriage-length': '30 mm', ...changes }), beginnings);
  });
  it('whose shafts bend too hard or stand askew get thicker or shorter ones, clamped or supported, or other bushings', () => {
    const bent = { 'mass.mass': '60 kg', 'guides.shaft-diameter': '12 mm', 'axis.travel': '300 mm', 'guides.carriages': 1, 'guides.carriage-spacing': null, 'guides.guided-length': '30 mm' };
    starts(offered('guide-shaft-overstressed', bent), ['Take thicker guide shafts of # mm', 'Set the holders nearer']);
    starts(offered('bushing-tilts', { 'mass.mass': '7 kg', 'guides.shaft-diameter': '12 mm', 'axis.travel': '300 mm' }), ['Take thicker guide shafts of # mm', 'Take self-aligning ball bushings', 'Set the holders nearer']);
  });
  it('that do not fit are set apart, or get longer shafts', () => {
    starts(offered('carriages-overlap', { 'guides.carriage-length': '90 mm' }), ['Set the carriages # mm apart']);
    starts(offered('shaft-too-short-for-travel', { 'axis.travel': '540 mm' }), ['Set the carriages # mm apart', 'Take shafts with # mm between']);
  });
});
