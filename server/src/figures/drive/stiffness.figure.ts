import { axialResonance, screwAxialStiffness, shaftTorsionStiffness, torsionAlongAxis, type StiffnessLink } from '../../mechanics/axial-stiffness.ts';
import { screwBody } from '../../mechanics/screw-body.ts';
import { figure, unable } from '../figure.ts';
import { inSeries, softestShare, trainLinkNeeds, trainLinks } from './train-links.ts';

const bars = { title: 'bars and springs in series; ISO 3408-4:2006', where: 'form as quoted', weak: true } as const;
const chainNeeds = { screw: 'screw.axial-stiffness', nut: 'nut.stiffness', lead: 'screw.lead' } as const;
const chainOptional = {
  ...trainLinkNeeds, bearing: 'thrust-bearing.stiffness', twist: 'screw.torsion-along-axis', pull: 'coupling.axial-stiffness',
} as const;
const chainChoices = { design: 'thrust-bearing.design' } as const;
const chainMaybe = { motors: 'drive.motors' } as const;

type Chain = { readonly [alias in keyof typeof chainNeeds]: number } & { readonly [alias in keyof typeof chainOptional]: number | undefined } & {
  readonly design: string;
  readonly motors: string | undefined;
};

/** The links between the motor's field and the load, all seen along the axis. */
function linksOf({ screw, nut, lead, bearing, twist, pull, design, ...train }: Chain): readonly StiffnessLink[] {
  const links: StiffnessLink[] = [{ name: 'the screw', stiffness: screw }, { name: 'the nut', stiffness: nut }];
  if (bearing !== undefined) links.push({ name: 'the thrust bearing', stiffness: bearing });
  else if (design === 'none' && pull !== undefined) links.push({ name: 'the coupling, which carries the thrust', stiffness: pull });
  if (twist !== undefined) links.push({ name: 'the twist of the screw', stiffness: twist });
  return [...links, ...trainLinks(lead, train)];
}

const body = { bending: 'screw.bending-diameter', bore: 'screw.bore-diameter', length: 'screw.unsupported-length' } as const;

