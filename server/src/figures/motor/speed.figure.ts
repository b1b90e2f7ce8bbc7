import { stepRate, stepsFromAngle } from '../../mechanics/step-rate.ts';
import { figure } from '../figure.ts';

const kinematics = { title: 'kinematics' } as const;

export default [
  figure({
    id: 'motor.speed',
    title: 'Speed of the motor',
    symbol: 'n_m',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'How fast the motor turns at the highest speed of the axis.',
    needs: { shaft: 'drive.shaft-speed', ratio: 'drive.reduction-ratio' },
    compute: ({ shaft, ratio }) => shaft * ratio,
    formula: 'n_m = i n_w',
    sources: [kinematics],
    rank: 2,
  }),
  figure({
    id: 'motor.step-rate',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Step rate',
    symbol: 'f_s',
    quantity: 'step-rate',
    meaning: 'Microsteps a second that the controller must send at the highest speed of the axis.',
    needs: { speed: 'motor.speed', stepAngle: 'motor.step-angle', microsteps: 'controller.microsteps' },
    compute: ({ speed, stepAngle, microsteps }) => stepRate(speed, stepsFromAngle(stepAngle), microsteps),
    formula: 'f_s = n_m (360°/φ_s) n_µ',
    sources: [kinematics],
    rank: 2,
  }),
  figure({
    id: 'motor.step-rate-use',
    title: 'Use of the step rate limit',
    symbol: 'u_f',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Step rate at the highest speed over the most that the controller can send to one motor.',
    needs: { rate: 'motor.step-rate', limit: 'controller.step-rate' },
    compute: ({ rate, limit }) => rate / limit,
    formula: 'u_f = f_s / f_max',
    sources: [kinematics],
    rank: 3,
  }),
];
