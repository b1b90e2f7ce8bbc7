import { motorFlange } from '../../catalogue/motor-flanges.ts';
import { CLASS_B_RISE, COPPER_TEMPERATURE_COEFFICIENT, thermalResistanceBound } from '../../mechanics/motor-heat.ts';
import { DETENT_SHARE, STEP_ERROR_SHARE } from '../../mechanics/stepper-standing.ts';
import { fallbacks, type InputReader, type Member } from '../input.ts';
import { between, exactly, type Bounded } from '../values.ts';

/** Holding torque over rotor inertia of ordinary hybrid motors, rad/s²: bands around four sheets, widened; from memory. */
const TORQUE_PER_INERTIA = { low: 2e4, high: 12e4 } as const;

const DEGREE = Math.PI / 180;

const flangeOf = (read: InputReader) => {
  const frame = read.choice('motor.frame');
  return frame === undefined ? undefined : motorFlange(frame);
};

/** Speed and torque of the points in rising order of speed; undefined while one of them cannot be read. */
function pointsOf(members: readonly Member[]): readonly (readonly number[])[] | undefined {
  const rows: (readonly [number, number])[] = [];
  for (const member of members) {
    const speed = member.number('speed');
    const torque = member.number('torque');
    if (!speed || !torque || speed.nominal < 0 || torque.nominal < 0) return undefined;
    // The low end of an uncertain torque is what can be counted on.
    rows.push([speed.nominal, torque.low]);
  }
  rows.sort((a, b) => a[0] - b[0]);
  return rows.filter((row, index) => index === 0 || row[0] > (rows[index - 1]?.[0] ?? -1));
}

const share = (of: Bounded, range: { readonly low: number; readonly nominal: number; readonly high: number }): Bounded =>
  between(range.low * of.low, range.nominal * of.nominal, range.high * of.high);

export default fallbacks(
  { input: 'motor.holding-torque', symbol: 'T_H' },
  { input: 'motor.current', symbol: 'I_r' },
  { input: 'motor.resistance', symbol: 'R' },
  { input: 'motor.inductance', symbol: 'L' },
  { input: 'motor.torque-points-voltage', symbol: 'V_k' },
  {
    input: 'motor.step-angle',
    symbol: 'φ_s',
    handbook: () => ({
      value: { type: 'number', ...exactly(1.8 * DEGREE), unit: '°' },
      source: 'the usual hybrid motor with 50 rotor teeth; common practice, no published source',
      weak: true,
    }),
  },
  {
    input: 'motor.step-error',
    symbol: 'ε_s',
    handbook: () => ({
      value: { type: 'number', ...between(STEP_ERROR_SHARE.low, STEP_ERROR_SHARE.nominal, STEP_ERROR_SHARE.high), unit: '%' },
      source: 'usual sheet value, ± 3 % to ± 5 % of a full step',
      weak: true,
    }),
  },
  {
    input: 'motor.detent-torque',
    symbol: 'T_d',
    handbook: (read) => {
      const holding = read.number('motor.holding-torque');
      return holding && {
        value: { type: 'number', ...share(holding, DETENT_SHARE), unit: 'N·m' },
        source: '3 % to 10 % of the holding torque: two sheets give 3.2 % and 3.4 %, general texts 5 % to 10 %; the low end is used for holding',
        weak: true,
      };
    },
  },
  {
    input: 'motor.rotor-inertia',
    symbol: 'J_m',
    handbook: (read) => {
      // DC and brushless motors of a face are too unlike each other for a guess.
      if (read.choice('motor.kind') !== 'stepper') return undefined;
      const flange = flangeOf(read);
      const holding = read.number('motor.holding-torque');
      const bySize = flange?.rotorInertia;
      const byTorque = holding && ([holding.nominal / TORQUE_PER_INERTIA.high, holding.nominal / TORQUE_PER_INERTIA.low] as const);
      // Where both speak and agree, each narrows the other; a motor that is strong for its size is believed by its torque.
      const both = bySize && byTorque && ([Math.max(bySize[0], byTorque[0]), Math.min(bySize[1], byTorque[1])] as const);
      const [low, high] = (both && both[0] < both[1] ? both : (byTorque ?? bySize)) ?? [];
      if (low === undefined || high === undefined) return undefined;
      const from = [...(flange ? [`a size ${flange.size} face`] : []), ...(holding ? ['this holding torque'] : [])].join(' and ');
      return { value: { type: 'number', ...between(low, Math.sqrt(low * high), high), unit: 'g·cm²' }, source: `usual range of motors with ${from}, from memory`, weak: true };
    },
  },
  {
    input: 'motor.shaft-diameter',
    symbol: 'd_s',
    standard: (read) => {
      const flange = flangeOf(read);
      const [only, ...others] = flange?.usualShafts ?? [];
      if (!flange || only === undefined || others.length > 0) return undefined;
      return { value: { type: 'number', ...exactly(only), unit: 'mm' }, size: `size ${flange.size}`, sizeInput: 'motor.frame', source: 'the only usual shaft of this face (NEMA ICS 16 as quoted)' };
    },
  },
  {
    input: 'motor.usual-shaft-diameter',
    title: 'Usual shaft of this face',
    symbol: 'd_u',
    quantity: 'length',
    // Of several usual shafts the one nearest to the shaft described.
    handbook: (read) => {
      const flange = flangeOf(read);
      const shaft = read.number('motor.shaft-diameter');
      const first = flange?.usualShafts[0];
      if (!flange || !shaft || first === undefined) return undefined;
      const nearest = flange.usualShafts.reduce((best, one) => (Math.abs(one - shaft.nominal) < Math.abs(best - shaft.nominal) ? one : best), first);
      return { value: { type: 'number', ...exactly(nearest), unit: 'mm' }, source: `usual shafts of a size ${flange.size} face (NEMA ICS 16 as quoted, and common practice)`, weak: true };
    },
  },
  {
    input: 'motor.axial-load-limit',
    symbol: 'F_a,max',
    handbook: (read) => {
      const flange = flangeOf(read);
      if (!flange) return undefined;
      const [low, high] = flange.axialShaftLoad;
      return { value: { type: 'number', ...between(low, (low + high) / 2, high), unit: 'N' }, source: `usual range of motors with a size ${flange.size} face, from memory`, weak: true };
    },
  },
  {
    input: 'motor.thermal-resistance',
    symbol: 'R_th',
    handbook: (read) => {
      const current = read.number('motor.current');
      const resistance = read.number('motor.resistance');
      if (!current || !resistance || current.low <= 0 || resistance.low <= 0) return undefined;
      const bound = (i: number, r: number): number => thermalResistanceBound(i, r, CLASS_B_RISE, COPPER_TEMPERATURE_COEFFICIENT);
      const nominal = bound(current.nominal, resistance.nominal);
      return {
        // Bolted to a metal plate a motor sheds about twice the heat: the low end.
        value: { type: 'number', ...between(nominal / 2, nominal, bound(current.low, resistance.low)), unit: 'K/W' },
        source: 'upper bound from the sheet: the rated current, both phases on, heats the winding by at most 80 K (IEC 60034-1, class B); half of it on a metal plate',
        weak: true,
      };
    },
  },
  {
    input: 'motor.torque-points',
    symbol: 'T(ω)',
    compose: (_read, lists) => {
      const members = lists.members('motor.torque-points');
      const first = members?.[0];
      const rows = members && members.length > 0 ? pointsOf(members) : undefined;
      if (!rows || !first) return undefined;
      return { value: { type: 'table', rows }, origin: { from: 'here', place: { uri: first.place.uri, path: first.place.path.slice(0, -1) } } };
    },
  },
);
