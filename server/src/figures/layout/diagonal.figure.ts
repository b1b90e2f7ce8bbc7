import { beltsFromCarriage } from '../../mechanics/crossed-belts.ts';
import { stepRate, stepsFromAngle } from '../../mechanics/step-rate.ts';
import { figure, unable, type Source } from '../figure.ts';
import { atMotor, trainNeeds } from '../motor/train.ts';
import { curveChoices, curveNeeds, curveTables, curveValues, torqueCurve } from '../motor/torque-curve.ts';

/** Told once for both axes: of the first one. */
const onlyWhere = { 'layout.role': ['first'] } as const;
const virtualWork: Source = { title: 'virtual work: the belts run by the sum and the difference of both ways', where: 'derived; checked against the lengths of the belts in the plane' };
/** The load of the first axis comes from its own drive figures, since half of it is on either belt. */
const partner = { mass: 'partner.moved-mass', acceleration: 'partner-motion.acceleration', friction: 'partner-guides.friction-force', process: 'partner.process-force' } as const;
const shaft = { perTurn: 'drive.travel-per-shaft-turn', ...trainNeeds, efficiencyOfShaft: 'drive.shaft-efficiency' } as const;
const inertia = { rotor: 'motor.rotor-inertia', wheels: 'drive.reduction-inertia', onShaft: 'drive.shaft-inertia' } as const;

const slanted = 'the weight of the other axis along its travel is not reckoned with: only level axes are';
const isLevel = (direction: string): boolean => direction === 'horizontal' || Number.parseFloat(direction) === 0;

