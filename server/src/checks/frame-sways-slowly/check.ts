import { check } from '../check.ts';
import { ringsLittle, ringsTell, swayText } from '../frame-words.ts';

export default check({
  id: 'frame-sways-slowly',
  title: 'Braced frame sways slowly',
  summary: 'The box swings at a low frequency although it is braced.',
  subject: 'machine',
  place: 'frame-box.top-mass',
  figure: 'frame-box.sway-frequency-braced',
  bad: 'below',
  when: (facts) => !ringsTell('frame-box', facts),
  milder: (facts) => ringsLittle('frame-box', facts),
  limits: [
    { at: 30, severity: 'warning', basis: 'common practice', source: { title: 'no published source', weak: true } },
    { at: 60, severity: 'information', basis: 'common practice', source: { title: 'fast machines and cutting; no published source', weak: true } },
  ],
  because: ['frame-box.top-mass', 'frame-box.panel-thickness', 'frame-box.brace-area', 'frame-box.height'],
  message: ({ show, bounds, certain }) =>
    `Braced box ${certain ? 'sways' : 'may sway'} at ${swayText(show, bounds('frame-box.sway-frequency-braced'), 'frame-box.sway-frequency-braced')}: each move leaves waves. Take a stiffer panel or two diagonals, fasten them at more places, or lighten the top.`,
});
