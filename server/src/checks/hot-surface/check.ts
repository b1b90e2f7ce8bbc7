import { check } from '../check.ts';

/** Temperature above which metal burns on touch, K. */
const BURNS = 333.15;

export default check({
  id: 'hot-surface',
  title: 'Hot surface',
  summary: 'A heated part is hot enough to burn on touch.',
  subject: 'heater',
  place: 'heater.target-temperature',
  basis: 'common practice',
  sources: [{ title: 'metal above about 60 °C burns on touch (compare ISO 13732-1)', weak: true }],
  concernsPeople: true,
  cautions: ['hot-surface'],
  judge: ({ bounds }) => ((bounds('heater.target-temperature')?.high ?? 0) > BURNS ? 'information' : undefined),
  because: ['heater.power'],
  message: ({ show }) => `Heated part is used at up to ${show('heater.target-temperature', 'high')} and burns on touch. Guard or mark it, fit a cut-out that works without the controller, and do not leave it unattended.`,
});
