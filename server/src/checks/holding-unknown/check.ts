import { check, type Facts } from '../check.ts';
import { transmission } from '../unpowered.ts';

/** What has to be written before the verdict can be given. */
function lacking(facts: Facts): string {
  const kind = transmission(facts);
  if (kind === 'belt') return 'the profile of the belt and the teeth of its pulley';
  if (kind === 'rack') return 'the module of the rack and the teeth of its pinion';
  if (facts.bounds('screw.lead') === undefined || facts.bounds('screw.pitch-diameter') === undefined) return 'the size of the screw';
  return facts.bounds('nut.friction') === undefined ? 'the material and lubrication of the nut' : 'what holds the load';
}

export default check({
  id: 'holding-unknown',
  title: 'Not known whether the axis holds with power off',
  summary: 'A load hangs on the drive, and too little is described to tell whether it stays up without power.',
  place: (facts) => {
    const kind = transmission(facts);
    return kind !== 'screw' ? kind : lacking(facts).startsWith('the size') ? 'screw' : 'nut';
  },
  concernsPeople: true,
  cautions: ['gravity-load'],
  basis: 'follows from the mechanics',
  figure: 'drive.holding-verdict',
  sources: [{ title: 'Budynas and Nisbett, Shigley’s Mechanical Engineering Design', where: 'section 8-2, self-locking condition' }],
  because: ['axis.moved-mass', 'axis.direction'],
  when: (facts) => facts.isPresent(transmission(facts)) && facts.choice('axis.catcher') !== 'latch',
  judge: (facts) => {
    const load = facts.bounds('drive.gravity-load');
    if (!load || (load.low === 0 && load.high === 0)) return undefined;
    return facts.bounds('drive.holding-verdict') === undefined ? 'information' : undefined;
  },
  message: (facts) =>
    `Whether the ${facts.show('drive.gravity-load')} on each ${transmission(facts) === 'screw' ? 'screw' : 'drive'} stays up with power off cannot be told yet: write ${lacking(facts)}. Until then take it that the axis can drop.`,
});
