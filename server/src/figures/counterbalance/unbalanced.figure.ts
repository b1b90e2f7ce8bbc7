import { loadAtEnds, unbalancedForce } from '../../mechanics/counterbalance.ts';
import { figure } from '../figure.ts';

export default figure({
  id: 'counterbalance.unbalanced-force',
  title: 'Load left at the worse end of the travel',
  symbol: 'F_u',
  quantity: 'force',
  unit: 'N',
  meaning: 'What the counterbalance leaves of the weight along the axis, for all drives together, at the end of the travel where it is most. Negative: it pulls the axis up there.',
  needs: { mass: 'axis.moved-mass', gravity: 'conditions.gravity', inclination: 'axis.inclination', force: 'counterbalance.force', travel: 'axis.travel' },
  optional: { rate: 'counterbalance.rate' },
  onlyWith: ['counterbalance'],
  compute: ({ mass, gravity, inclination, force, travel, rate }) => {
    const { bottom, top } = loadAtEnds(mass * gravity * Math.sin(inclination), { force: Math.max(0, force), rate: Math.max(0, rate ?? 0), travel });
    const value = unbalancedForce({ bottom, top });
    return bottom === top ? value : { value, note: `at the ${value === bottom ? 'bottom' : 'top'} of the travel` };
  },
  formula: 'F_u = m g sin β − (F_c,m ± c_c h/2), the larger of the two in size',
  sources: [{ title: 'statics and Hooke’s law' }],
  rank: 2,
});
