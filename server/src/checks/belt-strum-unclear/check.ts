import { check } from '../check.ts';

export default check({
  id: 'belt-strum-unclear',
  title: 'Belt is too wide to set by its note',
  summary: 'No stretch of the belt is long enough for its note to tell the tension.',
  place: 'belt.tension',
  figure: 'belt.string-length',
  bad: 'below',
  limits: [{ at: 15, severity: 'information', basis: 'common practice' }],
  because: ['belt.width', 'belt.center-distance'],
  message: ({ show }) =>
    `Longest stretch of the belt is ${show('belt.string-length')} times its width, where 15 are needed: it swings as a strip and sounds higher than its tension. Set the tension by a known weight hung on it or by its stretch.`,
});
