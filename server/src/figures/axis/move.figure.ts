import { moveProfile, shortestMove } from '../../mechanics/motion-profile.ts';
import { ESTIMATE_DOUBTFUL_ABOVE, ESTIMATE_ENDS_AT } from '../../mechanics/stepper-torque.ts';
import { figure, unable } from '../figure.ts';
import { speedAtTorque, stepperModel, torqueOverSpeed, windingNeeds } from '../motor/winding.ts';

const evenAcceleration = { title: 'uniformly accelerated motion (Theraja, Textbook of Electrical Technology, vol. III)', where: 'chapter 43' } as const;
const moveNeeds = { travel: 'axis.travel', speed: 'motion.speed', acceleration: 'motion.acceleration' } as const;
/** Common practice for stepping motors without feedback. */
const HONEST_MARGIN = 1.5;

export default [
  figure({
    id: 'axis.move-time',
    title: 'Time over the full travel',
    symbol: 't',
    quantity: 'time',
    meaning: 'Time of a move over the whole travel, from rest to rest, with even ramps.',
    needs: moveNeeds,
    compute: ({ travel, speed, acceleration }) => moveProfile(travel, speed, acceleration).time,
    formula: 't = h/v + v/a, or 2 √(h/a) if the speed is not reached',
    sources: [evenAcceleration],
    rank: 2,
  }),
  figure({
    id: 'axis.distance-to-speed',
    title: 'Distance to reach speed',
    symbol: 's_a',
    quantity: 'length',
    meaning: 'Travel that one ramp takes.',
    needs: { speed: 'motion.speed', acceleration: 'motion.acceleration' },
    compute: ({ speed, acceleration }) => speed ** 2 / (2 * acceleration),
    formula: 's_a = v² / 2a',
    sources: [evenAcceleration],
    rank: 3,
  }),
  figure({
    id: 'axis.ramp-time',
    title: 'Time to reach speed',
    symbol: 't_a',
    quantity: 'time',
    meaning: 'Time of one ramp, from rest to full speed.',
    needs: { speed: 'motion.speed', acceleration: 'motion.acceleration' },
    compute: ({ speed, acceleration }) => (acceleration > 0 ? speed / acceleration : unable('without acceleration no speed is reached')),
    formula: 't_a = v/a',
    sources: [evenAcceleration],
    rank: 3,
  }),
  figure({
    id: 'axis.share-at-speed',
    title: 'Share of the travel at full speed',
    symbol: 'q_v',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Part of the whole travel that is covered at full speed; zero if the speed is never reached.',
    needs: moveNeeds,
    compute: ({ travel, speed, acceleration }) => moveProfile(travel, speed, acceleration).shareAtSpeed,
    formula: 'q_v = 1 − v²/(a h), not below zero',
    sources: [evenAcceleration],
    rank: 3,
  }),
  figure({
    id: 'axis.torque-speed-limit',
    title: 'Speed at which the torque is used up',
    symbol: 'v_1',
    quantity: 'speed',
    meaning: 'Speed of the axis at which the move as accelerated now asks for all the torque that the motor has.',
    needs: { demanded: 'motor.lifting-torque', travel: 'axis.travel-per-turn' },
    optional: { ...windingNeeds, pointsVoltage: 'motor.torque-points-voltage' },
    tables: { points: 'motor.torque-points' },
    compute: ({ demanded, travel, points, pointsVoltage, ...winding }) => axisSpeedAt(demanded, travel, torqueOverSpeed(winding, points, pointsVoltage), ESTIMATE_ENDS_AT),
    formula: 'T_a(2π v₁/p) = T₂',
    sources: [stepperModel],
    rank: 2,
  }),
  figure({
    id: 'axis.honest-speed',
    title: 'Speed with a margin of 1.5',
    symbol: 'v_h',
    quantity: 'speed',
    meaning: 'Highest speed of the axis at which the torque is still one and a half times what the move asks for.',
    needs: { demanded: 'motor.lifting-torque', travel: 'axis.travel-per-turn' },
    optional: { ...windingNeeds, pointsVoltage: 'motor.torque-points-voltage' },
    tables: { points: 'motor.torque-points' },
    compute: ({ demanded, travel, points, pointsVoltage, ...winding }) => axisSpeedAt(HONEST_MARGIN * demanded, travel, torqueOverSpeed(winding, points, pointsVoltage), ESTIMATE_DOUBTFUL_ABOVE),
    formula: 'T_a(2π v_h/p) = 1.5 T₂',
    sources: [stepperModel, { title: 'the margin of 1.5 is common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'axis.shortest-move-time',
    title: 'Shortest possible time over the full travel',
    symbol: 't_min',
    quantity: 'time',
    meaning: 'Least time of a move up over the whole travel with even ramps if all of the torque were used, without any margin: a bound, not a setting.',
    needs: { length: 'axis.travel', acceleration: 'motion.acceleration', travel: 'axis.travel-per-turn', lifting: 'motor.lifting-torque', cruising: 'motor.cruising-torque' },
    optional: { ...windingNeeds, pointsVoltage: 'motor.torque-points-voltage' },
    tables: { points: 'motor.torque-points' },
    compute: ({ length, acceleration, travel, lifting, cruising, points, pointsVoltage, ...winding }) => {
      const curve = torqueOverSpeed(winding, points, pointsVoltage);
      if (typeof curve === 'string') return unable(curve);
      // Torque grows evenly with acceleration, so two of its points give all of them.
      const perAcceleration = (lifting - cruising) / acceleration;
      if (!(perAcceleration > 0)) return unable('the torque does not grow with the acceleration');
      const at = (speed: number): number => ((curve.at((2 * Math.PI * speed) / travel) ?? -1) - cruising) / perAcceleration;
      const fastest = speedAtTorque(curve, Math.max(cruising, 1e-9));
      if (!fastest) return unable('the motor cannot move the load at any speed');
      const top = curve.range ? Math.min(fastest.speed, ESTIMATE_ENDS_AT) : fastest.speed;
      const move = shortestMove(length, (top / (2 * Math.PI)) * travel, at);
      return move.kind === 'moves' ? move.time : unable('the motor cannot move the load at any speed');
    },
    formula: 'least h/v + v/a(v), a(v) = a (T_a(v) − T₁) / (T₂ − T₁)',
    sources: [stepperModel],
    rank: 3,
  }),
];

/** Speed of the axis at which a torque is reached; no further than the points or the estimate can be believed. */
function axisSpeedAt(demanded: number, travel: number, curve: ReturnType<typeof torqueOverSpeed>, believable: number) {
  if (typeof curve === 'string') return unable(curve);
  if (demanded <= 0) return unable('the move asks for no torque');
  const found = speedAtTorque(curve, demanded);
  if (!found) return unable('the motor does not have this torque even at rest');
  const asTravel = (speed: number): number => (speed / (2 * Math.PI)) * travel;
  if (found.endOfPoints) return { value: asTravel(found.speed), note: 'Here the given points of torque end; the torque is not used up yet.' };
  if (curve.range && found.speed > believable) {
    return { value: asTravel(believable), note: 'Limited to the motor speed up to which the estimate can be believed (15 rev/s with a margin, 25 rev/s at most): give points of a measured curve to go beyond.' };
  }
  return asTravel(found.speed);
}
