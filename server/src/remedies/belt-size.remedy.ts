import { coarserBelts, narrowerBelts, otherCords, widerBelts } from './belt-choice.ts';
import type { Option } from './combinations.ts';
import { remedy, type Proposal, type RemedyContext } from './remedy.ts';

/** The first of some belts that passes. */
function firstBelt(context: RemedyContext, options: readonly Option[]): readonly Proposal[] {
  const found = context.first(options, ({ inputs }) => inputs);
  return found ? [found] : [];
}

export default [
  remedy({
    id: 'wider-belt',
    summary: 'Takes the next usual width of the belt that is enough.',
    cost: 2.5,
    cures: ['belt-overtensioned', 'belt-teeth-overloaded', 'drive-gives-too-much', 'resonance-low', 'gantry-skews', 'belt-error-over-accuracy', 'drive-resonates-with-steps', 'broken-belt-drops'],
    propose: (context) => firstBelt(context, widerBelts(context)),
  }),
  remedy({
    id: 'other-cord',
    summary: 'Takes a belt of the same profile and width with other cords, which bear more or give less.',
    cost: 2.75,
    cures: ['belt-overtensioned', 'drive-gives-too-much', 'resonance-low', 'gantry-skews', 'belt-error-over-accuracy', 'drive-resonates-with-steps', 'broken-belt-drops'],
    propose: (context) => firstBelt(context, otherCords(context)),
  }),
  remedy({
    id: 'wider-belt-with-other-cord',
    summary: 'Takes a wider belt with other cords.',
    cost: 3.25,
    cures: ['belt-overtensioned', 'drive-gives-too-much', 'resonance-low', 'gantry-skews', 'belt-error-over-accuracy'],
    propose: (context) => {
      const [wider, cords] = [widerBelts(context), otherCords(context)];
      // Either alone is proposed by itself.
      if (context.first([...wider, ...cords], ({ inputs }) => inputs)) return [];
      const both = wider.flatMap((one) => cords.map((other): Option => ({ ...one, inputs: { ...one.inputs, ...other.inputs }, changes: [...one.changes, ...other.changes], what: `${one.what}, ${other.what.replace(/^Take a belt /, '')}`, cost: one.cost + 0.5 })));
      // Data that are written belong to one belt alone, and cannot be carried over to a belt that differs in both.
      return firstBelt(context, both.filter(({ price }) => price === undefined));
    },
  }),
  remedy({
    id: 'belt-with-larger-teeth',
    summary: 'Takes a belt with larger or fuller teeth, on pulleys of about the same size.',
    cost: 3.5,
    cures: ['belt-overtensioned', 'belt-teeth-overloaded', 'drive-gives-too-much', 'resonance-low', 'gantry-skews', 'belt-error-over-accuracy', 'broken-belt-drops'],
    propose: (context) => firstBelt(context, coarserBelts(context)),
  }),
  remedy({
    id: 'narrower-belt',
    summary: 'Takes the widest belt whose stretches are still long enough to sound as strings.',
    cost: 3,
    cures: ['belt-strum-unclear'],
    propose: (context) => firstBelt(context, narrowerBelts(context)),
  }),
];
