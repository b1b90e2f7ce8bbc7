import { brushlessCopperLoss, peakLineBackEmf, torquePerPeakAmpere } from '../../mechanics/brushless.ts';
import { overloadTime, temperatureSwing } from '../../mechanics/intermittent-heating.ts';
import { COPPER_TEMPERATURE_COEFFICIENT, windingRise } from '../../mechanics/motor-heat.ts';
import { rmsTorqueOfCycle } from '../../mechanics/rms-torque.ts';
import { figure, unable, type Source } from '../figure.ts';
import { downDemand, downNeeds, upDemand, upNeeds, wholeMove } from './move-demand.ts';

const onlyWhere = { 'motor.kind': ['dc-motor', 'brushless'] } as const;
/** Temperature that common insulation stands, K; class B of IEC 60034-1. */
const CLASS_B = 403.15;
/** The duty of an axis is its share of motion over about so long, s. */
const CYCLE = 300;
const oneBody: Source = { title: 'one body with one time constant (Dubey, Fundamentals of Electrical Drives)', where: 'sections 4.2 and 4.4; checked against examples 4.1 and 4.4' };

const electrical = { constant: 'motor.torque-constant', resistance: 'motor.resistance' } as const;
const electricalOptions = { noLoad: 'motor.no-load-current' } as const;
const heating = { thermal: 'motor.thermal-resistance', timeConstant: 'motor.thermal-time-constant', ambient: 'conditions.ambient-temperature' } as const;
const moves = { ...upNeeds, speed: 'motion.speed', travel: 'axis.travel' } as const;
const moveOptions = { ...downNeeds, jerk: 'motion.jerk', holding: 'motor.holding-torque-needed' } as const;

/**
 * Heat in the windings for a root mean square of the torque, cold. A DC motor: I² R. A brushless one: three phases of R/2 each,
 * 3/2 R I² for amperes of root mean square and half of that for amperes of peak.
 */
function copperLoss(torque: number, constant: number, noLoad: number | undefined, resistance: number, kind: string, constantAs: string | undefined): number {
  const current = Math.abs(torque) / constant + (noLoad ?? 0);
  if (kind !== 'brushless') return current ** 2 * resistance;
  return brushlessCopperLoss(constantAs === 'peak' ? current : Math.SQRT2 * current, resistance / 2);
}

const lossOf = { optionalChoices: { constantAs: 'motor.torque-constant-as' }, choices: { kind: 'motor.kind' } } as const;

/** Rise at which a loss settles; the loss grows with the copper. */
function riseOf(loss: number, thermal: number): number | undefined {
  const found = windingRise(loss, thermal, COPPER_TEMPERATURE_COEFFICIENT);
  return found.kind === 'settles' ? found.rise : undefined;
}

