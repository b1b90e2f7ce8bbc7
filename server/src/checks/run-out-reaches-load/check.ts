import { check, timesOf } from '../check.ts';

export default check({
  id: 'run-out-reaches-load',
  title: 'Bow of the screw reaches the load',
  summary: 'The bow of the screw pushes the load sideways, once each turn, by more than the accuracy wanted.',
  place: 'nut.mounting',
  figure: 'screw.run-out-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'springs in series' } }],
  because: ['screw.run-out', 'guides.lateral-stiffness', 'nut.mounting', 'axis.accuracy'],
  message: ({ show, worst, choice, certain }) =>
    `Bow of the screw ${certain ? 'pushes' : 'may push'} the load ${show('screw.run-out-at-load', 'high', 'axis.accuracy')} sideways once each turn, ${timesOf(worst)} the accuracy wanted: it prints through with the period of the lead. ${choice('nut.mounting') === 'decoupled' ? 'Stiffen the guides or ease the decoupling' : 'Decouple the nut or let the far end float'}.`,
});
