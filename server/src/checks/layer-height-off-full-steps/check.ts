import { check } from '../check.ts';

export default check({
  id: 'layer-height-off-full-steps',
  title: 'Layer height is not a whole number of full steps',
  summary: 'Layers end between full steps, where the motor is least exact.',
  place: 'axis.layer-height',
  figure: 'axis.layer-height-steps',
  basis: 'common practice',
  sources: [{ title: 'whole full steps leave each layer at the same magnetic position; worth some per cent of a full step', weak: true }],
  judge: ({ bounds }) => {
    const [below, above] = [bounds('axis.layer-height-below')?.nominal, bounds('axis.layer-height-above')?.nominal];
    return above !== undefined && below !== above ? 'hint' : undefined;
  },
  because: ['screw.lead', 'pulley.teeth', 'motor.step-angle'],
  message: ({ bounds, show }) => {
    const steps = Number((bounds('axis.layer-height-steps')?.nominal ?? Number.NaN).toPrecision(3));
    const above = show('axis.layer-height-above', 'nominal', 'axis.layer-height');
    const near = bounds('axis.layer-height-below') ? `${show('axis.layer-height-below', 'nominal', 'axis.layer-height')} and ${above} are` : `${above} is`;
    return `Layer of ${show('axis.layer-height')} is ${steps} full steps of ${show('axis.full-step-travel', 'nominal', 'axis.layer-height')}: layers end between steps, where the motor is least exact. ${near} whole.`;
  },
});
