import { figure, unable } from '../figure.ts';

export default [
  figure({
    id: 'heater.supply-current',
    title: 'Current of the heater',
    symbol: 'I_h',
    quantity: 'current',
    meaning: 'Current that the heated part takes from its supply while it heats at full power.',
    needs: { power: 'heater.power', voltage: 'supply.voltage' },
    compute: ({ power, voltage }) => (voltage > 0 ? power / voltage : unable('the supply has no voltage')),
    formula: 'I_h = P_h / V',
    sources: [{ title: 'power of a resistive load' }],
    rank: 2,
  }),
];
