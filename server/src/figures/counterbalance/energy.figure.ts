import { energyGivenOut } from '../../mechanics/counterbalance.ts';
import { figure } from '../figure.ts';

export default figure({
  id: 'counterbalance.energy',
  title: 'Energy that it gives out',
  symbol: 'E_c',
  quantity: 'energy',
  meaning: 'Work that the counterbalance does when it takes the freed axis from the bottom to the top of its travel.',
  needs: { force: 'counterbalance.force', travel: 'axis.travel' },
  optional: { rate: 'counterbalance.rate' },
  onlyWith: ['counterbalance'],
  compute: ({ force, travel, rate }) => energyGivenOut({ force: Math.max(0, force), rate: Math.max(0, rate ?? 0), travel }),
  formula: 'E_c = F_c,m h; a spring that goes slack on the way: (F_c,m + c_c h/2)² / (2 c_c)',
  sources: [{ title: 'work of a spring or a weight' }],
  rank: 2,
});
