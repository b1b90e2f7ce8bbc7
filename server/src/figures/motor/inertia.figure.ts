import { reflectedInertia } from '../../mechanics/axis-torque.ts';
import { figure } from '../figure.ts';
import { shaftsPerMotor } from './train.ts';

const kineticEnergy = { title: 'equal kinetic energy (Dubey, Fundamentals of Electrical Drives)', where: 'section 2.3' } as const;

export default [
  figure({
    id: 'motor.reflected-inertia',
    title: 'Inertia that the motor sees',
    symbol: 'J_L',
    quantity: 'rotational-inertia',
    unit: 'g·cm²',
    meaning: 'Inertia of everything that one motor moves besides its own rotor, referred to its shaft.',
    needs: {
      mass: 'axis.moved-mass', units: 'drive.units', share: 'drive.load-share', travel: 'drive.travel-per-shaft-turn', shaft: 'drive.shaft-inertia', ratio: 'drive.reduction-ratio', wheels: 'drive.reduction-inertia',
    },
    optional: { coupling: 'coupling.rotational-inertia', counterweight: 'counterbalance.mass' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ mass, counterweight, units, share, travel, shaft, coupling, ratio, wheels, motors }) => {
      const shafts = shaftsPerMotor(motors, units);
      const chain = {
        travelPerTurn: travel, efficiency: 1, reverseEfficiency: 1, dragTorque: 0, motorInertia: 0,
        screwInertia: shafts * (shaft + (coupling ?? 0)),
        stages: [{ ratio, efficiency: 1, reverseEfficiency: 1, fastInertia: wheels, slowInertia: 0, backlash: 0 }],
      };
      return reflectedInertia(chain, (mass + (counterweight ?? 0)) * shafts * share);
    },
    formula: 'J_L = J_i + n_s (J_w + J_c + q_F (m + m_c) (p_w/2π)²) / i²',
    sources: [kineticEnergy],
    rank: 3,
  }),
  figure({
    id: 'motor.inertia-ratio',
    title: 'Inertia ratio',
    symbol: 'q_J',
    quantity: 'ratio',
    meaning: 'Inertia that the motor sees over that of its rotor: far above 10 a stepping motor swings and loses steps.',
    needs: { load: 'motor.reflected-inertia', rotor: 'motor.rotor-inertia' },
    compute: ({ load, rotor }) => load / rotor,
    formula: 'q_J = J_L / J_m',
    sources: [{ title: 'definition; up to 10 is common practice, no published source' }],
    rank: 2,
  }),
];
