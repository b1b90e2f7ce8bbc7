import { check } from '../check.ts';

export default check({
  id: 'screw-held-by-nut-alone',
  title: 'Screw held by the nut alone',
  summary: 'One end of the screw is free and the other does not hold it against tilt.',
  place: 'screw.end-supports',
  basis: 'follows from the mechanics',
  sources: [{ title: 'statics' }],
  judge: ({ choice }) => (choice('screw.end-supports') === 'supported-free' ? 'warning' : undefined),
  message: () =>
    'Far end of the screw is free and the motor end does not hold it against tilt: only the nut keeps it in line, and every bow reaches the load. Give the far end a bearing, or hold the motor end in two spaced ones.',
});