export default [
  figure({
    id: 'motor.copper-loss',
    onlyWhere,
    title: 'Heat in the windings',
    symbol: 'P_Cu',
    quantity: 'power',
    meaning: 'Mean heat that the current of the whole cycle makes in the winding of one motor, cold: it follows the root mean square of the torque.',
    needs: { rms: 'motor.rms-torque', ...electrical },
    optional: electricalOptions,
    ...lossOf,
    compute: ({ rms, constant, resistance, noLoad, kind, constantAs }) => copperLoss(rms, constant, noLoad, resistance, kind, constantAs),
    formula: 'P_Cu = R I², I = T_rms/K + I₀; brushless: 3/2 R I² with I of root mean square, 3/4 R I² with I of peak (R between two terminals)',
    sources: [{ title: "Joule's law; two phases in series between two terminals" }],
    rank: 3,
  }),
  figure({
    id: 'motor.hand-pushed-voltage',
    onlyWhere,
    title: 'Voltage when pushed by hand',
    symbol: 'e_h',
    quantity: 'voltage',
    unit: 'V',
    meaning: 'Peak voltage between two terminals when the unpowered axis is pushed at its working speed: it can reach electronics that are switched off.',
    needs: { constant: 'motor.torque-constant', speed: 'motor.speed' },
    ...lossOf,
    compute: ({ constant, speed, kind, constantAs }) => {
      const perSpeed = kind === 'brushless' ? peakLineBackEmf(torquePerPeakAmpere(constant, constantAs === 'peak' ? 'peak' : 'rms')) : constant;
      return perSpeed * speed;
    },
    formula: 'e_h = K ω; brushless: 2/√3 K_p ω',
    sources: [{ title: 'the torque constant is the back-EMF constant' }],
    rank: 3,
  }),
  figure({
    id: 'motor.winding-peak-temperature',
    onlyWhere,
    title: 'Highest temperature of the winding in the cycle',
    symbol: 'θ_max',
    quantity: 'temperature',
    unit: '°C',
    meaning: 'Temperature that the winding reaches at the end of the moving part of a cycle of five minutes, once that has gone on for long.',
    needs: { ...electrical, ...heating, ...moves, duty: 'motion.duty' },
    optional: { ...electricalOptions, ...moveOptions },
    ...lossOf,
    compute: ({ constant, resistance, noLoad, kind, constantAs, thermal, timeConstant, ambient, speed, travel, jerk, duty, holding, ...torques }) => {
      const move = wholeMove(travel, speed, torques.acceleration, jerk);
      const moving = rmsTorqueOfCycle({ moves: [{ move, demand: upDemand(torques) }, { move, demand: downDemand(torques) }], duty: 1, holding: 0 });
      const rise = (torque: number, idle: number | undefined): number | undefined => riseOf(copperLoss(torque, constant, idle, resistance, kind, constantAs), thermal);
      const loadedRise = rise(moving, noLoad);
      const idleRise = rise(holding ?? 0, 0);
      if (loadedRise === undefined || idleRise === undefined) return unable('this load heats the winding faster than it can cool, without end');
      if (duty >= 1) return ambient + loadedRise;
      const loadedTime = Math.max(duty, 1e-6) * CYCLE;
      return ambient + temperatureSwing({ loadedRise, idleRise, loadedTime, idleTime: CYCLE - loadedTime, heatingConstant: timeConstant, coolingConstant: timeConstant }).highest;
    },
    formula: 'θ_max = ϑ_a + (θ_L (1 − e_h) + θ_I (1 − e_c) e_h)/(1 − e_h e_c), e = exp(−t/τ), 5 min a cycle',
    sources: [oneBody],
    rank: 3,
  }),
  figure({
    id: 'motor.overload-time',
    onlyWhere,
    title: 'Time that it may move without a pause',
    symbol: 't_o',
    quantity: 'time',
    meaning: 'How long the motor may move without a pause, from cold, until the winding reaches 130 °C.',
    needs: { ...electrical, ...heating, ...moves },
    optional: { ...electricalOptions, ...moveOptions },
    ...lossOf,
    compute: ({ constant, resistance, noLoad, kind, constantAs, thermal, timeConstant, ambient, speed, travel, jerk, holding: _atRest, ...torques }) => {
      const move = wholeMove(travel, speed, torques.acceleration, jerk);
      const moving = rmsTorqueOfCycle({ moves: [{ move, demand: upDemand(torques) }, { move, demand: downDemand(torques) }], duty: 1, holding: 0 });
      // The loss is taken with the resistance at the limit, which ends the time a little early.
      const hot = 1 + COPPER_TEMPERATURE_COEFFICIENT * Math.max(0, CLASS_B - ambient);
      const endRise = copperLoss(moving, constant, noLoad, resistance, kind, constantAs) * hot * thermal;
      const found = overloadTime(0, endRise, CLASS_B - ambient, timeConstant);
      if (found.kind === 'for') return found.time;
      return unable(found.kind === 'for-good' ? 'it may move like this for good' : 'its surroundings are hotter than its insulation stands');
    },
    formula: 't_o = τ ln(θ_end/(θ_end − θ_lim)), θ_lim = 130 °C − ϑ_a',
    sources: [oneBody, { title: 'IEC 60034-1', where: 'insulation class B, 130 °C', weak: true }],
    rank: 3,
  }),
];
