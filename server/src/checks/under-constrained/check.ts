import { check } from '../check.ts';
import { firstClause, andMore } from '../support-words.ts';

export default check({
  id: 'under-constrained',
  title: 'Carried part is not held',
  summary: 'With all drives held, the supports leave the carried part free to move.',
  place: 'supports',
  figure: 'supports.freedoms-drives-held',
  bad: 'above',
  limits: [{ at: 0, severity: 'error', basis: 'follows from the mechanics', source: { title: 'rank of the wrenches of all joints' } }],
  because: ['axis.support-joints'],
  message: ({ note }) => {
    const words = note('supports.freedoms-drives-held');
    return `Carried part is loose: with the drives held it still ${firstClause(words, 90, 'moves')}${andMore(words)}. It wobbles, or falls over. Add a support that holds this, or take a joint that holds more.`;
  },
});
