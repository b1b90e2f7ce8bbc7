import { check } from '../check.ts';
import { ringsLittle, ringsTell, swayText } from '../frame-words.ts';

export default check({
  id: 'frame-unbraced',
  title: 'Frame is not braced',
  summary: 'The box leans over easily in a direction in which neither diagonal nor panel holds it.',
  subject: 'machine',
  place: ({ bounds, choice }) => `frame-box.braced-${softer(bounds, choice)}`,
  figure: 'frame-box.sway-frequency-unbraced',
  bad: 'below',
  when: (facts) => !ringsTell('frame-box', facts),
  milder: (facts) => ringsLittle('frame-box', facts),
  limits: [
    { at: 30, severity: 'warning', basis: 'common practice', source: { title: 'no published source', weak: true } },
    { at: 60, severity: 'information', basis: 'common practice', source: { title: 'fast machines and cutting; no published source', weak: true } },
  ],
  because: ['frame-box.joint-stiffness', 'frame-box.top-mass', 'frame-box.height'],
  message: ({ show, bounds, choice, certain }) =>
    `Box frame has no brace or panel along ${softer(bounds, choice)} and ${certain ? 'sways' : 'may sway'} at ${swayText(show, bounds('frame-box.sway-frequency-unbraced'), 'frame-box.sway-frequency-unbraced')} on its corners alone: each move leaves waves. Screw a panel or a diagonal to a side along ${softer(bounds, choice)}.`,
});

/** The softer of the directions that are not braced. */
function softer(bounds: (id: string) => { readonly low: number } | undefined, choice: (id: string) => string | undefined): 'x' | 'y' {
  const frequency = (along: 'x' | 'y'): number => (choice(`frame-box.braced-${along}`) === 'none' ? (bounds(`frame-box.sway-frequency-${along}`)?.low ?? Infinity) : Infinity);
  return frequency('y') < frequency('x') ? 'y' : 'x';
}
