import { usualCoupling, type CouplingUsual } from '../../catalogue/couplings.ts';
import { fallbacks, type Fallback, type InputReader } from '../input.ts';

type Range = 'torsionalStiffness' | 'axialStiffness' | 'torqueRating' | 'parallelOffset' | 'angularOffset';

/** What is usual for the form of coupling that the description names. */
const usual = (which: Range, unit: string): NonNullable<Fallback['handbook']> => (read: InputReader) => {
  const form: CouplingUsual | undefined = usualCoupling(read.choice('coupling.form') ?? '');
  if (!form) return undefined;
  const { low, nominal, high, source, weak } = form[which];
  return { value: { type: 'number', low, nominal, high, unit }, source: `${form.title}: ${source}`, weak };
};

const bore = (index: 0 | 1): NonNullable<Fallback['compose']> => (_read, lists) => {
  const found = lists.quantities('coupling.bores', 'length')?.[index];
  return found && { value: { type: 'number', ...found.value, unit: 'mm' }, origin: found.origin };
};

export default fallbacks(
  { input: 'coupling.motor-bore', title: 'Bore on the motor side', symbol: 'd_1', quantity: 'length', compose: bore(0) },
  { input: 'coupling.screw-bore', title: 'Bore on the screw side', symbol: 'd_2', quantity: 'length', compose: bore(1) },
  { input: 'coupling.torsional-stiffness', symbol: 'k_c', handbook: usual('torsionalStiffness', 'N·m/rad') },
  { input: 'coupling.axial-stiffness', symbol: 'k_a', handbook: usual('axialStiffness', 'N/mm') },
  { input: 'coupling.torque-rating', symbol: 'T_c', handbook: usual('torqueRating', 'N·m') },
  { input: 'coupling.parallel-offset-limit', symbol: 'e_max', handbook: usual('parallelOffset', 'mm') },
  { input: 'coupling.angular-offset-limit', symbol: 'β_max', handbook: usual('angularOffset', '°') },
  { input: 'coupling.parallel-offset', symbol: 'e' },
  { input: 'coupling.angular-offset', symbol: 'β_c' },
  { input: 'coupling.rotational-inertia', symbol: 'J_c' },
);
