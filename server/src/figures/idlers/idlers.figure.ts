import { idlerEccentricityError } from '../../mechanics/belt-errors.ts';
import { figure, unable } from '../figure.ts';
import { impossible, spansAtEnds, travelNeeds, travelOptional } from '../belt/path.ts';

export default [
  figure({
    id: 'idlers.diameter-over-least',
    title: 'Diameter over the least',
    symbol: 'd_i/d_min',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Diameter of the idlers over the least round which this belt may bend, on its teeth or backwards.',
    needs: { diameter: 'idlers.diameter', pitch: 'belt.pitch', teeth: 'pulley.least-teeth', factor: 'idlers.bend-factor' },
    compute: ({ diameter, pitch, teeth, factor }) => (diameter * Math.PI) / (factor * pitch * teeth),
    formula: 'd_i π / (k_i p_b z_min)',
    sources: [{ title: 'handbooks of the trade', where: 'from memory', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'idlers.turn-travel',
    title: 'Travel per turn of an idler',
    symbol: 'p_i',
    quantity: 'length',
    unit: 'mm',
    meaning: 'How far the belt runs in one turn of an idler: the period of its error.',
    needs: { diameter: 'idlers.diameter' },
    compute: ({ diameter }) => Math.PI * diameter,
    formula: 'p_i = π d_i',
    sources: [{ title: 'kinematics' }],
    rank: 3,
  }),
  figure({
    id: 'idlers.eccentricity-error',
    title: 'Error of each turn of an idler',
    symbol: 'e_Σi',
    quantity: 'length',
    meaning: 'How far the carriage swings, from peak to peak, in each turn of the far idler that is out of true, at the far end of the travel, where it matters most.',
    needs: { ...travelNeeds, eccentricity: 'idlers.eccentricity', wrap: 'pulley.wrap' },
    optional: travelOptional,
    onlyWhere: { 'belt.arrangement': ['loop'] },
    compute: ({ eccentricity, wrap, ...travel }) => {
      const reason = impossible(travel);
      if (reason !== undefined) return unable(reason);
      // What does not lie on the driving pulley of an open loop lies on the idler.
      return Math.max(...spansAtEnds(travel).map(({ first, second }) => idlerEccentricityError(eccentricity, 2 * Math.PI - wrap, first, second)));
    },
    formula: 'e_Σi = 4 e_i sin(θ_i/2) L₁ / (L₁ + L₂), θ_i = 360° − θ',
    sources: [{ title: 'derived; checked with a loop of springs' }],
    rank: 3,
  }),
];
