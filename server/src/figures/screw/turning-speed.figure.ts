import { figure } from '../figure.ts';

export default figure({
  id: 'screw.turning-speed',
  title: 'Turning speed',
  symbol: 'n',
  quantity: 'rotational-speed',
  unit: 'rpm',
  meaning: 'How fast the screw turns at the highest speed of the axis.',
  needs: { speed: 'motion.speed', lead: 'screw.lead' },
  compute: ({ speed, lead }) => (2 * Math.PI * speed) / lead,
  formula: 'n = v / l',
  sources: [{ title: 'follows from the definition of the lead' }],
  rank: 2,
});
