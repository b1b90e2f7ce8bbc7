import { material } from '../../catalogue/materials.ts';
import { roundBarInertia } from '../../mechanics/axis-torque.ts';
import { fallbacks } from '../input.ts';
import { between } from '../values.ts';
import { stressLimit } from './rack.inputs.ts';

export default fallbacks(
  { input: 'pinion.teeth', symbol: 'z' },
  {
    input: 'pinion.face-width',
    symbol: 'b_p',
    handbook: (read) => {
      const rack = read.number('rack.face-width');
      return rack && { value: { type: 'number', ...rack, unit: 'mm' }, source: 'as wide as the rack, since nothing else is given' };
    },
  },
  {
    input: 'pinion.rotational-inertia',
    symbol: 'J_p',
    handbook: (read) => {
      const [module, teeth, width, helix] = ['rack.module', 'pinion.teeth', 'pinion.face-width', 'rack.helix-angle'].map((id) => read.number(id)?.nominal);
      const name = read.choice('pinion.material');
      const density = material(name ?? 'steel')?.density;
      if (!module || !teeth || !width || helix === undefined || module < 0 || teeth < 0 || width < 0 || !density) return undefined;
      const disc = roundBarInertia((module * teeth) / Math.cos(helix), width, density.nominal);
      // Bore and tooth gaps take away, a hub adds; some pinions are shafts.
      return {
        value: { type: 'number', ...between(0.8 * disc, disc, 1.6 * disc), unit: 'g·cm²' },
        source: `a disc of the pitch diameter of ${material(name ?? 'steel')?.title ?? 'steel'}, up to 60 % more for a hub; estimate`,
        weak: true,
      };
    },
  },
  {
    input: 'pinion.eccentricity',
    symbol: 'e_p',
    handbook: () => ({
      value: { type: 'number', ...between(5e-6, 15e-6, 30e-6), unit: 'mm' },
      source: 'tooth run-out and bore clearance of a pinion on its shaft, usual range, from memory',
      weak: true,
    }),
  },
  stressLimit('pinion.stress-limit', 'pinion.material', 'σ_P,lim'),
);
