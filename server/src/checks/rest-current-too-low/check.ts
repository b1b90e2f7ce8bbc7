import { check, sideBySide, timesOf } from '../check.ts';

export default check({
  id: 'rest-current-too-low',
  title: 'Rest current hardly holds the load',
  summary: 'With the current lowered at rest, the motor has too little torque for the load that hangs on it.',
  place: 'drive.rest-current',
  figure: 'motor.rest-factor',
  bad: 'below',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics' },
    { at: 1.5, severity: 'warning', basis: 'common practice', source: { title: 'reserve of a holding motor', weak: true } },
  ],
  concernsPeople: true,
  cautions: ['gravity-load'],
  because: ['axis.moved-mass', 'motor.holding-torque', 'drive.current-setting', 'screw.lead', 'pulley.teeth'],
  message: ({ worst, certain, isDefault, bounds }) => {
    const [has, needs] = sideBySide(bounds('motor.rest-torque')?.low ?? 0, bounds('motor.holding-torque-needed')?.high ?? 0, 'torque');
    const fate = worst >= 1 ? 'a knock can make it fall' : certain ? 'it falls' : 'it may fall';
    return `Motor at rest ${certain ? 'holds' : 'may hold only'} ${timesOf(worst)} the load, where 150 % is usual: ${fate} with power on. It keeps ${has} against ${needs}${
      isDefault('drive.rest-current') ? ' (half current assumed)' : ''
    }. Raise the rest current, or gear the motor down.`;
  },
});
