import { solvedProposal } from './entry-proposals.ts';
import { remedy } from './remedy.ts';

/** Slower than this share of the present value is no cure but another machine. */
const SLOWEST = 0.05;

export default [
  remedy({
    id: 'slow-the-axis',
    summary: 'Lowers the speed of the axis to the highest at which the check passes.',
    cures: [
      'screw-whirls', 'screw-too-fast-for-its-maker', 'motor-cannot-lift', 'motor-margin-thin', 'motor-past-its-corner', 'motor-too-fast-to-estimate',
      'motor-beyond-its-points', 'motor-overruns-going-down', 'nut-overheats', 'nut-overpressed-in-motion', 'ball-nut-too-fast', 'ball-nut-life-short',
      'step-rate-too-high', 'drive-resonates-with-steps', 'motor-runs-at-its-resonance', 'free-end-swings', 'supply-current-exceeded',
      'supply-voltage-rises', 'speed-never-reached',
    ],
    propose: (context) => {
      const speed = context.before.bounds('motion.speed')?.nominal;
      return speed === undefined ? [] : solvedProposal(context, { input: 'motion.speed', towards: SLOWEST * speed, say: (written) => `Slow the axis to ${written}` });
    },
  }),
  remedy({
    id: 'ease-the-ramp',
    summary: 'Lowers the acceleration of the axis to the highest at which the check passes.',
    cures: [
      'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'drive-gives-too-much', 'nut-spring-too-weak', 'ball-nut-goes-slack',
      'coupling-overloaded', 'reduction-overloaded', 'nut-play-too-large', 'position-error-over-accuracy', 'supply-voltage-rises',
    ],
    propose: (context) => {
      const acceleration = context.before.bounds('motion.acceleration')?.nominal;
      return acceleration === undefined
        ? []
        : solvedProposal(context, { input: 'motion.acceleration', towards: SLOWEST * acceleration, say: (written) => `Ease the ramp to ${written}` });
    },
  }),
];
