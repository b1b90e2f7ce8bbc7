import { convertFromSi } from '../language/format-quantity.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { changeOf, solvedProposal } from './entry-proposals.ts';
import { number, remedy } from './remedy.ts';

export default [
  remedy({
    id: 'layer-of-whole-steps',
    summary: 'Takes the nearest layer heights that are whole full steps of the motor.',
    cost: 1,
    cures: ['layer-height-off-full-steps'],
    propose: (context) => {
      const step = context.before.bounds('axis.full-step-travel')?.nominal;
      const height = context.before.bounds('axis.layer-height')?.nominal;
      const input = context.before.input('axis.layer-height');
      const quantity = describeInput('axis.layer-height').quantity;
      if (step === undefined || height === undefined || !quantity || input.state !== 'known' || input.value.type !== 'number') return [];
      const unit = input.value.unit ?? 'mm';
      return [Math.floor(height / step), Math.ceil(height / step)].filter((steps) => steps > 0).flatMap((steps) => {
        const value = steps * step;
        if (!context.passes(context.tryWith({ 'axis.layer-height': number(value) }))) return [];
        const inUnit = convertFromSi(value, unit, quantity);
        const written = inUnit === undefined ? undefined : `${Number(inUnit.toPrecision(8))} ${unit}`;
        const change = written === undefined ? undefined : changeOf(context, 'axis.layer-height', written);
        return change && written !== undefined ? [{ changes: [change], what: `Print layers of ${written}`, result: () => `${steps} full ${steps === 1 ? 'step' : 'steps'} each` }] : [];
      });
    },
  }),
  remedy({
    id: 'more-current-at-rest',
    summary: 'Leaves more current on at rest, so that the powered motor holds the load.',
    cost: 1,
    cures: ['rest-current-too-low'],
    propose: (context) => {
      const present = context.before.bounds('drive.rest-current')?.nominal;
      return present === undefined || present >= 1 ? [] : solvedProposal(context, { input: 'drive.rest-current', towards: 1, say: (written) => `Leave ${written} of the current on at rest`, price: 'a warmer motor' });
    },
  }),
];
