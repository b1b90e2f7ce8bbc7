import { check } from '../check.ts';

export default check({
  id: 'counterbalance-stores-energy',
  title: 'Counterbalance keeps its energy',
  summary: 'A spring or counterweight moves the axis, also with power off, as soon as the drive or the load lets go.',
  place: 'counterbalance',
  basis: 'follows from the mechanics',
  sources: [{ title: 'statics; compare IEC 60204-1 and ISO 12100 on stored energy', weak: true }],
  concernsPeople: true,
  cautions: ['stored-energy'],
  judge: ({ bounds, isPresent }) => (isPresent('counterbalance') && (bounds('counterbalance.force')?.high ?? 0) > 0 ? 'information' : undefined),
  because: ['counterbalance.mass', 'axis.travel'],
  message: ({ show }) =>
    `Counterbalance pulls with ${show('counterbalance.force', 'high')} also with power off: taking off the load, the nut or the coupling sets it free, and the axis runs up. Block or release it before working on the drive.`,
});
