import { check, timesOf } from '../check.ts';

export default check({
  id: 'reduction-error-over-accuracy',
  title: 'Error of the reduction is large beside the accuracy wanted',
  summary: 'What the stages of the reduction do wrong over a turn comes through to the axis.',
  place: 'drive.reduction',
  figure: 'drive.reduction-error-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'warning', basis: 'follows from the mechanics' },
    { at: 1 / 3, severity: 'information', basis: 'common practice' },
  ],
  because: ['drive.reduction-error', 'axis.accuracy', 'pulley.teeth', 'pinion.teeth'],
  message: ({ show, worst, certain }) =>
    `Reduction ${certain ? 'moves' : 'may move'} the axis by up to ${show('drive.reduction-travel-error', 'high', 'axis.accuracy')} to either side over its turns, ${timesOf(worst)} the accuracy wanted: waves that come back with its wheels. Take truer wheels, or put the error before a larger ratio.`,
});
