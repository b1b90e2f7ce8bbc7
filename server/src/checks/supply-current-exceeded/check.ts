import { check, sideBySide, timesOf } from '../check.ts';

export default check({
  id: 'supply-current-exceeded',
  title: 'Supply too small for this axis',
  summary: 'The motors of one axis alone take more than their supply gives.',
  place: 'drive.supply',
  figure: 'drive.supply-use',
  bad: 'above',
  limits: [
    { at: 1, severity: 'error', basis: 'follows from the mechanics' },
    { at: 0.8, severity: 'warning', basis: 'our threshold' },
  ],
  because: ['supply.current', 'supply.voltage', 'drive.current-setting', 'axis.moved-mass'],
  message: ({ bounds, worst, certain }) => {
    const [asked, gives] = sideBySide(bounds('drive.supply-current')?.high ?? 0, bounds('supply.current')?.low ?? 0, 'current');
    return `Axis ${certain ? 'takes' : 'may take'} ${timesOf(worst)} what its supply gives (${asked} of ${gives}): ${worst > 1 ? 'the voltage sags while it speeds up, and torque with it' : 'little is left for anything else'}. Other loads are not counted. Take a larger supply or a gentler move.`;
  },
});
