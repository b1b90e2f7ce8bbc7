import { sizeMeaning } from '../../machine/trapezoidal-size.ts';
import { check, quantityText, type Facts } from '../check.ts';

function openReadings(facts: Facts) {
  const meaning = sizeMeaning(facts);
  if (meaning?.kind !== 'ambiguous') return undefined;
  // A pitch (or, without a lead, a lead) that the person writes settles it.
  const settled = meaning.lead === undefined ? facts.bounds('screw.lead') !== undefined : facts.bounds('screw.pitch') !== undefined && !facts.isDefault('screw.pitch');
  return settled ? undefined : meaning;
}

const millimetres = (metres: number): string => String(Number((metres * 1000).toFixed(3)));

export default check({
  id: 'screw-size-ambiguous',
  title: 'Screw size can be read in several ways',
  summary: 'The size does not say its lead, or gives a lead without the pitch.',
  place: 'screw.size',
  basis: 'standard',
  sources: [{ title: 'ISO 2902', where: 'a single number after × is the pitch of a single start; multi-start threads add (P…)' }],
  judge: (facts) => (openReadings(facts) ? 'warning' : undefined),
  message: (facts) => {
    const meaning = openReadings(facts);
    const size = facts.choice('screw.size') ?? '';
    if (meaning?.lead === undefined) {
      return `Size ${size} names no lead: screws of this diameter are sold with several, and speed, torque and holding all hang on it. Measure ten turns, then write it out, for example Tr8x8(P2).`;
    }
    const d = millimetres(meaning.majorDiameter);
    const l = millimetres(meaning.lead);
    const written = meaning.readings.map(({ pitch, starts }) => `Tr${d}x${l}(P${millimetres(pitch)}), ${starts} starts`).join(', or ');
    return written === ''
      ? `Size ${size} has no usual reading: ${quantityText(meaning.lead, 'length', 'mm')} is too coarse for one start, and no usual pitch divides it. Write the pitch, as in Tr8x8(P2).`
      : `Size ${size} leaves its pitch open: ${quantityText(meaning.lead, 'length', 'mm')} is too coarse for one start. Root diameter and strength hang on it. Write ${written}.`;
  },
});
