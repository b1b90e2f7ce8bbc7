import { fallbacks } from '../input.ts';

export default fallbacks({
  input: 'motor.kind',
  // A motor that is not described yet is taken for the usual one, so that a person is told what that needs.
  handbook: () => ({ value: { type: 'choice', text: 'stepper' }, source: 'a stepper, since no motor is described' }),
});
