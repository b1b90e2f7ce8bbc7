import { check } from '../check.ts';
import { couplingGives, couplingIsTold, motorIsTold } from '../thrust.ts';

export default check({
  id: 'thrust-through-coupling',
  title: 'Thrust passes into the motor',
  summary: 'No thrust bearing takes the axial load: it passes through the coupling into the motor.',
  place: 'thrust-bearing.design',
  figure: 'drive.thrust-on-motor',
  basis: 'common practice',
  sources: [{ title: 'common practice', where: 'no published source' }],
  // Where no screw is described, nothing is known of its thrust; and where the load is too much for the coupling or for the motor, the finding that says so stands instead.
  when: (facts) => facts.choice('drive.transmissions-written')?.includes('screw') === true && !couplingIsTold(facts) && !motorIsTold(facts),
  judge: (facts) => {
    if ((facts.bounds('drive.thrust-on-motor')?.high ?? 0) <= 0) return undefined;
    return couplingGives(facts) ? 'warning' : 'information';
  },
  because: ['axis.moved-mass', 'coupling.form'],
  message: (facts) => {
    const what = facts.isDefault('thrust-bearing.design') ? 'No thrust bearing is described' : 'There is no thrust bearing';
    const gives = couplingGives(facts) ? ', and the coupling gives along the axis' : '';
    return `${what}: up to ${facts.show('drive.thrust-on-motor', 'high')} pass into the motor, whose bearings are made for little of that${gives}. Add a thrust bearing.`;
  },
});
