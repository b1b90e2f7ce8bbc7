import { check } from '../check.ts';
import { numberBeside } from '../multiples.ts';

export default check({
  id: 'ball-nut-dents',
  title: 'Ball nut overloaded at rest',
  summary: 'The largest load is too near to the static rating of the ball nut, or above it.',
  place: 'nut.static-rating',
  figure: 'nut.static-safety',
  bad: 'below',
  limits: [
    { at: 1, severity: 'error', basis: 'standard', source: { title: 'ISO 3408-5:2006', where: 'static axial load rating, as quoted', weak: true } },
    { at: 'nut.static-safety-wanted', severity: 'warning', basis: 'common practice' },
  ],
  because: ['nut.static-rating', 'axis.moved-mass', 'axis.process-force', 'motion.acceleration'],
  message: ({ show, worst, limit, certain }) =>
    `Ball nut carries up to ${show('drive.largest-load', 'high')}, a static safety of ${numberBeside(worst, limit)} where ${limit.toPrecision(2)} is ${limit === 1 ? 'the least' : 'usual'}: ${
      limit === 1 ? `the balls ${certain ? 'dent' : 'may dent'} the races and the nut runs roughly` : 'a shock may dent the races'
    }. Take the next size or share the load.`,
});
