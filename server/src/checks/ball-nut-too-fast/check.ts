import { check, quantityText, timesOf } from '../check.ts';

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
  message: ({ show, worst, limit, certain, isDefault }) =>
    `Ball nut runs at ${show('nut.speed-factor', 'high')}, ${timesOf(worst / limit)} the ${quantityText(limit, 'diameter-speed', 'mm·rpm')} that ${
      certain || !isDefault('nut.speed-value') ? 'its return stands' : 'a nut with return tubes stands'
    }: balls ${certain ? 'batter' : 'may batter'} the return and break it. Take a larger lead, or a nut for higher speed.`,
});
