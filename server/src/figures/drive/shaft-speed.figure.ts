import { figure } from '../figure.ts';

export default figure({
  id: 'drive.shaft-speed',
  title: 'Speed of the shaft',
  symbol: 'n_w',
  quantity: 'rotational-speed',
  unit: 'rpm',
  meaning: 'How fast the shaft that carries screw, pulley or pinion turns at the highest speed of the axis.',
  needs: { speed: 'motion.speed', travel: 'drive.travel-per-shaft-turn' },
  compute: ({ speed, travel }) => (2 * Math.PI * speed) / travel,
  formula: 'n_w = v / p_w',
  sources: [{ title: 'kinematics' }],
  rank: 3,
});
