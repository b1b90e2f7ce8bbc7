/** A share such as `10 %`, `10%` or `0.1`; undefined where none is given. */
export function marginLossOf(text: string | undefined): number | 'unreadable' | undefined {
  if (text === undefined) return undefined;
  const [, number, percent] = /^\s*(\d+(?:\.\d+)?)\s*(%?)\s*$/.exec(text) ?? [];
  if (number === undefined) return 'unreadable';
  const share = Number(number) / (percent === '%' ? 100 : 1);
  // A bare 10 is a slip for 10 %: ten times the limit would allow everything.
  return percent === '' && share > 1 ? 'unreadable' : share;
}

/** What follows the options in `axiswright compare --help`. */
export const compareHelp = `Two descriptions, or two revisions of them:
  axiswright compare OLD NEW                    two files
  axiswright compare HEAD~3:lift.machine.yaml lift.machine.yaml
  axiswright compare --since main [PATHS]       the files as they are now
  axiswright compare --since HEAD --staged      what is about to be committed
Revisions are read through git; nothing is checked out. Part lists are read at
the same revision. A path begins at the top of the repository, or with "./" here.

The margin is what is left up to a limit, in points of per cent of that limit.
A deviation that the description accepts does not count as worse.

Exit status:
  0  nothing got worse than allowed (--fail-on, --margin-loss)
  1  something did: the first lines say what
  2  could not run: a wrong option, no such revision, a file that cannot be read,
     or a fault of the tool`;
