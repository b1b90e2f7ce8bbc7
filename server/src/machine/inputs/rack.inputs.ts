import { material } from '../../catalogue/materials.ts';
import { toothMaterial } from '../../catalogue/tooth-materials.ts';
import { meshStiffness } from '../../mechanics/rack-pinion.ts';
import { fallbacks, type Fallback } from '../input.ts';
import { between, exactly } from '../values.ts';

const DEGREE = Math.PI / 180;

/** Lightly loaded teeth, their errors, and shaft and bearing of the pinion leave a fifth to all of the stiffness of the mesh. */
const MESH_SHARE = { low: 0.2, nominal: 0.5, high: 1 } as const;

/** Allowed stress of the teeth of a part, by its material. */
export const stressLimit = (input: string, materialInput: string, symbol: string): Fallback => ({
  input,
  title: 'Stress allowed at the root of its teeth',
  symbol,
  quantity: 'pressure',
  handbook: (read) => {
    const row = toothMaterial(read.choice(materialInput) ?? '');
    if (!row) return undefined;
    const { low, nominal, high, source, weak } = row.stressLimit;
    return { value: { type: 'number', ...between(low, nominal, high), unit: 'MPa' }, source: `${row.title}: ${source}`, weak };
  },
});

export default fallbacks(
  { input: 'rack.module', symbol: 'm_n' },
  { input: 'rack.face-width', symbol: 'b_z' },
  { input: 'rack.preload', symbol: 'F_v' },
  {
    input: 'rack.pressure-angle',
    symbol: 'α_z',
    handbook: () => ({ value: { type: 'number', ...exactly(20 * DEGREE), unit: '°' }, source: '20°, the standard basic rack tooth profile of ISO 53, since no other is given' }),
  },
  {
    input: 'rack.helix-angle',
    symbol: 'β_z',
    handbook: () => ({ value: { type: 'number', ...exactly(0), unit: '°' }, source: 'straight teeth, since no helix angle is given' }),
  },
  {
    input: 'rack.efficiency',
    symbol: 'η_z',
    handbook: () => ({
      value: { type: 'number', ...between(0.9, 0.95, 0.98), unit: '%' },
      source: 'rack and pinion with the bearings of its shaft, usual handbook range, from memory',
      weak: true,
    }),
  },
  {
    input: 'rack.backlash',
    symbol: 'j_z',
    handbook: (read) =>
      // A sprung pinion has no play; whether the spring is strong enough is another matter.
      (read.number('rack.preload')?.low ?? 0) > 0
        ? { value: { type: 'number', ...exactly(0), unit: 'mm' }, source: 'none, since a spring presses the pinion into the rack' }
        : { value: { type: 'number', ...between(20e-6, 80e-6, 200e-6), unit: 'mm' }, source: 'pinion set by hand, usual range, from memory', weak: true },
  },
  {
    input: 'rack.pitch-error',
    symbol: 'e_z',
    handbook: (read) => {
      const travel = read.number('axis.travel');
      return travel && {
        value: { type: 'number', ...between(30e-6 * travel.nominal, 80e-6 * travel.nominal, 200e-6 * travel.nominal), unit: 'mm' },
        source: '0.03 to 0.2 mm a metre from ground to milled racks, from memory',
        weak: true,
      };
    },
  },
  stressLimit('rack.stress-limit', 'rack.material', 'σ_R,lim'),
  {
    input: 'rack.stiffness',
    symbol: 'k_z',
    handbook: (read) => {
      const [rack, pinion] = [read.choice('rack.material'), read.choice('pinion.material')].map((name) => (name === undefined ? undefined : material(name)?.youngsModulus));
      const widths = [read.number('rack.face-width'), read.number('pinion.face-width')].flatMap((width) => (width && width.low > 0 ? [width.nominal] : []));
      const angle = read.number('rack.pressure-angle');
      if (!rack || !pinion || widths.length === 0 || !angle || angle.nominal < 0 || angle.nominal >= Math.PI / 4) return undefined;
      const whole = meshStiffness(Math.min(...widths), pinion.nominal, rack.nominal, angle.nominal);
      return {
        value: { type: 'number', ...between(MESH_SHARE.low * whole, MESH_SHARE.nominal * whole, MESH_SHARE.high * whole), unit: 'N/µm' },
        source: 'mesh of the teeth by ISO 6336-1, 20 N/(mm µm) for steel, of which light load, tooth errors and the shaft of the pinion leave a fifth to all; from memory',
        weak: true,
      };
    },
  },
);
