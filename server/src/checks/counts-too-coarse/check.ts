import { check, timesOf } from '../check.ts';

export default check({
  id: 'counts-too-coarse',
  title: 'Encoder too coarse for the resolution',
  summary: 'One count of the encoder is more travel than the resolution wanted.',
  place: 'axis.resolution',
  figure: 'axis.count-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics' }],
  because: ['motor.encoder-counts', 'drive.reduction-ratio', 'screw.lead'],
  message: ({ show, worst }) =>
    `One count of the encoder is ${show('axis.count-travel', 'high', 'axis.resolution')} of travel, ${timesOf(worst)} the resolution of ${show('axis.resolution', 'low')} wanted: the axis swings between two counts. Take an encoder with more counts, a reduction or less travel per turn.`,
});
