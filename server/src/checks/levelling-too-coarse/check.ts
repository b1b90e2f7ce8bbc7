import { check, percent } from '../check.ts';

/** "of the accuracy wanted" as "the accuracy wanted". */
const wanted = (note: string | undefined): string => note?.replace(/^of /, '') ?? 'what is wanted';

export default check({
  id: 'levelling-too-coarse',
  title: 'Levelling is too coarse',
  summary: 'One step of a lift moves the part by more than the accuracy, or a third of the layer height, that is wanted.',
  place: 'levelling',
  figure: 'levelling.coarseness',
  bad: 'above',
  limits: [
    { at: 2, severity: 'warning', basis: 'our threshold', source: { title: 'set as near as can be, it stands off by half a step: more than is wanted' } },
    { at: 1, severity: 'information', basis: 'our threshold', source: { title: 'one step changes more than is wanted; a third of a layer is common practice', weak: true } },
  ],
  because: ['levelling.step', 'controller.microsteps', 'screw.lead', 'axis.layer-height'],
  message: ({ show, note, worst, certain }) =>
    `One step of a lift ${certain ? 'moves' : 'may move'} the part by ${show('levelling.rise-per-step', 'high')}, ${percent(worst)} of ${wanted(note('levelling.coarseness'))}: it cannot be set level as closely. Take a finer lead, more microsteps, or lifts that stand farther out.`,
});
