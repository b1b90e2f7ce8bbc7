import { material } from '../../catalogue/materials.ts';
import { slottedProfile, type SlottedProfile } from '../../catalogue/slotted-profiles.ts';
import type { HandbookRange } from '../../catalogue/nut-materials.ts';
import { fallbacks, type Fallback } from '../input.ts';
import { between, exactly } from '../values.ts';

/** What the slotted profile of the beam says of it. */
const ofSection = (entry: string, symbol: string, unit: string, pick: (profile: SlottedProfile) => HandbookRange): Fallback => ({
  input: `frame-gantry.${entry}`,
  symbol,
  handbook: (read) => {
    const profile = slottedProfile(read.choice('frame-gantry.section') ?? '');
    if (!profile) return undefined;
    const { low, nominal, high, source } = pick(profile);
    return { value: { type: 'number', ...between(low, nominal, high), unit }, source: `slotted profile ${profile.title}: ${source}`, weak: true };
  },
});

const modulus = (entry: string, title: string, symbol: string, pick: 'youngsModulus' | 'shearModulus'): Fallback => ({
  input: `frame-gantry.${entry}`,
  title,
  symbol,
  quantity: 'pressure',
  handbook: (read) => {
    const found = material(read.choice('frame-gantry.material') ?? '');
    return found && { value: { type: 'number', ...between(found[pick].low, found[pick].nominal, found[pick].high), unit: 'GPa' }, source: `${found.title}: ${found[pick].source}`, weak: found[pick].weak };
  },
});

export default fallbacks(
  ofSection('second-moment-upright', 'I', 'cm⁴', ({ secondUpright }) => secondUpright),
  ofSection('second-moment-sideways', 'I_s', 'cm⁴', ({ secondSideways }) => secondSideways),
  ofSection('torsion-constant', 'J', 'cm⁴', ({ torsion }) => torsion),
  ofSection('mass-per-length', 'm_l', 'kg/m', ({ massPerLength }) => massPerLength),
  { input: 'frame-gantry.material', handbook: () => ({ value: { type: 'choice', text: 'aluminium' }, source: 'slotted profiles are of aluminium, and no material is given', weak: true }) },
  modulus('youngs-modulus', 'Young’s modulus of the beam', 'E', 'youngsModulus'),
  modulus('shear-modulus', 'Shear modulus of the beam', 'G', 'shearModulus'),
  { input: 'frame-gantry.ends', handbook: () => ({ value: { type: 'choice', text: 'supported' }, source: 'ends free to tilt, the worse of the two, since nothing is given', weak: true }) },
  { input: 'frame-gantry.span', symbol: 'L' },
  { input: 'frame-gantry.carried-mass', symbol: 'M' },
  { input: 'frame-gantry.tool-reach', symbol: 'r' },
  { input: 'frame-gantry.sag-tolerance', symbol: 'y_tol' },
  {
    input: 'frame-gantry.travel',
    symbol: 's',
    handbook: (read) => {
      const span = read.number('frame-gantry.span');
      return span && { value: { type: 'number', ...span, unit: 'mm' }, source: 'all of the span, since no travel is given' };
    },
  },
  { input: 'frame-gantry.overhang', symbol: 'e', handbook: () => ({ value: { type: 'number', ...exactly(0), unit: 'mm' }, source: 'under the middle of the beam, since no overhang is given', weak: true }) },
);
