import { stateAt, type JerkMove } from '../../mechanics/jerk-profile.ts';
import { demandAt } from '../../mechanics/worst-instant.ts';
import { upDemand, upNeeds, wholeMove } from './move-demand.ts';
import { curveValues, torqueCurve, type CurveValues } from './torque-curve.ts';

/** What a chart of torque over a move up the whole travel needs besides the torque curve; without one of them its curves have no value. */
export const moveChartNeeds = {
  acceleration: upNeeds.acceleration, cruising: upNeeds.cruising, speed: 'motion.speed', jerk: 'motion.jerk', length: 'axis.travel', perTurn: 'axis.travel-per-turn',
} as const;

type MoveValues = CurveValues & { readonly [alias in keyof typeof moveChartNeeds]: number | undefined } & { readonly lifting: number };

const moveOf = ({ length, speed, acceleration, jerk }: MoveValues) =>
  length !== undefined && speed !== undefined && acceleration !== undefined && length > 0 && speed > 0 && acceleration > 0 ? wholeMove(length, speed, acceleration, jerk) : undefined;

/** Below this share of the move its ramps would be slivers in a plot. */
const LEAST_RAMP_SHARE = 0.08;

/** Where a plot over time ends, s: with the move, or some time into steady speed where ramps are short; a second where no move is known. */
export const plotEnd = (move: JerkMove | undefined): number => (!move ? 1 : move.rampTime >= LEAST_RAMP_SHARE * move.time ? move.time : 4 * move.rampTime);

/** The same for the values of a figure. */
export const moveEnd = (values: MoveValues): number => plotEnd(moveOf(values));

/** What of the move a plot shows, for those who hear it. */
export function spanInWords(values: MoveValues): string {
  const move = moveOf(values);
  const text = (seconds: number): string => `${Number(seconds.toPrecision(3))} s`;
  return move && moveEnd(values) < move.time ? `the first ${text(moveEnd(values))} of a move up of ${text(move.time)}` : `${text(moveEnd(values))} of a move up`;
}

/** Torque asked for at an instant, N·m, braking counted as positive. */
export function demandedOverMove(time: number, values: MoveValues): number {
  const move = moveOf(values);
  const { acceleration, cruising, lifting } = values;
  if (!move || acceleration === undefined || cruising === undefined) return Number.NaN;
  // Just before the end it still brakes.
  return Math.abs(demandAt(upDemand({ acceleration, cruising, lifting }), stateAt(move, Math.min(time, move.time * (1 - 1e-9))).acceleration));
}

/** Torque that the motor has at the speed of an instant, N·m. */
export function torqueOverMove(time: number, values: MoveValues, which: 'design' | 'upper'): number {
  const move = moveOf(values);
  const curve = torqueCurve(curveValues(values));
  if (!move || values.perTurn === undefined || typeof curve === 'string') return Number.NaN;
  const speed = (2 * Math.PI * Math.max(0, stateAt(move, time).speed)) / values.perTurn;
  return curve.range?.(speed)[which] ?? curve.at(speed) ?? Number.NaN;
}
