import { isNutMaterial, LUBRICATIONS, nutMaterial, pressureBands, type HandbookRange, type Lubrication, type NutMaterial } from '../../catalogue/nut-materials.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between, type InputValue } from '../values.ts';

const isSliding = (read: InputReader): boolean => {
  const thread = read.choice('screw.thread');
  return thread !== undefined && thread !== 'ball';
};

function materialOf(read: InputReader): NutMaterial | undefined {
  const name = read.choice('nut.material');
  return isSliding(read) && name !== undefined && isNutMaterial(name) ? nutMaterial(name) : undefined;
}

const lubricationOf = (read: InputReader): Lubrication | undefined => LUBRICATIONS.find((candidate) => candidate === read.choice('nut.lubrication'));

/** The range for the lubrication that is written; where none is, the range over all of them, dry being the nominal. */
function lubricated(read: InputReader, rows: Readonly<Record<Lubrication, HandbookRange>>, unit?: string): { value: InputValue; source: string; weak: boolean } {
  const written = lubricationOf(read);
  const range = written ? rows[written] : { ...rows.dry, low: Math.min(...LUBRICATIONS.map((each) => rows[each].low)), high: Math.max(...LUBRICATIONS.map((each) => rows[each].high)) };
  const value: InputValue = { type: 'number', ...between(range.low, range.nominal, range.high), ...(unit === undefined ? {} : { unit }) };
  return { value, source: written ? range.source : `${range.source}; lubrication not given: dry to greased`, weak: range.weak || !written };
}

function plain(range: HandbookRange, unit?: string): { value: InputValue; source: string; weak: boolean } {
  const value: InputValue = { type: 'number', ...between(range.low, range.nominal, range.high), ...(unit === undefined ? {} : { unit }) };
  return { value, source: range.source, weak: range.weak };
}

/** Axial play of a new nut in m, by design: from memory, wide. */
const NEW_PLAY: Readonly<Record<string, readonly [number, number, number]>> = {
  plain: [0.05e-3, 0.1e-3, 0.2e-3],
  adjustable: [0.01e-3, 0.03e-3, 0.08e-3],
  'spring-loaded': [0, 0, 0.01e-3],
  ball: [0.005e-3, 0.03e-3, 0.1e-3],
  'preloaded-ball': [0, 0, 0.002e-3],
};

export default fallbacks(
  {
    input: 'nut.design',
    handbook: (read) => {
      const thread = read.choice('screw.thread');
      return thread === undefined ? undefined : { value: { type: 'choice', text: thread === 'ball' ? 'ball' : 'plain' }, source: 'an ordinary nut, since no other design is given' };
    },
  },
  {
    input: 'nut.friction',
    symbol: 'µ',
    handbook: (read) => {
      if (read.choice('screw.thread') === 'ball') {
        return { value: { type: 'number', ...between(0.003, 0.01, 0.02) }, source: 'friction that stands for the rolling of a ball screw: about 97 to 83 % efficient at a lead of 5 mm on 16 mm; from memory', weak: true };
      }
      const material = materialOf(read);
      return material && lubricated(read, material.friction);
    },
  },
  {
    input: 'nut.static-friction-ratio',
    symbol: 'µ_s/µ',
    handbook: (read) => {
      if (read.choice('screw.thread') === 'ball') return { value: { type: 'number', ...between(1, 1.2, 1.5) }, source: 'start of a ball screw over its running; from memory', weak: true };
      const material = materialOf(read);
      return material && plain(material.staticOverKinetic);
    },
  },
  {
    input: 'nut.length',
    symbol: 'L_n',
    handbook: (read) => {
      const diameter = isSliding(read) ? read.number('screw.major-diameter')?.nominal : undefined;
      return diameter === undefined
        ? undefined
        : { value: { type: 'number', ...between(diameter, 1.5 * diameter, 2 * diameter), unit: 'mm' }, source: 'one to two screw diameters, the lengths usually sold; common practice, no published source', weak: true };
    },
  },
  {
    input: 'nut.backlash',
    symbol: 'Δ',
    handbook: (read) => {
      const design = read.choice('nut.design');
      const play = design === undefined ? undefined : NEW_PLAY[design];
      return play && { value: { type: 'number', ...between(...play), unit: 'mm' }, source: `a new nut of this design (${design ?? ''}) on a rolled screw; from memory`, weak: true };
    },
  },
  { input: 'nut.preload', symbol: 'F_pre' },
  { input: 'nut.stiffness', symbol: 'k_n' },
  {
    input: 'nut.area-factor',
    title: 'Share of the flanks that carries',
    symbol: 'c',
    quantity: 'ratio',
    handbook: (read) => {
      const material = materialOf(read);
      return material && plain(material.areaFactor);
    },
  },
  {
    input: 'nut.standing-pressure-limit',
    title: 'Pressure that the nut bears at rest',
    symbol: 'p_0',
    quantity: 'pressure',
    handbook: (read) => {
      const material = materialOf(read);
      return material && plain(material.staticPressureLimit, 'MPa');
    },
  },
  {
    input: 'nut.pressure-bands',
    title: 'Pressure that the nut bears by sliding speed',
    symbol: 'p(v)',
    handbook: (read) => {
      const material = materialOf(read);
      if (!material) return undefined;
      const { rows, source, weak } = pressureBands(material.name);
      return { value: { type: 'table', rows }, source, weak };
    },
  },
  {
    input: 'nut.heat-limit',
    title: 'Pressure times speed that the nut bears',
    symbol: 'PV_0',
    quantity: 'pressure-velocity',
    handbook: (read) => {
      const material = materialOf(read);
      return material && lubricated(read, material.pressureVelocityLimit, 'MPa·m/s');
    },
  },
  {
    input: 'nut.specific-wear',
    title: 'Specific wear',
    symbol: 'k_w',
    handbook: (read) => {
      const material = materialOf(read);
      return material && lubricated(read, material.specificWear);
    },
  },
);
