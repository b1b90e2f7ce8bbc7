import { reverseEfficiency } from '../../mechanics/power-screw.ts';
import { dropEnergy, fallAcceleration, fallFromRest } from '../../mechanics/unpowered-holding.ts';
import { figure } from '../figure.ts';
import { bearingNeeds, contactNeeds, contactWithBearing } from '../screw/contact.ts';
import { carriedForce, nothingFalls } from './at-rest.ts';


export default [
  figure({
    id: 'drive.drop-energy',
    title: 'Energy of a drop over the whole travel',
    symbol: 'E',
    quantity: 'energy',
    meaning: 'Energy that the moved mass brings to the bottom if nothing holds it, less what a counterbalance carries.',
    needs: { load: 'drive.gravity-load', share: 'drive.load-share', travel: 'axis.travel', gravity: 'conditions.gravity' },
    optional: carriedForce,
    // The load already holds gravity and the counterbalance, so it is turned back into the mass that is left.
    compute: ({ load, share, travel, gravity, balance }) => (load === 0 ? nothingFalls(balance) : dropEnergy(Math.abs(load) / share / gravity, travel, gravity)),
    formula: 'E = F₀ h / q_F = (m g sin β − F_c) h',
    sources: [{ title: 'mechanics of a falling body' }],
    rank: 2,
  }),
  figure({
    id: 'drive.fall-acceleration',
    onlyWhere: { 'drive.transmission': ['screw'] },
    title: 'Acceleration of a drop',
    symbol: 'a_f',
    quantity: 'acceleration',
    meaning: 'How fast the axis gains speed if nothing but thread and thrust bearing resists; 0 where they hold.',
    needs: { ...contactNeeds, load: 'drive.gravity-load', mass: 'axis.moved-mass', share: 'drive.load-share', lead: 'screw.lead' },
    optional: {
      ...bearingNeeds,
      ...carriedForce,
      counterweight: 'counterbalance.mass',
      screwInertia: 'screw.inertia',
      rotorInertia: 'motor.rotor-inertia',
      ratio: 'drive.reduction-ratio',
    },
    compute: (values) => {
      const { load, mass, share, lead, counterweight, screwInertia, rotorInertia, ratio } = values;
      if (load === 0) return nothingFalls(values.balance);
      return fallAcceleration({
        mass: (mass + (counterweight ?? 0)) * share,
        pull: Math.abs(load),
        lead,
        reverseEfficiency: reverseEfficiency(contactWithBearing(values)),
        // What is not described is left out: the fall then comes out faster, the cautious side.
        rotatingInertia: (screwInertia ?? 0) + (rotorInertia ?? 0) * (ratio ?? 1) ** 2,
        resistingTorque: 0,
      });
    },
    formula: 'a_f = F₀ η_r / (q_F m η_r + J (2π/l)²)',
    sources: [{ title: 'Newton’s law of mass and rotor coupled by the screw' }],
    rank: 3,
  }),
  figure({
    id: 'drive.fall-speed',
    title: 'Speed at the end of a drop',
    symbol: 'v_f',
    quantity: 'speed',
    meaning: 'Speed at the bottom after a drop over the whole travel; 0 where thread and thrust bearing hold.',
    needs: { acceleration: 'drive.fall-acceleration', travel: 'axis.travel' },
    compute: ({ acceleration, travel }) => fallFromRest(acceleration, travel)?.speed ?? 0,
    formula: 'v_f = √(2 a_f h)',
    sources: [{ title: 'motion under constant acceleration' }],
    rank: 2,
  }),
];
