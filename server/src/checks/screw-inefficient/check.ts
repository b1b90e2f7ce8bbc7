import { check, percent } from '../check.ts';

export default check({
  id: 'screw-inefficient',
  title: 'Screw turns most of the torque into heat',
  summary: 'Less than a quarter of the work at the screw lifts the load.',
  place: 'screw.size',
  figure: 'screw.efficiency-with-bearing',
  bad: 'below',
  limits: [{ at: 0.25, severity: 'hint', basis: 'our threshold' }],
  because: ['nut.friction', 'screw.lead', 'thrust-bearing.friction'],
  message: ({ show, worst, certain }) =>
    `Screw ${certain ? 'is' : 'may be only'} ${percent(worst)} efficient with its thrust bearing (friction ${show('nut.friction', 'high')}): the rest heats the nut. A larger lead needs less torque for the same force, but holds less well.`,
});
