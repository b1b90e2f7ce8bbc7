import { check, timesOf } from '../check.ts';

export default check({
  id: 'nut-preload-drags',
  title: 'Preload takes much of the torque',
  summary: 'More than 30 % of the torque goes into the drag of the preloaded nut.',
  place: 'nut.preload',
  figure: 'nut.preload-torque-share',
  bad: 'above',
  limits: [
    { at: 0.6, severity: 'information', basis: 'our threshold' },
    { at: 0.3, severity: 'hint', basis: 'our threshold' },
  ],
  // A preload that is merely assumed cannot be too much.
  when: ({ isDefault }) => !isDefault('nut.preload'),
  because: ['nut.preload', 'nut.friction'],
  message: ({ show, worst }) =>
    `Nut preload may take ${show('nut.preload-torque', 'high')}, ${timesOf(worst)} the torque at the screw: the motor works against its own nut, which wears. Less preload does where the force to hold is smaller.`,
});
