import { worstInstant } from '../../mechanics/worst-instant.ts';
import { figure, unable } from '../figure.ts';
import { fullRamp, upDemand } from './move-demand.ts';
import { moveChartNeeds } from './move-chart.ts';
import { curveChoices, curveNeeds, curveTables, curveValues, torqueCurve } from './torque-curve.ts';

const short = (value: number): string => (value >= 100 ? 'over 100' : value.toPrecision(2));

export default [
  figure({
    id: 'motor.torque-margin',
    title: 'Torque margin',
    symbol: 'S_T',
    quantity: 'ratio',
    meaning: 'Torque available over torque demanded at the worst instant of the move: without a limit of jerk that is full speed and full acceleration together. At 1 the motor stalls; 1.5 is common practice without position feedback.',
    needs: { available: 'motor.available-torque', lifting: 'motor.lifting-torque' },
    optional: { ...curveNeeds, ...moveChartNeeds },
    optionalChoices: curveChoices,
    tables: curveTables,
    compute: (values) => {
      const { available, lifting, cruising, acceleration, jerk, speed, perTurn } = values;
      const demanded = Math.max(lifting, cruising ?? 0);
      if (demanded <= 0) return unable('the move up asks for no torque');
      if (jerk === undefined || cruising === undefined || acceleration === undefined || speed === undefined || perTurn === undefined) return available / demanded;
      const curve = torqueCurve(curveValues(values));
      if (typeof curve === 'string' || !(jerk > 0)) return available / demanded;
      const at = (v: number): number => curve.at((2 * Math.PI * v) / perTurn) ?? 0;
      const worst = worstInstant(fullRamp(speed, acceleration, jerk), upDemand({ acceleration, cruising, lifting }), at);
      return { value: worst.ratio, note: `The worst instant is ${Number((worst.time * 1000).toPrecision(2))} ms into the ramp, at ${Math.round((100 * worst.speed) / speed)} % of the speed and ${Math.round((100 * worst.acceleration) / acceleration)} % of the acceleration.` };
    },
    formula: 'S_T = T_a / max(T₂, T₁); with a limit of jerk min over t of T_a(v(t)) / (T₁ + (T₂ − T₁) a(t)/a)',
    sources: [{ title: 'definition; a margin of 1.5 for stepping motors without feedback is common practice, no published source' }],
    rank: 1,
    hint: ({ low }) => `margin ${short(low)}×`,
  }),
  figure({
    id: 'motor.lowering-margin',
    title: 'Torque margin on the way down',
    symbol: 'S_T,d',
    quantity: 'ratio',
    meaning: 'Torque available over the largest torque on the way down, whether the motor pushes a thread that locks or brakes a load that drives it.',
    needs: { available: 'motor.available-torque', steady: 'motor.lowering-torque' },
    optional: { stopping: 'motor.stopping-torque', starting: 'motor.starting-down-torque' },
    compute: ({ available, steady, stopping, starting }) => {
      const demanded = Math.max(Math.abs(steady), Math.abs(stopping ?? 0), Math.abs(starting ?? 0));
      return demanded > 0 ? available / demanded : unable('the way down asks for no torque');
    },
    formula: 'S_T,d = T_a / max(|T₃|, |T₄|, |T₅|)',
    sources: [{ title: 'definition; braking torque is taken no larger than driving torque, the cautious side' }],
    rank: 3,
  }),
];
