import { bearingPressure, firstTurnPressure, pressureVelocity, slidingSpeed } from '../../mechanics/nut-pressure.ts';
import { figure, unable } from '../figure.ts';
import { preloadOnFlanks } from './preload-on-flanks.ts';

const sliding = { 'screw.thread': ['trapezoidal', 'acme', 'square'] } as const;
const pressureSource = { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, equation (8-10)' } as const;
const flanks = { pitchDiameter: 'screw.pitch-diameter', pitch: 'screw.pitch', engagedLength: 'nut.length', areaFactor: 'nut.area-factor' } as const;

const preloadOptions = { preload: 'nut.preload' } as const;
const preloadChoices = { design: 'nut.design' } as const;

const pressureOf = (load: number, values: { pitchDiameter: number; pitch: number; engagedLength: number; areaFactor: number }): number =>
  bearingPressure({ ...values, load: Math.abs(load), flankHeight: values.pitch / 2 });

export default [
  figure({
    id: 'nut.pressure',
    title: 'Thread pressure in the nut',
    symbol: 'p',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Pressure on the flanks under the largest load of a normal move, shared evenly; plastic nuts carry on part of their flanks only.',
    needs: { ...flanks, lifting: 'drive.lifting-load', lowering: 'drive.lowering-load' },
    optional: preloadOptions,
    optionalChoices: preloadChoices,
    onlyWhere: sliding,
    compute: (values) => pressureOf(Math.max(Math.abs(values.lifting), Math.abs(values.lowering)) + preloadOnFlanks(values), values),
    formula: 'p = 2 (F + F_pre) / (π d₂ L_n c), F_pre of a nut in two halves',
    sources: [pressureSource],
    rank: 2,
  }),
  figure({
    id: 'nut.first-turn-pressure',
    title: 'Pressure on the first turn',
    symbol: 'p_1',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'The first engaged turn of a metal nut carries about 0.38 of the load, the next 0.25 and 0.18: length beyond about six turns buys wear life, not strength.',
    needs: { pressure: 'nut.pressure', length: 'nut.length', pitch: 'screw.pitch' },
    onlyWhere: { ...sliding, 'nut.material': ['bronze', 'brass', 'cast-iron', 'steel'] },
    compute: ({ pressure, length, pitch }) => firstTurnPressure(pressure, length / pitch),
    formula: 'p₁ = p · 0.38 L_n/P, at least p',
    sources: [{ title: 'Budynas and Nisbett', where: 'section 8-2', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'nut.sliding-speed',
    title: 'Sliding speed in the nut',
    symbol: 'v_s',
    quantity: 'speed',
    meaning: 'Speed at which the flanks slide on each other at the highest speed of the axis.',
    needs: { pitchDiameter: 'screw.pitch-diameter', leadAngle: 'screw.lead-angle', turning: 'screw.turning-speed' },
    onlyWhere: sliding,
    compute: ({ pitchDiameter, leadAngle, turning }) => slidingSpeed(pitchDiameter, leadAngle, turning / (2 * Math.PI)),
    formula: 'v_s = π d₂ n / cos λ',
    sources: [{ title: 'path of a point on the helix' }],
    rank: 2,
  }),
  figure({
    id: 'nut.moving-pressure-limit',
    title: 'Pressure that the nut bears at this speed',
    symbol: 'p_v',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Cautious end of the handbook’s range of pressure for the material at the sliding speed; between the printed bands the stricter one.',
    needs: { speed: 'nut.sliding-speed' },
    tables: { bands: 'nut.pressure-bands' },
    onlyWhere: sliding,
    notMonotonicIn: ['motion.speed'],
    compute: ({ speed, bands }) => {
      const band = bands?.find(([to]) => speed <= (to ?? 0) * (1 + 1e-12));
      return band?.[1] ?? unable('no handbook value is known for this nut material');
    },
    formula: 'from the table of the material, by v_s',
    sources: [{ title: 'Budynas and Nisbett', where: 'Table 8-4', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'nut.pressure-velocity',
    title: 'Pressure times speed, over the duty',
    symbol: 'PV',
    quantity: 'pressure-velocity',
    meaning: 'Frictional heat per area of flank at steady speed, averaged over the duty: what melts or burns a nut.',
    needs: { ...flanks, load: 'drive.cruising-load', lowering: 'drive.lowering-load', speed: 'nut.sliding-speed' },
    optional: { duty: 'motion.duty', ...preloadOptions },
    optionalChoices: preloadChoices,
    onlyWhere: sliding,
    compute: (values) => {
      const pressure = pressureOf(Math.max(Math.abs(values.load), Math.abs(values.lowering)) + preloadOnFlanks(values), values);
      const value = pressureVelocity(pressure, values.speed, Math.min(1, values.duty ?? 1));
      return values.duty === undefined ? { value, note: 'motion all the time assumed, since no duty is given' } : value;
    },
    formula: 'PV = p v_s · duty',
    sources: [{ title: 'Mott, Machine Elements in Mechanical Design', where: 'chapter 16 (pV factor)' }, { title: 'averaging over the duty: common practice' }],
    rank: 2,
  }),
  figure({
    id: 'nut.heat-use',
    title: 'Use of the pressure-times-speed limit',
    symbol: 'PV/PV_0',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Pressure times speed over what the nut material bears for long.',
    needs: { heat: 'nut.pressure-velocity', limit: 'nut.heat-limit' },
    onlyWhere: sliding,
    compute: ({ heat, limit }) => heat / limit,
    formula: 'PV / PV₀',
    sources: [{ title: 'limits: The Tribology Handbook, Mott Table 16-1 and memory', weak: true }],
    rank: 2,
  }),
];
