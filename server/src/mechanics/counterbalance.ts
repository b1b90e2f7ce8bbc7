/** A weight or spring that carries part of the load of an axis, over its travel. */
import { requireFinite, requireNotNegative } from './require-argument.ts';

export interface Counterbalance {
  /** F_c at mid travel, N, 0 or above. */
  readonly force: number;
  /** How much the force grows for each metre that the axis goes down, N/m, 0 or above: 0 for a weight and a spring of constant force. */
  readonly rate: number;
  /** h in m, 0 or above. */
  readonly travel: number;
}

/** A value at both ends of the travel. */
export interface AtEnds {
  readonly bottom: number;
  readonly top: number;
}

function requireCounterbalance({ force, rate, travel }: Counterbalance): void {
  requireNotNegative('force', force);
  requireNotNegative('rate', rate);
  requireNotNegative('travel', travel);
}

/**
 * Force of the counterbalance at both ends of the travel.
 *
 * Formula: F_c ± c h/2, and never below 0: a spring that has gone slack does not push.
 * @param balance see `Counterbalance`.
 * @returns forces in N; at the bottom the spring is drawn farthest.
 * @throws RangeError when a value is negative.
 * Source: Hooke's law.
 * Checked against: test/mechanics/counterbalance.test.ts.
 */
export function counterbalanceForce(balance: Counterbalance): AtEnds {
  requireCounterbalance(balance);
  const swing = (balance.rate * balance.travel) / 2;
  return { bottom: balance.force + swing, top: Math.max(0, balance.force - swing) };
}

/**
 * What is left for the drives to hold, at both ends of the travel.
 *
 * Formula: W − F_c at each end.
 * @param weight W, the share of the weight along the axis, N.
 * @param balance see `Counterbalance`.
 * @returns loads in N, below 0 where the counterbalance pulls the axis up.
 * @throws RangeError when a value is outside its domain.
 * Source: statics.
 * Checked against: test/mechanics/counterbalance.test.ts.
 */
export function loadAtEnds(weight: number, balance: Counterbalance): AtEnds {
  requireFinite('weight', weight);
  const carried = counterbalanceForce(balance);
  return { bottom: weight - carried.bottom, top: weight - carried.top };
}

/**
 * The end that asks most of what holds, with its sign.
 *
 * Formula: the load of larger size.
 * @param loads as `loadAtEnds` gives them.
 * @returns the unbalanced force in N, below 0 where the worst is a pull upwards.
 * @throws RangeError when a load is not finite.
 * Source: definition.
 * Checked against: test/mechanics/counterbalance.test.ts.
 */
export function unbalancedForce(loads: AtEnds): number {
  requireFinite('load at the bottom', loads.bottom);
  requireFinite('load at the top', loads.top);
  return Math.abs(loads.bottom) >= Math.abs(loads.top) ? loads.bottom : loads.top;
}

/**
 * Energy that the counterbalance gives out when it takes the freed axis from the bottom to the top.
 *
 * Formula: E = ∫ F dx = (F_bottom + F_top) h/2 while the spring stays drawn; F_bottom²/(2 c) when it goes slack before the top.
 * @param balance see `Counterbalance`.
 * @returns E in J.
 * @throws RangeError when a value is negative.
 * Source: work of a spring.
 * Checked against: test/mechanics/counterbalance.test.ts (summed in small steps).
 */
export function energyGivenOut(balance: Counterbalance): number {
  requireCounterbalance(balance);
  const { bottom, top } = counterbalanceForce(balance);
  const slack = balance.rate > 0 && bottom / balance.rate < balance.travel;
  return slack ? bottom ** 2 / (2 * balance.rate) : ((bottom + top) * balance.travel) / 2;
}
