import { check } from '../check.ts';

export default check({
  id: 'screw-too-short-for-travel',
  title: 'Screw too short for the travel',
  summary: 'The nut cannot make the travel within the free length of the screw.',
  place: 'screw.unsupported-length',
  figure: 'screw.length-needed',
  bad: 'above',
  limits: [{ at: 'screw.unsupported-length', severity: 'error', basis: 'follows from the mechanics' }],
  because: ['axis.travel', 'nut.length', 'screw.end-supports'],
  message: ({ show, certain }) =>
    `Nut ${certain ? 'runs' : 'may run'} into a bearing: travel and nut need ${show('screw.length-needed', 'high', 'screw.unsupported-length')}, and ${show('screw.unsupported-length', 'low')} of the screw are free. Correct the free length or the travel: whirl and buckling rest on them.`,
});
