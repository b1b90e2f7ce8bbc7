import { motorFlange } from '../../catalogue/motor-flanges.ts';
import { fallbacks } from '../input.ts';
import { between } from '../values.ts';

const flangeOf = (frame: string | undefined) => (frame === undefined ? undefined : motorFlange(frame));

export default fallbacks(
  {
    input: 'motor.radial-load-limit',
    symbol: 'F_r,max',
    handbook: (read) => {
      const flange = flangeOf(read.choice('motor.frame'));
      if (!flange) return undefined;
      const [low, high] = flange.radialShaftLoad;
      return { value: { type: 'number', ...between(low, (low + high) / 2, high), unit: 'N' }, source: `usual range of motors with a size ${flange.size} face, from memory`, weak: true };
    },
  },
  {
    input: 'motor.radial-load-distance',
    symbol: 'x_r',
    handbook: () => ({
      value: { type: 'number', ...between(10e-3, 12e-3, 20e-3), unit: 'mm' },
      source: 'the middle of a shaft of 20 to 24 mm, or its end where sheets name that; common practice, no published source',
      weak: true,
    }),
  },
  {
    input: 'drive.radial-load-on',
    title: 'What bears the pull across the shaft',
    symbol: '',
    compose: (read) => {
      const own = read.choice('drive.shaft-support');
      // Behind a reduction or a coupling the shaft has bearings of its own.
      const outboard = own === 'outboard' || (own === undefined && (read.isWritten('drive.reduction') || read.isWritten('drive.coupling')));
      const source = 'the motor, where pulley or pinion sits on its shaft; bearings of their own behind a coupling or a reduction, or where it is said so';
      return { value: { type: 'choice', text: outboard ? 'bearings' : 'motor' }, origin: { from: 'handbook', source, weak: false, place: undefined } };
    },
  },
);
