import { solvedProposal, turned } from './entry-proposals.ts';
import { rampDial, speedDial } from './move-dials.ts';
import { remedy } from './remedy.ts';

export default [
  remedy({
    id: 'slow-the-axis',
    summary: 'Lowers the speed of the axis to the highest at which the check passes.',
    cost: 1,
    cures: [
      'screw-whirls', 'screw-too-fast-for-its-maker', 'motor-cannot-lift', 'motor-margin-thin', 'motor-past-its-corner', 'motor-too-fast-to-estimate',
      'motor-beyond-its-points', 'motor-overruns-going-down', 'nut-overheats', 'nut-overpressed-in-motion', 'ball-nut-too-fast', 'ball-nut-life-short',
      'step-rate-too-high', 'drive-resonates-with-steps', 'motor-runs-at-its-resonance', 'free-end-swings', 'supply-current-exceeded',
      'supply-voltage-rises', 'speed-never-reached', 'lowering-returns-energy', 'motor-too-fast-for-its-maker', 'motor-rms-torque-high', 'motor-peak-torque-exceeded', 'amplifier-current-short',
    ],
    propose: (context) => turned(context, [speedDial(context)]),
  }),
  remedy({
    id: 'ease-the-ramp',
    summary: 'Lowers the acceleration of the axis to the highest at which the check passes.',
    cost: 1,
    cures: [
      'motor-cannot-lift', 'motor-margin-thin', 'motor-overruns-going-down', 'drive-gives-too-much', 'nut-spring-too-weak', 'ball-nut-goes-slack', 'ball-nut-dents',
      'coupling-overloaded', 'reduction-overloaded', 'nut-play-too-large', 'position-error-over-accuracy', 'supply-voltage-rises', 'supply-current-exceeded',
      'screw-buckles', 'nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'thrust-bearing-overloaded', 'screw-overstressed',
      'belt-goes-slack', 'belt-overtensioned', 'belt-teeth-overloaded', 'motor-shaft-bent-by-belt', 'rack-tooth-overstressed', 'pinion-spring-too-weak', 'resonance-low', 'gantry-skews',
      'motor-peak-torque-exceeded', 'amplifier-current-short', 'motor-rms-torque-high', 'motor-winding-too-hot', 'motor-case-hot',
    ],
    propose: (context) => turned(context, [rampDial(context)]),
  }),
  remedy({
    id: 'quicken-the-ramp',
    summary: 'Raises the acceleration until the axis reaches its speed soon enough.',
    cost: 1,
    cures: ['ramp-looks-slipped', 'speed-never-reached'],
    propose: (context) => {
      const acceleration = context.before.bounds('motion.acceleration')?.nominal;
      return acceleration === undefined ? [] : solvedProposal(context, { input: 'motion.acceleration', towards: 50 * acceleration, say: (written) => `Quicken the ramp to ${written}`, cost: 1 });
    },
  }),
  remedy({
    id: 'move-less',
    summary: 'Lowers the share of time in motion.',
    cost: 1.5,
    cures: ['nut-overheats', 'motor-rms-torque-high', 'motor-winding-too-hot', 'motor-case-hot'],
    propose: (context) => {
      const duty = context.before.bounds('motion.duty')?.nominal;
      return duty === undefined ? [] : solvedProposal(context, { input: 'motion.duty', towards: 0.02 * duty, say: (written) => `Move no more than ${written} of the time`, cost: 1.5 });
    },
  }),
];
