import { check } from '../check.ts';
import { dragOutweighsForces, jamLimits } from '../jams.ts';
import { pairIn } from '../support-words.ts';

export default check({
  id: 'growth-jams',
  title: 'Jams when it warms up',
  summary: 'The carried part grows against the frame where supports hold it from growing.',
  place: 'supports',
  figure: 'supports.growth-jam-use',
  bad: 'above',
  limits: jamLimits.growth,
  when: (facts) => !dragOutweighsForces(facts),
  because: ['carried-part.temperature', 'carried-part.material', 'conditions.frame-material', 'axis.support-joints'],
  message: ({ show, note, certain, bounds }) => {
    const shrinks = (bounds('supports.growth-held')?.nominal ?? 0) < 0;
    return `${certain ? 'Jams' : 'May jam'} in work: the part ${shrinks ? 'falls short of' : 'outgrows'} the frame by ${show('supports.growth-held', shrinks ? 'low' : 'high').replace('-', '')}, but ${pairIn(note('supports.growth-jam-force'))} both hold on. Something binds or bends. Let one of them slide that way.`;
  },
});
