import { check, percent } from '../check.ts';
import { ownerIn } from '../support-words.ts';

export default check({
  id: 'float-too-small',
  title: 'Support floats less than it has to',
  summary: 'Growth and misalignment move the carried part farther than a floating support can slide.',
  place: 'supports',
  figure: 'supports.float-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'error', basis: 'our threshold', source: { title: 'above twice the float more of the way is held back than let go' } },
    { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'at the end of its float a joint holds' } },
  ],
  because: ['carried-part.temperature', 'carried-part.material', 'conditions.frame-material', 'axis.support-joints'],
  message: ({ show, note, worst, certain }) =>
    `Float of ${ownerIn(note('supports.float-use'))} ${certain ? 'is' : 'may be'} too small: growth and misalignment move it by up to ${show('supports.float-need', 'high')}, ${percent(worst)} of what it can slide. At its end it holds, and the part jams. Let it slide farther.`,
});
