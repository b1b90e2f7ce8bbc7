import { figure, unable } from '../figure.ts';

const DIAMETER_SPEED = { limit: 'nut.speed-value', diameter: 'screw.major-diameter' } as const;

export default figure({
  id: 'axis.speed-limit',
  title: 'Highest speed of the axis',
  symbol: 'v_max',
  quantity: 'speed',
  meaning: 'The lowest of the speeds that torque (with the usual margin), whirl, the return of a ball nut, the heat of a sliding nut, the step rate and the makers of screw and motor allow.',
  needs: { lead: 'drive.travel-per-shaft-turn' },
  optional: {
    torque: 'axis.honest-speed', whirl: 'screw.fastest-turning', maker: 'screw.speed-limit', ...DIAMETER_SPEED,
    speed: 'motion.speed', heat: 'nut.heat-use', rate: 'controller.step-rate', steps: 'axis.steps-per-length',
    motorLimit: 'motor.speed-limit', motorTravel: 'axis.travel-per-turn',
  },
  compute: ({ lead, torque, whirl, maker, limit, diameter, speed, heat, rate, steps, motorLimit, motorTravel }) => {
    const perTurn = lead / (2 * Math.PI);
    const candidates: readonly (readonly [string, number | undefined])[] = [
      ['the torque of the motor', torque],
      ['whirl of the screw', whirl === undefined ? undefined : whirl * perTurn],
      ["the screw's maker", maker === undefined ? undefined : maker * perTurn],
      ['the return of the ball nut', limit === undefined || diameter === undefined ? undefined : (limit / diameter) * perTurn],
      // Heat goes with the speed, at the same load and duty.
      ['the heat of the nut', heat === undefined || heat <= 0 || speed === undefined ? undefined : speed / heat],
      ["the motor's maker", motorLimit === undefined || motorTravel === undefined ? undefined : (motorLimit * motorTravel) / (2 * Math.PI)],
      ['the step rate of the controller', rate === undefined || steps === undefined ? undefined : rate / steps],
    ];
    const known = candidates.filter((candidate): candidate is readonly [string, number] => candidate[1] !== undefined);
    const least = known.reduce<readonly [string, number] | undefined>((best, candidate) => (best && best[1] <= candidate[1] ? best : candidate), undefined);
    return least ? { value: least[1], note: `set by ${least[0]}` } : unable('nothing is described that limits it');
  },
  formula: 'v_max = min(v_h, n_max l, (d n)_max l/d, v / (PV/PV₀), f_max/z)',
  sources: [{ title: 'the limits of the figures that it takes together' }],
  rank: 2,
});
