import { check, timesOf } from '../check.ts';

export default check({
  id: 'frame-growth-over-accuracy',
  title: 'Frame grows by more than the accuracy',
  summary: 'From ambient to machine temperature the frame becomes higher by more than the upright axis may be off.',
  subject: 'machine',
  place: 'frame',
  figure: 'frame.height-growth-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'information', basis: 'follows from the mechanics', source: { title: 'linear expansion' } }],
  because: ['conditions.machine-temperature', 'conditions.ambient-temperature', 'frame.height-tolerance'],
  message: ({ show, worst, certain }) =>
    `Frame grows ${certain ? '' : 'up to '}${show('frame.height-growth', 'high')} in height as it warms up, ${timesOf(worst)} the accuracy of the upright axis: a height set cold is off warm. Set it when the machine is warm, or keep the frame cooler.`,
});
