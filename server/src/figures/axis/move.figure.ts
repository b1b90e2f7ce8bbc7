import { quickestMove, type SpeedLimit } from '../../mechanics/worst-instant.ts';
import { ESTIMATE_DOUBTFUL_ABOVE, ESTIMATE_ENDS_AT } from '../../mechanics/stepper-torque.ts';
import { figure, unable } from '../figure.ts';
import { fullRamp, upDemand, upNeeds, wholeMove } from '../motor/move-demand.ts';
import { curveChoices, curveNeeds, curveTables, curveValues, servoModel, torqueCurve } from '../motor/torque-curve.ts';
import { speedAtTorque, stepperModel } from '../motor/winding.ts';

const evenAcceleration = { title: 'uniformly accelerated motion (Theraja, Textbook of Electrical Technology, vol. III)', where: 'chapter 43' } as const;
const evenJerk = { title: 'integral of a trapezoid of acceleration, checked by integration in time' } as const;
const moveNeeds = { travel: 'axis.travel', speed: 'motion.speed', acceleration: 'motion.acceleration' } as const;
const rampNeeds = { speed: 'motion.speed', acceleration: 'motion.acceleration' } as const;
const jerkOption = { jerk: 'motion.jerk' } as const;
/** Torque of the motor at any speed, and what it moves in a turn. */
const curve = { optional: curveNeeds, optionalChoices: curveChoices, tables: curveTables } as const;

