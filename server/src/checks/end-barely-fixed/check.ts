import { check } from '../check.ts';

export default check({
  id: 'end-barely-fixed',
  title: 'Fixed end is barely fixed',
  summary: "Two bearings close together do not hold the motor's end of a thick screw against tilt.",
  place: 'screw.bearing-spacing',
  figure: 'screw.end-fixity',
  bad: 'below',
  limits: [{ at: 20, severity: 'information', basis: 'our threshold', source: { title: 'beam theory: at 20 the buckling load has gained 87 of the 105 % that a rigid clamp adds' } }],
  because: ['screw.root-diameter', 'screw.unsupported-length', 'screw.end-supports'],
  message: ({ show, worst }) =>
    `Two bearings ${show('screw.bearing-spacing')} apart hold the motor end with a fixity of ${worst.toPrecision(2)}; from 20 on it counts as fixed. Whirl and buckling are computed with what they give. Space them wider, or call the end supported.`,
});
