import type { Facts } from './check.ts';
import { couplingGives } from './thrust.ts';

/** What the two findings about the position over the travel share. */

const high = (facts: Facts, id: string): number => facts.bounds(id)?.high ?? 0;

function growthOf(facts: Facts): number {
  const growth = facts.bounds('screw.thermal-growth');
  return growth ? Math.max(Math.abs(growth.low), Math.abs(growth.high)) : 0;
}

/**
 * Whether the lost motion alone, which has a finding of its own (or is the doing of a coupling that carries the thrust), breaks the accuracy,
 * and lead error and warming do not.
 */
export function lostMotionIsTheCause(facts: Facts, lead: string): boolean {
  const others = high(facts, lead) + growthOf(facts);
  const accuracy = facts.bounds('axis.accuracy')?.low ?? 0;
  return others <= accuracy && (couplingGives(facts) || high(facts, 'nut.lost-motion') > accuracy);
}

/** Parts below this share of the whole are left out of the sentence. */
const WORTH_A_WORD = 0.05;

/** `lead 0.13 mm, warming 0.07 mm, lost motion 0.02 mm`, as far as they are known and matter; all in the unit of the accuracy. */
export function partsOfError(facts: Facts, lead: string): string {
  const sizes = [['lead', high(facts, lead), lead], ['warming', growthOf(facts), 'screw.thermal-growth'], ['lost motion', high(facts, 'nut.lost-motion'), 'nut.lost-motion']] as const;
  const whole = sizes.reduce((sum, [, size]) => sum + size, 0);
  return sizes.filter(([, size]) => size > WORTH_A_WORD * whole).map(([name, , id]) => `${name} ${facts.show(id, 'high', 'axis.accuracy')}`).join(', ');
}
