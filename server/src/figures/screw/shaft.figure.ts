import { endFixity, tiltStiffnessOfBearingPair } from '../../mechanics/whirl.ts';
import { figure, unable } from '../figure.ts';

export default [
  figure({
    id: 'screw.slenderness',
    title: 'Length over diameter',
    symbol: 'L/d',
    quantity: 'ratio',
    meaning: 'Unsupported length over the diameter that bends: below about 20 the usual whirl formula is too high.',
    needs: { length: 'screw.unsupported-length', bending: 'screw.bending-diameter' },
    compute: ({ length, bending }) => length / bending,
    formula: 'L / d_b',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'screw.end-fixity',
    title: 'Fixity of the motor end',
    symbol: 'q',
    quantity: 'ratio',
    meaning: "Tilt stiffness of the two bearings at the motor's end against that of the screw: from 20 on the end counts as fixed, near 0 it is merely supported.",
    needs: { spacing: 'screw.bearing-spacing', radial: 'screw.bearing-radial-stiffness', length: 'screw.unsupported-length', bending: 'screw.bending-diameter', modulus: 'screw.elastic-modulus' },
    onlyWhere: { 'screw.end-supports': ['fixed-free', 'fixed-supported', 'fixed-fixed'] },
    compute: ({ spacing, radial, length, bending, modulus }) => {
      if (spacing <= 0) return unable('the two bearings stand at the same place');
      return endFixity(tiltStiffnessOfBearingPair(radial, spacing), length, (modulus * Math.PI * bending ** 4) / 64).q;
    },
    formula: 'q = k_r s² L / (2 E π d_b⁴ / 64)',
    sources: [{ title: 'statics of two bearings; beam on an elastic clamp' }],
    rank: 3,
  }),
  figure({
    id: 'screw.inertia',
    title: 'Moment of inertia of the screw',
    symbol: 'J_s',
    quantity: 'rotational-inertia',
    meaning: 'What the screw itself opposes to being sped up, at the screw.',
    needs: { length: 'screw.length', mass: 'screw.mass-diameter', density: 'screw.density', bore: 'screw.bore-diameter' },
    compute: ({ length, mass, density, bore }) => (bore < mass ? (density * Math.PI * length * (mass ** 4 - bore ** 4)) / 32 : unable('the bore is as large as the screw')),
    formula: 'J_s = π ρ L_s (d_m⁴ − b⁴) / 32',
    sources: [{ title: 'round bar', where: 'any textbook on dynamics' }],
    rank: 3,
  }),
];
