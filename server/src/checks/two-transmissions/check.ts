import { check } from '../check.ts';
import { transmission } from '../unpowered.ts';

export default check({
  id: 'two-transmissions',
  title: 'Drive has two transmissions',
  summary: 'Screw, belt and rack are written side by side in one drive.',
  place: 'drive',
  basis: 'follows from the mechanics',
  sources: [{ title: 'kinematics: two transmissions would lock each other' }],
  judge: ({ choice }) => (choice('drive.transmissions-written')?.includes(' and ') === true ? 'error' : undefined),
  message: (facts) =>
    `Drive has ${(facts.choice('drive.transmissions-written') ?? '').replace(/ and (?=.* and )/, ', ')}, and only one can move the axis: the ${transmission(facts)} is reckoned with. Take the other out, or write both under drive-options to compare them.`,
});
