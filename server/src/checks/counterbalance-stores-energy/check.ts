import { check } from '../check.ts';
import { transmission } from '../unpowered.ts';

export default check({
  id: 'counterbalance-stores-energy',
  title: 'Counterbalance keeps its energy',
  summary: 'A spring or counterweight moves the axis, also with power off, as soon as the drive or the load lets go.',
  place: 'counterbalance',
  basis: 'follows from the mechanics',
  sources: [{ title: 'statics; compare IEC 60204-1 and ISO 12100 on stored energy', weak: true }],
  concernsPeople: true,
  cautions: ['stored-energy'],
  judge: ({ bounds, isPresent }) => (isPresent('counterbalance') && (bounds('counterbalance.carried-force')?.high ?? 0) > 0 ? 'information' : undefined),
  figure: 'counterbalance.energy',
  because: ['counterbalance.force', 'counterbalance.mass', 'axis.travel'],
  message: (facts) =>
    `Counterbalance pulls with ${facts.show('counterbalance.carried-force', 'high')} also with power off: taking off the load, the ${{ screw: 'nut', belt: 'belt', rack: 'pinion' }[transmission(facts)]} or the coupling sets it free, and the axis runs up. Block or release it before working on the drive.`,
});
