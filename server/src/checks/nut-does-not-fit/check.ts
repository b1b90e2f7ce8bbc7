import { nutMismatch } from '../../machine/size-contradictions.ts';
import { check } from '../check.ts';
import { dimensionText } from '../thread-words.ts';

export default check({
  id: 'nut-does-not-fit',
  title: 'Nut does not fit the screw',
  summary: 'The thread written for the nut differs from that of the screw.',
  place: 'nut.size',
  basis: 'standard',
  sources: [{ title: 'ISO 2902', where: 'diameter, pitch, lead and hand of both must agree' }],
  because: ['screw.size', 'screw.lead', 'screw.hand'],
  judge: (facts) => (nutMismatch(facts) ? 'error' : undefined),
  message: (facts) => {
    const found = nutMismatch(facts);
    if (!found) return '';
    return `Nut ${facts.choice('nut.size') ?? ''} does not fit: its ${found.what} is ${dimensionText(found.nut, found.what)}, the screw's ${dimensionText(found.screw, found.what)}. It cannot be screwed on, or runs on the tips of a thread. Take the nut that belongs to the screw.`;
  },
});
