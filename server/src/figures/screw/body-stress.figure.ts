import { bodyStress } from '../../mechanics/power-screw.ts';
import { figure } from '../figure.ts';

export default [
  figure({
    id: 'screw.body-stress',
    title: 'Stress in the core of the screw',
    symbol: 'σ_v',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Axial stress of the largest load and shear stress of the torque, put together; with a stalled motor the whole torque of the motor at the set current twists the screw.',
    needs: { load: 'drive.lifting-load', torque: 'screw.lifting-torque', rootDiameter: 'screw.root-diameter' },
    optional: { standing: 'motor.standing-torque', holding: 'motor.holding-torque', ratio: 'drive.reduction-ratio' },
    compute: ({ load, torque, rootDiameter, standing, holding, ratio }) => {
      const stalled = (standing ?? holding ?? 0) * (ratio ?? 1);
      const value = bodyStress(load, Math.max(Math.abs(torque), stalled), rootDiameter).equivalent;
      return stalled > Math.abs(torque) ? { value, note: 'with the motor stalled at its full torque' } : value;
    },
    formula: 'σ_v = √(σ² + 3 τ²), σ = 4 F₂ / (π d₃²), τ = 16 T / (π d₃³)',
    sources: [{ title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, equations (8-7), (8-8), and section 5-5' }],
    rank: 3,
  }),
  figure({
    id: 'screw.body-stress-use',
    title: 'Use of the yield strength',
    symbol: 'σ_v/R_e',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Stress in the core over the yield strength of the screw.',
    needs: { stress: 'screw.body-stress', strength: 'screw.yield-strength' },
    compute: ({ stress, strength }) => stress / strength,
    formula: 'σ_v / R_e',
    sources: [{ title: 'follows from the stress and the material' }],
    rank: 3,
  }),
];
