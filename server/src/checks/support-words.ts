/** Notes of figures of supports, cut to what a message has room for. */

/** The first of several clauses; one that is too long is told by what stands for it. */
export function firstClause(note: string | undefined, most: number, instead: string): string {
  const clause = (note ?? '').split('; ')[0] ?? '';
  if (clause !== '' && clause.length <= most) return clause;
  // Many owners have room when they are not named one by one.
  const [, fixed] = /^.+ all fix (.+)$/.exec(clause) ?? [];
  return fixed !== undefined && fixed.length + ALL_FIX.length <= most ? `${ALL_FIX}${fixed}` : instead;
}

const ALL_FIX = 'several supports all fix ';

/** How many more clauses there are: " (and 3 more)". */
export function andMore(note: string | undefined): string {
  const others = (note ?? '').split('; ').length - 1;
  return others === 0 ? '' : ` (and ${others} more)`;
}

/** A long name is cut, since a message has no room for it. */
export const cut = (name: string): string => (name.length <= 24 ? name : `${name.slice(0, 23)}…`);

/** "on screw 1" as "screw 1". */
export const ownerIn = (note: string | undefined): string => cut(/^on ([^;,]+)/.exec(note ?? '')?.[1] ?? 'one support');

/** "hardest between left rail and right rail; …" as "left rail and right rail". */
export function pairIn(note: string | undefined): string {
  const [, one, other] = /^hardest between (.+?) and (.+?);/.exec(note ?? '') ?? [];
  return one === undefined || other === undefined ? 'supports' : `${cut(one)} and ${cut(other)}`;
}

/** Room for the case in which it happens; names are cut, but places are not. */
const CASE_ROOM = 66;

/** "on screw 3, with parts at 320, 60 mm, accelerating upwards; …" as " with parts at 320, 60 mm, accelerating upwards"; empty where the note tells no case. */
export function caseIn(note: string | undefined): string {
  const [first = ''] = (note ?? '').split('; ');
  const [, found] = /^on [^;,]+, (.+)$/.exec(first) ?? [];
  if (found === undefined) return '';
  return found.length <= CASE_ROOM ? ` ${found}` : ' at the worst place of what it carries';
}
