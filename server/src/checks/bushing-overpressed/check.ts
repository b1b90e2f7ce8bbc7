import { check, timesOf } from '../check.ts';

export default check({
  id: 'bushing-overpressed',
  title: 'Plain bushings are pressed too hard',
  summary: 'The edge of the most loaded plain bushing is pressed harder than its kind bears while it slides.',
  place: 'guides',
  figure: 'guides.bushing-pressure-use',
  bad: 'above',
  limits: [
    { at: 2, severity: 'error', basis: 'our threshold' },
    { at: 1, severity: 'warning', basis: 'common practice' },
  ],
  because: ['guides.pressure-limit', 'guides.carriage-length', 'guides.shaft-diameter', 'axis.moved-mass'],
  message: ({ show, worst, certain }) =>
    `Bushing edges ${certain ? 'take' : 'may take'} ${show('guides.bushing-edge-pressure', 'high')}, ${timesOf(worst)} what such a bushing bears while it slides: it creeps, smears and binds. Take longer bushings, a thicker shaft, or set two apart on each shaft.`,
});
