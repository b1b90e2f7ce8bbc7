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
    starts(titles, ['Take b', 'Move the drive to # mm', 'Lengthen the guide to # mm, carriages # mm apart']);
  });
  it('that wear out early get a larger rating', () => {
    starts(offered('guide-life-short', { 'guides.dynamic-rating': '100 N', 'guides.rated-travel': '50 km', 'guides.life': '500000 km' }), ['Take carriages rated # N dynamic']);
  });
  it('that are pressed too hard get a larger rail', () => {
    const rail = { 'mass.mass': '40 kg', 'motion.acceleration': '20 m/s²', 'guides.kind': 'profile-rail', 'guides.bearing': null, 'guides.size': 'miniature 7', 'guides.drive-offset': '300 mm' };
    starts(offered('guide-static-safety-low', rail), ['Take rails of size #', 'Move the drive to # mm']);
  });
});
