import type { Facts } from './check.ts';

/** Motors whose current follows their torque, and whose position is always fed back. */
export const followsItsLoad = (choice: Facts['choice']): boolean => ['dc-motor', 'brushless'].includes(choice('motor.kind') ?? '');

/** Whether someone notices when the motor does not follow. */
export const hasFeedback = (choice: Facts['choice']): boolean => followsItsLoad(choice) || choice('motor.feedback') === 'encoder';

/** Whether the motor is asked for more than the peak torque of its maker, or more current than its amplifier has: findings of their own say so. */
export const namesItsOwnLimit = (bounds: Facts['bounds']): boolean =>
  (bounds('motor.peak-torque-use')?.high ?? 0) > 1 || (bounds('motor.amplifier-use')?.high ?? 0) > 1;
