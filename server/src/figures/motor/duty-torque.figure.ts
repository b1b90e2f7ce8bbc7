import { stateAt } from '../../mechanics/jerk-profile.ts';
import { rmsTorqueOfCycle } from '../../mechanics/rms-torque.ts';
import { demandAt } from '../../mechanics/worst-instant.ts';
import { figure, type Source } from '../figure.ts';
import { plotEnd } from './move-chart.ts';
import { downDemand, downNeeds, fullRamp, upDemand, upNeeds, wholeMove } from './move-demand.ts';

const servo = { 'motor.kind': ['dc-motor', 'brushless'] } as const;
const dubey: Source = { title: 'Dubey, Fundamentals of Electrical Drives', where: 'section 4.3; checked against example 4.2 and by quadrature' };
const moveNeeds = { ...upNeeds, speed: 'motion.speed' } as const;

/** Current that a torque asks for, as the torque constant counts amperes. */
const currentOf = (torque: number, constant: number, noLoad: number | undefined): number => Math.abs(torque) / constant + (noLoad ?? 0);

export default [
  figure({
    id: 'motor.peak-demanded-torque',
    title: 'Greatest torque in a move',
    symbol: 'T_max',
    quantity: 'torque',
    meaning: 'Greatest torque, driving or braking, that a move up and down asks of one motor; a limit of jerk may keep the acceleration below its own limit.',
    needs: moveNeeds,
    optional: { ...downNeeds, jerk: 'motion.jerk', holding: 'motor.holding-torque-needed' },
    compute: ({ speed, jerk, holding, ...torques }) => {
      const reached = fullRamp(speed, torques.acceleration, jerk).peakAcceleration;
      const asked = [upDemand(torques), downDemand(torques)].flatMap((demand) => [demand.steady, demandAt(demand, reached), demandAt(demand, -reached)]);
      return Math.max(...asked.map(Math.abs), holding ?? 0);
    },
    formula: 'T_max = max(|T₁|, |T₂|, |T₃|, |T₄|, |T₅|, T₀), at the acceleration that is reached',
    sources: [{ title: 'follows from the torques of the move' }],
    rank: 3,
  }),
  figure({
    id: 'motor.peak-torque-use',
    onlyWhere: servo,
    title: 'Use of the peak torque',
    symbol: 'u_Tp',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Greatest torque of a move over the peak torque that the maker of the motor allows for a short time.',
    needs: { demanded: 'motor.peak-demanded-torque', limit: 'motor.peak-torque' },
    compute: ({ demanded, limit }) => demanded / limit,
    formula: 'u_Tp = T_max / T_p',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'motor.rms-torque',
    title: 'Root mean square of the torque',
    symbol: 'T_rms',
    quantity: 'torque',
    meaning: 'Torque of one motor over moves up and down the whole travel and the time at rest between them, as heat feels it. The heat of a DC or brushless motor follows it; a stepping motor heats by its setting.',
    needs: { ...moveNeeds, travel: 'axis.travel', duty: 'motion.duty' },
    optional: { ...downNeeds, jerk: 'motion.jerk', holding: 'motor.holding-torque-needed' },
    compute: ({ travel, speed, jerk, duty, holding, ...torques }) => {
      const move = wholeMove(travel, speed, torques.acceleration, jerk);
      const moves = [{ move, demand: upDemand(torques) }, { move, demand: downDemand(torques) }];
      // An axis that hardly moves still moves a little.
      return rmsTorqueOfCycle({ moves, duty: Math.min(1, Math.max(duty, 1e-6)), holding: holding ?? 0 });
    },
    formula: 'T_rms = √( D ∫T² dt / t + (1 − D) T₀² )',
    sources: [dubey],
    rank: 3,
  }),
  figure({
    id: 'motor.rms-torque-use',
    onlyWhere: servo,
    title: 'Use of the continuous torque',
    symbol: 'u_Tc',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Root mean square of the torque over what the motor may give without end.',
    needs: { rms: 'motor.rms-torque', limit: 'motor.continuous-torque' },
    compute: ({ rms, limit }) => rms / limit,
    formula: 'u_Tc = T_rms / T_c',
    sources: [dubey],
    rank: 2,
  }),
  figure({
    id: 'motor.demanded-current',
    onlyWhere: servo,
    title: 'Current that the move asks for',
    symbol: 'I_m',
    quantity: 'current',
    meaning: 'Greatest current of one motor in a move, in the amperes of its torque constant (peak or root mean square for a brushless motor).',
    needs: { torque: 'motor.peak-demanded-torque', constant: 'motor.torque-constant' },
    optional: { noLoad: 'motor.no-load-current', ...moveNeeds, jerk: 'motion.jerk', travel: 'axis.travel', amplifier: 'drive.current-limit' },
    compute: ({ torque, constant, noLoad }) => currentOf(torque, constant, noLoad),
    formula: 'I_m = T_max / K + I₀',
    sources: [{ title: 'T = K (I − I₀)' }],
    rank: 2,
    chart: {
      title: 'Current over the move',
      alt: ({ torque, constant, noLoad }) => `Current of the motor over a move up, at most ${Number(currentOf(torque, constant, noLoad).toPrecision(2))} A.`,
      x: {
        title: 'Time', quantity: 'time', unit: 's', from: () => 0,
        to: ({ travel, speed, acceleration, jerk }) => (travel === undefined || speed === undefined || acceleration === undefined ? 1 : plotEnd(wholeMove(travel, speed, acceleration, jerk))),
      },
      y: { title: 'Current', quantity: 'current', unit: 'A' },
      curves: [
        {
          title: 'asked for',
          y: (time, { travel, speed, acceleration, jerk, cruising, lifting, constant, noLoad }) => {
            if (travel === undefined || speed === undefined || acceleration === undefined || cruising === undefined || lifting === undefined) return Number.NaN;
            const move = wholeMove(travel, speed, acceleration, jerk);
            const now = stateAt(move, Math.min(time, move.time * (1 - 1e-9))).acceleration;
            return currentOf(demandAt(upDemand({ acceleration, cruising, lifting }), now), constant, noLoad);
          },
        },
        { title: 'limit of the amplifier', y: (_time, { amplifier }) => amplifier ?? Number.NaN },
      ],
    },
  }),
  figure({
    id: 'motor.amplifier-use',
    onlyWhere: servo,
    title: "Use of the amplifier's current",
    symbol: 'u_A',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Greatest current of a move over the largest that the amplifier gives.',
    needs: { current: 'motor.demanded-current', limit: 'drive.current-limit' },
    compute: ({ current, limit }) => current / limit,
    formula: 'u_A = I_m / I_max',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
