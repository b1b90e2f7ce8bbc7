import { check, timesOf, type Facts } from '../check.ts';

/** Parts below this share of the whole are left out of the sentence. */
const WORTH_A_WORD = 0.05;

const PARTS = [['lost motion', 'belt.lost-motion'], ['pulley', 'pulley.eccentricity-error'], ['idlers', 'idlers.eccentricity-error']] as const;

/** `lost motion 0.1 mm, pulley 0.04 mm`, as far as they are known and matter. */
function partsOf({ bounds, show }: Facts): string {
  const whole = bounds('belt.position-error')?.high ?? 0;
  return PARTS.filter(([, id]) => (bounds(id)?.high ?? 0) > WORTH_A_WORD * whole).map(([name, id]) => `${name} ${show(id, 'high', 'axis.accuracy')}`).join(', ');
}

export default check({
  id: 'belt-error-over-accuracy',
  title: 'Belt errs by more than the accuracy wanted',
  summary: 'Lost motion, and errors that come back with every turn and tooth, together exceed the accuracy wanted; calibration does not take them out.',
  place: 'axis.accuracy',
  figure: 'belt.position-error-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'worst case: errors added' } }],
  // Sizes of play and run-out that are only assumed are asked for.
  milder: ({ isDefault }) => isDefault('pulley.eccentricity') && isDefault('belt.backlash'),
  because: ['belt.backlash', 'pulley.eccentricity', 'idlers.eccentricity', 'guides.friction-force'],
  message: (facts) => {
    const parts = partsOf(facts);
    const assumed = facts.isDefault('pulley.eccentricity') ? '; run-out assumed' : '';
    return `Belt ${facts.certain ? 'errs' : 'may err'} by ${facts.show('belt.position-error', 'high', 'axis.accuracy')} even when calibrated: ${timesOf(facts.worst)} the accuracy wanted${parts === '' ? '' : ` (${parts}${assumed})`}. Take a truer pulley or one without play, or approach from one side.`;
  },
});
