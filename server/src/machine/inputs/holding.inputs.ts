import { fallbacks } from '../input.ts';
import { between } from '../values.ts';

/** How far the force of a kind of counterbalance may be off what is written, and how much of it a full travel changes, where no rate is written. From memory. */
const USUAL: Readonly<Record<string, { readonly spread: number; readonly swing: readonly [low: number, nominal: number, high: number]; readonly source: string }>> = {
  weight: { spread: 0, swing: [0, 0, 0], source: 'a weight pulls the same everywhere' },
  'constant-force-spring': { spread: 0.1, swing: [0, 0, 0], source: 'a rolled strip spring pulls nearly the same everywhere, within 10 % of what it is sold for; from memory' },
  spring: { spread: 0, swing: [0, 0.2, 0.5], source: 'a coil spring changes its force by up to half over the travel; from memory' },
  'gas-spring': { spread: 0.15, swing: [0.1, 0.25, 0.5], source: 'a gas spring changes its force by a tenth to a half over the travel; from memory' },
};

export default fallbacks(
  { input: 'brake.holding-torque', symbol: 'T_b' },
  { input: 'brake.holding-force', symbol: 'F_b' },
  {
    input: 'brake.at',
    // At the shaft it counts once, at the motor by the ratio: the smaller of the two for every ordinary reduction.
    handbook: (read) => {
      if (read.isWritten('brake.holding-force') && !read.isWritten('brake.holding-torque')) return { value: { type: 'choice', text: 'rail' }, source: 'taken to grip the rail, since a force is written and no torque' };
      const screw = read.choice('drive.transmission') === 'screw';
      return { value: { type: 'choice', text: screw ? 'screw' : 'shaft' }, source: `taken to sit on the ${screw ? 'screw' : 'shaft'}, the cautious side, since nothing else is written` };
    },
  },
  { input: 'counterbalance.force', symbol: 'F_c,m' },
  {
    input: 'counterbalance.rate',
    symbol: 'c_c',
    handbook: (read) => {
      const usual = USUAL[read.choice('counterbalance.kind') ?? ''];
      const [force, travel] = [read.number('counterbalance.force'), read.number('axis.travel')];
      if (!usual || !force || !travel || !(travel.nominal > 0)) return undefined;
      const [low, nominal, high] = usual.swing.map((share) => (share * Math.max(0, force.nominal)) / travel.nominal) as [number, number, number];
      return { value: { type: 'number', ...between(low, nominal, high), unit: 'N/mm' }, source: usual.source, weak: high > 0 };
    },
  },
  {
    input: 'counterbalance.carried-force',
    title: 'Force of the counterbalance over the travel',
    symbol: 'F_c',
    quantity: 'force',
    compose: (read) => {
      const force = read.number('counterbalance.force');
      const origin = read.origin('counterbalance.force');
      if (!force || !origin) return undefined;
      // A spring pulls less where it is shorter: over the travel its force runs through a range, whose ends both have to do. A slack one does not push.
      const half = ((read.number('counterbalance.rate')?.high ?? 0) * (read.number('axis.travel')?.high ?? 0)) / 2;
      const spread = USUAL[read.choice('counterbalance.kind') ?? '']?.spread ?? 0;
      const low = Math.min(force.nominal, Math.max(0, force.low * (1 - spread) - half));
      return { value: { type: 'number', ...between(low, force.nominal, force.high * (1 + spread) + half), unit: 'N' }, origin };
    },
  },
  { input: 'counterbalance.mass', symbol: 'm_c' },
  { input: 'axis.travel', symbol: 'h' },
);
