import { figure, unable } from '../figure.ts';
import { atMotor, powerBalance, shaftsPerMotor, trainNeeds } from './train.ts';

/** What turns: rotor, wheels of the reduction, and what is on each shaft that carries screw, pulley or pinion, with its coupling. */
const inertiaNeeds = { rotor: 'motor.rotor-inertia', wheels: 'drive.reduction-inertia', shaft: 'drive.shaft-inertia' } as const;
const inertiaOptions = { coupling: 'coupling.rotational-inertia' } as const;
const moveNeeds = { units: 'drive.units', acceleration: 'motion.acceleration', travel: 'drive.travel-per-shaft-turn', share: 'drive.load-share' } as const;
const shared = { motors: 'drive.motors' } as const;

/** Turning acceleration of the shaft, rad/s². */
const turning = (acceleration: number, travel: number): number => (2 * Math.PI * acceleration) / travel;

/** Torque of the shaft on the way down under a load so many times as large: friction follows the load, the drag of a preload does not. */
const underLoad = (steady: number, times: number, drag: number | undefined): number => (steady - (drag ?? 0)) * times + (drag ?? 0);

export default [
  figure({
    id: 'motor.cruising-torque',
    title: 'Torque at steady speed, up',
    symbol: 'T_1',
    quantity: 'torque',
    meaning: 'Torque of one motor while the axis moves up (or forward) at steady speed.',
    needs: { ...trainNeeds, units: 'drive.units', shaft: 'drive.shaft-cruising-torque' },
    optionalChoices: shared,
    compute: ({ shaft, units, motors, ...train }) => atMotor(train, shaft * shaftsPerMotor(motors, units), 1),
    formula: 'T₁ = n_s T_w1 / (i η_i), n_s: shafts that the motor turns',
    sources: [powerBalance],
    rank: 3,
  }),
  figure({
    id: 'motor.lifting-torque',
    title: 'Torque while speeding up',
    symbol: 'T_2',
    quantity: 'torque',
    meaning: 'Greatest torque of one motor in a normal move up (or forward): load, friction and everything that has to be speeded up. It is due at full speed, at the end of the ramp.',
    needs: { ...trainNeeds, ...moveNeeds, ...inertiaNeeds, load: 'drive.shaft-lifting-torque' },
    optional: inertiaOptions,
    optionalChoices: shared,
    compute: ({ load, rotor, wheels, shaft, coupling, units, acceleration, travel, motors, ...train }) => {
      const angular = turning(acceleration, travel);
      const atShafts = (load + (shaft + (coupling ?? 0)) * angular) * shaftsPerMotor(motors, units);
      return atMotor(train, atShafts, 1) + (rotor + wheels) * angular * train.ratio;
    },
    formula: 'T₂ = n_s (T_w2 + (J_w + J_c) α) / (i η_i) + (J_m + J_i) i α, α = 2π a/p_w',
    sources: [powerBalance],
    rank: 2,
  }),
  figure({
    id: 'motor.holding-torque-needed',
    title: 'Torque needed at rest',
    symbol: 'T_0',
    quantity: 'torque',
    meaning: 'Torque that one motor must give to hold the axis at rest; zero where the thread or the reduction locks.',
    needs: { ...trainNeeds, units: 'drive.units', shaft: 'drive.shaft-holding-torque' },
    optionalChoices: shared,
    compute: ({ shaft, units, motors, ...train }) => atMotor(train, shaft * shaftsPerMotor(motors, units), 0),
    formula: 'T₀ = n_s T_w0 η_i,r / i, not below zero',
    sources: [powerBalance],
    rank: 3,
  }),
  figure({
    id: 'motor.lowering-torque',
    title: 'Torque at steady speed, down',
    symbol: 'T_3',
    quantity: 'torque',
    meaning: 'Torque of one motor while the axis moves down at steady speed. Positive: the motor pushes it down. Negative: the load drives and the motor brakes.',
    needs: { ...trainNeeds, units: 'drive.units', shaft: 'drive.shaft-lowering-torque' },
    optionalChoices: shared,
    // Minus signs on both sides: the train reckons with torques that are positive in the direction up.
    compute: ({ shaft, units, motors, ...train }) => -atMotor(train, -shaft * shaftsPerMotor(motors, units), -1),
    formula: 'T₃ = n_s T_w3 / (i η_i) if the motor pushes, n_s T_w3 η_i,r / i if the load drives',
    sources: [powerBalance],
    rank: 2,
  }),
  figure({
    id: 'motor.stopping-torque',
    title: 'Torque while stopping on the way down',
    symbol: 'T_4',
    quantity: 'torque',
    meaning: 'Torque of one motor while it brings the falling load to rest. Positive: the motor still pushes down. Negative: the motor brakes.',
    needs: { ...trainNeeds, ...moveNeeds, ...inertiaNeeds, steady: 'drive.shaft-lowering-torque', load: 'drive.lowering-load', mass: 'axis.moved-mass' },
    optional: { ...inertiaOptions, counterweight: 'counterbalance.mass', drag: 'nut.preload-torque' },
    optionalChoices: shared,
    compute: ({ steady, load, mass, counterweight, drag, rotor, wheels, shaft, coupling, units, acceleration, travel, share, motors, ...train }) => {
      if (load <= 0) return unable('the load does not pull downwards, so that stopping asks for less than starting');
      const heavier = 1 + ((mass + (counterweight ?? 0)) * acceleration * share) / load;
      const angular = turning(acceleration, travel);
      const upwards = (-underLoad(steady, heavier, drag) + (shaft + (coupling ?? 0)) * angular) * shaftsPerMotor(motors, units);
      return -(atMotor(train, upwards, -1) + (rotor + wheels) * angular * train.ratio);
    },
    formula: 'as T₃ with the load F₃ + q_F (m + m_c) a, and the inertia i α (J_m + J_i), α (J_w + J_c) slowed down',
    sources: [powerBalance],
    rank: 3,
  }),
  figure({
    id: 'motor.starting-down-torque',
    title: 'Torque while starting downwards',
    symbol: 'T_5',
    quantity: 'torque',
    meaning: 'Torque of one motor while the axis speeds up on its way down. Positive: the motor pushes. Negative: the load drives.',
    needs: { ...trainNeeds, ...moveNeeds, ...inertiaNeeds, steady: 'drive.shaft-lowering-torque', load: 'drive.lowering-load', mass: 'axis.moved-mass' },
    optional: { ...inertiaOptions, counterweight: 'counterbalance.mass', drag: 'nut.preload-torque' },
    optionalChoices: shared,
    compute: ({ steady, load, mass, counterweight, drag, rotor, wheels, shaft, coupling, units, acceleration, travel, share, motors, ...train }) => {
      const lighter = 1 - ((mass + (counterweight ?? 0)) * acceleration * share) / load;
      if (load <= 0 || lighter <= 0) return unable('the load no longer pulls downwards while it speeds up: the torque is below that of the way up');
      const angular = turning(acceleration, travel);
      const upwards = (-underLoad(steady, lighter, drag) - (shaft + (coupling ?? 0)) * angular) * shaftsPerMotor(motors, units);
      return -(atMotor(train, upwards, -1) - (rotor + wheels) * angular * train.ratio);
    },
    formula: 'as T₃ with the load F₃ − q_F (m + m_c) a, and the inertia speeded up',
    sources: [powerBalance],
    rank: 3,
  }),
  figure({
    id: 'motor.friction-torque',
    title: 'Friction torque at the motor',
    symbol: 'T_f',
    quantity: 'torque',
    meaning: 'Half of the difference between the torques up and down at steady speed: what friction alone takes. A process force is counted as friction here, the cautious side.',
    needs: { up: 'motor.cruising-torque', down: 'motor.lowering-torque' },
    compute: ({ up, down }) => Math.max(0, (up + down) / 2),
    formula: 'T_f = (T₁ + T₃) / 2',
    sources: [{ title: 'follows from the two directions of motion' }],
    rank: 3,
  }),
];
