import { check, sideBySide, timesOf } from '../check.ts';
import { multipleBeside } from '../multiples.ts';

export default check({
  id: 'crossed-belts-diagonal-stalls',
  title: 'Motor has too little torque on the diagonal',
  summary: 'In a move along both axes at once one of the two motors does all the work, at twice the speed, and has too little torque for it.',
  place: 'motion.speed',
  figure: 'layout.diagonal-margin',
  bad: 'below',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics' },
    { at: 'motor.margin-wanted', severity: 'warning', basis: 'common practice', source: { title: 'margin for motors of this kind; makers recommend it', weak: true } },
  ],
  // A motor that has too little for one axis alone is told by the findings about that.
  when: ({ bounds }) => {
    const [alone, wanted] = [bounds('motor.torque-margin')?.low ?? Infinity, bounds('motor.margin-wanted')?.high ?? 1];
    return alone >= wanted || (alone >= 1 && (bounds('layout.diagonal-margin')?.low ?? Infinity) < 1);
  },
  because: ['partner-motion.speed', 'motion.acceleration', 'partner.moved-mass', 'motor.holding-torque'],
  message: ({ show, bounds, worst, limit, certain }) => {
    const [asked, has] = sideBySide(bounds('layout.diagonal-torque')?.high ?? 0, bounds('layout.diagonal-available-torque')?.low ?? 0, 'torque');
    const speed = show('layout.diagonal-speed', 'high');
    if (worst < 1) {
      return `Motor ${certain ? 'stalls' : 'may stall'} on the diagonal: asked for ${asked} at ${speed}, ${worst > 0 ? `${timesOf(1 / worst)} its ${has}` : 'where it has none left'}; the carriage loses its place on both axes. Slow both axes, ease their ramps or take stronger motors.`;
    }
    return `Motor ${certain ? 'has' : 'may have only'} ${multipleBeside(worst, limit)} the torque asked for on the diagonal (${asked} at ${speed}), less than the usual ${Number(limit.toPrecision(3))}×: a tight spot may cost steps. Slow both axes, ease their ramps or take stronger motors.`;
  },
});
