import { figure } from '../figure.ts';
import { forceMaybe, forceNeeds, forceOptional, pushes } from './forces.ts';

const sources = [{ title: "statics and Newton's law" }] as const;
const eitherWay = 'on a level axis, or where the motor position is not given, the worse of both directions';
const common = { quantity: 'force', unit: 'N', needs: forceNeeds, optional: forceOptional, optionalChoices: forceMaybe, formula: 'F₂ up, q_F ((m + m_c) a + F_g + F_p) − F₀ down', sources, rank: 3 } as const;

export default [
  figure({
    ...common,
    id: 'belt.force-towards',
    title: 'Pull towards the driving pulley',
    symbol: 'F_t',
    meaning: `Largest force with which the belt drives the carriage towards the driving pulley (or near anchor): ${eitherWay}.`,
    compute: (values) => Math.max(...pushes(values).map(({ towards }) => towards)),
  }),
  figure({
    ...common,
    id: 'belt.force-away',
    title: 'Pull away from the driving pulley',
    symbol: 'F_a',
    meaning: `Largest force with which the belt drives the carriage away from the driving pulley (or near anchor), through the long way round: ${eitherWay}.`,
    compute: (values) => Math.max(...pushes(values).map(({ away }) => away)),
  }),
];
