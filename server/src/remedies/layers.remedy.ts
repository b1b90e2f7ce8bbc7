import { convertFromSi } from '../language/format-quantity.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { changeOf } from './entry-proposals.ts';
import { number, remedy } from './remedy.ts';

export default [
  remedy({
    id: 'layer-of-whole-steps',
    summary: 'Takes the nearest layer heights that are whole full steps of the motor.',
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
        return change && written !== undefined ? [{ changes: [change], title: () => `Print layers of ${written}: ${steps} full steps each` }] : [];
      });
    },
  }),
  remedy({
    id: 'more-current-at-rest',
    summary: 'Leaves more current on at rest, so that the powered motor holds the load.',
    cures: ['rest-current-too-low'],
    propose: (context) => {
      const found = [0.5, 0.6, 0.7, 0.8, 0.9, 1].find((share) => share > (context.before.bounds('drive.rest-current')?.nominal ?? 0) && context.passes(context.tryWith({ 'drive.rest-current': number(share) })));
      const change = found === undefined ? undefined : changeOf(context, 'drive.rest-current', `${Math.round(found * 100)} %`);
      return change && found !== undefined ? [{ changes: [change], title: () => `Leave ${Math.round(found * 100)} % of the current on at rest` }] : [];
    },
  }),
];
