import { check } from '../check.ts';

export default check({
  id: 'motor-shaft-unusual',
  title: 'Shaft unusual for this motor face',
  summary: 'The face named by the frame size usually comes with another shaft.',
  place: 'motor.shaft-diameter',
  basis: 'standard',
  sources: [{ title: 'NEMA ICS 16 as quoted, and common practice', weak: true }],
  judge: ({ bounds }) => {
    const shaft = bounds('motor.shaft-diameter');
    const usual = bounds('motor.usual-shaft-diameter');
    return shaft && usual && Math.abs(shaft.nominal - usual.nominal) > 0.05e-3 ? 'information' : undefined;
  },
  because: ['motor.frame'],
  message: ({ show }) =>
    `Motor shaft of ${show('motor.shaft-diameter')} is unusual for ${show('motor.frame')}, which mostly has ${show('motor.usual-shaft-diameter')}: coupling or bracket may not fit. Compare shaft and frame with the sheet.`,
});
