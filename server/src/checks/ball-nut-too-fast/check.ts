import { check, percent, quantityText } from '../check.ts';

/** 150 000 mm·rpm in m·rad/s. */
const FASTEST_RETURN = (150 * 2 * Math.PI) / 60;

export default check({
  id: 'ball-nut-too-fast',
  title: 'Ball nut runs too fast for its return',
  summary: 'Diameter times speed is beyond what the return of the balls stands.',
  place: 'nut.speed-value',
  figure: 'nut.speed-factor',
  bad: 'above',
  limits: [
    { at: FASTEST_RETURN, severity: 'error', basis: 'common practice' },
    { at: 'nut.speed-value', severity: 'warning', basis: 'common practice' },
  ],
  because: ['nut.speed-value', 'motion.speed', 'screw.lead', 'screw.major-diameter'],
  message: ({ show, worst, limit }) =>
    `Ball nut runs at ${show('nut.speed-factor', 'high')}, ${percent(worst / limit)} of the ${quantityText(limit, 'diameter-speed', 'mm·rpm')} that its return stands: balls batter the return and break it. Take a larger lead, or a nut for higher speed.`,
});
