import { figure } from '../figure.ts';

export default figure({
  id: 'motor.radial-load-use',
  onlyWhere: { 'drive.radial-load-on': ['motor'] },
  title: 'Load across the motor shaft over its limit',
  symbol: 'u_r',
  quantity: 'ratio',
  unit: '%',
  meaning: 'Pull across the motor shaft over what it bears at that place.',
  needs: { load: 'motor.radial-load', limit: 'motor.radial-limit' },
  compute: ({ load, limit }) => load / limit,
  formula: 'u_r = F_r / F_r,x',
  sources: [{ title: 'definition' }],
  rank: 2,
});
