import { bushingEdgePressure, bushingPressure, bushingPressureVelocity, travelToWear } from '../../mechanics/plain-bushing.ts';
import { wearDepth } from '../../mechanics/nut-pressure.ts';
import { figure, unable } from '../figure.ts';
import { carriageChoices, carriageNames, carriageNeeds, carriageOptional, carriageTables, loadsOf, resultant } from './carriages.ts';

const plain = { 'guides.bearing': ['lined-bushing', 'polymer-bushing', 'bronze-bushing'] } as const;
const book = { title: "Budynas and Nisbett, Shigley's Mechanical Engineering Design", where: 'section 12-14' } as const;
const archard = { title: 'Archard’s law; The Tribology Handbook', where: 'section A5' } as const;
const limits = { title: 'limits by bearing: wide ranges from memory, checked against Mott, Machine Elements in Mechanical Design, Table 16-1', weak: true } as const;

/** What has no load wears and warms nothing. */
const NOTHING = 'nothing presses on the bushings';

export default [
  figure({
    id: 'guides.bushing-pressure',
    title: 'Pressure in the plain bushings',
    symbol: 'p_b',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Mean pressure of the most loaded bushing on its shaft, with what shafts out of line press on it.',
    onlyWhere: plain,
    needs: { load: 'guides.carriage-load-most', diameter: 'guides.shaft-diameter', length: 'guides.carriage-length' },
    optional: { sideways: 'guides.mismatch-side-force', away: 'guides.mismatch-height-force' },
    compute: ({ load, diameter, length, sideways = 0, away = 0 }) =>
      diameter > 0 && length > 0 ? bushingPressure(load + Math.hypot(sideways, away), diameter, length) : unable('diameter and length must be above zero'),
    formula: 'p_b = (F_c,max + √(N_y² + N_z²))/(d_s l_c)',
    sources: [book],
    rank: 3,
  }),
  figure({
    id: 'guides.bushing-edge-pressure',
    title: 'Pressure at the edge of a plain bushing',
    symbol: 'p_e',
    quantity: 'pressure',
    unit: 'MPa',
    meaning: 'Pressure at the edge of the bushing that is pressed most: a single bushing takes a couple with its ends. With play the edges take more.',
    onlyWhere: plain,
    needs: { ...carriageNeeds, diameter: 'guides.shaft-diameter' },
    optional: { ...carriageOptional, sideways: 'guides.mismatch-side-force', away: 'guides.mismatch-height-force' },
    optionalChoices: carriageChoices,
    tables: carriageTables,
    names: carriageNames,
    compute: ({ diameter, sideways = 0, away = 0, ...values }) => {
      const cases = loadsOf(values);
      if (typeof cases === 'string') return unable(cases);
      if (!(diameter > 0)) return unable('the diameter must be above zero');
      return Math.max(0, ...cases.loads.map(({ load }) => {
        const force = resultant(load) + Math.hypot(sideways, away);
        return force > 0 ? bushingEdgePressure(force, Math.hypot(load.my, load.mz) / force, diameter, values.length) : 0;
      }));
    },
    formula: 'p_e = F/(d_s l_c) (1 + 6 e/l_c), e = M/F',
    sources: [{ title: 'pressure linear along the length, balance of force and moment; the bore bears all round' }],
    rank: 3,
  }),
  figure({
    id: 'guides.bushing-pressure-use',
    title: 'Use of the pressure that a bushing bears',
    symbol: 'p_e/p_0',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Pressure at the edge of the most pressed bushing over what the bearing bears while it slides.',
    onlyWhere: plain,
    needs: { pressure: 'guides.bushing-edge-pressure', limit: 'guides.pressure-limit' },
    compute: ({ pressure, limit }) => (limit > 0 ? pressure / limit : unable('the limit must be above zero')),
    formula: 'p_e / p₀',
    sources: [limits],
    rank: 2,
  }),
  figure({
    id: 'guides.bushing-pressure-velocity',
    title: 'Pressure times speed in the bushings',
    symbol: 'PV_b',
    quantity: 'pressure-velocity',
    meaning: 'Frictional heat per projected area at full speed, averaged over the duty.',
    onlyWhere: plain,
    needs: { pressure: 'guides.bushing-pressure', speed: 'motion.speed' },
    optional: { duty: 'motion.duty' },
    compute: ({ pressure, speed, duty }) => {
      const value = bushingPressureVelocity({ pressure, speed, duty: Math.min(1, duty ?? 1) });
      return duty === undefined ? { value, note: 'motion all the time assumed, since no duty is given' } : value;
    },
    formula: 'PV_b = p_b v · duty',
    sources: [book, { title: 'averaging over the duty: common practice' }],
    rank: 3,
  }),
  figure({
    id: 'guides.bushing-heat-use',
    title: 'Use of what the bushings bear of speed and heat',
    symbol: 'PV_b/PV_0',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Pressure times speed over what the bearing bears for long, or the speed over the highest that it bears, whichever is more.',
    onlyWhere: plain,
    needs: { heat: 'guides.bushing-pressure-velocity', limit: 'guides.heat-limit', speed: 'motion.speed', fastest: 'guides.sliding-speed-limit' },
    compute: ({ heat, limit, speed, fastest }) => {
      if (!(limit > 0 && fastest > 0)) return unable('limits must be above zero');
      const [byHeat, bySpeed] = [heat / limit, speed / fastest];
      return bySpeed > byHeat ? { value: bySpeed, note: 'by the speed alone' } : byHeat;
    },
    formula: 'max(PV_b / PV₀, v / v₀)',
    sources: [limits],
    rank: 2,
  }),
  figure({
    id: 'guides.bushing-wear',
    title: 'Wear of the bushings over the travel wanted',
    symbol: 'h_w',
    quantity: 'length',
    meaning: 'Depth worn off the loaded side of the most loaded bushing over the travel that the guides shall last, after running-in.',
    onlyWhere: plain,
    needs: { pressure: 'guides.bushing-pressure', wear: 'guides.specific-wear', travel: 'guides.life' },
    compute: ({ pressure, wear, travel }) => wearDepth(wear, pressure, travel),
    formula: 'h_w = k_w p_b L_w',
    sources: [archard, { title: 'specific wear: wide range from memory', weak: true }],
    rank: 3,
  }),
  figure({
    id: 'guides.bushing-life',
    title: 'Travel until the bushings are worn',
    symbol: 's_w',
    quantity: 'distance',
    unit: 'km',
    meaning: 'Travel after which the most loaded bushing has worn by the depth that is allowed.',
    onlyWhere: plain,
    needs: { pressure: 'guides.bushing-pressure', wear: 'guides.specific-wear', allowed: 'guides.wear-allowed' },
    compute: ({ pressure, wear, allowed }) => (pressure > 0 && wear > 0 ? travelToWear(allowed, wear, pressure) : unable(NOTHING)),
    formula: 's_w = h₀/(k_w p_b)',
    sources: [archard, { title: 'specific wear and depth allowed: wide ranges from memory', weak: true }],
    rank: 2,
  }),
];
