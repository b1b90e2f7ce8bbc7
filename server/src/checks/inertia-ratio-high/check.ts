import { check } from '../check.ts';
import { multipleBeside } from '../multiples.ts';

export default check({
  id: 'inertia-ratio-high',
  title: 'Load inertia large for the rotor',
  summary: 'The inertia that the motor moves is many times that of its rotor.',
  place: 'drive.motor',
  figure: 'motor.inertia-ratio',
  bad: 'above',
  limits: [
    { at: 10, severity: 'warning', basis: 'common practice', source: { title: 'makers of stepping motors recommend no more than 10', weak: true } },
    { at: 5, severity: 'information', basis: 'common practice', source: { title: 'brisk moves ask for 1 to 5', weak: true } },
  ],
  // A rotor that is only guessed from its size may well be twice as large.
  milder: ({ isDefault }) => isDefault('motor.rotor-inertia'),
  because: ['axis.moved-mass', 'screw.lead', 'pulley.teeth', 'motor.rotor-inertia'],
  message: ({ show, worst, limit, certain, isDefault }) =>
    `Motor ${certain ? 'moves' : 'may move'} ${multipleBeside(worst, limit)} the inertia of its rotor (${show('motor.reflected-inertia', 'high')} against ${
      isDefault('motor.rotor-inertia') ? 'an assumed ' : ''
    }${show('motor.rotor-inertia', 'low')}): it swings after every change of speed. A reduction, less travel per turn or a larger rotor damps it.`,
});
