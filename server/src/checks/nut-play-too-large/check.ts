import { check, timesOf } from '../check.ts';
import { couplingGives } from '../thrust.ts';

export default check({
  id: 'nut-play-too-large',
  title: 'Lost motion exceeds the accuracy wanted',
  summary: 'Play of the nut and give of the drive lose more travel on reversal than the axis may be off.',
  place: 'nut.backlash',
  figure: 'nut.lost-motion',
  bad: 'above',
  limits: [{ at: 'axis.accuracy', severity: 'warning', basis: 'follows from the mechanics' }],
  // A coupling that carries the thrust is told by a finding of its own.
  when: (facts) => !couplingGives(facts),
  because: ['nut.backlash', 'axis.accuracy', 'nut.design', 'guides.friction-force'],
  message: ({ show, worst, limit, certain, choice }) => {
    const cure = ['plain', 'ball'].includes(choice('nut.design') ?? '') ? 'Take a sprung or preloaded nut' : 'Stiffen the drive, lower the friction of its guides';
    return `Axis ${certain ? 'loses' : 'may lose'} ${show('nut.lost-motion', 'high', 'axis.accuracy')} on reversal, ${timesOf(worst / limit)} the ${show('axis.accuracy', 'low')} wanted: circles get flats, edges step. ${cure}, or approach from one side.`;
  },
});
