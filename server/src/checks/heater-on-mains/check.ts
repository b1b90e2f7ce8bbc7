import { check } from '../check.ts';

export default check({
  id: 'heater-on-mains',
  title: 'Heated part on mains voltage',
  summary: 'A heated part is fed from a supply at mains voltage.',
  subject: 'heater',
  place: 'heater',
  basis: 'standard',
  sources: [{ title: 'IEC 60364 and IEC 60204-1: protective earth, overcurrent protection, disconnection', weak: true }],
  concernsPeople: true,
  cautions: ['mains-voltage', 'hot-surface'],
  judge: ({ choice }) => (choice('supply.kind') === 'mains' ? 'information' : undefined),
  because: ['heater.power', 'supply.voltage'],
  message: ({ show }) => `Heated part is fed with mains voltage of ${show('supply.voltage')}: touching a damaged one can kill. It needs protective earth, fusing, disconnection and an independent cut-out, done by a licensed person to the local electrical code.`,
});
