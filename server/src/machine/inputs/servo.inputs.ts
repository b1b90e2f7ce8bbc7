import { CLASS_B_RISE, COPPER_TEMPERATURE_COEFFICIENT } from '../../mechanics/motor-heat.ts';
import { fallbacks, type InputReader } from '../input.ts';
import { between, exactly } from '../values.ts';

/** Rise that insulation class F allows over 40 °C, K: IEC 60034-1. */
const CLASS_F_RISE = 105;
/** Common practice, of makers' recommendations: half as much again for stepping motors without feedback, a tenth for servo motors. */
const MARGINS = { withoutFeedback: 1.5, closedLoop: 1.15, servo: 1.1 } as const;

const isServo = (read: InputReader): boolean => ['dc-motor', 'brushless'].includes(read.choice('motor.kind') ?? '');

function marginWanted(read: InputReader): { readonly value: number; readonly source: string } {
  if (isServo(read)) return { value: MARGINS.servo, source: 'a tenth more for motors whose position is fed back; makers recommend 10 %, common practice' };
  if (read.choice('motor.feedback') === 'encoder') return { value: MARGINS.closedLoop, source: '10 % to 20 % more for stepping motors whose position is fed back, common practice' };
  return { value: MARGINS.withoutFeedback, source: 'half as much again for stepping motors without feedback; makers recommend 50 %, common practice' };
}

/** DC and brushless motors, and what feedback changes. */
export default fallbacks(
  { input: 'motion.jerk', symbol: 'j' },
  { input: 'drive.current-limit', symbol: 'I_max' },
  { input: 'motor.torque-constant', symbol: 'K' },
  { input: 'motor.continuous-torque', symbol: 'T_c' },
  { input: 'motor.peak-torque', symbol: 'T_p' },
  { input: 'motor.speed-limit', symbol: 'n_max' },
  { input: 'motor.encoder-counts', symbol: 'z_e' },
  { input: 'motor.thermal-time-constant', symbol: 'τ' },
  {
    input: 'motor.no-load-current',
    symbol: 'I_0',
    handbook: () => ({ value: { type: 'number', ...exactly(0), unit: 'A' }, source: 'its own friction left out, since no current without load is given', weak: true }),
  },
  {
    input: 'motor.torque-constant-as',
    handbook: () => ({ value: { type: 'choice', text: 'rms' }, source: 'amperes of root mean square, as most sheets count them; common practice, no published source', weak: true }),
  },
  {
    input: 'motor.pole-pairs',
    symbol: 'N',
  },
  {
    input: 'motor.margin-wanted',
    title: 'Torque margin wanted',
    symbol: 'S_w',
    quantity: 'ratio',
    handbook: (read) => {
      const { value, source } = marginWanted(read);
      return { value: { type: 'number', ...exactly(value) }, source, weak: true };
    },
  },
  {
    input: 'motor.detent-torque',
    handbook: (read) => (isServo(read) ? { value: { type: 'number', ...exactly(0), unit: 'N·m' }, source: 'none counted, since none is given: it must not be leaned on', weak: true } : undefined),
  },
  {
    input: 'motor.thermal-resistance',
    handbook: (read) => {
      const [continuous, constant, resistance] = ['motor.continuous-torque', 'motor.torque-constant', 'motor.resistance'].map((id) => read.number(id));
      if (!isServo(read) || !continuous || !constant || !resistance || constant.nominal <= 0 || resistance.nominal <= 0 || continuous.nominal <= 0) return undefined;
      const current = continuous.nominal / constant.nominal + (read.number('motor.no-load-current')?.nominal ?? 0);
      // As `motor.copper-loss`: R between two terminals, amperes as the torque constant counts them.
      const phases = read.choice('motor.kind') !== 'brushless' ? 1 : read.choice('motor.torque-constant-as') === 'peak' ? 0.75 : 1.5;
      const bound = (rise: number): number => rise / (phases * current ** 2 * resistance.nominal * (1 + COPPER_TEMPERATURE_COEFFICIENT * rise));
      return {
        value: { type: 'number', ...between(bound(CLASS_B_RISE) / 2, bound(CLASS_B_RISE), bound(CLASS_F_RISE)), unit: 'K/W' },
        source: 'from the sheet: the continuous torque heats the winding by 80 K (IEC 60034-1, class B), up to 105 K (class F); half of it on a metal plate',
        weak: true,
      };
    },
  },
);
