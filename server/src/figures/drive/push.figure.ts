import { figure } from '../figure.ts';
import { shaftsPerMotor } from '../motor/train.ts';

export default [
  figure({
    id: 'drive.push-force',
    title: 'Force that the axis can push with',
    symbol: 'F_max',
    quantity: 'force',
    unit: 'N',
    meaning: 'Force of all drives of the axis together with the full torque at rest, upwards or forwards, before any load is taken off: what a trapped hand would feel.',
    needs: {
      standing: 'motor.standing-torque', ratio: 'drive.reduction-ratio', efficiency: 'drive.reduction-efficiency', transmission: 'drive.shaft-efficiency', travel: 'drive.travel-per-shaft-turn', units: 'drive.units',
    },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ standing, ratio, efficiency, transmission, travel, units, motors }) => (units / shaftsPerMotor(motors, units)) * ((standing * ratio * efficiency * transmission * 2 * Math.PI) / travel),
    formula: "F_max = n T_H' i η_i · 2π η_w / p_w, n: motors",
    sources: [{ title: 'power balance' }],
    rank: 3,
  }),
  figure({
    id: 'drive.reduction-torque-use',
    title: 'Use of the torque limit of the reduction',
    symbol: 'u_i',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Torque at the shafts that it drives while speeding up over the torque that the reduction may carry there.',
    needs: { torque: 'drive.shaft-lifting-torque', units: 'drive.units', limit: 'drive.reduction-torque-limit' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ torque, units, motors, limit }) => (torque * shaftsPerMotor(motors, units)) / limit,
    formula: 'u_i = n_s T_w2 / T_i,max',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
