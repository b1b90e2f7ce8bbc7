import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'target-temperature',
  title: 'Temperature to set',
  order: 60,
  subject: 'heater',
  shows: ['heater.target-temperature'],
  caution: 'Try the cut-out first. Heat up once under supervision, and never leave it unattended until it has cut out on its own.',
  hazards: ['hot-surface'],
});
