import { creditedPeakCurrent, torqueConstant } from '../../mechanics/stepper-torque.ts';
import { figure } from '../figure.ts';

const definition = { title: 'root mean square of a sine' } as const;

export default [
  figure({
    id: 'motor.peak-current',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Peak of the phase current',
    symbol: 'I_p',
    quantity: 'current',
    meaning: 'Highest value of the sinusoidal current in one winding: it makes the torque.',
    needs: { setting: 'drive.current-setting', factor: 'drive.current-peak-factor' },
    compute: ({ setting, factor }) => setting * factor,
    formula: 'I_p = c_p I_s, with c_p = 1 for a setting given as peak and √2 for one given as root mean square',
    sources: [definition],
    rank: 2,
  }),
  figure({
    id: 'motor.rms-current',
    title: 'Root mean square of the phase current',
    symbol: 'I_rms',
    quantity: 'current',
    meaning: 'Root mean square of the current in one winding: it heats, and it is what the rating limits.',
    needs: { peak: 'motor.peak-current' },
    compute: ({ peak }) => peak / Math.SQRT2,
    formula: 'I_rms = I_p / √2',
    sources: [definition],
    rank: 3,
  }),
  figure({
    id: 'motor.current-use',
    title: 'Use of the rated current',
    symbol: 'u_I',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Root mean square of the phase current over the rated current, which the sheet gives as direct current in both windings.',
    needs: { rms: 'motor.rms-current', rated: 'motor.current' },
    compute: ({ rms, rated }) => rms / rated,
    formula: 'u_I = I_rms / I_r',
    sources: [{ title: 'equal heat in the windings: I_p² R against 2 I_r² R' }],
    rank: 2,
  }),
  figure({
    id: 'motor.standing-torque',
    onlyWhere: { 'motor.kind': ['stepper'] },
    title: 'Greatest torque at rest',
    symbol: "T_H'",
    quantity: 'torque',
    meaning: 'Greatest torque of the motor at rest with the current as set; a peak setting equal to the rated current gives 71 % of the holding torque of the sheet.',
    needs: { holding: 'motor.holding-torque', rated: 'motor.current', peak: 'motor.peak-current' },
    compute: ({ holding, rated, peak }) => {
      const credited = creditedPeakCurrent(peak, rated);
      const value = torqueConstant(holding, rated) * credited;
      return credited < peak ? { value, note: 'No more torque is counted beyond 1.2 times the rated current: the iron saturates.' } : value;
    },
    formula: "T_H' = T_H I_p / (√2 I_r)",
    sources: [{ title: 'holding torque rated with both windings on (Acarnley, Stepping Motors)', where: 'chapter 3' }],
    rank: 2,
  }),
];
