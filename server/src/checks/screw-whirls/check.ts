import { check, percent, timesOf } from '../check.ts';

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
  message: ({ show, worst, choice, certain, bounds }) => {
    const cures = `${choice('screw.end-supports') === 'fixed-free' ? 'Support the far end, shorten' : 'Shorten'} the free length, take a thicker root or a larger lead, or go slower.`;
    const nominal = bounds('screw.whirl-use')?.nominal ?? worst;
    // The range is told where it reaches across the whirl speed itself.
    const share = nominal <= 1 && worst > 1 ? `${percent(nominal)} to ${percent(worst)} of` : timesOf(worst);
    const what = `Screw turns at ${show('screw.turning-speed', 'high')}, ${certain ? '' : 'at worst '}${share} its whirl speed`;
    if (nominal > 1) return `${what}: it bows out and shakes the axis. ${cures}`;
    const usual = percent(bounds('screw.whirl-share')?.nominal ?? 1);
    return `${what}, where ${usual} is usual: ${worst > 1 ? 'it may bow out and shake' : 'its bow grows and shakes'} the axis. ${cures}`;
  },
});
