import { check } from '../check.ts';

export default check({
  id: 'belt-goes-slack',
  title: 'Belt goes slack',
  summary: 'At the largest force of a move one span of the belt loses all of its tension.',
  place: 'belt.tension',
  figure: 'belt.slack-factor',
  bad: 'below',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics' }],
  because: ['belt.tension', 'motion.acceleration', 'axis.moved-mass', 'belt.nearest-distance'],
  message: ({ show, certain, bounds }) => {
    const note = bounds('belt.strum-frequency-least') ? ` (${show('belt.strum-frequency-least', 'high')} plucked with the carriage at the near end)` : '';
    return `Belt at ${show('belt.tension')} ${certain ? 'goes' : 'may go'} slack on one side at the largest force, which asks for ${show('belt.tension-needed', 'high')}: it then gives more and its teeth may jump. Tighten it${note}, or accelerate less.`;
  },
});
