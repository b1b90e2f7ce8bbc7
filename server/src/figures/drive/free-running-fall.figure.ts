import { COUNTED_FRICTION, freeRunningFallAcceleration, loadTorqueAtMotor } from '../../mechanics/free-running-drive.ts';
import { reverseEfficiency } from '../../mechanics/reduction.ts';
import { figure, unable } from '../figure.ts';
import { shaftsPerMotor } from '../motor/train.ts';
import { carriedForce, nothingFalls } from './at-rest.ts';

const onlyWhere = { 'drive.transmission': ['belt', 'rack'] } as const;

/** A belt loses the same either way; in teeth the same loss weighs more when the load drives. */
const backwards = (efficiency: number, transmission: string): number => (transmission === 'rack' && efficiency > 0 && efficiency <= 1 ? reverseEfficiency(efficiency) : Math.min(1, efficiency));

export default [
  figure({
    id: 'motor.run-back-torque',
    onlyWhere,
    title: 'Torque with which the load turns the motor',
    symbol: 'T_r0',
    quantity: 'torque',
    meaning: 'Torque that the resting load puts on one unpowered motor, losses not counted, the cautious side. Only a brake or a balance keeps it; the detent of the motor is far smaller as a rule.',
    needs: { load: 'drive.gravity-load', travel: 'drive.travel-per-shaft-turn', ratio: 'drive.reduction-ratio', units: 'drive.units' },
    optional: carriedForce,
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ load, travel, ratio, units, motors, balance }) => (load === 0 ? nothingFalls(balance) : loadTorqueAtMotor(load * shaftsPerMotor(motors, units), travel / (2 * Math.PI), ratio)),
    formula: 'T_r0 = n_s F₀ p_w / (2π i)',
    sources: [{ title: 'work balance over one turn' }],
    rank: 3,
  }),
  figure({
    id: 'drive.fall-acceleration',
    onlyWhere,
    title: 'Acceleration of a drop',
    symbol: 'a_f',
    quantity: 'acceleration',
    meaning: 'How fast the axis gains speed if nothing but half the guide friction and the losses of its drive resists, with everything that turns.',
    needs: { load: 'drive.gravity-load', mass: 'axis.moved-mass', share: 'drive.load-share', travel: 'drive.travel-per-shaft-turn', efficiency: 'drive.shaft-efficiency', friction: 'guides.friction-force' },
    optional: {
      ...carriedForce, counterweight: 'counterbalance.mass', shaft: 'drive.shaft-inertia', coupling: 'coupling.rotational-inertia', rotor: 'motor.rotor-inertia', wheels: 'drive.reduction-inertia', ratio: 'drive.reduction-ratio',
      reduction: 'drive.reduction-reverse-efficiency', units: 'drive.units',
    },
    choices: { transmission: 'drive.transmission' },
    optionalChoices: { motors: 'drive.motors' },
    compute: ({ load, mass, share, travel, efficiency, friction, counterweight, shaft, coupling, rotor, wheels, ratio, reduction, units, balance, transmission, motors }) => {
      if (load === 0) return nothingFalls(balance);
      if (mass + (counterweight ?? 0) <= 0) return unable('nothing that has a mass moves');
      return freeRunningFallAcceleration({
        mass: (mass + (counterweight ?? 0)) * share,
        pull: Math.abs(load),
        friction: COUNTED_FRICTION * Math.max(0, friction) * share,
        radius: travel / (2 * Math.PI),
        reverseEfficiency: backwards(efficiency, transmission),
        // What is not described is left out: the fall then comes out faster, the cautious side.
        shaftInertia: (shaft ?? 0) + (coupling ?? 0),
        ratio: ratio ?? 1,
        reductionEfficiency: Math.min(1, reduction ?? 1),
        motorInertia: ((rotor ?? 0) + (wheels ?? 0)) / shaftsPerMotor(motors, units ?? 1),
      });
    },
    formula: 'a_f = (F₀ − q_F F_g/2) η_r η_i,r / (q_F (m + m_c) η_r η_i,r + ((J_w + J_c) η_i,r + (J_m + J_i) i²/n_s) (2π/p_w)²), η_r: η_w of a belt, 2 − 1/η_w of a rack',
    sources: [{ title: 'Newton’s law of mass and rotor coupled by the drive; Khurmi and Gupta, Theory of Machines', where: 'example 3.13' }],
    rank: 3,
  }),
];
