import { check, timesOf } from '../check.ts';
import { countsAsRigid, dragOutweighsForces, jamLimits } from '../jams.ts';

export default check({
  id: 'jam-outpulls-drive',
  title: 'Jam drags more than the drive can spare',
  summary: 'Friction from supports that jam uses up what the drives can push beyond a normal move.',
  place: 'supports',
  figure: 'supports.jam-drag-use',
  bad: 'above',
  limits: jamLimits.drag,
  because: ['axis.support-joints', 'carried-part.temperature', 'guides.friction', 'nut.friction'],
  // What jams is told by its force, unless it is the drive that gives up first.
  when: dragOutweighsForces,
  milder: countsAsRigid,
  message: (facts) => {
    const { show, note, worst, certain } = facts;
    const cause = /growth/.test(note('supports.jam-drag') ?? '') ? 'growth' : 'misalignment';
    const end = worst > 1 ? 'it stops' : 'little is left for dirt and wear';
    const rigid = countsAsRigid(facts) ? ' if all else is rigid' : '';
    return `Supports that jam through ${cause} ${certain ? 'drag' : 'may drag'} with up to ${show('supports.jam-drag', 'high')}${rigid}, ${timesOf(worst)} the force to spare: ${end}. Let a joint float, or line them up more closely.`;
  },
});
