import { fallbacks } from '../input.ts';

/** What hangs on a supply is summed up over the axes and heated parts of the machine; without any, nothing is known of it. */
export default fallbacks(
  { input: 'supply.axes-current', title: 'Current of all axes on the supply', symbol: 'I_a', quantity: 'current' },
  { input: 'supply.heaters-current', title: 'Current of all heated parts on the supply', symbol: 'I_h', quantity: 'current' },
  { input: 'supply.summed', title: 'Summed up over the machine', symbol: 'Σ' },
  { input: 'supply.consumers', title: 'Axes and heated parts on the supply', symbol: 'n_c', quantity: 'count' },
  { input: 'supply.largest-axis-current', title: 'Largest current of one axis on the supply', symbol: 'I_1', quantity: 'current' },
);