export default [
  figure({
    id: 'axis.move-time',
    title: 'Time over the full travel',
    symbol: 't',
    quantity: 'time',
    meaning: 'Time of a move over the whole travel, from rest to rest, with even ramps or, where a limit of jerk is given, with smooth ones.',
    needs: moveNeeds,
    optional: jerkOption,
    compute: ({ travel, speed, acceleration, jerk }) => wholeMove(travel, speed, acceleration, jerk).time,
    formula: 't = h/v + t_a, or without a steady part 2 √(h/a); with jerk 4 ∛(h/2j) where neither v nor a is reached',
    sources: [evenAcceleration, evenJerk],
    rank: 2,
  }),
  figure({
    id: 'axis.distance-to-speed',
    title: 'Distance to reach speed',
    symbol: 's_a',
    quantity: 'length',
    meaning: 'Travel that one ramp takes.',
    needs: rampNeeds,
    optional: jerkOption,
    compute: ({ speed, acceleration, jerk }) => (acceleration > 0 ? (speed * fullRamp(speed, acceleration, jerk).rampTime) / 2 : unable('without acceleration no speed is reached')),
    formula: 's_a = v t_a / 2; without a limit of jerk v² / 2a',
    sources: [evenAcceleration, evenJerk],
    rank: 3,
  }),
  figure({
    id: 'axis.ramp-time',
    title: 'Time to reach speed',
    symbol: 't_a',
    quantity: 'time',
    meaning: 'Time of one ramp, from rest to full speed.',
    needs: rampNeeds,
    optional: jerkOption,
    compute: ({ speed, acceleration, jerk }) => (acceleration > 0 ? fullRamp(speed, acceleration, jerk).rampTime : unable('without acceleration no speed is reached')),
    formula: 't_a = v/a + a/j, or 2 √(v/j) where v < a²/j; without a limit of jerk v/a',
    sources: [evenAcceleration, evenJerk],
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
    optional: jerkOption,
    compute: ({ travel, speed, acceleration, jerk }) => {
      const move = wholeMove(travel, speed, acceleration, jerk);
      return (move.steadyTime * move.peakSpeed) / travel;
    },
    formula: 'q_v = 1 − v t_a/h, not below zero; without a limit of jerk 1 − v²/(a h)',
    sources: [evenAcceleration, evenJerk],
    rank: 3,
  }),
  figure({
    id: 'axis.peak-speed',
    title: 'Highest speed over the full travel',
    symbol: 'v_p',
    quantity: 'speed',
    meaning: 'Highest speed that a move over the whole travel reaches: the set one, unless the travel is too short for it.',
    needs: moveNeeds,
    optional: jerkOption,
    compute: ({ travel, speed, acceleration, jerk }) => wholeMove(travel, speed, acceleration, jerk).peakSpeed,
    formula: 'v_p = v, or (√((a²/j)² + 4 a h) − a²/j)/2, or ∛(h² j/4)',
    sources: [evenJerk],
    rank: 3,
  }),
  figure({
    id: 'axis.peak-acceleration',
    title: 'Highest acceleration of a ramp',
    symbol: 'a_p',
    quantity: 'acceleration',
    meaning: 'Acceleration that a ramp to full speed reaches: the set one, unless the limit of jerk keeps it from getting there.',
    needs: rampNeeds,
    optional: jerkOption,
    compute: ({ speed, acceleration, jerk }) => fullRamp(speed, acceleration, jerk).peakAcceleration,
    formula: 'a_p = min(a, √(v j))',
    sources: [evenJerk],
    rank: 3,
  }),
  figure({
    id: 'axis.jerk-time',
    title: 'Time to raise the acceleration',
    symbol: 't_j',
    quantity: 'time',
    unit: 'ms',
    meaning: 'Time in which the acceleration of a ramp goes from nothing to its highest. About one period of the lowest mode of the axis leaves the least ringing.',
    needs: rampNeeds,
    optional: jerkOption,
    compute: ({ speed, acceleration, jerk }) => (jerk === undefined ? unable('no limit of jerk is given, so that the acceleration jumps') : fullRamp(speed, acceleration, jerk).jerkTime),
    formula: 't_j = a_p / j',
    sources: [evenJerk],
    rank: 3,
  }),
  figure({
    id: 'axis.peak-acceleration-use',
    title: 'Acceleration reached over the one set',
    symbol: 'u_a',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the set acceleration a ramp to full speed reaches before the limit of jerk takes it back.',
    needs: { reached: 'axis.peak-acceleration', acceleration: 'motion.acceleration' },
    compute: ({ reached, acceleration }) => reached / acceleration,
    formula: 'u_a = a_p / a',
    sources: [evenJerk],
    rank: 3,
  }),
  figure({
    id: 'axis.torque-speed-limit',
    title: 'Speed at which the torque is used up',
    symbol: 'v_1',
    quantity: 'speed',
    meaning: 'Speed of the axis at which the move as accelerated now asks for all the torque that the motor has.',
    needs: { demanded: 'motor.lifting-torque', travel: 'axis.travel-per-turn' },
    ...curve,
    compute: ({ demanded, travel, ...values }) => axisSpeedAt(demanded, travel, torqueCurve(curveValues(values)), ESTIMATE_ENDS_AT),
    formula: 'T_a(2π v₁/p) = T₂',
    sources: [stepperModel, servoModel],
    rank: 2,
  }),
  figure({
    id: 'axis.honest-speed',
    title: 'Speed with the usual margin',
    symbol: 'v_h',
    quantity: 'speed',
    meaning: 'Highest speed of the axis at which the torque still exceeds what the move asks for by the usual margin: one and a half times for a stepping motor without feedback, 1.15 with it, 1.1 for DC and brushless motors.',
    needs: { demanded: 'motor.lifting-torque', travel: 'axis.travel-per-turn', margin: 'motor.margin-wanted' },
    ...curve,
    compute: ({ demanded, travel, margin, ...values }) => axisSpeedAt(margin * demanded, travel, torqueCurve(curveValues(values)), ESTIMATE_DOUBTFUL_ABOVE),
    formula: 'T_a(2π v_h/p) = S_w T₂',
    sources: [stepperModel, servoModel, { title: 'the margins are common practice, no published source' }],
    rank: 2,
  }),
  figure({
    id: 'axis.shortest-move-time',
    title: 'Shortest possible time over the full travel',
    symbol: 't_min',
    quantity: 'time',
    meaning: 'Least time of a move up over the whole travel if all of the torque were used, without any margin, within what controller, motor and screw allow as speed and what jerk is set: a bound, not a setting.',
    needs: { length: 'axis.travel', ...upNeeds, travel: 'axis.travel-per-turn' },
    ...curve,
    optional: {
      ...curveNeeds, ...jerkOption, rate: 'controller.step-rate', steps: 'axis.steps-per-length', motorLimit: 'motor.speed-limit', ratio: 'drive.reduction-ratio',
      whirl: 'screw.fastest-turning', maker: 'screw.speed-limit',
    },
    compute: ({ length, travel, jerk, rate, steps, motorLimit, ratio, whirl, maker, acceleration, cruising, lifting, ...values }) => {
      const torque = torqueCurve(curveValues(values));
      if (typeof torque === 'string') return unable(torque);
      const demand = upDemand({ acceleration, cruising, lifting });
      if (!(demand.perGain > 0)) return unable('the torque does not grow with the acceleration');
      const fastest = speedAtTorque(torque, Math.max(cruising, 1e-9));
      if (!fastest) return unable('the motor cannot move the load at any speed');
      const perRadian = travel / (2 * Math.PI);
      const atShaft = (speed: number | undefined): number | undefined => (speed === undefined || ratio === undefined ? undefined : speed * ratio * perRadian);
      const limits: readonly { readonly name: string; readonly speed: number | undefined }[] = [
        { name: fastest.endOfPoints ? 'the end of the given points of torque' : 'the torque', speed: fastest.speed * perRadian },
        { name: 'the speed up to which the estimate of the torque can be believed', speed: torque.range ? ESTIMATE_ENDS_AT * perRadian : undefined },
        { name: 'the step rate of the controller', speed: rate === undefined || steps === undefined ? undefined : rate / steps },
        { name: "the motor's speed limit", speed: motorLimit === undefined ? undefined : motorLimit * perRadian },
        { name: 'whirl of the screw', speed: atShaft(whirl) },
        { name: "the screw's speed limit", speed: atShaft(maker) },
      ];
      const known = limits.filter((limit): limit is SpeedLimit => limit.speed !== undefined && limit.speed > 0);
      const move = quickestMove(length, known, demand, (speed) => torque.at(speed / perRadian) ?? 0, jerk ?? Infinity);
      if (move.kind !== 'moves') return unable('the motor cannot move the load at any speed');
      const limit = move.limitedBy === 'jerk' ? 'the limit of jerk' : move.limitedBy === 'torque' ? 'the torque' : (move.limit ?? 'the torque');
      return { value: move.time, note: `limited by ${limit}; up to ${Number((move.speed * 1000).toPrecision(2))} mm/s and ${Number((move.acceleration * 1000).toPrecision(2))} mm/s²` };
    },
    formula: 'least time over v and a with T_a(v) ≥ T₁ + (T₂ − T₁) a/a₀ at the fast end of the ramps',
    sources: [stepperModel, servoModel],
    rank: 3,
  }),
];

/** Speed of the axis at which a torque is reached; no further than the points or the estimate can be believed. */
function axisSpeedAt(demanded: number, travel: number, curve: ReturnType<typeof torqueCurve>, believable: number) {
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
