import { check } from '../check.ts';
import { andMore, firstClause } from '../support-words.ts';

export default check({
  id: 'levelling-fights-guides',
  title: 'Lifts fight the guides',
  summary: 'The carried part is to be levelled by lifts that move one by one, but guides or joints hold it from tilting.',
  place: 'levelling',
  figure: 'levelling.held',
  basis: 'follows from the mechanics',
  sources: [{ title: 'exact constraint (Blanding, Exact Constraint)' }],
  because: ['axis.support-joints', 'levelling.lift-places'],
  judge: ({ bounds }) => {
    if ((bounds('levelling.held-stiff')?.nominal ?? 0) > 0) return 'error';
    return (bounds('levelling.held')?.nominal ?? 0) > 0 ? 'information' : undefined;
  },
  message: ({ severity, note }) => {
    const words = note('levelling.held');
    const clause = firstClause(words, 100, 'its joints fix the tilt');
    if (severity !== 'error') return `Levels only within the play of its bushings: ${clause}${andMore(words)}. Small corrections are taken up, large ones bind. Let them align themselves.`;
    const cure = clause.includes('tilt about') ? 'Fit a joint that lets it tilt' : 'Let it move as one of the lifts, or take it away';
    return `Cannot be levelled: ${clause}${andMore(words)}. Lifts that move one by one bend guides or stall there. ${cure}.`;
  },
});
