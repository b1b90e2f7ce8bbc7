import { check, timesOf } from '../check.ts';
import { couplingGives } from '../thrust.ts';
import { transmission } from '../unpowered.ts';

/** What stiffens each link of the chain. */
const CURES: Readonly<Record<string, string>> = {
  'the screw': 'take a thicker one',
  'the nut': 'take a stiffer one',
  'the thrust bearing': 'take a stiffer one',
  'the twist of the screw': 'take a thicker one',
  'the belt': 'take a wider one or a stiffer cord',
  'the teeth': 'take wider ones or a stiffer mounting of the pinion',
  'the twist of the reduction': 'take a stiffer stage or a wider belt',
  'the twist of the coupling': 'take a stiffer coupling',
};

/** What makes less of the motor's magnetic spring. */
const FINER = { screw: 'take a finer lead or more torque', belt: 'take a smaller pulley or more torque', rack: 'take a smaller pinion or more torque' } as const;

export default check({
  id: 'drive-gives-too-much',
  title: 'Drive gives under changing load',
  summary: 'Friction, work and inertia push the load off its place by more than a third of the accuracy wanted.',
  place: 'axis.accuracy',
  figure: 'drive.deflection-use',
  bad: 'above',
  limits: [{ at: 1 / 3, severity: 'warning', basis: 'common practice' }],
  // A coupling that carries the thrust is told by a finding of its own.
  when: (facts) => !couplingGives(facts),
  because: ['nut.stiffness', 'thrust-bearing.stiffness', 'screw.root-diameter', 'motor.holding-torque'],
  message: (facts) => {
    const { show, worst, note, certain } = facts;
    const softest = note('drive.softest-share');
    const cure = softest === "the motor's magnetic spring" ? FINER[transmission(facts)] : (CURES[softest ?? ''] ?? 'stiffen it');
    const share = softest === undefined ? '' : ` Most of it is ${softest} (${show('drive.softest-share')}): ${cure}.`;
    return `Drive ${certain ? 'gives' : 'may give'} ${show('drive.deflection', 'high', 'axis.accuracy')} under the changing load: ${timesOf(worst)} the accuracy wanted, where a third is usual. The axis is off while it moves or works.${share}`;
  },
});
