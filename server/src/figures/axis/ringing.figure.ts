import { accelerationPulse, jerkOfOnePeriod, lagUnderAcceleration, mostRinging, ringingAmplitude } from '../../mechanics/ringing.ts';
import { figure, unable } from '../figure.ts';
import { beltAxisChoices, beltAxisMaybe, beltAxisNeeds, beltAxisOf, beltAxisOptions, lagAt } from './belt-axis.ts';

const belts = { 'drive.transmission': ['belt'] } as const;
const others = { 'drive.transmission': ['screw', 'rack'] } as const;
const motion = { speed: 'motion.speed', acceleration: 'motion.acceleration' } as const;
const pulses = { title: 'a mass on a spring after a pulse; Chopra, Dynamics of Structures', where: 'chapter 4', weak: true } as const;
const lag = { title: 'Lag under acceleration', symbol: 'δ_a', quantity: 'length' } as const;

/** Highest acceleration of a ramp, which a low limit of jerk may keep below what is set. */
const reached = (speed: number, acceleration: number, jerk: number | undefined): number => accelerationPulse(speed, acceleration, jerk).acceleration;

/** The part of a ramp that decides how much it excites, and how long it lasts: the rise where jerk is limited, else the whole ramp. */
const decisive = (speed: number, acceleration: number, jerk: number | undefined): { readonly time: number; readonly name: string } => {
  const { rise, length } = accelerationPulse(speed, acceleration, jerk);
  return rise > 0 ? { time: rise, name: 'rise of the acceleration' } : { time: length, name: 'ramp; its acceleration comes at once, since no jerk is set' };
};

const isMoving = (speed: number, acceleration: number): boolean => speed > 0 && acceleration > 0;
const atRest = 'without speed and acceleration there is no ramp';

