import { check, type Facts } from '../check.ts';

/** Give along the axis that is worth a word, m. */
const GIVE = 0.1e-3;

const comesApart = ({ choice }: Facts): boolean => ['jaw', 'oldham'].includes(choice('coupling.form') ?? '') && choice('drive.motor-position') === 'above';

export default check({
  id: 'coupling-carries-the-load',
  title: 'Coupling carries the hanging load',
  summary: 'No thrust bearing takes the axial load, so it pulls or presses on a flexible coupling.',
  place: 'coupling',
  figure: 'coupling.axial-give',
  basis: 'follows from the mechanics',
  sources: [{ title: 'makers of flexible couplings allow no axial load; a give of 0.1 mm is our threshold', weak: true }],
  concernsPeople: true,
  cautions: ['gravity-load'],
  judge: (facts) => {
    const load = facts.bounds('drive.gravity-load');
    if (facts.choice('thrust-bearing.design') !== 'none' || facts.choice('coupling.form') === 'rigid' || !facts.isPresent('coupling')) return undefined;
    if (!load || Math.max(Math.abs(load.low), Math.abs(load.high)) < 1) return undefined;
    // A thrust bearing that is merely not described is asked for, not asserted to be missing.
    if (comesApart(facts)) return facts.isDefault('thrust-bearing.design') ? 'warning' : 'error';
    return (facts.bounds('coupling.axial-give')?.high ?? 0) > GIVE ? 'warning' : undefined;
  },
  because: ['thrust-bearing.design', 'axis.moved-mass', 'coupling.form', 'drive.motor-position'],
  message: (facts) => {
    const { show } = facts;
    const start = `Coupling carries the load of ${show('drive.gravity-load', 'high')} on the screw, since no thrust bearing ${facts.isDefault('thrust-bearing.design') ? 'is described' : 'takes it'}:`;
    if (comesApart(facts)) return `${start} pulled, this form comes apart and the load falls. Give the screw a thrust bearing.`;
    return `${start} it gives by up to ${show('coupling.axial-give', 'high')} and tires. Give the screw a thrust bearing.`;
  },
});
