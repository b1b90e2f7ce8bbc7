import { check, timesOf } from '../check.ts';

export default check({
  id: 'rack-tooth-overstressed',
  title: 'Teeth of rack or pinion are overstressed',
  summary: 'The bending stress at the root of a tooth is above what its material is allowed.',
  place: 'pinion.face-width',
  figure: 'rack.tooth-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'error', basis: 'book', source: { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 14-1 (Lewis)' } }],
  because: ['rack.module', 'pinion.teeth', 'axis.process-force', 'motion.acceleration'],
  message: (facts) => {
    const part = facts.note('rack.tooth-use') === 'the rack' ? 'rack' : 'pinion';
    return `Teeth of the ${part} ${facts.certain ? 'bear' : 'may bear'} ${facts.show(`${part}.root-stress`, 'high')}, ${timesOf(facts.worst)} the ${facts.show(`${part}.stress-limit`, 'low')} that their material is allowed: they break in time. Take wider teeth, a larger module, a stronger material or less acceleration.`;
  },
});
