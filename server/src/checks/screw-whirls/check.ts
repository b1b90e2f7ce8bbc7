import { check, percent } from '../check.ts';

export default check({
  id: 'screw-whirls',
  title: 'Screw whirls',
  summary: 'The screw turns too near to its whirl speed, or beyond it.',
  place: 'screw.unsupported-length',
  figure: 'screw.whirl-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'Timoshenko, Vibration Problems in Engineering', where: 'transverse vibration of bars', weak: true } },
    { at: 'screw.whirl-share', severity: 'warning', basis: 'common practice' },
  ],
  because: ['motion.speed', 'screw.lead', 'screw.root-diameter', 'screw.end-supports'],
  message: ({ show, worst, limit, choice }) => {
    const far = choice('screw.end-supports') === 'fixed-free' ? 'Support the far end, shorten' : 'Shorten';
    const what = `Screw turns at ${show('screw.turning-speed', 'high')}, ${percent(worst)} of its whirl speed`;
    return limit === 1
      ? `${what}: it bows out and shakes the axis. ${far} the free length, take a thicker root or a larger lead, or go slower.`
      : `${what}, where ${percent(limit)} is usual: its bow grows and shakes the axis. ${far} the free length, take a larger lead, or go slower.`;
  },
});
