import { requireFinite, requireNotNegative } from './require-argument.ts';
import { loweringTorque, raisingTorque, type LoadlessContact } from './power-screw.ts';

/**
 * Torque at the screw that moves the nut steadily, whichever way the load points.
 *
 * Formula: against the load F ≥ 0: F d2/2 tan(λ + φ′) + |F| µc dc/2 + T_drag; with it, F < 0: |F| d2/2 tan(φ′ − λ) + |F| µc dc/2 + T_drag.
 * @param load F along the axis in N; above 0 it resists the motion, below 0 it helps.
 * @param contact d2 in m, λ in rad, µ′ and collar; domains as in `ScrewContact`.
 * @param drag T_drag of a preloaded nut or of seals, in N·m, 0 or above.
 * @returns T in N·m: above 0 the motor drives, below 0 it must hold back; undefined where the flank jams (µ′ tan λ ≥ 1 against the load).
 * @throws RangeError when an argument is outside its domain.
 * Source: raising and lowering torque, Budynas and Nisbett, section 8-2.
 * Checked against: test/mechanics/driven-screw.test.ts.
 */
export function movingTorque(load: number, contact: LoadlessContact, drag = 0): number | undefined {
  requireFinite('load', load);
  requireNotNegative('drag', drag);
  const sliding = load >= 0 ? raisingTorque({ ...contact, load }) : loweringTorque({ ...contact, load: -load });
  return sliding === undefined ? undefined : sliding + drag;
}
