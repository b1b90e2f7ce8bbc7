import { sizeMeaning } from '../../machine/trapezoidal-size.ts';
import { check, quantityText, type Facts } from '../check.ts';

/** Lead, pitch and starts where they cannot all be true; lengths in m. */
function clash(facts: Facts): { readonly lead: number; readonly pitch: number; readonly starts: number | undefined } | undefined {
  const meaning = sizeMeaning(facts);
  if (meaning?.kind === 'lead-not-whole-pitches') return { lead: meaning.lead, pitch: meaning.pitch, starts: undefined };
  if (facts.choice('screw.size') !== undefined) return undefined;
  const [lead, pitch, starts] = ['screw.lead', 'screw.pitch', 'screw.starts'].map((id) => facts.bounds(id)?.nominal);
  if (lead === undefined || pitch === undefined || starts === undefined) return undefined;
  if (Math.abs(lead - pitch * starts) <= 0.005 * lead) return undefined;
  return { lead, pitch, starts: facts.isDefault('screw.starts') ? undefined : starts };
}

export default check({
  id: 'lead-not-whole-pitches',
  title: 'Lead is not pitch times starts',
  summary: 'A thread advances by a whole number of pitches a turn, from 1 to 8, and here it does not.',
  place: (facts) => (facts.choice('screw.size') === undefined ? 'screw.lead' : 'screw.size'),
  basis: 'standard',
  sources: [{ title: 'ISO 2902', where: 'multi-start threads: lead = number of starts × pitch' }],
  because: ['screw.pitch', 'screw.starts', 'screw.lead'],
  judge: (facts) => (clash(facts) ? 'error' : undefined),
  message: (facts) => {
    const found = clash(facts);
    if (!found) return '';
    const { lead, pitch, starts } = found;
    const [leadText, pitchText] = [quantityText(lead, 'length', 'mm'), quantityText(pitch, 'length', 'mm')];
    const counted = starts === undefined ? `is ${Number((lead / pitch).toPrecision(3))} pitches of ${pitchText}` : `is not ${starts} × ${pitchText} = ${quantityText(pitch * starts, 'length', 'mm')}`;
    return `Lead ${leadText} ${counted}: a thread has 1 to 8 whole starts, so travel per turn and all figures are in doubt. Measure ten turns and correct the entry that is wrong.`;
  },
});
