/** What follows the options in `axiswright record --help`. */
export const recordHelp = `A record depends on the description, its part lists and this tool's version, on
nothing else: commit it, and a review shows what a change did to every figure.
A record that is current is not touched; another is replaced in one step.
Standard input ("-") is always printed.

Exit status:
  0  all records are written or current
  1  with --check: at least one record is missing or not current
  2  could not run: a wrong option, a path or pattern that matches nothing, a
     file that cannot be read or written, or a fault of the tool`;
