import { check } from '../check.ts';

export default check({
  id: 'current-setting-not-told',
  title: 'Current setting: peak or root mean square?',
  summary: 'The description does not say what the current setting means; torque differs by 1.41 and heat by 2.',
  place: 'drive.current-setting',
  figure: 'motor.peak-current',
  basis: 'follows from the mechanics',
  sources: [{ title: 'peak and root mean square of a sine' }],
  judge: ({ choice, bounds }) => (choice('drive.current-setting-as') === undefined && bounds('motor.peak-current') !== undefined ? 'information' : undefined),
  because: ['motor.current'],
  message: ({ show, isDefault }) =>
    `${isDefault('drive.current-setting') ? `Current is taken as the rated ${show('drive.current-setting')}, since no setting is given,` : `Current setting of ${show('drive.current-setting')} does not say`} ${
      isDefault('drive.current-setting') ? 'and may be' : 'whether it is'
    } peak or rms: torque differs by 1.41 and heat by 2. Both are reckoned with. Write current-setting-as: peak or rms.`,
});
