import {
  START_SPEED_SHARE, incrementalMicrostepTorque, magneticStiffness, microstepsBeforeMoving, motorNaturalFrequency, startSpeedWithoutRamp,
} from '../../mechanics/stepper-standing.ts';
import { stepsFromAngle } from '../../mechanics/step-rate.ts';
import { figure, unable } from '../figure.ts';
import { polePairsOf, staticTorqueCurve } from './winding.ts';

const oddAngle = 'this step angle is not that of a two-phase motor, where four full steps make a whole part of a turn';
const oscillator = { title: 'oscillator on the magnetic spring (Acarnley, Stepping Motors)', where: 'chapter 4' } as const;

export default [
  figure({
    id: 'motor.rest-torque',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Torque with the rest current',
    symbol: 'T_r',
    quantity: 'torque',
    meaning: 'Greatest torque of the motor at rest, once the drive has lowered its current. It needs power.',
    needs: { standing: 'motor.standing-torque', rest: 'drive.rest-current' },
    compute: ({ standing, rest }) => standing * Math.min(1, rest),
    formula: "T_r = ρ T_H'",
    sources: [staticTorqueCurve],
    rank: 3,
  }),
  figure({
    id: 'motor.rest-factor',
    title: 'Rest torque over the load at rest',
    symbol: 'S_r',
    quantity: 'ratio',
    meaning: 'Torque with the rest current over what holding the load asks for, with power on.',
    needs: { torque: 'motor.rest-torque', load: 'motor.holding-torque-needed' },
    compute: ({ torque, load }) => (load > 1e-9 ? torque / load : unable('nothing has to be held: the drive locks, or the axis is level')),
    formula: 'S_r = T_r / T₀',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'motor.detent-at-screw',
    title: 'Detent torque at one shaft',
    symbol: 'T_d,s',
    quantity: 'torque',
    meaning: 'Torque with which the unpowered motor resists being turned from the shaft of its screw, pulley or pinion. A cogging torque, zero between detents: not a brake.',
    needs: { detent: 'motor.detent-torque', ratio: 'drive.reduction-ratio', units: 'drive.units' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ detent, ratio, units, motors }) => ({ value: (detent * ratio) / (motors === 'shared' ? units : 1), note: 'Detent torque is not a brake: vibration walks the load down.' }),
    formula: 'T_d,s = T_d i, shared among the shafts of one motor',
    sources: [{ title: 'kinematics; losses of the reduction, which would help, are left out' }],
    rank: 3,
  }),
  figure({
    id: 'motor.incremental-torque',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Torque behind one microstep',
    symbol: 'T_µ',
    quantity: 'torque',
    meaning: 'Torque that the first microstep away from rest brings up. The running torque is not smaller for it.',
    needs: { standing: 'motor.standing-torque', microsteps: 'controller.microsteps' },
    compute: ({ standing, microsteps }) => incrementalMicrostepTorque(standing, microsteps),
    formula: "T_µ = T_H' sin(90°/n_µ)",
    sources: [staticTorqueCurve],
    rank: 3,
  }),
  figure({
    id: 'motor.microsteps-before-moving',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Microsteps before the load moves',
    symbol: 'm_µ',
    quantity: 'count',
    meaning: 'Microsteps that must be sent in the other direction before friction lets the load follow.',
    needs: { friction: 'motor.friction-torque', standing: 'motor.standing-torque', microsteps: 'controller.microsteps' },
    compute: ({ friction, standing, microsteps }) => {
      const found = microstepsBeforeMoving(friction, standing, microsteps);
      return found.kind === 'moves-after' ? found.microsteps : unable('friction is larger than the torque of the motor');
    },
    formula: "m_µ = n_µ (2/π) asin(T_f/T_H'), rounded up",
    sources: [staticTorqueCurve],
    rank: 3,
  }),
  figure({
    id: 'motor.magnetic-stiffness',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Stiffness of the magnetic spring',
    symbol: 'k_m',
    quantity: 'torsional-stiffness',
    meaning: 'How stiffly the field holds the rotor at the set current: on coarse leads often the softest link between motor and load.',
    needs: { standing: 'motor.standing-torque', stepAngle: 'motor.step-angle' },
    compute: ({ standing, stepAngle }) => {
      const polePairs = polePairsOf(stepAngle);
      return Number.isInteger(polePairs) ? magneticStiffness(standing, polePairs) : unable(oddAngle);
    },
    formula: "k_m = N T_H', N = 90°/φ_s",
    sources: [staticTorqueCurve],
    rank: 3,
  }),
  figure({
    id: 'motor.natural-frequency',
    title: 'Natural frequency of rotor and load',
    symbol: 'f_0',
    quantity: 'frequency',
    meaning: 'Frequency at which rotor and load swing on the magnetic spring, taken as rigidly joined.',
    needs: { stiffness: 'motor.magnetic-stiffness', rotor: 'motor.rotor-inertia', load: 'motor.reflected-inertia' },
    compute: ({ stiffness, rotor, load }) => motorNaturalFrequency(stiffness, rotor + load),
    formula: 'f₀ = √(k_m / (J_m + J_L)) / 2π',
    sources: [oscillator],
    rank: 3,
  }),
  figure({
    id: 'motor.resonance-speed',
    title: 'Speed at which full steps meet the resonance',
    symbol: 'n_0',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'Motor speed at which full steps come as fast as rotor and load swing: rough running, and lost steps in full and half steps.',
    needs: { frequency: 'motor.natural-frequency', stepAngle: 'motor.step-angle' },
    compute: ({ frequency, stepAngle }) => (2 * Math.PI * frequency) / stepsFromAngle(stepAngle),
    formula: 'n₀ = f₀ φ_s / 360°',
    sources: [oscillator],
    rank: 3,
  }),
  figure({
    id: 'motor.resonance-closeness',
    title: 'Speed over the resonance speed',
    symbol: 'q_0',
    quantity: 'ratio',
    meaning: 'Working speed of the motor over the nearer of its resonance speed and half of it; 1 is right upon it.',
    needs: { speed: 'motor.speed', resonance: 'motor.resonance-speed' },
    compute: ({ speed, resonance }) => {
      const whole = speed / resonance;
      const half = speed / (resonance / 2);
      return Math.abs(Math.log(whole)) < Math.abs(Math.log(half)) ? whole : half;
    },
    formula: 'q₀ = n_m / n₀ or n_m / (n₀/2)',
    sources: [oscillator],
    rank: 3,
  }),
  figure({
    id: 'motor.start-speed',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Start speed without a ramp',
    symbol: 'n_j',
    quantity: 'rotational-speed',
    unit: 'rpm',
    meaning: 'Speed to which the motor may be stepped at once from rest: half of the ideal limit, at which the rotor just fails to be caught.',
    needs: {
      standing: 'motor.standing-torque', rotor: 'motor.rotor-inertia', load: 'motor.reflected-inertia', stepAngle: 'motor.step-angle', opposing: 'motor.cruising-torque',
    },
    compute: ({ standing, rotor, load, stepAngle, opposing }) => {
      const polePairs = polePairsOf(stepAngle);
      if (!Number.isInteger(polePairs)) return unable(oddAngle);
      const found = startSpeedWithoutRamp(standing, rotor + load, polePairs, Math.max(0, opposing));
      return found.kind === 'starts' ? START_SPEED_SHARE * found.speed : unable('the load is larger than the torque of the motor');
    },
    formula: "n_j = ½ √( (2/((J_m + J_L) N)) (2 T_H' cos δ − T₁ (π − 2δ)) ), δ = asin(T₁/T_H')",
    sources: [{ title: 'energy of the rotor against the barrier of the static torque curve, checked by integration; the half is common practice', weak: true }],
    rank: 3,
  }),
];
