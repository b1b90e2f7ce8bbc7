import { check, percent } from '../check.ts';

export default check({
  id: 'motor-shaft-overloaded',
  title: 'Load rests on the motor bearings',
  summary: 'Without a thrust bearing the axial load passes into the motor, which bears little.',
  place: 'motor.axial-load-limit',
  figure: 'motor.shaft-axial-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'error', basis: 'our threshold' },
    { at: 1, severity: 'warning', basis: 'common practice', source: { title: 'axial load limit of the motor; usual values by size from memory', weak: true } },
  ],
  when: ({ bounds }) => bounds('drive.reduction-ratio')?.nominal === 1,
  because: ['thrust-bearing.design', 'axis.moved-mass', 'motor.frame'],
  message: ({ show, worst }) =>
    `Load of ${show('drive.gravity-load', 'high')} rests on the motor bearings, ${percent(worst)} of the ${show('motor.axial-load-limit', 'low')} they bear: the shaft shifts and the bearings wear. Give the screw a thrust bearing.`,
});
