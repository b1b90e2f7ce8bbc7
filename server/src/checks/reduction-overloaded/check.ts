import { check, timesOf } from '../check.ts';
import { transmission } from '../unpowered.ts';

export default check({
  id: 'reduction-overloaded',
  title: 'Reduction carries too much torque',
  summary: 'The torque at the shaft of screw, pulley or pinion is above what a stage of the reduction may carry.',
  place: 'drive.reduction-torque-limit',
  figure: 'drive.reduction-torque-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'follows from the mechanics', source: { title: 'the rating of the stage' } }],
  because: ['axis.moved-mass', 'screw.lead', 'pulley.teeth', 'pinion.teeth', 'motion.acceleration'],
  message: (facts) => {
    const kind = transmission(facts);
    const onto = { screw: 'screw', belt: 'pulley', rack: 'pinion' }[kind];
    return `Reduction passes ${facts.show('drive.shaft-lifting-torque', 'high')} to each ${onto}, ${timesOf(facts.worst)} its rated ${facts.show('drive.reduction-torque-limit', 'low')} there: teeth ${facts.certain ? 'wear or jump' : 'may wear or jump'}. Take a larger stage, a smaller ${kind === 'screw' ? 'lead' : onto} or a gentler ramp.`;
  },
});