export default [
  figure({
    ...lag,
    id: 'axis.acceleration-error',
    onlyWhere: others,
    meaning: 'How far the load stays behind its commanded place while it speeds up, and runs ahead while it brakes. Friction and process force come on top.',
    needs: { ...motion, resonance: 'axis.resonance' },
    optional: { jerk: 'motion.jerk' },
    compute: ({ speed, acceleration, jerk, resonance }) =>
      (isMoving(speed, acceleration) ? lagUnderAcceleration(reached(speed, acceleration, jerk), 2 * Math.PI * resonance) : unable(atRest)),
    formula: 'δ_a = a/(2π f₁)²',
    sources: [{ title: 'F = m a on a spring' }],
    rank: 3,
  }),
  figure({
    ...lag,
    id: 'axis.acceleration-error',
    onlyWhere: belts,
    meaning: 'How far the carriage stays behind its commanded place while it speeds up, and runs ahead while it brakes, where in the travel that is most. Friction comes on top.',
    needs: { ...motion, ...beltAxisNeeds },
    optional: { jerk: 'motion.jerk', ...beltAxisOptions },
    choices: beltAxisChoices,
    optionalChoices: beltAxisMaybe,
    compute: ({ speed, acceleration, jerk, ...values }) => {
      if (!isMoving(speed, acceleration)) return unable(atRest);
      const inUse = beltAxisOf(values);
      return typeof inUse === 'string' ? unable(inUse) : lagAt(inUse, inUse.softest) * reached(speed, acceleration, jerk);
    },
    formula: 'δ_a = a [(m q_F + J_p/r²)/k_x + …], each spring under all masses beyond it',
    sources: [{ title: 'F = m a on springs in a row' }],
    rank: 2,
    chart: {
      title: 'Position error under acceleration over the travel',
      alt: ({ speed, acceleration, jerk, ...values }) => {
        const inUse = beltAxisOf(values);
        if (typeof inUse === 'string') return inUse;
        const most = lagAt(inUse, inUse.softest) * reached(speed, acceleration, jerk);
        return `Lag of the carriage over the travel, ${micro(most)} at most where the belt is softest.`;
      },
      x: {
        title: 'Position in the travel', quantity: 'length', unit: 'mm', from: () => 0,
        to: (values) => {
          const inUse = beltAxisOf(values);
          return typeof inUse === 'string' ? 1 : inUse.to - inUse.from;
        },
      },
      y: { title: 'Lag', quantity: 'length', unit: 'µm' },
      curves: [{
        title: 'while speeding up',
        y: (x, { speed, acceleration, jerk, ...values }) => {
          const inUse = beltAxisOf(values);
          return typeof inUse === 'string' || !isMoving(speed, acceleration) ? Number.NaN : lagAt(inUse, inUse.from + x) * reached(speed, acceleration, jerk);
        },
      }],
      points: [{
        title: 'largest',
        x: (values) => {
          const inUse = beltAxisOf(values);
          return typeof inUse === 'string' ? Number.NaN : inUse.softest - inUse.from;
        },
        y: ({ speed, acceleration, jerk, ...values }) => {
          const inUse = beltAxisOf(values);
          return typeof inUse === 'string' || !isMoving(speed, acceleration) ? Number.NaN : lagAt(inUse, inUse.softest) * reached(speed, acceleration, jerk);
        },
      }],
    },
  }),
  figure({
    id: 'axis.acceleration-use',
    title: 'Lag under acceleration over the accuracy wanted',
    symbol: 'δ_a/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'How much of the accuracy wanted the lag while speeding up and braking takes; half of it is common practice.',
    needs: { lag: 'axis.acceleration-error', accuracy: 'axis.accuracy' },
    compute: ({ lag: error, accuracy }) => (accuracy > 0 ? error / accuracy : unable('the accuracy wanted is 0')),
    formula: 'δ_a / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'axis.ringing-amplitude',
    title: 'Ringing after a ramp',
    symbol: 'A_r',
    quantity: 'length',
    meaning: 'Most that the axis can swing about its place when a ramp has ended, however the ramp falls upon the period of the swing.',
    needs: { ...motion, lag: 'axis.acceleration-error', resonance: 'axis.resonance' },
    optional: { jerk: 'motion.jerk' },
    compute: ({ speed, acceleration, jerk, lag: error, resonance }) => {
      if (!isMoving(speed, acceleration)) return unable(atRest);
      const omega = 2 * Math.PI * resonance;
      const pulse = accelerationPulse(speed, acceleration, jerk);
      // The lag of the whole drive stands for a/ω², which is that of one mass on one spring.
      const scale = error / lagUnderAcceleration(pulse.acceleration, omega);
      const exact = ringingAmplitude(pulse, omega) * scale;
      const without = jerk === undefined ? '' : `; with sudden acceleration it would be ${micro(2 * lagUnderAcceleration(acceleration, omega) * scale)}`;
      return { value: mostRinging(pulse, omega) * scale, note: `with exactly this ramp and no damping ${micro(exact)}${without}` };
    },
    formula: 'A_r = 2 δ_a · min(1, 2/(2π f₁ t_j)), t_j = a/j',
    sources: [pulses],
    rank: 2,
  }),
  figure({
    id: 'axis.ringing-use',
    title: 'Ringing over the accuracy wanted',
    symbol: 'A_r/ε',
    quantity: 'ratio',
    unit: '%',
    meaning: 'Ringing after a ramp over the accuracy wanted: above 100 % the first swings leave it.',
    needs: { ringing: 'axis.ringing-amplitude', accuracy: 'axis.accuracy' },
    compute: ({ ringing, accuracy }) => (accuracy > 0 ? ringing / accuracy : unable('the accuracy wanted is 0')),
    formula: 'A_r / ε',
    sources: [{ title: 'definition' }],
    rank: 3,
  }),
  figure({
    id: 'axis.ramp-periods',
    title: 'Ramp in periods of the resonance',
    symbol: 'n_r',
    quantity: 'ratio',
    meaning: 'How many swings of the lowest resonance the rise of the acceleration lasts, or the whole ramp where no jerk is set. Below 1 the ramp is a blow.',
    needs: { ...motion, resonance: 'axis.resonance' },
    optional: { jerk: 'motion.jerk' },
    compute: ({ speed, acceleration, jerk, resonance }) => {
      if (!isMoving(speed, acceleration)) return unable(atRest);
      const { time, name } = decisive(speed, acceleration, jerk);
      return { value: time * resonance, note: `counted: the ${name}` };
    },
    formula: 'n_r = f₁ a/j, or f₁ v/a without a limit of jerk',
    sources: [{ title: 'definition; one period or more is common practice, no published source' }],
    rank: 3,
  }),
  figure({
    id: 'axis.quiet-jerk',
    title: 'Jerk at which it rings little',
    symbol: 'j_1',
    quantity: 'jerk',
    meaning: 'Limit of jerk at which the acceleration rises within one period of the lowest resonance, or more slowly where the ringing would otherwise exceed the accuracy wanted.',
    needs: { ...motion, lag: 'axis.acceleration-error', resonance: 'axis.resonance' },
    optional: { jerk: 'motion.jerk', accuracy: 'axis.accuracy' },
    compute: ({ speed, acceleration, jerk, lag: error, resonance, accuracy }) => {
      if (!isMoving(speed, acceleration)) return unable(atRest);
      const omega = 2 * Math.PI * resonance;
      // A short ramp that no longer reaches its acceleration rises for √(v/j).
      const onePeriod = Math.min(jerkOfOnePeriod(acceleration, omega), speed * resonance ** 2);
      if (accuracy === undefined || !(accuracy > 0)) return onePeriod;
      const lagPerAcceleration = error / reached(speed, acceleration, jerk);
      return Math.min(onePeriod, (accuracy * omega) / (4 * lagPerAcceleration));
    },
    formula: 'j₁ = min(a f₁, v f₁², ε 2π f₁ a / (4 δ_a))',
    sources: [pulses],
    rank: 3,
  }),
];

const micro = (length: number): string => (length < 1e-4 ? `${Number((length * 1e6).toPrecision(2))} µm` : `${Number((length * 1e3).toPrecision(2))} mm`);
