import { check } from '../check.ts';
import { followsItsLoad } from '../motor-kinds.ts';

/** Temperature that common insulation stands, K. */
const CLASS_B = 403.15;

export default check({
  id: 'motor-case-hot',
  title: 'Motor case is hot',
  summary: 'At the set current, or under the mean torque of its duty, the case of the motor settles above 60 °C.',
  place: ({ choice }) => (followsItsLoad(choice) ? 'motion.duty' : 'drive.current-setting'),
  figure: 'motor.case-temperature',
  bad: 'above',
  limits: [{ at: 333.15, severity: 'information', basis: 'common practice', source: { title: 'metal above about 60 °C burns on touch (compare ISO 13732-1)', weak: true } }],
  // The finding about the winding says it all, and more.
  when: ({ bounds }) => (bounds('motor.winding-temperature')?.nominal ?? 0) <= CLASS_B,
  cautions: ['hot-surface'],
  because: ['drive.current-setting-as', 'motor.thermal-resistance', 'motor.resistance'],
  message: ({ show, choice }) => {
    const burns = 'it burns on touch and softens plastic brackets';
    return followsItsLoad(choice)
      ? `Motor case may settle at ${show('motor.case-temperature', 'high')} under ${show('motor.rms-torque', 'high')} in the mean (root mean square): ${burns}. Rest more, ease the ramps, or mount it on metal.`
      : `Motor case may settle at ${show('motor.case-temperature', 'high')} if ${show('motor.rms-current', 'high')} rms stays on: ${burns}. Lower the current, or mount it on metal.`;
  },
});
