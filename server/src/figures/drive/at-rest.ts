import { unable, type Computed } from '../figure.ts';

/** Without a load nothing falls. Where a counterbalance carries just the weight, that holds at one end of what is uncertain only: there the answer is 0, not none. */
export const nothingFalls = (carried: number | undefined): Computed => (carried === undefined ? unable('nothing pulls on the axis at rest, so nothing falls') : 0);

/** What the figures of a fall ask for beside the load, to tell the two apart. */
export const carriedForce = { balance: 'counterbalance.carried-force' } as const;
