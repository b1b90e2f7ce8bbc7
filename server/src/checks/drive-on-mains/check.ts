import { check } from '../check.ts';

export default check({
  id: 'drive-on-mains',
  title: 'Motor drive on mains voltage',
  summary: 'The motor drive of an axis is fed from a supply at mains voltage.',
  place: 'drive.supply',
  basis: 'standard',
  sources: [{ title: 'IEC 60364 and IEC 60204-1: protective earth, overcurrent protection, disconnection', weak: true }],
  concernsPeople: true,
  cautions: ['mains-voltage', 'stored-energy'],
  judge: ({ choice }) => (choice('supply.kind') === 'mains' ? 'information' : undefined),
  because: ['supply.voltage'],
  message: ({ show }) => `Motor drive is fed with mains voltage of ${show('supply.voltage')}, and its capacitors stay charged after power is off: touching live parts can kill. Wiring, protective earth and fusing are work for a licensed person, to the local electrical code.`,
});
