import { frameJoint, FRAME_JOINTS } from '../../catalogue/frame-joints.ts';
import { material } from '../../catalogue/materials.ts';
import { panelMaterial, PANEL_MATERIALS } from '../../catalogue/panel-materials.ts';
import { slottedProfile } from '../../catalogue/slotted-profiles.ts';
import { PANEL_FASTENING } from '../../mechanics/frame-racking.ts';
import { fallbacks, type Fallback } from '../input.ts';
import { between } from '../values.ts';

/** Second moment of a column along one direction; of an oblong profile that is not said to lie one way or the other, either may count. */
const secondMoment = (along: 'x' | 'y'): Fallback => ({
  input: `frame-box.second-moment-${along}`,
  symbol: `I_${along}`,
  handbook: (read) => {
    const profile = slottedProfile(read.choice('frame-box.column') ?? '');
    if (!profile) return undefined;
    const side = read.choice('frame-box.longer-side');
    const { secondUpright: long, secondSideways: short } = profile;
    const ends = side === undefined ? { low: short.low, nominal: short.nominal, high: long.high } : side === along ? long : short;
    return { value: { type: 'number', ...between(ends.low, ends.nominal, ends.high), unit: 'cm⁴' }, source: `slotted profile ${profile.title}${side === undefined && profile.width !== profile.height ? ', either way round' : ''}: ${long.source}`, weak: true };
  },
});

const braced = (along: 'x' | 'y'): Fallback => ({
  input: `frame-box.braced-${along}`,
  handbook: () => ({ value: { type: 'choice', text: 'none' }, source: 'no brace or panel, since none is given' }),
});

export default fallbacks(
  secondMoment('x'),
  secondMoment('y'),
  braced('x'),
  braced('y'),
  { input: 'frame-box.width', symbol: 'w' },
  { input: 'frame-box.depth', symbol: 'd' },
  { input: 'frame-box.height', symbol: 'h' },
  { input: 'frame-box.top-mass', symbol: 'M_t' },
  { input: 'frame-box.mass', symbol: 'M' },
  { input: 'frame-box.moving-mass', symbol: 'm_m' },
  { input: 'frame-box.acceleration', symbol: 'a' },
  {
    input: 'frame-box.mass-per-length',
    symbol: 'm_l',
    handbook: (read) => {
      const profile = slottedProfile(read.choice('frame-box.column') ?? '');
      const ends = profile?.massPerLength ?? { low: 0.4, nominal: 1.5, high: 6, source: 'light to heavy profiles and tubes, from memory' };
      return { value: { type: 'number', ...between(ends.low, ends.nominal, ends.high), unit: 'kg/m' }, source: ends.source, weak: true };
    },
  },
  { input: 'frame-box.material', handbook: () => ({ value: { type: 'choice', text: 'aluminium' }, source: 'slotted profiles are of aluminium, and no material is given', weak: true }) },
  {
    input: 'frame-box.youngs-modulus',
    title: 'Young’s modulus of the columns',
    symbol: 'E',
    quantity: 'pressure',
    handbook: (read) => {
      const found = material(read.choice('frame-box.material') ?? '');
      return found && { value: { type: 'number', ...between(found.youngsModulus.low, found.youngsModulus.nominal, found.youngsModulus.high), unit: 'GPa' }, source: `${found.title}: ${found.youngsModulus.source}`, weak: found.youngsModulus.weak };
    },
  },
  {
    input: 'frame-box.joint-stiffness',
    symbol: 'k_θ',
    handbook: (read) => {
      const joint = frameJoint(read.choice('frame-box.joint') ?? '');
      if (joint) return { value: { type: 'number', ...between(joint.stiffness.low, joint.stiffness.nominal, joint.stiffness.high) }, source: `${joint.title}: ${joint.stiffness.source}`, weak: true };
      // From the softest to the stiffest bracket of profiles; welds and pins are not what one has without saying so.
      return { value: { type: 'number', ...between(500, Math.sqrt(500 * 30_000), 30_000) }, source: `any bracket, since no joint is given: ${FRAME_JOINTS[0]?.stiffness.source ?? ''}`, weak: true };
    },
  },
  {
    input: 'frame-box.brace-area',
    symbol: 'A_d',
    handbook: () => ({ value: { type: 'number', ...between(20e-6, 63e-6, 200e-6), unit: 'mm²' }, source: 'flat strip of 20 mm² to a small profile of 200 mm², from memory', weak: true }),
  },
  {
    input: 'frame-box.brace-fastening',
    symbol: 'η_d',
    handbook: () => ({ value: { type: 'number', ...between(0.1, 0.3, 1) }, source: 'order of magnitude, no published source; 1 is a brace whose ends do not give at all', weak: true }),
  },
  {
    input: 'frame-box.panel-shear-modulus',
    title: 'Shear modulus of the panel',
    symbol: 'G_p',
    quantity: 'pressure',
    handbook: (read) => {
      const panel = panelMaterial(read.choice('frame-box.panel-material') ?? '');
      if (panel) return { value: { type: 'number', ...between(panel.shearModulus.low, panel.shearModulus.nominal, panel.shearModulus.high), unit: 'GPa' }, source: `${panel.title}: ${panel.shearModulus.source}`, weak: panel.shearModulus.weak };
      const low = Math.min(...PANEL_MATERIALS.map(({ shearModulus }) => shearModulus.low));
      return { value: { type: 'number', ...between(low, 1e9, 3e9), unit: 'GPa' }, source: 'plywood to composite sheet, since no panel material is given; from memory', weak: true };
    },
  },
  { input: 'frame-box.panel-thickness', symbol: 't', handbook: () => ({ value: { type: 'number', ...between(0.002, 0.004, 0.008), unit: 'mm' }, source: 'usual sheets, from memory', weak: true }) },
  {
    input: 'frame-box.panel-fastening',
    symbol: 'η_p',
    handbook: () => ({ value: { type: 'number', ...between(PANEL_FASTENING.low, PANEL_FASTENING.nominal, PANEL_FASTENING.high) }, source: 'screws and slot nuts: common practice, no published source', weak: true }),
  },
  {
    input: 'frame-box.moving-height',
    symbol: 'h_m',
    handbook: (read) => {
      const height = read.number('frame-box.height');
      return height && { value: { type: 'number', ...height, unit: 'mm' }, source: 'at the top of the columns, since no height is given', weak: true };
    },
  },
  { input: 'frame-box.foot-friction', symbol: 'µ_f', handbook: () => ({ value: { type: 'number', ...between(0.2, 0.5, 0.9) }, source: 'hard plastic to rubber on wood or stone, from memory', weak: true }) },
);
