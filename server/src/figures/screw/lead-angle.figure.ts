import { leadAngle } from '../../mechanics/trapezoidal-thread.ts';
import { figure } from '../figure.ts';

export default figure({
  id: 'screw.lead-angle',
  title: 'Lead angle',
  symbol: 'λ',
  quantity: 'angle',
  unit: '°',
  meaning: 'How steeply the thread rises on its pitch diameter: the flatter, the better it holds and the less efficient it is.',
  needs: { lead: 'screw.lead', pitchDiameter: 'screw.pitch-diameter' },
  compute: ({ lead, pitchDiameter }) => leadAngle(lead, pitchDiameter),
  formula: 'λ = atan(l / (π d₂))',
  sources: [{ title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2' }],
  rank: 2,
});
