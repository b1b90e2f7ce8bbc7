import { check, sideBySide, timesOf } from '../check.ts';

export default check({
  id: 'motor-rms-torque-high',
  title: 'Mean torque above the continuous torque',
  summary: 'Over the whole cycle the motor gives more torque than it may give without end.',
  place: 'motion.duty',
  figure: 'motor.rms-torque-use',
  bad: 'above',
  limits: [
    { at: 1.2, severity: 'error', basis: 'our threshold', source: { title: 'heat grows with the square: 1.44 times the rated heat' } },
    { at: 1, severity: 'warning', basis: 'common practice', source: { title: 'the continuous torque written in the description' } },
  ],
  because: ['motor.continuous-torque', 'motion.acceleration', 'axis.moved-mass'],
  message: ({ worst, certain, bounds }) => {
    const [asked, has] = sideBySide(bounds('motor.rms-torque')?.high ?? 0, bounds('motor.continuous-torque')?.low ?? 0, 'torque');
    return `Motor ${certain ? 'gives' : 'may give'} ${asked} in the mean (root mean square), ${timesOf(worst)} its continuous torque of ${has}: its winding overheats. Rest more, ease the ramps, or take a reduction or a larger motor.`;
  },
});
