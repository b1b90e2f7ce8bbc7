import { fallbacks } from '../input.ts';

/** Symbols of what the move and the electrics are described by; they have no fallback, since nobody else can say them. */
export default fallbacks(
  { input: 'motion.speed', symbol: 'v' },
  { input: 'motion.acceleration', symbol: 'a' },
  { input: 'motion.duty', symbol: 'D' },
  { input: 'axis.layer-height', symbol: 'h_l' },
  { input: 'axis.resolution', symbol: 'r' },
  { input: 'axis.accuracy', symbol: 'ε' },
  { input: 'controller.step-rate', symbol: 'f_max' },
  { input: 'controller.microsteps', symbol: 'n_µ' },
  { input: 'supply.voltage', symbol: 'V' },
  { input: 'supply.current', symbol: 'I_V' },
  { input: 'supply.capacitance', symbol: 'C' },
  { input: 'supply.voltage-limit', symbol: 'V_max' },
);
