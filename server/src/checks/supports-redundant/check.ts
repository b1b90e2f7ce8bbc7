import { check } from '../check.ts';
import { andMore, firstClause } from '../support-words.ts';

/** In motion all joints fight; what only held drives add is a matter of their running alike. */
const which = (redundant: number): string => (redundant > 0 ? 'supports.redundant' : 'supports.redundant-held');

export default check({
  id: 'supports-redundant',
  title: 'Supports fight each other',
  summary: 'Two or more supports hold the same motion of the carried part, so that they fight wherever they do not fit exactly.',
  place: 'supports',
  figure: 'supports.redundant-held',
  basis: 'follows from the mechanics',
  sources: [{ title: 'exact constraint (Blanding, Exact Constraint)' }],
  because: ['axis.support-joints'],
  // A part that is loose elsewhere is told of first; both may hold at once.
  judge: ({ bounds }) => {
    const stiff = bounds('supports.redundant-stiff')?.nominal ?? 0;
    const [running, held] = [bounds('supports.redundant')?.nominal ?? 0, bounds('supports.redundant-held')?.nominal ?? 0];
    if (stiff > 0) return 'warning';
    return running > 0 || held > 0 ? 'information' : undefined;
  },
  message: ({ bounds, choice, note }) => {
    const running = bounds('supports.redundant')?.nominal ?? 0;
    const words = note(which(running));
    const clause = firstClause(words, 100, 'several supports fix the same motion');
    if (running === 0) return `Held more than once: ${clause}${andMore(words)}. Unless the drives run exactly alike, they bind. Let one of them float: another joint there.`;
    // Nuts bolted to one part hold it every way at once: no adjusting makes them agree.
    const everyWay = choice('nut.mounting') === 'rigid' && / all fix .*tilt about/.test(clause) && /shift along/.test(words ?? '');
    if (everyWay) return `Held more than once: ${clause}${andMore(words)}. They fight over place and tilt: it cannot be trued, it squeals and stops. Let all but one float.`;
    return `Held more than once: ${clause}${andMore(words)}. Where they do not fit exactly they bind and wear. Let one hold this and the others float.`;
  },
});
