import { beltPath } from '../belt-path.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between, type InputValue } from '../values.ts';

const length = (low: number, nominal: number, high: number): InputValue => ({ type: 'number', ...between(low, nominal, high), unit: 'mm' });

/** kg/m³, of the bulk: polymers with their filling. */
const DENSITY: Readonly<Record<string, number>> = { aluminium: 2700, steel: 7850, polymer: 1400 };

/** A flanged wheel with hub and bore, against a plain disc of its pitch diameter and of the belt's width. */
const WHEEL_OVER_DISC = { low: 0.8, nominal: 1.3, high: 2.5 } as const;

/** Inertia of a wheel on which the belt runs, from its size and material. */
function wheelInertia(diameter: number, width: number, material: string): InputValue {
  const disc = (Math.PI / 32) * (DENSITY[material] ?? 2700) * width * diameter ** 4;
  return { type: 'number', ...between(disc * WHEEL_OVER_DISC.low, disc * WHEEL_OVER_DISC.nominal, disc * WHEEL_OVER_DISC.high), unit: 'g·cm²' };
}

const DISC = 'a disc of its diameter and of the width of the belt, times 0.8 to 2.5 for flanges and hub: our estimate';

const pitchDiameter = (read: InputReader, teeth: string): number | undefined => {
  const [pitch, count] = [read.number('belt.pitch'), read.number(teeth)];
  return pitch && count && (pitch.nominal * count.nominal) / Math.PI;
};

export default fallbacks(
  { input: 'pulley.teeth', symbol: 'z' },
  {
    input: 'pulley.material',
    handbook: () => ({ value: { type: 'choice', text: 'aluminium' }, source: 'usual for small pulleys, from memory', weak: true }),
  },
  {
    input: 'pulley.wrap',
    symbol: 'θ',
    compose: (read) => beltPath(read).wrap,
    handbook: (read) => (read.choice('belt.arrangement') === 'anchored-ends'
      ? {
          value: { type: 'number', ...between((150 * Math.PI) / 180, Math.PI, (220 * Math.PI) / 180), unit: '°' },
          source: 'two idlers beside the pulley lead the belt round about half of it; from memory',
          weak: true,
        }
      : undefined),
  },
  {
    input: 'pulley.eccentricity',
    symbol: 'e_p',
    handbook: () => ({ value: length(10e-6, 25e-6, 50e-6), source: 'bore play of 0.02 to 0.1 mm taken to one side by the set screw; common practice, no published source', weak: true }),
  },
  {
    input: 'pulley.overhang',
    symbol: 'x_p',
    handbook: () => ({ value: length(7e-3, 12e-3, 18e-3), source: 'usual place of a pulley on a motor shaft of 20 to 24 mm, from memory', weak: true }),
  },
  {
    input: 'pulley.rotational-inertia',
    symbol: 'J_p',
    handbook: (read) => {
      const [diameter, width] = [pitchDiameter(read, 'pulley.teeth'), read.number('pulley.width') ?? read.number('belt.width')];
      if (diameter === undefined || !width) return undefined;
      return { value: wheelInertia(diameter, width.nominal, read.choice('pulley.material') ?? 'aluminium'), source: DISC, weak: true };
    },
  },
  { input: 'idlers.teeth', symbol: 'z_i' },
  {
    input: 'idlers.count',
    symbol: 'n_i',
    handbook: (read) => {
      const anchored = read.choice('belt.arrangement') === 'anchored-ends';
      return { value: { type: 'number', ...between(anchored ? 2 : 1, anchored ? 2 : 1, anchored ? 2 : 1) }, source: anchored ? 'two beside the pulley, since nothing else is said' : 'the far one alone, since nothing else is said' };
    },
  },
  {
    input: 'idlers.side',
    handbook: (read) => ({ value: { type: 'choice', text: read.choice('belt.arrangement') === 'anchored-ends' ? 'back' : 'teeth' }, source: 'as such belts usually run, since nothing else is said' }),
  },
  {
    input: 'idlers.face',
    handbook: (read) => {
      const toothed = read.number('idlers.teeth') !== undefined;
      return { value: { type: 'choice', text: toothed ? 'toothed' : 'smooth' }, source: toothed ? 'teeth are given' : 'no teeth are given' };
    },
  },
  {
    input: 'idlers.diameter',
    symbol: 'd_i',
    compose: (read) => {
      const diameter = pitchDiameter(read, 'idlers.teeth');
      const [teeth, pitch] = [read.origin('idlers.teeth'), read.origin('belt.pitch')];
      if (diameter === undefined || !teeth || !pitch) return undefined;
      return { value: length(diameter, diameter, diameter), origin: { from: 'several', parts: [{ title: 'Teeth of the idlers', origin: teeth }, { title: 'Pitch', origin: pitch }] } };
    },
    handbook: (read) => {
      const diameter = pitchDiameter(read, 'pulley.teeth');
      return diameter === undefined ? undefined : { value: length(diameter, diameter, diameter), source: 'as large as the driving pulley, since nothing else is said', weak: true };
    },
  },
  {
    input: 'idlers.eccentricity',
    symbol: 'e_i',
    handbook: () => ({ value: length(5e-6, 10e-6, 30e-6), source: 'run-out of small idlers on ball bearings, from memory; no published source', weak: true }),
  },
  {
    input: 'idlers.rotational-inertia',
    symbol: 'J_i',
    handbook: (read) => {
      const [diameter, width] = [read.number('idlers.diameter'), read.number('belt.width')];
      // Two bearings inside make a small idler heavier than its light metal alone.
      return diameter && width && { value: wheelInertia(diameter.nominal, width.nominal, 'aluminium'), source: DISC, weak: true };
    },
  },
  { input: 'idlers.friction-torque', symbol: 'T_i' },
  {
    input: 'idlers.bend-factor',
    title: 'Least idler over the least pulley',
    symbol: 'k_i',
    quantity: 'ratio',
    handbook: (read) => (read.choice('idlers.side') === 'back'
      ? { value: { type: 'number', ...between(1.3, 1.3, 1.5) }, source: 'an idler that bends the belt backwards: 1.3 to 1.5 of the smallest pulley, handbooks of the trade, from memory', weak: true }
      : { value: { type: 'number', ...between(1, 1, 1) }, source: 'an idler on the teeth bends the belt like a pulley of its size' }),
  },
);
