import { check } from '../check.ts';
import { followsItsLoad } from '../motor-kinds.ts';

export default check({
  id: 'motor-winding-too-hot',
  title: 'Winding hotter than its insulation stands',
  summary: 'At the set current, or under the mean torque of its duty, the winding settles above 130 °C.',
  place: ({ choice }) => (followsItsLoad(choice) ? 'motion.duty' : 'drive.current-setting'),
  figure: 'motor.winding-temperature',
  bad: 'above',
  limits: [{ at: 403.15, severity: 'warning', basis: 'standard', source: { title: 'IEC 60034-1', where: 'insulation class B, 130 °C', weak: true } }],
  // A current or a mean torque above the rating is the cause, and has its finding.
  when: ({ bounds }) => (bounds('motor.current-use')?.nominal ?? 0) <= 1 && (bounds('motor.rms-torque-use')?.high ?? 0) <= 1,
  because: ['drive.current-setting-as', 'motor.thermal-resistance', 'motor.resistance', 'conditions.ambient-temperature'],
  message: ({ show, choice, certain }) => {
    const settles = `Winding ${certain ? 'settles' : 'may settle'} at ${show('motor.winding-temperature', 'high')}`;
    return followsItsLoad(choice)
      ? `${settles} under ${show('motor.rms-torque', 'high')} in the mean (root mean square), above the 130 °C of common insulation: it fails early. Rest more, ease the ramps, or cool the motor on a metal plate.`
      : `${settles} if ${show('motor.rms-current', 'high')} rms stays on, above the 130 °C of common insulation: it fails early. Lower the current, or cool the motor on a metal plate.`;
  },
});
