import { fallbacks } from '../input.ts';
import { usualGuideFriction } from '../guide-friction.ts';
import { exactly } from '../values.ts';

const GRAVITY = 9.80665;

export default fallbacks(
  {
    input: 'axis.process-force',
    symbol: 'F_p',
    handbook: () => ({ value: { type: 'number', ...exactly(0) }, source: 'none, since no process force is given' }),
  },
  {
    input: 'guides.friction-force',
    symbol: 'F_g',
    handbook: (read) =>
      usualGuideFriction({
        mass: read.number('axis.moved-mass'),
        inclination: read.number('axis.inclination') ?? exactly(0),
        gravity: read.number('conditions.gravity') ?? exactly(GRAVITY),
        bearing: read.choice('guides.kind') === undefined ? undefined : read.choice('guides.bearing'),
        friction: read.number('guides.friction'),
        sealDrag: read.number('guides.seal-drag'),
        carriages: (read.number('guides.rails')?.nominal ?? 1) * (read.number('guides.carriages')?.nominal ?? 1),
        guidedLength: read.number('guides.guided-length'),
        driveOffset: read.number('guides.drive-offset'),
      }),
  },
);
