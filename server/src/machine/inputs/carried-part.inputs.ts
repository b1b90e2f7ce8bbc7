import { material } from '../../catalogue/materials.ts';
import { fallbacks } from '../input.ts';
import { between } from '../values.ts';

export default fallbacks({
  input: 'carried-part.expansion',
  title: 'Expansion of the carried part',
  symbol: 'α_p',
  quantity: 'expansion',
  handbook: (read) => {
    const name = read.choice('carried-part.material');
    const found = name === undefined ? undefined : material(name);
    return found && { value: { type: 'number', ...between(found.expansion.low, found.expansion.nominal, found.expansion.high), unit: 'µm/(m·K)' }, source: `${found.title}: ${found.expansion.source}`, weak: found.expansion.weak };
  },
});
