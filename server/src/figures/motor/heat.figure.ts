import { COPPER_TEMPERATURE_COEFFICIENT, copperLossOfSetting, windingRise } from '../../mechanics/motor-heat.ts';
import { handPushedVoltage } from '../../mechanics/supply.ts';
import { torqueConstant } from '../../mechanics/stepper-torque.ts';
import { figure, unable } from '../figure.ts';

/** The case of a motor lies about a quarter of the way below its winding: 60 K of 80 K. From memory. */
const CASE_SHARE = 0.75;
const steadyHeat = { title: 'steady heat balance; growth of copper resistance and class limits of IEC 60034-1' } as const;

export default [
  figure({
    id: 'motor.copper-loss',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Heat in the windings',
    symbol: 'P_Cu',
    quantity: 'power',
    meaning: 'Heat that the set current makes in both windings of one motor, cold. It depends on the setting and not on the load.',
    needs: { peak: 'motor.peak-current', resistance: 'motor.resistance' },
    compute: ({ peak, resistance }) => copperLossOfSetting(peak, resistance),
    formula: 'P_Cu = I_p² R',
    sources: [{ title: 'sin² + cos² = 1 over the two windings' }],
    rank: 3,
  }),
  figure({
    id: 'motor.winding-rise',
    title: 'Temperature rise of the winding',
    symbol: 'Δθ',
    quantity: 'temperature-difference',
    unit: 'K',
    meaning: 'How far the winding settles above its surroundings if the set current stays on.',
    needs: { loss: 'motor.copper-loss', resistance: 'motor.thermal-resistance' },
    compute: ({ loss, resistance }) => {
      const found = windingRise(loss, resistance, COPPER_TEMPERATURE_COEFFICIENT);
      return found.kind === 'settles' ? found.rise : unable('this current heats the winding faster than it can cool, without end');
    },
    formula: 'Δθ = P_Cu R_th / (1 − α P_Cu R_th), α = 1/255 K',
    sources: [steadyHeat],
    rank: 3,
  }),
  figure({
    id: 'motor.winding-temperature',
    title: 'Temperature of the winding',
    symbol: 'θ_w',
    quantity: 'temperature',
    unit: '°C',
    meaning: 'Temperature at which the winding settles if the set current stays on.',
    needs: { rise: 'motor.winding-rise', ambient: 'conditions.ambient-temperature' },
    compute: ({ rise, ambient }) => ambient + rise,
    formula: 'θ_w = ϑ_a + Δθ',
    sources: [steadyHeat],
    rank: 3,
  }),
  figure({
    id: 'motor.case-temperature',
    title: 'Temperature of the motor case',
    symbol: 'θ_c',
    quantity: 'temperature',
    unit: '°C',
    meaning: 'Temperature of the outside of the motor if the set current stays on.',
    needs: { rise: 'motor.winding-rise', ambient: 'conditions.ambient-temperature' },
    compute: ({ rise, ambient }) => ambient + CASE_SHARE * rise,
    formula: 'θ_c = ϑ_a + 0.75 Δθ',
    sources: [{ title: 'three quarters of the rise of the winding; common practice, no published source', weak: true }],
    rank: 2,
  }),
  figure({
    id: 'motor.hand-pushed-voltage',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Voltage when pushed by hand',
    symbol: 'e_h',
    quantity: 'voltage',
    unit: 'V',
    meaning: 'Peak voltage of a winding when the unpowered axis is pushed at its working speed: it can reach electronics that are switched off.',
    needs: { holding: 'motor.holding-torque', rated: 'motor.current', speed: 'motor.speed' },
    compute: ({ holding, rated, speed }) => handPushedVoltage(torqueConstant(holding, rated), speed),
    formula: 'e_h = k ω, k = T_H/(√2 I_r)',
    sources: [{ title: 'the torque constant is the back-EMF constant' }],
    rank: 3,
  }),
];
