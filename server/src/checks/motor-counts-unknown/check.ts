import { check } from '../check.ts';
import { followsItsLoad } from '../motor-kinds.ts';

export default check({
  id: 'motor-counts-unknown',
  title: 'Feedback of the motor not described',
  summary: 'A DC or brushless motor holds its position by an encoder, whose counts are not given.',
  place: 'drive.motor',
  basis: 'follows from the mechanics',
  sources: [{ title: 'such a motor has no position of its own' }],
  judge: ({ choice, bounds }) => (followsItsLoad(choice) && bounds('motor.encoder-counts') === undefined ? 'information' : undefined),
  because: ['motor.torque-constant'],
  message: () => 'Motor has no steps: it stands where its encoder says, and no encoder-counts are given. How finely the axis can be placed cannot be told. Write the counts in a turn, all edges counted.',
});
