import { check, timesOf } from '../check.ts';

export default check({
  id: 'belt-teeth-overloaded',
  title: 'Teeth of the belt are overloaded',
  summary: 'The largest driving force is above what the teeth in mesh can pass on.',
  place: 'belt.width',
  figure: 'belt.tooth-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'error', basis: 'our threshold' },
    { at: 1, severity: 'warning', basis: 'common practice', source: { title: 'data pages of polyurethane belts for some profiles, the others from memory', weak: true } },
  ],
  because: ['belt.width', 'belt.profile', 'pulley.teeth', 'pulley.wrap'],
  message: ({ show, worst, certain, bounds }) => {
    const pulling = (bounds('belt.force-towards')?.high ?? 0) >= (bounds('belt.force-away')?.high ?? 0) ? 'belt.force-towards' : 'belt.force-away';
    return `Teeth of the belt ${certain ? 'carry' : 'may carry'} ${show(pulling, 'high')}, ${timesOf(worst)} the ${show('belt.tooth-limit', 'low')} that those in mesh bear: they shear off or jump. Take a wider belt, more teeth in mesh, a coarser pitch, or less force.`;
  },
});
