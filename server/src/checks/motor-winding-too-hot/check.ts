import { check } from '../check.ts';

export default check({
  id: 'motor-winding-too-hot',
  title: 'Winding hotter than its insulation stands',
  summary: 'At the set current the winding settles above 130 °C.',
  place: 'drive.current-setting',
  figure: 'motor.winding-temperature',
  bad: 'above',
  limits: [{ at: 403.15, severity: 'warning', basis: 'standard', source: { title: 'IEC 60034-1', where: 'insulation class B, 130 °C', weak: true } }],
  // A current above the rating is the cause, and has its finding.
  when: ({ bounds }) => (bounds('motor.current-use')?.nominal ?? 0) <= 1,
  because: ['drive.current-setting-as', 'motor.thermal-resistance', 'motor.resistance', 'conditions.ambient-temperature'],
  message: ({ show, certain }) =>
    `Winding ${certain ? 'settles' : 'may settle'} at ${show('motor.winding-temperature', 'high')} if ${show('motor.rms-current', 'high')} rms stays on, above the 130 °C of common insulation: it fails early. Lower the current, or cool the motor on a metal plate.`,
});
