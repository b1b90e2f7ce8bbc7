import type { QuantityKind } from '../../language/quantity-kinds.ts';
import { ofScope, usualGuideFriction } from '../guide-friction.ts';
import { fallbacks, type Fallback } from '../input.ts';
import { exactly } from '../values.ts';

/** One of the two values that are written for the two belts. */
const ofBelt = (list: string, index: 0 | 1, quantity: QuantityKind, unit: string): NonNullable<Fallback['compose']> => (_read, lists) => {
  const values = lists.quantities(list, quantity);
  const found = values?.length === 2 ? values[index] : undefined;
  return found && { value: { type: 'number', ...found.value, unit }, origin: found.origin };
};

/** Two axes that share their motors, and a gantry with an axis upon it: symbols, and what stands in where nothing is written. */
export default fallbacks(
  { input: 'layout.first-path-length', title: 'Path of the first belt', symbol: 'L_A', quantity: 'length', compose: ofBelt('layout.path-lengths', 0, 'length', 'm') },
  { input: 'layout.second-path-length', title: 'Path of the second belt', symbol: 'L_B', quantity: 'length', compose: ofBelt('layout.path-lengths', 1, 'length', 'm') },
  { input: 'layout.first-path-tension', title: 'Tension of the first belt', symbol: 'T_A0', quantity: 'force', compose: ofBelt('layout.path-tensions', 0, 'force', 'N') },
  { input: 'layout.second-path-tension', title: 'Tension of the second belt', symbol: 'T_B0', quantity: 'force', compose: ofBelt('layout.path-tensions', 1, 'force', 'N') },
  { input: 'partner.travel', symbol: 'h_o' },
  { input: 'partner.accuracy', symbol: 'ε_o' },
  { input: 'partner-motion.speed', symbol: 'v_o' },
  { input: 'partner-motion.acceleration', symbol: 'a_o' },
  {
    input: 'partner.process-force',
    symbol: 'F_p,o',
    handbook: () => ({ value: { type: 'number', ...exactly(0) }, source: 'none, since no process force is given' }),
  },
  { input: 'partner-guides.friction-force', symbol: 'F_g,o', handbook: (read) => usualGuideFriction(ofScope(read, 'partner-guides', 'partner.moved-mass')) },
  { input: 'carried.travel', symbol: 'h_r' },
  { input: 'drive.unit-spacing', symbol: 's' },
);
