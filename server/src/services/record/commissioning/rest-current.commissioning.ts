import { percent } from '../../../checks/check.ts';
import { commissioning } from '../commissioning.ts';

export default commissioning({
  id: 'rest-current',
  title: 'Share of the current at rest',
  order: 31,
  when: (view) => view.choice('motor.kind') === 'stepper',
  shows: ['drive.rest-current'],
  note: (view) => {
    const factor = view.bounds('motor.rest-factor');
    const held = factor === undefined ? undefined : `the motor then holds at least ${percent(factor.low)} of the load at rest`;
    return [view.isDefault('drive.rest-current') ? 'assumed' : undefined, held].filter((part) => part !== undefined).join('; ') || undefined;
  },
  caution: 'A motor under current is no safety device: the load is free as soon as the power goes.',
});
