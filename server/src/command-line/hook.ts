/** What follows the options in `axiswright staged --help`. */
export const stagedHelp = `Compares what is staged with HEAD, part lists and settings included; what is on
the disk does not count. Says nothing where nothing got worse, else three lines:
what, why, and what to do. A deviation that the description accepts is not worse.
In a description that HEAD does not have, only errors are refused.

Exit status:
  0  nothing got worse than allowed (--fail-on, --margin-loss)
  1  something did
  2  could not run: a wrong option, no repository, a file that cannot be read, or a
     fault of the tool`;

/** What follows the options in `axiswright hook --help`. */
export const hookHelp = `To refuse commits that make a machine worse:
  axiswright hook > .git/hooks/pre-commit
  chmod +x .git/hooks/pre-commit`;

/** What `axiswright hook` prints: a hook that git runs before each commit. */
export const preCommitHook = `#!/bin/sh
# Refuses a commit that makes a machine worse. Printed by: axiswright hook
# It looks at what is staged, not at what is on the disk.
# To commit all the same: record under "accepted" why the deviation may stay.
program=axiswright
command -v "$program" >/dev/null 2>&1 || program=./node_modules/.bin/axiswright
if ! command -v "$program" >/dev/null 2>&1; then
  echo "axiswright is not on the path, so what is staged was not compared." >&2
  echo "Put it there, or pass the hook over for once: git commit --no-verify" >&2
  exit 1
fi
exec "$program" staged
`;
