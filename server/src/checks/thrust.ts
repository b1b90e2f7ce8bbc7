import type { Facts } from './check.ts';

/**
 * Where the thrust of a screw without a thrust bearing goes is one fault with several faces: the coupling stretches, the motor's bearings
 * wear, and position gets lost. One finding tells it, the gravest; these say which.
 */

/** Give along the axis that is worth a word, m. */
const GIVE = 0.1e-3;

const missing = ({ choice }: Facts): boolean => choice('thrust-bearing.design') === 'none';

/** Whether a coupling that gives along the axis takes the thrust. */
export const couplingGives = (facts: Facts): boolean =>
  missing(facts) && facts.isPresent('coupling') && !['rigid', undefined].includes(facts.choice('coupling.form'));

/** Whether the coupling is of a form that comes apart under the pull of the load. */
export const couplingComesApart = (facts: Facts): boolean =>
  couplingGives(facts) && ['jaw', 'oldham'].includes(facts.choice('coupling.form') ?? '') && facts.choice('drive.motor-position') === 'above';

/** Whether a load that hangs or stands on the coupling is to be told. */
export function couplingIsTold(facts: Facts): boolean {
  const load = facts.bounds('drive.gravity-load');
  if (!couplingGives(facts) || !load || Math.max(Math.abs(load.low), Math.abs(load.high)) < 1) return false;
  return couplingComesApart(facts) || (facts.bounds('coupling.axial-give')?.high ?? 0) > GIVE;
}

/** Whether the axial load on the motor's own bearings is to be told: more than they bear, and nothing graver said of it. */
export const motorIsTold = (facts: Facts): boolean =>
  !couplingIsTold(facts) && facts.bounds('drive.reduction-ratio')?.nominal === 1 && (facts.bounds('motor.shaft-axial-use')?.high ?? 0) > 1;
