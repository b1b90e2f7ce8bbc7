import { between, exactly } from '../values.ts';
import { fallbacks } from '../input.ts';

export default fallbacks(
  {
    input: 'conditions.gravity',
    symbol: 'g',
    // Standard gravity; the spread over the Earth's surface is from pole to equator.
    handbook: () => ({ value: { type: 'number', ...between(9.78, 9.80665, 9.833) }, source: 'ISO 80000-3: standard acceleration of free fall; spread equator to pole' }),
  },
  {
    input: 'conditions.ambient-temperature',
    symbol: 'ϑ_a',
    handbook: () => ({ value: { type: 'number', ...between(288.15, 293.15, 303.15), unit: '°C' }, source: 'ISO 1 reference temperature 20 °C, with the range of a heated room', weak: true }),
  },
  {
    input: 'drive.units',
    symbol: 'n_u',
    handbook: () => ({ value: { type: 'number', ...exactly(1) }, source: 'one drive, since no number of units is given' }),
  },
);
