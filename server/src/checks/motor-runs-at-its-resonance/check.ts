import { check } from '../check.ts';

const CLOSE = { low: 0.8, high: 1.2 };

export default check({
  id: 'motor-runs-at-its-resonance',
  title: 'Motor runs at its resonance',
  summary: 'Full steps come about as fast as rotor and load swing on the magnetic spring.',
  place: 'motion.speed',
  figure: 'motor.resonance-closeness',
  basis: 'follows from the mechanics',
  sources: [{ title: 'Acarnley, Stepping Motors', where: 'chapter 4; the band of ± 20 % is our threshold' }],
  judge: ({ bounds }) => {
    const closeness = bounds('motor.resonance-closeness');
    const microsteps = bounds('controller.microsteps')?.nominal ?? 1;
    if (!closeness || microsteps > 4) return undefined;
    if (closeness.high < CLOSE.low || closeness.low > CLOSE.high) return undefined;
    const certain = closeness.nominal >= CLOSE.low && closeness.nominal <= CLOSE.high;
    return certain && microsteps <= 2 ? 'warning' : 'information';
  },
  because: ['controller.microsteps', 'motor.rotor-inertia', 'axis.moved-mass', 'drive.current-setting'],
  message: ({ show }) =>
    `Motor turns at ${show('motor.speed')}, close to its resonance at ${show('motor.resonance-speed')} or half of it (${show('motor.natural-frequency')}): rough running and lost steps. Use 8 microsteps or more, or another speed.`,
});
