import { check } from '../check.ts';

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
  message: ({ show, worst, choice, bounds }) => {
    const hang = choice('drive.motor-position') !== 'above' && (bounds('axis.inclination')?.nominal ?? 0) > 0 ? 'Hang the screw from a thrust bearing at its top' : 'Shorten or support it';
    return `Screw is pushed with ${show('screw.compression', 'high')}, and buckles at ${show('screw.buckling-load', 'low')}: safety ${(1 / worst).toPrecision(2)}, where 3 is usual. It bends out sideways. ${hang}, or take a thicker root.`;
  },
});
