import { sizeContradictions } from '../../machine/size-contradictions.ts';
import { check } from '../check.ts';
import { dimensionText, entryWords } from '../thread-words.ts';

export default check({
  id: 'screw-size-contradicted',
  title: 'Screw size contradicted',
  summary: 'A dimension written beside the size of the screw is not the one that the size stands for.',
  place: (facts) => `screw.${sizeContradictions(facts)[0]?.entry ?? 'size'}`,
  basis: 'standard',
  sources: [{ title: 'ISO 2902, ISO 2903 and ISO 2904', where: 'designation, limits and dimensions of trapezoidal threads' }, { title: 'ball screws: short designation by common practice' }],
  because: ['screw.size'],
  judge: (facts) => (sizeContradictions(facts).length > 0 ? 'error' : undefined),
  message: (facts) => {
    const found = sizeContradictions(facts);
    const first = found[0];
    if (!first) return '';
    const more = found.length > 1 ? ` (and ${found.length - 1} more)` : '';
    return `Screw ${entryWords(first.entry)} ${dimensionText(first.written, first.entry)} contradicts size ${facts.choice('screw.size') ?? ''}, which has ${dimensionText(first.bySize, first.entry)}${more}: every figure may be wrong. Correct one, or remove the entry.`;
  },
});
