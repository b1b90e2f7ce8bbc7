import { DRIVE_EFFICIENCY, railVoltageAfter, returnedEnergy, returnedPower, supplyCurrent, supplyPower } from '../../mechanics/supply.ts';
import { moveProfile } from '../../mechanics/motion-profile.ts';
import { figure } from '../figure.ts';

const balance = { title: 'power balance' } as const;
const motorsOf = (motors: string | undefined, units: number): number => (motors === 'shared' ? 1 : units);

export default [
  figure({
    id: 'drive.supply-current',
    title: 'Current taken from the supply',
    symbol: 'I_s,max',
    quantity: 'current',
    meaning: 'Current that the motors of this axis take together while they speed up at full speed. Far below the phase current at low speed.',
    needs: { torque: 'motor.lifting-torque', speed: 'motor.speed', loss: 'motor.copper-loss', voltage: 'supply.voltage', units: 'drive.units' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ torque, speed, loss, voltage, units, motors }) => motorsOf(motors, units) * supplyCurrent(supplyPower(torque * speed, loss), voltage),
    formula: `n (T₂ ω + P_Cu) / (${DRIVE_EFFICIENCY.nominal} V), n: motors`,
    sources: [balance, { title: 'efficiency of the motor drive 0.85: from memory', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'drive.supply-use',
    title: 'Use of the supply by this axis',
    symbol: 'u_V',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Current that this axis alone takes over the current of its supply. Other loads on the same supply come on top.',
    needs: { current: 'drive.supply-current', limit: 'supply.current' },
    compute: ({ current, limit }) => current / limit,
    formula: 'u_V = I_s,max / I_V',
    sources: [balance],
    rank: 3,
  }),
  figure({
    id: 'drive.returned-power',
    title: 'Power returned on the way down',
    symbol: 'P_ret',
    quantity: 'power',
    unit: 'W',
    meaning: 'Power that the motors of this axis push back into the supply while the load drives them down at steady speed; the windings burn their share first.',
    needs: { torque: 'motor.lowering-torque', speed: 'motor.speed', loss: 'motor.copper-loss', units: 'drive.units' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ torque, speed, loss, units, motors }) => motorsOf(motors, units) * returnedPower(torque * speed, loss),
    formula: 'P_ret = n max(0, −T₃ ω − P_Cu)',
    sources: [balance],
    rank: 3,
  }),
  figure({
    id: 'drive.returned-energy',
    title: 'Energy returned on the way down',
    symbol: 'E_ret',
    quantity: 'energy',
    meaning: 'Energy pushed back into the supply in one move down over the whole travel, stopping included.',
    needs: {
      steady: 'motor.lowering-torque', speed: 'motor.speed', loss: 'motor.copper-loss', units: 'drive.units',
      travel: 'axis.travel', top: 'motion.speed', acceleration: 'motion.acceleration',
    },
    optional: { stopping: 'motor.stopping-torque' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ steady, stopping, speed, loss, units, travel, top, acceleration, motors }) => {
      const profile = moveProfile(travel, top, acceleration);
      const fast = (speed * profile.peakSpeed) / top;
      const cruising = returnedEnergy(steady, fast, fast, profile.steadyTime, loss);
      return motorsOf(motors, units) * (cruising + returnedEnergy(stopping ?? steady, fast, 0, profile.decelerationTime, loss));
    },
    formula: 'E_ret = n ∫ max(0, −T ω − P_Cu) dt, with T₃ while cruising and T₄ while stopping',
    sources: [balance],
    rank: 3,
  }),
  figure({
    id: 'drive.bus-voltage',
    title: 'Supply voltage after a move down',
    symbol: 'V_2',
    quantity: 'voltage',
    unit: 'V',
    meaning: 'Voltage that the supply rail reaches if nothing but its capacitors takes up the energy of one move down.',
    needs: { voltage: 'supply.voltage', energy: 'drive.returned-energy', capacitance: 'supply.capacitance' },
    compute: ({ voltage, energy, capacitance }) => railVoltageAfter(voltage, energy, capacitance),
    formula: 'V₂ = √(V² + 2 E_ret / C)',
    sources: [{ title: 'energy of a capacitor' }],
    rank: 3,
  }),
  figure({
    id: 'drive.bus-voltage-use',
    title: 'Use of the voltage limit',
    symbol: 'u_V2',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Voltage after a move down over the highest that the drives on the supply stand.',
    needs: { voltage: 'drive.bus-voltage', limit: 'supply.voltage-limit' },
    compute: ({ voltage, limit }) => voltage / limit,
    formula: 'u = V₂ / V_max',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
