import { check } from '../check.ts';

export default check({
  id: 'levelling-too-steep',
  title: 'Part stands steeper than allowed while it is levelled',
  summary: 'As measured, or on the way to level in whatever order, the part stands steeper than its joints or the gap to the tool allow.',
  place: 'levelling.steepest',
  figure: 'levelling.steepest-on-the-way',
  bad: 'above',
  limits: [{ at: 'levelling.steepest', severity: 'warning', basis: 'follows from the mechanics', source: { title: 'the limit written in the description' } }],
  because: ['levelling.measured-heights', 'levelling.lift-places'],
  message: ({ show, bounds, certain, limit }) => {
    const now = bounds('levelling.measured-tilt')?.nominal ?? 0;
    const allowed = show('levelling.steepest', 'low');
    if (now > limit) return `Part stands ${show('levelling.measured-tilt', 'nominal', 'levelling.steepest')} steep as measured, more than the ${allowed} allowed: joints bind or the tool touches before any lift has moved. Bring it near to level by hand, with the tool away.`;
    return `On the way to level the part ${certain ? 'stands' : 'may stand'} ${show('levelling.steepest-on-the-way', 'high', 'levelling.steepest')} steep in the flattest order there is, more than the ${allowed} allowed: joints bind. Move the lifts all at once, or allow more tilt.`;
  },
});
