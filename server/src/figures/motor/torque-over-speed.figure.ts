import { pullOutTorque } from '../../mechanics/stepper-torque.ts';
import { figure, unable } from '../figure.ts';
import { cornerOf, stepperDriveOf, stepperModel, torqueOverSpeed, windingNeeds } from './winding.ts';

export default [
  figure({
    id: 'motor.corner-speed',
    title: 'Corner speed',
    symbol: 'n_c',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'Highest speed at which the supply still pushes the set current through the windings against their inductance and back-EMF; beyond it torque falls as 1/speed.',
    needs: windingNeeds,
    compute: (values) => {
      const corner = cornerOf(values);
      return typeof corner === 'string' ? unable(corner) : corner;
    },
    formula: '(R I_p + k ω)² + (N ω L I_p)² = V² solved for ω, with k = T_H/(√2 I_r) and N = 90°/φ_s',
    sources: [stepperModel],
    rank: 2,
  }),
  figure({
    id: 'motor.corner-use',
    title: 'Speed over the corner speed',
    symbol: 'u_c',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How far the motor runs towards or beyond its corner speed.',
    needs: { speed: 'motor.speed', corner: 'motor.corner-speed' },
    compute: ({ speed, corner }) => speed / corner,
    formula: 'u_c = n_m / n_c',
    sources: [stepperModel],
    rank: 3,
  }),
  figure({
    id: 'motor.resistive-use',
    title: 'Share of the supply that the winding takes at rest',
    symbol: 'u_R',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Voltage that the set current takes across the resistance of the winding, over the supply voltage.',
    needs: { resistance: 'motor.resistance', peak: 'motor.peak-current', voltage: 'supply.voltage' },
    compute: ({ resistance, peak, voltage }) => (resistance * peak) / voltage,
    formula: 'u_R = R I_p / V',
    sources: [{ title: "Ohm's law" }],
    rank: 3,
  }),
  figure({
    id: 'motor.estimated-torque',
    title: 'Torque estimated at full speed',
    symbol: 'T_A',
    quantity: 'torque',
    meaning: 'Design estimate of the torque at the highest speed of the axis, on the cautious side of a motor without losses. An estimate, not a measurement.',
    needs: { ...windingNeeds, speed: 'motor.speed' },
    compute: (values) => {
      const drive = stepperDriveOf(values);
      return typeof drive === 'string' ? unable(drive) : pullOutTorque(drive, values.speed).design;
    },
    formula: "T_A = T_H' · min(1, n_c/n_m), and no more than k V/Z − k² ω R/Z² with Z² = R² + (N ω L)²",
    sources: [stepperModel],
    rank: 3,
  }),
  figure({
    id: 'motor.upper-torque',
    title: 'Upper bound of the torque at full speed',
    symbol: 'T_B',
    quantity: 'torque',
    meaning: 'The most that the motor could give at the highest speed if it had no losses: the drive then puts out a square wave.',
    needs: { ...windingNeeds, speed: 'motor.speed' },
    compute: (values) => {
      const drive = stepperDriveOf(values);
      return typeof drive === 'string' ? unable(drive) : pullOutTorque(drive, values.speed).upper;
    },
    formula: "T_B = min(T_H', k V'/Z − k² ω R/Z²) with V' = 4 V/π",
    sources: [stepperModel],
    rank: 3,
  }),
  figure({
    id: 'motor.curve-end',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'End of the given torque curve',
    symbol: 'n_k',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'Highest speed for which the given points of torque speak, at the voltage of this supply.',
    needs: {},
    optional: { voltage: 'supply.voltage', pointsVoltage: 'motor.torque-points-voltage' },
    tables: { points: 'motor.torque-points' },
    compute: ({ voltage, pointsVoltage, points }) => {
      const curve = points && torqueOverSpeed({ ...noWinding, voltage }, points, pointsVoltage);
      return typeof curve === 'object' && curve.lastSpeed !== undefined ? curve.lastSpeed : unable('no points of a torque curve are given');
    },
    formula: 'n_k = n_last V / V_k',
    sources: [{ title: 'points given in the description' }],
    rank: 3,
  }),
  figure({
    id: 'motor.available-torque',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Torque available at full speed',
    symbol: 'T_a',
    quantity: 'torque',
    meaning: 'Torque to count on at the highest speed of the axis: from the points given in the description, else the design estimate.',
    needs: { speed: 'motor.speed' },
    optional: { ...windingNeeds, pointsVoltage: 'motor.torque-points-voltage', demanded: 'motor.lifting-torque' },
    tables: { points: 'motor.torque-points' },
    compute: ({ speed, points, pointsVoltage, ...winding }) => {
      const curve = torqueOverSpeed(pick(winding), points, pointsVoltage);
      if (typeof curve === 'string') return unable(curve);
      const torque = curve.at(speed);
      if (torque === undefined) return unable('the given points of torque end below the speed of the motor');
      if (!curve.range) return torque;
      const upper = curve.range(speed).upper;
      const range = upper > 1.02 * torque ? `from this, to design with, up to ${upper.toPrecision(2)} N·m at best` : 'not limited by the voltage at this speed';
      return { value: torque, note: `An estimate, ${range}: sinusoidal flux, constant inductance, no iron loss, no resonance. Real motors scatter by about ± 35 %; a measured curve goes before it.` };
    },
    formula: 'T_a from the given points at n_m V_k/V, else T_A',
    sources: [stepperModel],
    rank: 1,
    chart: {
      title: 'Torque over speed',
      alt: ({ speed, demanded }) =>
        `Torque over motor speed, falling beyond the corner; the axis works at ${Math.round((speed * 30) / Math.PI)} rpm${demanded === undefined ? '' : ` and asks for ${demanded.toPrecision(2)} N·m`}.`,
      x: { title: 'Motor speed', quantity: 'rotational-speed', unit: 'rpm', from: () => 0, to: ({ speed, points, pointsVoltage, ...winding }) => chartEnd(speed, torqueOverSpeed(pick(winding), points, pointsVoltage)) },
      y: { title: 'Torque', quantity: 'torque', unit: 'N·m' },
      curves: [{ title: 'to count on', y: (x, { points, pointsVoltage, ...winding }) => readAt(torqueOverSpeed(pick(winding), points, pointsVoltage), x, 'design') }],
      band: {
        title: 'estimate to upper bound',
        low: (x, { points, pointsVoltage, ...winding }) => readAt(torqueOverSpeed(pick(winding), points, pointsVoltage), x, 'design'),
        high: (x, { points, pointsVoltage, ...winding }) => readAt(torqueOverSpeed(pick(winding), points, pointsVoltage), x, 'upper'),
      },
      points: [{ title: 'demanded while speeding up', x: ({ speed }) => speed, y: ({ demanded }) => demanded ?? Number.NaN }],
    },
  }),
  figure({
    id: 'motor.points-over-estimate',
    title: 'Given torque over the estimate',
    symbol: 'q_k',
    quantity: 'ratio',
    meaning: 'Torque of the given points over the estimate from the winding data, at the highest speed: far from 1, one of the two holds a slip.',
    needs: { estimate: 'motor.estimated-torque', speed: 'motor.speed', voltage: 'supply.voltage' },
    optional: { pointsVoltage: 'motor.torque-points-voltage' },
    tables: { points: 'motor.torque-points' },
    compute: ({ estimate, speed, voltage, pointsVoltage, points }) => {
      if (!points) return unable('no points of a torque curve are given');
      const curve = torqueOverSpeed({ ...noWinding, voltage }, points, pointsVoltage);
      const torque = typeof curve === 'string' ? undefined : curve.at(speed);
      if (torque === undefined) return unable('the given points of torque end below the speed of the motor');
      return estimate > 0 ? torque / estimate : unable('the estimate leaves no torque at this speed');
    },
    formula: 'q_k = T(n_m) / T_A',
    sources: [stepperModel],
    rank: 3,
  }),
];

const noWinding = { holding: undefined, rated: undefined, peak: undefined, resistance: undefined, inductance: undefined, stepAngle: undefined, voltage: undefined };

type MaybeWinding = Parameters<typeof torqueOverSpeed>[0];

const pick = ({ holding, rated, peak, resistance, inductance, stepAngle, voltage }: MaybeWinding): MaybeWinding => ({ holding, rated, peak, resistance, inductance, stepAngle, voltage });

type Curve = ReturnType<typeof torqueOverSpeed>;

function readAt(curve: Curve, speed: number, which: 'design' | 'upper'): number {
  if (typeof curve === 'string') return Number.NaN;
  return curve.range?.(speed)[which] ?? curve.at(speed) ?? Number.NaN;
}

/** The plot reaches to twice the working speed, or to the end of the given points. */
function chartEnd(speed: number, curve: Curve): number {
  return typeof curve === 'object' && curve.lastSpeed !== undefined ? Math.max(curve.lastSpeed, 1.1 * speed) : Math.max(2 * speed, 2 * Math.PI * 5);
}