export default [
  figure({
    id: 'layout.diagonal-speed',
    title: 'Speed of one motor on the diagonal',
    symbol: 'n_d',
    quantity: 'rotational-speed',
    unit: 'rpm',
    onlyWhere,
    meaning: 'How fast the one motor turns while both axes move at their full speed at once; the other one then runs with the difference, or stands.',
    needs: { first: 'motion.speed', second: 'partner-motion.speed', perTurn: 'axis.travel-per-turn' },
    compute: ({ first, second, perTurn }) => {
      const { a, b } = beltsFromCarriage({ x: first, y: second });
      const still = (Math.abs(b) / perTurn) * 60;
      return { value: (2 * Math.PI * a) / perTurn, note: `the other motor ${still < 0.5 ? 'stands' : `turns at ${still.toFixed(0)} rpm`}` };
    },
    formula: 'n_d = (v + v_o) / p',
    sources: [virtualWork],
    rank: 2,
  }),
  figure({
    id: 'layout.diagonal-step-rate',
    title: 'Step rate on the diagonal',
    symbol: 'f_d',
    quantity: 'step-rate',
    onlyWhere: { ...onlyWhere, 'motor.kind': ['stepper'] },
    meaning: 'Microsteps a second that the controller must send to the one motor while both axes move at their full speed at once.',
    needs: { speed: 'layout.diagonal-speed', stepAngle: 'motor.step-angle', microsteps: 'controller.microsteps' },
    compute: ({ speed, stepAngle, microsteps }) => stepRate(speed, stepsFromAngle(stepAngle), microsteps),
    formula: 'f_d = n_d (360°/φ_s) n_µ',
    sources: [virtualWork],
    rank: 3,
  }),
  figure({
    id: 'layout.diagonal-step-use',
    title: 'Use of the step rate limit on the diagonal',
    symbol: 'u_f,d',
    quantity: 'ratio',
    unit: '%',
    onlyWhere: { ...onlyWhere, 'motor.kind': ['stepper'] },
    meaning: 'Step rate on the diagonal over the most that the controller can send to one motor.',
    needs: { rate: 'layout.diagonal-step-rate', limit: 'controller.step-rate' },
    compute: ({ rate, limit }) => rate / limit,
    formula: 'u_f,d = f_d / f_max',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'layout.diagonal-speed-use',
    title: 'Use of the speed limit on the diagonal',
    symbol: 'u_n,d',
    quantity: 'ratio',
    unit: '%',
    onlyWhere: { ...onlyWhere, 'motor.kind': ['dc-motor', 'brushless'] },
    meaning: 'Speed of the one motor on the diagonal over the most that its maker allows.',
    needs: { speed: 'layout.diagonal-speed', limit: 'motor.speed-limit' },
    compute: ({ speed, limit }) => speed / limit,
    formula: 'u_n,d = n_d / n_max',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'layout.diagonal-torque',
    title: 'Torque of one motor on the diagonal',
    symbol: 'T_d',
    quantity: 'torque',
    onlyWhere,
    meaning: 'Torque of the motor that does all the work while both axes speed up together: half of the forces of both, and twice the turning of its own inertia.',
    needs: { ...partner, ...shaft, ...inertia, own: 'drive.shaft-lifting-torque', ownAcceleration: 'motion.acceleration' },
    optional: { coupling: 'coupling.rotational-inertia' },
    choices: { direction: 'partner.direction' },
    compute: ({ mass, acceleration, friction, process, perTurn, efficiencyOfShaft, rotor, wheels, onShaft, own, ownAcceleration, coupling = 0, direction, ...train }) => {
      if (!isLevel(direction)) return unable(slanted);
      const partnerForce = (mass * acceleration + friction + process) / 2;
      const turning = (2 * Math.PI * (ownAcceleration + acceleration)) / perTurn;
      const atShaft = own + (partnerForce * perTurn) / (2 * Math.PI * efficiencyOfShaft) + (onShaft + coupling) * turning;
      return atMotor(train, atShaft, 1) + (rotor + wheels) * turning * train.ratio;
    },
    formula: 'T_d = [T_w2 + (m_o a_o + F_g,o + F_p,o) p_w/(4π η_w) + (J_w + J_c) α]/(i η_i) + (J_m + J_i) i α, α = 2π (a + a_o)/p_w',
    sources: [virtualWork],
    rank: 2,
  }),
  figure({
    id: 'layout.diagonal-available-torque',
    title: 'Torque available on the diagonal',
    symbol: 'T_a,d',
    quantity: 'torque',
    onlyWhere,
    meaning: 'Torque to count on at the speed that one motor has on the diagonal, the sum of the speeds of both axes.',
    needs: { speed: 'layout.diagonal-speed' },
    optional: curveNeeds,
    optionalChoices: curveChoices,
    tables: curveTables,
    compute: ({ speed, ...values }) => {
      const curve = torqueCurve(curveValues(values));
      if (typeof curve === 'string') return unable(curve);
      return curve.at(speed) ?? unable('the given points of torque end below the speed on the diagonal');
    },
    formula: 'T_a at n_d',
    sources: [{ title: 'the torque curve of the motor, given or estimated', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'layout.diagonal-margin',
    title: 'Torque margin on the diagonal',
    symbol: 'S_d',
    quantity: 'ratio',
    onlyWhere,
    meaning: 'Torque available over torque asked for by the motor that does all the work, both axes at full speed and full acceleration at once; a limit of jerk is not counted on.',
    needs: { available: 'layout.diagonal-available-torque', demanded: 'layout.diagonal-torque' },
    compute: ({ available, demanded }) => (demanded > 0 ? available / demanded : unable('the move asks for no torque')),
    formula: 'S_d = T_a,d / T_d',
    sources: [{ title: 'definition' }],
    rank: 1,
    hint: ({ low }) => `diagonal ${low >= 100 ? 'over 100' : low.toPrecision(2)}×`,
  }),
  figure({
    id: 'layout.standing-torque-needed',
    title: 'Torque of the motor that stands',
    symbol: 'T_s',
    quantity: 'torque',
    onlyWhere,
    meaning: 'Torque with which the motor that stands on the exact diagonal must hold its belt, while both axes speed up together: half of the difference of their forces.',
    needs: { ...partner, ...shaft, ...inertia, load: 'drive.lifting-load', ownAcceleration: 'motion.acceleration' },
    choices: { direction: 'partner.direction' },
    compute: ({ mass, acceleration, friction, process, perTurn, load, ownAcceleration, ratio, rotor, wheels, onShaft, direction }) => {
      if (!isLevel(direction)) return unable(slanted);
      const difference = load - (mass * acceleration + friction + process) / 2;
      // Uneven accelerations turn it as well.
      const turning = (2 * Math.PI * (ownAcceleration - acceleration)) / perTurn;
      return Math.abs((difference * perTurn) / (2 * Math.PI) + onShaft * turning) / ratio + (rotor + wheels) * Math.abs(turning) * ratio;
    },
    formula: 'T_s = |F₂ − (m_o a_o + F_g,o + F_p,o)/2| p_w/(2π i), and its inertia under a − a_o; losses, which would help, are left out',
    sources: [virtualWork],
    rank: 3,
  }),
  figure({
    id: 'layout.standing-factor',
    title: 'Hold of the motor that stands',
    symbol: 'S_s',
    quantity: 'ratio',
    onlyWhere,
    meaning: 'Torque of the motor at rest over what it must hold on the diagonal. If it slips, the carriage leaves the diagonal.',
    needs: { needed: 'layout.standing-torque-needed', standing: 'motor.standing-torque' },
    compute: ({ needed, standing }) => (needed > 1e-9 ? standing / needed : unable('both axes ask for the same force, so that nothing has to be held')),
    formula: "S_s = T_H' / T_s",
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
