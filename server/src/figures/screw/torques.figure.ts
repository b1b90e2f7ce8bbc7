import { movingTorque } from '../../mechanics/driven-screw.ts';
import { backDrivingTorque, collarTorque } from '../../mechanics/power-screw.ts';
import { figure } from '../figure.ts';
import { bearingNeeds, contactNeeds, contactWithBearing, orJammed, threadContact } from './contact.ts';

const source = { title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, equations (8-1), (8-2), (8-6)' } as const;
const optional = { ...bearingNeeds, drag: 'nut.preload-torque' } as const;

/** Torques at one screw, by the load that it carries; the motor's own inertia and the reduction are counted with the motor. */
export default [
  figure({
    id: 'screw.lifting-torque',
    title: 'Torque while speeding up',
    symbol: 'T_2',
    quantity: 'torque',
    meaning: 'Torque at one screw that moves it up (or forward) against the largest load of a normal move, thrust bearing and nut preload counted, inertia of turning parts not.',
    needs: { ...contactNeeds, load: 'drive.lifting-load' },
    optional,
    compute: (values) => orJammed(movingTorque(values.load, contactWithBearing(values), values.drag)),
    formula: 'T₂ = F₂ d₂/2 · tan(λ + φ′) + F₂ µ_c d_c/2 + T_pre',
    sources: [source],
    rank: 2,
  }),
  figure({
    id: 'screw.cruising-torque',
    title: 'Torque at steady speed',
    symbol: 'T_1',
    quantity: 'torque',
    meaning: 'Torque at one screw that moves it up (or forward) at steady speed.',
    needs: { ...contactNeeds, load: 'drive.cruising-load' },
    optional,
    compute: (values) => orJammed(movingTorque(values.load, contactWithBearing(values), values.drag)),
    formula: 'T₁ = F₁ d₂/2 · tan(λ + φ′) + F₁ µ_c d_c/2 + T_pre',
    sources: [source],
    rank: 3,
  }),
  figure({
    id: 'screw.lowering-torque',
    title: 'Torque on the way down',
    symbol: 'T_3',
    quantity: 'torque',
    meaning: 'Torque at one screw that moves it down (or back) at steady speed. Negative: the load drives, and the motor must hold back.',
    needs: { ...contactNeeds, load: 'drive.lowering-load' },
    optional,
    compute: (values) => orJammed(movingTorque(-values.load, contactWithBearing(values), values.drag)),
    formula: 'T₃ = F₃ d₂/2 · tan(φ′ − λ) + F₃ µ_c d_c/2 + T_pre',
    sources: [source],
    rank: 2,
  }),
  figure({
    id: 'screw.run-down-torque',
    title: 'Torque of the resting load on the thread',
    symbol: 'T_r',
    quantity: 'torque',
    meaning: 'Torque that the resting load puts on one screw through its thread alone, at moving friction. Negative: the thread holds with that much to spare.',
    needs: { ...contactNeeds, load: 'drive.gravity-load' },
    compute: (values) => backDrivingTorque({ ...threadContact(values), load: Math.abs(values.load) }),
    formula: 'T_r = F₀ d₂/2 · tan(λ − φ′)',
    sources: [source],
    rank: 3,
  }),
  figure({
    id: 'screw.holding-torque',
    title: 'Torque that must be held at rest',
    symbol: 'T_0',
    quantity: 'torque',
    meaning: 'Torque that something must hold at one screw so that the load stays where it is; nothing where the thread, with its thrust bearing, holds by itself.',
    needs: { ...contactNeeds, load: 'drive.gravity-load' },
    optional: bearingNeeds,
    compute: (values) => {
      const load = Math.abs(values.load);
      const collar = contactWithBearing(values).collar;
      return Math.max(0, backDrivingTorque({ ...threadContact(values), load }) - collarTorque(load, collar));
    },
    formula: 'T₀ = F₀ d₂/2 · tan(λ − φ′) − F₀ µ_c d_c/2, at least 0',
    sources: [source],
    rank: 2,
  }),
  figure({
    id: 'screw.bearing-torque-share',
    title: 'Share of the thrust bearing in the torque',
    symbol: 'T_c/T_2',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the lifting torque goes into the thrust bearing or collar.',
    needs: { ...bearingNeeds, load: 'drive.lifting-load', torque: 'screw.lifting-torque' },
    compute: ({ load, torque, bearingFriction, bearingDiameter }) => {
      const lost = collarTorque(Math.abs(load), { friction: bearingFriction, meanDiameter: bearingDiameter });
      return torque > 0 ? lost / torque : 0;
    },
    formula: 'F₂ µ_c d_c / (2 T₂)',
    sources: [source],
    rank: 3,
  }),
];
