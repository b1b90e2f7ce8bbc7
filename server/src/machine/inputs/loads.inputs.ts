import { fallbacks } from '../input.ts';
import { usualGuideFriction } from '../guide-friction.ts';
import { exactly } from '../values.ts';

export default fallbacks(
  {
    input: 'axis.process-force',
    symbol: 'F_p',
    handbook: () => ({ value: { type: 'number', ...exactly(0) }, source: 'none, since no process force is given' }),
  },
  {
    input: 'guides.friction-force',
    symbol: 'F_g',
    handbook: (read) => usualGuideFriction(read.number('axis.moved-mass')),
  },
);
