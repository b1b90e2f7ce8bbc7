import { material } from '../../catalogue/materials.ts';
import { fallbacks } from '../input.ts';
import { between } from '../values.ts';

export default fallbacks(
  {
    input: 'frame.expansion',
    title: 'Expansion of the frame',
    symbol: 'α_f',
    quantity: 'expansion',
    handbook: (read) => {
      const own = read.choice('frame.material') ?? (read.isWritten('frame.box') ? read.choice('frame-box.material') : read.choice('frame.profile') === undefined ? undefined : 'aluminium');
      const row = material(read.choice('conditions.frame-material') ?? own ?? '');
      return row && { value: { type: 'number', ...between(row.expansion.low, row.expansion.nominal, row.expansion.high), unit: 'µm/(m·K)' }, source: `${row.title}: ${row.expansion.source}`, weak: row.expansion.weak };
    },
  },
  { input: 'conditions.machine-temperature', symbol: 'ϑ_m' },
);
