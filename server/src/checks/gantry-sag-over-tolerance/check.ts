import { check, percent } from '../check.ts';

export default check({
  id: 'gantry-sag-over-tolerance',
  title: 'Gantry sags too much',
  summary: 'The gantry beam bends and twists under what travels along it, by more than the tolerance or by much of it.',
  subject: 'machine',
  place: 'frame-gantry.sag-tolerance',
  figure: 'frame-gantry.sag-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'beam between its supports' } },
    { at: 1 / 3, severity: 'information', basis: 'our threshold', source: { title: 'a third leaves room for the other errors' } },
  ],
  because: ['frame-gantry.span', 'frame-gantry.carried-mass', 'frame-gantry.second-moment-upright', 'frame-gantry.overhang'],
  message: ({ show, worst, certain }) =>
    `Gantry lets the tool sink ${certain ? '' : 'up to '}${show('frame-gantry.sag-variation', 'high')} from the end of its travel to the middle: ${percent(worst)} of the tolerance. Take a higher section, clamp the ends, or lighten what travels.`,
});
