import { check, timesOf, type Facts } from '../check.ts';

/** Whether it is the parallelism and not the height that uses up most of what is permitted. */
const byParallelism = ({ bounds }: Facts): boolean => (bounds('guides.parallelism-use')?.high ?? 0) >= (bounds('guides.height-use')?.high ?? 0);

export default check({
  id: 'rails-out-of-line',
  title: 'Rails may lie farther out of line than their carriages forgive',
  summary: 'The rails may be farther out of parallel, or differ more in height, than rail makers permit for their size and preload.',
  place: (facts) => (byParallelism(facts) ? 'guides.parallel-within' : 'guides.level-within'),
  figure: 'guides.mounting-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice', source: { title: 'mounting tables of rail makers', weak: true } }],
  // A second rail that gives way across takes up what is out of parallel, and not what is too high.
  milder: (facts) => facts.choice('guides.second-rail') === 'floating' && byParallelism(facts),
  because: ['guides.size', 'guides.preload', 'guides.second-rail', 'guides.rail-spacing'],
  message: (judged) => {
    const { show, worst, certain, choice } = judged;
    const parallel = byParallelism(judged);
    const permitted = parallel ? show('guides.parallelism-permitted', 'low', 'guides.parallel-within') : show('guides.height-permitted', 'low', 'guides.level-within');
    const out = parallel ? `lie ${show('guides.parallel-within', 'high')} out of parallel` : `differ by ${show('guides.level-within', 'high')} in height`;
    const so = `Rails may ${out}, ${timesOf(worst)} the ${permitted} permitted${certain ? '' : ' with preload'}`;
    if (parallel && choice('guides.second-rail') === 'floating') return `${so}: the second rail has to give way by that. See that it floats far enough.`;
    return `${so}: the carriages press each other, run stiff and wear early. Line the rails up better, take carriages without preload${parallel ? ', or let one rail float' : ''}.`;
  },
});
