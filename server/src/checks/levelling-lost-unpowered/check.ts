import { check } from '../check.ts';
import { holdingCure } from '../unpowered.ts';

export default check({
  id: 'levelling-lost-unpowered',
  title: 'Level is lost with power off',
  summary: 'The lifts do not hold without power, each by itself, so that the part has to be levelled anew.',
  place: 'levelling',
  figure: 'levelling.kept-unpowered',
  basis: 'follows from the mechanics',
  sources: [{ title: 'see what the axis does with power off' }],
  because: ['levelling.moved-by', 'nut.friction', 'screw.lead', 'brake.holding-torque'],
  // Below 0.5 level is lost, below 1.5 it may be lost slowly. What only the uncertain end brings about counts one severity lower.
  judge: ({ bounds }) => {
    const kept = bounds('levelling.kept-unpowered');
    if (!kept || kept.low >= 1.5) return undefined;
    if (kept.low < 0.5) return kept.nominal < 0.5 ? 'warning' : { severity: 'information', certain: false };
    return kept.nominal < 1.5 ? 'information' : { severity: 'hint', certain: false };
  },
  message: (facts) => {
    const runsDown = (facts.bounds('levelling.kept-unpowered')?.low ?? 0) < 0.5;
    const does = runsDown ? `Level ${facts.certain ? 'is' : 'may be'} lost with power off: each lift runs down at its own pace` : 'Level may be lost slowly with power off: each lift may creep at its own pace';
    return `${does}, and the part ends up tilted. Level it anew after each start. ${holdingCure(facts)}`;
  },
});
