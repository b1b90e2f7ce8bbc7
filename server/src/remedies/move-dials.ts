import { entryDial, type Dial } from './entry-proposals.ts';
import type { RemedyContext } from './remedy.ts';

/** Slower than this share of the present value is no cure but another machine. */
const SLOWEST = 0.05;

const dialDown = (context: RemedyContext, input: string, say: (written: string) => string): Dial | undefined =>
  entryDial(context, { input, towards: SLOWEST * (context.before.bounds(input)?.nominal ?? 0), say, cost: 1 });

export const speedDial = (context: RemedyContext): Dial | undefined => dialDown(context, 'motion.speed', (written) => `Slow the axis to ${written}`);

export const rampDial = (context: RemedyContext): Dial | undefined => dialDown(context, 'motion.acceleration', (written) => `Ease the ramp to ${written}`);

/** Both together, said in few words since more goes with it. */
export function moveDial(context: RemedyContext): Dial | undefined {
  const [speed, ramp] = [speedDial(context), rampDial(context)];
  if (!speed || !ramp) return undefined;
  return {
    inputs: (share) => ({ ...speed.inputs(share), ...ramp.inputs(share) }),
    write: (share) => {
      const [slower, gentler] = [speed.write(share), ramp.write(share)];
      const texts = [slower, gentler].flatMap((written) => written?.changes.flatMap(({ value }) => (typeof value === 'string' ? [value] : [])) ?? []);
      return slower && gentler && { inputs: { ...slower.inputs, ...gentler.inputs }, changes: [...slower.changes, ...gentler.changes], what: `Move at ${texts.join(' and ')}`, cost: slower.cost + gentler.cost };
    },
  };
}
