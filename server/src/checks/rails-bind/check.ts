import { check, timesOf } from '../check.ts';

export default check({
  id: 'rails-bind',
  title: 'Rails out of line drag on the drive',
  summary: 'The friction that rails out of line can cause is a large part of the force that the drive has to spare.',
  place: 'guides',
  figure: 'guides.mismatch-drag-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'drag against the force that is left to the drive' } },
    { at: 0.3, severity: 'warning', basis: 'common practice' },
  ],
  because: ['guides.parallel-within', 'guides.level-within', 'guides.friction', 'guides.second-rail'],
  message: ({ show, worst, certain }) =>
    `Rails as far out of line as written ${certain ? 'drag' : 'may drag'} with up to ${show('guides.mismatch-drag', 'high')}, ${timesOf(worst)} what the drive has to spare: ${worst > 1 ? 'it stalls' : 'it runs stiff'} where they are farthest out. Line them up better or let one rail float.`,
});
