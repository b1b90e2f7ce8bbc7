import { check, percent } from '../check.ts';

export default check({
  id: 'screw-too-fast-for-its-maker',
  title: 'Screw turns faster than its maker allows',
  summary: 'The screw turns faster than the speed limit stated for it.',
  place: 'screw.speed-limit',
  figure: 'screw.turning-speed',
  bad: 'above',
  limits: [{ at: 'screw.speed-limit', severity: 'warning', basis: 'common practice', source: { title: 'the limit written in the description' } }],
  because: ['motion.speed', 'screw.lead'],
  message: ({ show, worst, limit }) =>
    `Screw turns at ${show('screw.turning-speed', 'high')}, ${percent(worst / limit)} of the ${show('screw.speed-limit')} allowed for it: it wears and heats early. Slow the axis or take a larger lead.`,
});
