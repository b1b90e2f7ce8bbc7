import { check, timesOf } from '../check.ts';

export default check({
  id: 'motor-shaft-bent-by-belt',
  title: 'Belt pulls too hard across the motor shaft',
  summary: 'Both spans together pull harder across the shaft of the motor than it bears where the pulley sits.',
  place: 'belt.tension',
  figure: 'motor.radial-load-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'common practice', source: { title: 'radial limit of the motor, carried over by its lever', weak: true } }],
  // A limit that is only assumed is asked for.
  milder: ({ isDefault }) => isDefault('motor.radial-load-limit'),
  because: ['belt.tension', 'motor.radial-load-limit', 'pulley.overhang', 'motor.radial-load-distance'],
  message: ({ show, worst, certain, isDefault }) =>
    `Belt ${certain ? 'pulls' : 'may pull'} across the motor shaft with ${show('motor.radial-load', 'high')}, ${timesOf(worst)} the ${show('motor.radial-limit', 'low')} it bears there: bearing and shaft wear. Slacken the belt, set the pulley closer, or give its shaft an outer bearing${isDefault('motor.radial-load-limit') ? ' (limit assumed)' : ''}.`,
});
