import { check, factor, quantityText, timesOf, type Facts } from '../check.ts';

interface Doubt {
  readonly about: string;
  readonly text: string;
  /** How many times beyond the usual band. */
  readonly beyond: number;
}

const BAND = { torquePerInertia: [2e4, 12e4], timeConstant: [1e-3, 10e-3], ratedVoltage: [1.5, 6] } as const;

function doubt(about: string, value: number | undefined, [low, high]: readonly [number, number], text: (value: number) => string): Doubt | undefined {
  if (value === undefined || (value >= low && value <= high)) return undefined;
  return { about, text: text(value), beyond: value > high ? value / high : low / value };
}

/** What lies farthest outside the bands of ordinary motors. */
function worstDoubt({ bounds, isDefault }: Facts): Doubt | undefined {
  const at = (id: string): number | undefined => (isDefault(id) ? undefined : bounds(id)?.nominal);
  const of = (a: string, b: string, combine: (x: number, y: number) => number): number | undefined => {
    const [x, y] = [at(a), at(b)];
    return x === undefined || y === undefined ? undefined : combine(x, y);
  };
  const doubts = [
    doubt('motor.holding-torque', of('motor.holding-torque', 'motor.rotor-inertia', (t, j) => t / j), BAND.torquePerInertia, () => 'holding torque and rotor inertia do not go together'),
    doubt('motor.inductance', of('motor.inductance', 'motor.resistance', (l, r) => l / r), BAND.timeConstant, (v) => `inductance over resistance is ${quantityText(v, 'time', 'ms')}, usually 1 ms to 10 ms`),
    doubt('motor.resistance', of('motor.current', 'motor.resistance', (i, r) => i * r), BAND.ratedVoltage, (v) => `current times resistance is ${quantityText(v, 'voltage', 'V')}, usually 1.5 V to 6 V`),
    doubt('motor.detent-torque', of('motor.detent-torque', 'motor.holding-torque', (d, h) => d / h), [0.005, 0.25], (v) => `detent torque is ${timesOf(v)} holding torque, usually 3 % to 10 %`),
  ].filter((one) => one !== undefined);
  return doubts.sort((a, b) => b.beyond - a.beyond)[0];
}

export default check({
  id: 'motor-data-implausible',
  title: 'Motor data look unusual',
  summary: 'Two entries of the motor do not go together as in ordinary stepping motors; often a slip in a unit.',
  place: (facts) => worstDoubt(facts)?.about ?? 'motor',
  basis: 'our threshold',
  sources: [{ title: 'bands around four sheets, widened; from memory', weak: true }],
  judge: (facts) => {
    // The bands are those of stepping motors.
    if (facts.choice('motor.kind') !== 'stepper') return undefined;
    const worst = worstDoubt(facts);
    return worst && (worst.beyond > 3 ? 'warning' : 'information');
  },
  because: ['motor.holding-torque', 'motor.rotor-inertia', 'motor.resistance', 'motor.inductance'],
  message: (facts) => {
    const worst = worstDoubt(facts);
    return `Motor data look unusual: ${worst?.text ?? ''}, ${factor(worst?.beyond ?? 1)} beyond the usual band. Is a unit or a prefix off (kgf·cm, ozf·in, µH)? Everything about torque and speed rests on them.`;
  },
});