export default [
  figure({
    id: 'screw.axial-stiffness',
    title: 'Axial stiffness of the screw',
    symbol: 'k_s',
    quantity: 'stiffness',
    unit: 'N/µm',
    meaning: 'Stiffness of the stretch from the thrust bearing to the nut where it is farthest; at mid-length where both ends take thrust.',
    needs: { ...body, modulus: 'screw.elastic-modulus' },
    choices: { thrust: 'screw.thrust-end' },
    compute: ({ bending, bore, length, modulus, thrust }) => {
      if (bore >= bending) return unable('the bore is as large as the root');
      const { tensionStiffness } = screwBody({ bending, mass: bending }, { youngsModulus: modulus, shearModulus: modulus, density: 1 }, bore);
      return thrust === 'both' ? screwAxialStiffness(tensionStiffness, length / 2, length) : screwAxialStiffness(tensionStiffness, length);
    },
    formula: 'k_s = E π d_b² / (4 L); thrust at both ends: 4 E A / L',
    sources: [bars],
    rank: 3,
  }),
  figure({
    id: 'screw.torsion-along-axis',
    title: 'Twist of the screw as axial stiffness',
    symbol: 'k_τ',
    quantity: 'stiffness',
    unit: 'N/µm',
    meaning: 'What the twist of the screw between drive and nut costs, seen at the load through the lead.',
    needs: { ...body, modulus: 'screw.shear-modulus', lead: 'screw.lead' },
    compute: ({ bending, bore, length, modulus, lead }) => {
      if (bore >= bending) return unable('the bore is as large as the root');
      const { torsionStiffness } = screwBody({ bending, mass: bending }, { youngsModulus: modulus, shearModulus: modulus, density: 1 }, bore);
      return torsionAlongAxis(shaftTorsionStiffness(torsionStiffness, length), lead);
    },
    formula: 'k_τ = G π d_b⁴ / (32 L) · (2π / l)²',
    sources: [{ title: 'torsion of a round bar through the lead' }],
    rank: 3,
  }),
  figure({
    id: 'drive.axial-stiffness',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'Axial stiffness of the drive',
    symbol: 'k',
    quantity: 'stiffness',
    unit: 'N/µm',
    meaning: 'How stiffly one drive holds its load along the axis: screw, nut, thrust bearing, twist, coupling, reduction and the magnetic spring of the motor in series.',
    needs: chainNeeds,
    optional: chainOptional,
    choices: chainChoices,
    optionalChoices: chainMaybe,
    compute: (values) => {
      const { bearing, pull, magnetic } = values;
      const left = [...(magnetic === undefined ? ['motor'] : []), ...(bearing === undefined && pull === undefined ? ['thrust bearing'] : [])];
      return inSeries(linksOf(values), left.length === 0 ? '' : `; without the ${left.join(' and the ')}, not known here`);
    },
    formula: '1/k = 1/k_s + 1/k_n + 1/k_b + 1/k_τ + 1/(k_c (2π/l)²) + n_s/(k_i (2π/l)²) + n_s/(k_m i² (2π/l)²), n_s: screws that the motor turns',
    sources: [bars],
    rank: 2,
  }),
  figure({
    id: 'drive.softest-share',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'Share of the softest link',
    symbol: 'σ_k',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the whole give the softest link of the drive makes up.',
    needs: { total: 'drive.axial-stiffness', ...chainNeeds },
    optional: chainOptional,
    choices: chainChoices,
    optionalChoices: chainMaybe,
    compute: (values) => softestShare(linksOf(values), values.total),
    formula: 'σ_k = k / min k_i',
    sources: [bars],
    rank: 3,
  }),
  figure({
    id: 'drive.deflection',
    title: 'Give under the changing load',
    symbol: 'δ',
    quantity: 'length',
    meaning: 'How far the load is off its place at rest while friction, work and inertia push on it.',
    needs: { stiffness: 'drive.axial-stiffness', rest: 'drive.gravity-load', lifting: 'drive.lifting-load' },
    compute: ({ stiffness, rest, lifting }) => Math.abs(lifting - rest) / stiffness,
    formula: 'δ = (F₂ − F₀) / k',
    sources: [{ title: 'spring' }],
    rank: 2,
  }),
  figure({
    id: 'drive.deflection-use',
    title: 'Give over the accuracy wanted',
    symbol: 'δ/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Give under the changing load over the accuracy wanted.',
    needs: { deflection: 'drive.deflection', accuracy: 'axis.accuracy' },
    compute: ({ deflection, accuracy }) => (accuracy > 0 ? deflection / accuracy : unable('the accuracy wanted is 0')),
    formula: 'δ / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'drive.axial-resonance',
    // Belts have a figure of their own with rotor and idlers in it; without a stepper's field this is the lowest resonance of the axis already.
    onlyWhere: { 'drive.transmission': ['screw', 'rack'], 'motor.kind': ['stepper'] },
    title: 'Axial resonance',
    symbol: 'f_r',
    quantity: 'frequency',
    unit: 'Hz',
    meaning: 'Frequency at which the moved mass swings on the stiffness of its drive, the rotor taken as held by its field.',
    needs: { stiffness: 'drive.axial-stiffness', mass: 'axis.moved-mass', share: 'drive.load-share' },
    optional: { counterweight: 'counterbalance.mass' },
    compute: ({ stiffness, mass, share, counterweight = 0 }) => axialResonance(stiffness, (mass + counterweight) * share) / (2 * Math.PI),
    formula: 'f_r = 1/(2π) · √(k / (q_F (m + m_c)))',
    sources: [{ title: 'Den Hartog, Mechanical Vibrations', where: 'chapter 2', weak: true }],
    rank: 2,
  }),
  figure({
    id: 'drive.full-step-excitation',
    title: 'Full steps over resonance',
    symbol: 'f_v/f_r',
    quantity: 'ratio',
    meaning: 'Full steps a second at working speed over the axial resonance: near 1 the steps shake the axis.',
    needs: { rate: 'motor.step-rate', microsteps: 'controller.microsteps', resonance: 'drive.axial-resonance' },
    compute: ({ rate, microsteps, resonance }) => rate / microsteps / resonance,
    formula: 'f_s / (n_µ f_r)',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'drive.microstep-excitation',
    title: 'Microsteps over resonance',
    symbol: 'f_s/f_r',
    quantity: 'ratio',
    meaning: 'Microsteps a second at working speed over the axial resonance: near 1 the steps shake the axis.',
    needs: { rate: 'motor.step-rate', resonance: 'drive.axial-resonance' },
    compute: ({ rate, resonance }) => rate / resonance,
    formula: 'f_s / f_r',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
];
