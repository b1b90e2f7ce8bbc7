import { check } from '../check.ts';
import { countsAsRigid, dragOutweighsForces, jamLimits } from '../jams.ts';
import { pairIn } from '../support-words.ts';

export default check({
  id: 'misalignment-jams',
  title: 'Jams where supports do not line up',
  summary: 'Supports that may stand out of their place by as much as is written strain each other.',
  place: 'supports',
  figure: 'supports.misalignment-jam-use',
  bad: 'above',
  limits: jamLimits.misalignment,
  when: (facts) => !dragOutweighsForces(facts),
  because: ['axis.support-joints'],
  message: (facts) => {
    const { show, note, certain } = facts;
    return `Supports out of line ${certain ? 'bind' : 'may bind'}: by as much as they may be off, ${pairIn(note('supports.misalignment-jam-force'))} press each other with up to ${show('supports.misalignment-jam-force', 'high')}${countsAsRigid(facts) ? ' if all else is rigid' : ''}. Line them up more closely, or let one joint float.`;
  },
});
