import { check } from '../check.ts';
import { pairIn } from '../support-words.ts';

export default check({
  id: 'growth-jams',
  title: 'Jams when it warms up',
  summary: 'The carried part grows against the frame where supports hold it from growing.',
  place: 'supports',
  figure: 'supports.growth-jam-use',
  bad: 'above',
  limits: [
    { at: 5, severity: 'error', basis: 'our threshold', source: { title: 'a force of several times the weight seizes or bends something' } },
    { at: 0.5, severity: 'warning', basis: 'our threshold', source: { title: 'half the weight is felt as stiff running' } },
  ],
  because: ['carried-part.temperature', 'carried-part.material', 'conditions.frame-material', 'axis.support-joints'],
  message: ({ show, note, certain, bounds }) => {
    const shrinks = (bounds('supports.growth')?.nominal ?? 0) < 0;
    return `${certain ? 'Jams' : 'May jam'} in work: the part ${shrinks ? 'falls short of' : 'outgrows'} the frame by ${show('supports.growth', shrinks ? 'low' : 'high').replace('-', '')}, but ${pairIn(note('supports.growth-jam-force'))} both hold on. Something binds or bends. Let one of them slide that way.`;
  },
});
