import { check, quantityText } from '../check.ts';
import { couplingComesApart, couplingIsTold } from '../thrust.ts';

/** Beyond this give no small coupling is made to go: its slits close or tear, m. */
const FARTHEST = 1e-3;

export default check({
  id: 'coupling-carries-the-load',
  title: 'Coupling carries the hanging load',
  summary: 'No thrust bearing takes the axial load, so it pulls or presses on a flexible coupling and on the motor behind it.',
  place: 'coupling',
  figure: 'coupling.axial-give',
  basis: 'follows from the mechanics',
  sources: [{ title: 'makers of flexible couplings allow no axial load; a give of 0.1 mm is our threshold', weak: true }],
  concernsPeople: true,
  cautions: ['gravity-load'],
  judge: (facts) => {
    if (!couplingIsTold(facts)) return undefined;
    // A thrust bearing that is merely not described is asked for, not asserted to be missing.
    return couplingComesApart(facts) && !facts.isDefault('thrust-bearing.design') ? 'error' : 'warning';
  },
  because: ['thrust-bearing.design', 'axis.moved-mass', 'coupling.form', 'drive.motor-position'],
  message: (facts) => {
    const { show, bounds } = facts;
    const start = `Coupling carries the load of ${show('drive.gravity-load', 'high')}, since no thrust bearing ${facts.isDefault('thrust-bearing.design') ? 'is described' : 'takes it'}:`;
    if (couplingComesApart(facts)) return `${start} pulled, this form comes apart and the load falls. Give the screw a thrust bearing.`;
    const give = (bounds('coupling.axial-give')?.high ?? 0) > FARTHEST ? `more than ${quantityText(FARTHEST, 'length', 'mm')}` : `up to ${show('coupling.axial-give', 'high')}`;
    return `${start} it gives by ${give} and tires, and the bearings of the motor take the rest. Give the screw a thrust bearing.`;
  },
});
