import { check, percent } from '../check.ts';
import { cut } from '../support-words.ts';

/** "0.4 mm up at screw 1 and down at screw 3" as the two names. */
function pairIn(note: string | undefined): string {
  const [, up, down] = / up at (.+) and down at (.+)$/.exec(note ?? '') ?? [];
  return up === undefined || down === undefined ? 'one lift and another' : `${cut(up)} and ${cut(down)}`;
}

export default check({
  id: 'levelling-out-of-range',
  title: 'Tilt is out of the range of the lifts',
  summary: 'To take the measured tilt away, the lifts have to go farther than they can.',
  place: 'levelling.range',
  figure: 'levelling.range-use',
  bad: 'above',
  limits: [{ at: 1, severity: 'warning', basis: 'follows from the mechanics', source: { title: 'geometry' } }],
  because: ['levelling.measured-heights', 'levelling.lift-places'],
  message: ({ show, note, worst, certain }) =>
    `Levelling it ${certain ? 'takes' : 'may take'} ${percent(worst)} of the ${show('levelling.range', 'low')} that a lift can go: between ${pairIn(note('levelling.range-use'))} the range ends before it is level. Mend the coarse tilt where lifts or nuts are fastened, or give the lifts more way.`,
});
