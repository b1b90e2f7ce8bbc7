import { RACK_FORM_FACTOR, barthVelocityFactor, lewisFormFactor, lewisStress } from '../../mechanics/rack-pinion.ts';
import { figure, unable } from '../figure.ts';
import { canMesh, cannotMesh, gearBook, meshNeeds, meshOf } from './mesh.ts';

const lewis = { ...gearBook, where: 'section 14-1, equation (14-8), form factor of table 14-2 (from memory)', weak: true } as const;
const needs = { ...meshNeeds, force: 'rack.tooth-force', rack: 'rack.face-width', pinion: 'pinion.face-width' } as const;
const optional = { speed: 'motion.speed', preload: 'rack.preload' } as const;

interface Values {
  readonly module: number;
  readonly pressureAngle: number;
  readonly force: number;
  readonly rack: number;
  readonly pinion: number;
  readonly speed: number | undefined;
  readonly preload: number | undefined;
}

/** A sprung pinion presses on both flanks: until the other one lets go, a flank carries half of spring and load together. */
const onOneFlank = ({ force, preload = 0, pressureAngle }: Values): number => Math.max(force, (preload / Math.tan(pressureAngle) + force) / 2);

const stress = (values: Values, formFactor: number) => {
  const width = Math.min(values.rack, values.pinion);
  return width > 0 ? lewisStress(onOneFlank(values), width, values.module, formFactor, barthVelocityFactor(Math.max(0, values.speed ?? 0))) : unable('the teeth have no width');
};

const use = (part: 'pinion' | 'rack', title: string, symbol: string) =>
  figure({
    id: `${part}.stress-use`,
    title,
    symbol,
    quantity: 'ratio',
    unit: '%',
    meaning: 'Stress at the root of a tooth over the stress that its material is allowed.',
    needs: { stress: `${part}.root-stress`, limit: `${part}.stress-limit` },
    compute: ({ stress: actual, limit }) => (limit > 0 ? actual / limit : unable('the stress allowed is 0')),
    formula: part === 'pinion' ? 'σ_P / σ_P,lim' : 'σ_R / σ_R,lim',
    sources: [{ title: 'definition' }],
    rank: 3,
  });

export default [
  figure({
    id: 'pinion.root-stress',
    title: 'Stress at the root of its teeth',
    symbol: 'σ_P',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Bending stress in a tooth of the pinion with the whole force at its tip.',
    needs,
    optional,
    compute: (values) => (canMesh(values) ? stress(values, lewisFormFactor(meshOf(values))) : cannotMesh),
    formula: 'σ_P = K_v F_t / (b m_n Y), K_v = (6.1 + v) / 6.1, v in m/s; sprung: F_t at least (F_v / tan α_z + F_t) / 2',
    sources: [lewis],
    rank: 2,
  }),
  figure({
    id: 'rack.root-stress',
    title: 'Stress at the root of its teeth',
    symbol: 'σ_R',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Bending stress in a tooth of the rack with the whole force at its tip.',
    needs,
    optional,
    compute: (values) => (canMesh(values) ? stress(values, RACK_FORM_FACTOR) : cannotMesh),
    formula: 'σ_R = K_v F_t / (b m_n · 0.485), K_v = (6.1 + v) / 6.1, v in m/s; sprung: F_t at least (F_v / tan α_z + F_t) / 2',
    sources: [lewis],
    rank: 2,
  }),
  use('pinion', 'Use of the stress allowed in the pinion', 'u_P'),
  use('rack', 'Use of the stress allowed in the rack', 'u_R'),
  figure({
    id: 'rack.tooth-use',
    title: 'Use of the weaker tooth',
    symbol: 'u_z',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Stress over what is allowed, in the teeth of pinion or rack, whichever is nearer to its limit.',
    needs: { pinion: 'pinion.stress-use' },
    optional: { rack: 'rack.stress-use' },
    compute: ({ pinion, rack }) => ({ value: Math.max(pinion, rack ?? 0), note: (rack ?? 0) > pinion ? 'the rack' : 'the pinion' }),
    formula: 'u_z = max(u_P, u_R)',
    sources: [{ title: 'definition' }],
    rank: 1,
    hint: ({ high }) => `teeth ${Math.round(high * 100)} %`,
  }),
];
