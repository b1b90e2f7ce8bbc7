import { check, timesOf } from '../check.ts';

export default check({
  id: 'screw-buckles',
  title: 'Screw buckles',
  summary: 'The push on the screw is too near to its buckling load.',
  place: 'screw.unsupported-length',
  figure: 'screw.buckling-use',
  bad: 'above',
  limits: [
    { at: 1 / 1.5, severity: 'error', basis: 'common practice' },
    { at: 1 / 3, severity: 'warning', basis: 'common practice', source: { title: 'Budynas and Nisbett', where: 'section 8-2; the factor is common practice' } },
  ],
  because: ['drive.motor-position', 'screw.root-diameter', 'screw.end-supports', 'axis.moved-mass'],
  message: ({ show, worst, choice, bounds, certain }) => {
    const hang = choice('drive.motor-position') !== 'above' && (bounds('axis.inclination')?.nominal ?? 0) > 0 ? 'Hang the screw from a thrust bearing at its top' : 'Shorten or support it';
    const fate = worst >= 1 ? `it ${certain ? 'bends' : 'may bend'} out sideways` : 'a bow or a knock may bend it out sideways';
    return `Screw is pushed with ${show('screw.compression', 'high')}, ${timesOf(worst)} the ${show('screw.buckling-load', 'low')} at which it buckles, where a third is usual: ${fate}. ${hang}, or take a thicker root.`;
  },
});
