import { figure, unable } from '../figure.ts';
import { servoModel, servoNeeds, servoTorque, type CurveValues } from './torque-curve.ts';

const onlyWhere = { 'motor.kind': ['dc-motor', 'brushless'] } as const;
const dataNeeds = { constant: 'motor.torque-constant', resistance: 'motor.resistance', voltage: 'supply.voltage' } as const;
const needs = { ...dataNeeds, speed: 'motor.speed' } as const;
const optional = {
  noLoad: servoNeeds.noLoad, polePairs: servoNeeds.polePairs, amplifier: servoNeeds.amplifier, peakTorque: servoNeeds.peakTorque,
  inductance: 'motor.inductance', demanded: 'motor.lifting-torque', continuous: 'motor.continuous-torque', limit: 'motor.speed-limit',
} as const;

type Data = { readonly [alias in keyof typeof dataNeeds]: number } & { readonly [alias in 'noLoad' | 'polePairs' | 'amplifier' | 'peakTorque' | 'inductance']: number | undefined } & { readonly kind: string; readonly constantAs: string | undefined };
type Values = Data & { readonly speed: number; readonly limit: number | undefined };

/** Torque over speed from the data of the motor. */
const torqueOf = ({ kind, constantAs, constant, resistance, voltage, noLoad, polePairs, amplifier, peakTorque, inductance }: Data) =>
  servoTorque({ ...noStepper, kind, constantAs, constant, resistance, voltage, noLoad, polePairs, amplifier, peakTorque, inductance });

const noStepper: Pick<CurveValues, 'holding' | 'rated' | 'peak' | 'stepAngle' | 'pointsVoltage' | 'points'> = {
  holding: undefined, rated: undefined, peak: undefined, stepAngle: undefined, pointsVoltage: undefined, points: undefined,
};

/** The plot ends beyond the working speed, the maker's limit and, if it is not far, the speed at which no torque is left. */
function chartEnd(values: Values): number {
  const torque = torqueOf(values);
  const least = 1.1 * Math.max(values.speed, values.limit ?? 0);
  if (typeof torque === 'string') return least;
  let end = least;
  while (torque(end).torque > 0 && end < 4 * least) end *= 1.05;
  return end;
}

const LIMITS = {
  voltage: 'the supply voltage sets it',
  current: 'the current of the amplifier sets it',
  'peak torque': 'the peak torque of its maker sets it',
  'speed limit': 'the speed limit of its maker sets it',
} as const;

export default [
  figure({
    id: 'motor.available-torque',
    onlyWhere,
    title: 'Torque available at full speed',
    symbol: 'T_a',
    quantity: 'torque',
    meaning: 'Torque that the motor gives for a short time at the highest speed of the axis: the least of what supply, amplifier and maker allow.',
    needs,
    optional,
    choices: { kind: 'motor.kind' },
    optionalChoices: { constantAs: 'motor.torque-constant-as' },
    compute: (values) => {
      const torque = torqueOf(values);
      if (typeof torque === 'string') return unable(torque);
      const found = torque(values.speed);
      return { value: found.torque, note: `For a short time; ${LIMITS[found.limitedBy]}. The winding is taken cold.` };
    },
    formula: 'T_a = min(K (I_V − I₀), K (I_max − I₀), T_p); DC: I_V = (V − K ω)/R; brushless: (R_ph i + e)² + (N ω L_ph i)² = (V/√3)² with e = ⅔ K_p ω and R_ph = R/2',
    sources: [servoModel],
    rank: 1,
    chart: {
      title: 'Torque over speed',
      alt: ({ speed, demanded }) =>
        `Torque for a short time over motor speed; the axis works at ${Math.round((speed * 30) / Math.PI)} rpm${demanded === undefined ? '' : ` and asks for ${demanded.toPrecision(2)} N·m`}.`,
      x: { title: 'Motor speed', quantity: 'rotational-speed', unit: 'rpm', from: () => 0, to: (values) => chartEnd(values) },
      y: { title: 'Torque', quantity: 'torque', unit: 'N·m' },
      curves: [
        {
          title: 'for a short time',
          y: (x, values) => {
            const torque = torqueOf(values);
            return typeof torque === 'string' ? Number.NaN : torque(x).torque;
          },
        },
        {
          title: 'without end',
          y: (x, values) => {
            const torque = torqueOf(values);
            return values.continuous === undefined || typeof torque === 'string' ? Number.NaN : Math.min(values.continuous, torque(x).torque);
          },
        },
      ],
      points: [{ title: 'demanded while speeding up', x: ({ speed }) => speed, y: ({ demanded }) => demanded ?? Number.NaN }],
    },
  }),
  figure({
    id: 'motor.standing-torque',
    onlyWhere,
    title: 'Greatest torque at rest',
    symbol: "T_H'",
    quantity: 'torque',
    meaning: 'Greatest torque of the motor at rest, for a short time: what supply, amplifier and maker allow. It is what the axis can push with.',
    needs: dataNeeds,
    optional: { noLoad: servoNeeds.noLoad, polePairs: servoNeeds.polePairs, amplifier: servoNeeds.amplifier, peakTorque: servoNeeds.peakTorque, inductance: 'motor.inductance' },
    choices: { kind: 'motor.kind' },
    optionalChoices: { constantAs: 'motor.torque-constant-as' },
    compute: (values) => {
      const torque = torqueOf(values);
      if (typeof torque === 'string') return unable(torque);
      const found = torque(0);
      return { value: found.torque, note: `For a short time; ${LIMITS[found.limitedBy]}.` };
    },
    formula: "T_H' = min(K (I_V − I₀), K (I_max − I₀), T_p); DC: I_V = V/R, brushless: V/(√3 R_ph)",
    sources: [servoModel],
    rank: 2,
  }),
  figure({
    id: 'motor.no-load-speed',
    onlyWhere,
    title: 'Speed at which no torque is left',
    symbol: 'n_0,V',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'Speed at which the back-EMF takes all of the supply voltage: the motor turns no faster from this supply.',
    needs: dataNeeds,
    optional: { noLoad: servoNeeds.noLoad, polePairs: servoNeeds.polePairs, inductance: 'motor.inductance' },
    choices: { kind: 'motor.kind' },
    optionalChoices: { constantAs: 'motor.torque-constant-as' },
    compute: (values) => {
      const torque = torqueOf({ ...values, peakTorque: undefined, amplifier: undefined });
      if (typeof torque === 'string') return unable(torque);
      if (torque(0).torque <= 0) return unable('the supply does not turn the motor even without load');
      let [low, high] = [0, 1];
      while (torque(high).torque > 0 && high < 1e6) [low, high] = [high, 2 * high];
      for (let i = 0; i < 50; i++) {
        const middle = (low + high) / 2;
        if (torque(middle).torque > 0) low = middle;
        else high = middle;
      }
      return low;
    },
    formula: 'K (I_V(ω) − I₀) = 0; DC: ω = (V − R I₀)/K',
    sources: [servoModel],
    rank: 3,
  }),
  figure({
    id: 'motor.speed-use',
    onlyWhere,
    title: 'Use of the speed limit',
    symbol: 'u_n',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Speed of the motor at the highest speed of the axis over what its maker allows.',
    needs: { speed: 'motor.speed', limit: 'motor.speed-limit' },
    compute: ({ speed, limit }) => speed / limit,
    formula: 'u_n = n_m / n_max',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
