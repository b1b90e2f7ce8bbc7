import { figure } from '../figure.ts';
import { demandedOverMove, moveChartNeeds, moveEnd, spanInWords, torqueOverMove } from './move-chart.ts';
import { curveChoices, curveNeeds, curveTables } from './torque-curve.ts';

/** Sheets and real motors scatter by about so much around the estimate. */
const SCATTER = 0.35;
const KEEPS_UP = 2;
const MAY_STALL = 1;
const STALLS = 0;

const word = (rank: number): string => (rank >= KEEPS_UP ? 'keeps up' : rank >= MAY_STALL ? 'may stall' : 'stalls');

export default figure({
  id: 'motor.stall-verdict',
  title: 'Whether the motor keeps up',
  symbol: 'V_T',
  quantity: 'ratio',
  meaning: 'What the move comes to. The torque of a stepping motor is only estimated, so that the whole range in which it may lie is judged, and not only the value to design with.',
  needs: { margin: 'motor.torque-margin', available: 'motor.available-torque', lifting: 'motor.lifting-torque' },
  optional: { ...curveNeeds, ...moveChartNeeds, upper: 'motor.upper-torque', curveEnd: 'motor.curve-end' },
  optionalChoices: curveChoices,
  tables: curveTables,
  compute: ({ margin, available, upper, curveEnd, kind }) => {
    const asReckoned = margin >= 1 ? KEEPS_UP : STALLS;
    if (kind === 'dc-motor' || kind === 'brushless') return { value: asReckoned, note: 'A motor with feedback falls behind and stops with an error instead of losing its place unnoticed.' };
    if (curveEnd !== undefined) return { value: asReckoned, note: 'Judged by the given points of torque.' };
    if (available <= 0) return { value: STALLS, note: 'No torque is left at this speed.' };
    // The margin is that of the design estimate; the range goes with it.
    const [least, most] = [margin * (1 - SCATTER), margin * Math.max(1 + SCATTER, (upper ?? available) / available)];
    return { value: least >= 1 ? KEEPS_UP : most >= 1 ? MAY_STALL : STALLS, note: `The motor may have ${Number(least.toPrecision(2))} to ${Number(most.toPrecision(2))} times the torque asked for.` };
  },
  formula: 'keeps up: 0.65 S_T ≥ 1; stalls: max(1.35, T_B/T_a) S_T < 1; may stall between; by S_T alone with given points, and for DC and brushless motors',
  sources: [{ title: 'estimate against real motors, about ± 35 %: from memory', weak: true }],
  rank: 2,
  inWords: ({ low, high }) => (word(low) === word(high) ? word(low) : `${word(low)} at the worst end of what is uncertain, else ${word(high)}`),
  chart: {
    title: 'Torque over the move',
    alt: (values) => `Torque asked for over ${spanInWords(values)}, and the torque that the motor has at the speed of each instant.`,
    x: { title: 'Time', quantity: 'time', unit: 's', from: () => 0, to: (values) => moveEnd(values) },
    y: { title: 'Torque', quantity: 'torque', unit: 'N·m' },
    curves: [
      { title: 'asked for, braking counted as positive', y: (t, values) => demandedOverMove(t, values) },
      { title: 'to count on', y: (t, values) => torqueOverMove(t, values, 'design') },
    ],
    band: {
      title: 'estimate to upper bound',
      low: (t, values) => torqueOverMove(t, values, 'design'),
      high: (t, values) => torqueOverMove(t, values, 'upper'),
    },
  },
});
