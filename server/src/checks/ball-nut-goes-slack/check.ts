import { check, timesOf } from '../check.ts';

export default check({
  id: 'ball-nut-goes-slack',
  title: 'Preload of the ball nut is used up',
  summary: 'The largest load exceeds 2.83 times the preload, so one half of the nut goes slack.',
  place: 'nut.preload',
  figure: 'drive.largest-load',
  bad: 'above',
  limits: [{ at: 'nut.lift-off-load', severity: 'information', basis: 'follows from the mechanics', source: { title: 'Hertz contact, deflection as load^(2/3)' } }],
  // A preload that is merely assumed cannot be too little.
  when: ({ isDefault }) => !isDefault('nut.preload'),
  because: ['nut.preload', 'axis.moved-mass', 'motion.acceleration'],
  message: ({ show, worst, limit }) =>
    `Load reaches ${timesOf(worst / limit)} the ${show('nut.lift-off-load', 'low')} up to which the preload keeps both halves of the nut loaded: play returns under load. Raise the preload to a third of the load, or accept the play.`,
});
