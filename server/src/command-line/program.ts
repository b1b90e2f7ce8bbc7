import { Argument, Command, CommanderError, Option } from 'commander';
import { version } from '../../../package.json';
import { runCheck } from './check-command.ts';
import { withCheckOptions, type CheckOptions } from './check-options.ts';
import { runCompare, type CompareOptions } from './compare-command.ts';
import { compareHelp } from './compare-options.ts';
import { exitStatus, exitStatusTable, thresholds, thresholdTable, type ExitStatus } from './exit-status.ts';
import { runFigures, type FiguresOptions } from './figures-command.ts';
import { hookHelp, preCommitHook, stagedHelp } from './hook.ts';
import type { Host } from './host.ts';
import { runRecord, type RecordCommandOptions } from './record-command.ts';
import { recordHelp } from './record-help.ts';
import { runStaged, type StagedOptions } from './staged-command.ts';

const pathsHelp = `Paths:
  a file, a folder (searched for *.machine.yaml and *.parts.yaml, except in
  node_modules, .git and dist), or a pattern: * ? [abc] ** {one,two}; quote it,
  so that it means the same in every shell. "-" is standard input.
  Folders and patterns leave out what .gitignore, .axiswrightignore or the
  settings name; a file that you name yourself is always read.
  Part lists are read inside the current folder and the folders given only.`;

const findingHelp = `Below a finding:
  line N:   an entry that the number comes from, or the value assumed for it
  caution:  what can hurt someone
  fix:      a change that was carried out in memory and checked. The editor makes
            it for you (light bulb); here it tells you what to write
  The word after the severity is its code; each has a page in the reference,
  server/docs/checks/CODE.md, and every key is in server/docs/keys.md.`;

/** Runs the command line and returns the exit status. */
export async function runProgram(args: readonly string[], host: Host): Promise<ExitStatus> {
  let status: ExitStatus = exitStatus.passed;
  const paths = (): Argument => new Argument('[paths...]', 'what to read; the current folder when left out');
  const shared = (command: Command): Command =>
    command
      .addArgument(paths())
      .option('--as <path>', 'the path that standard input is taken to have')
      .option('--allow-none', 'a folder or pattern may match nothing')
      .option('--no-ignore', 'take in what ignore files name')
      .addOption(new Option('--color <when>', 'colour the output').choices(['auto', 'always', 'never']).default('auto'))
      .addHelpText('after', `\n${pathsHelp}`);

  const program = new Command('axiswright')
    .description('Checks the drives of machines with moving axes, from their descriptions.')
    .version(version)
    .configureOutput({ writeOut: host.print, writeErr: host.complain })
    .exitOverride()
    .showSuggestionAfterError()
    .addHelpText('after', `\n${exitStatusTable}\n\nFor the options of a command: axiswright COMMAND --help`);

  withCheckOptions(shared(program.command('check').description('find what cannot work, is dangerous, or could be better')))
    .addHelpText('after', `\n${findingHelp}\n\n${thresholdTable}\n\n${exitStatusTable}`)
    .action(async (given: string[], options: CheckOptions) => {
      status = await runCheck(given, options, host);
    });

  shared(program.command('figures').description('show all computed figures with their limits and derivation'))
    .addOption(new Option('--format <format>', 'for people, or JSON').choices(['human', 'json']).default('human'))
    .option('--figure <id>', 'show one figure with its whole derivation')
    .option('--all', 'include figures that are not computable, with what they lack')
    .addHelpText('after', `\n${exitStatusTable.replace(/ {2}1 .*\n/, '  1  not used by this command\n').replace('nothing at or above the threshold (--fail-on)', 'figures were computed, whatever they say')}`)
    .action(async (given: string[], options: FiguresOptions) => {
      status = await runFigures(given, options, host);
    });

  shared(program.command('record').description('write the design record, NAME.record.md, beside each NAME.machine.yaml'))
    .option('--check', 'write nothing; exit status 1 when a record is not current')
    .option('--stdout', 'print the records instead of writing them')
    .addHelpText('after', `\n${recordHelp}`)
    .action(async (given: string[], options: RecordCommandOptions) => {
      status = await runRecord(given, options, host);
    });

  program.command('compare').description('show what a change did to every figure, finding and price')
    .addArgument(new Argument('[paths...]', 'OLD and NEW; with --since, what to compare, the current folder when left out'))
    .option('--since <revision>', 'compare with a commit, branch or tag')
    .option('--staged', 'with --since: what is staged, not what is on the disk')
    .addOption(new Option('--fail-on <severity>', 'new findings as grave as this give exit status 1').choices(thresholds).default('warning'))
    .option('--margin-loss <share>', 'more margin lost than this, such as "10 %", gives exit status 1; any when left out')
    .addOption(new Option('--format <format>', 'for people, JSON, or a review comment').choices(['human', 'json', 'markdown']).default('human'))
    .option('--all', 'show every changed figure')
    .option('--allow-none', 'a folder or pattern may match nothing')
    .addOption(new Option('--color <when>', 'colour the output').choices(['auto', 'always', 'never']).default('auto'))
    .addHelpText('after', `\n${compareHelp}`)
    .action(async (given: string[], options: CompareOptions) => {
      status = await runCompare(given, options, host);
    });

  program.command('staged').description('refuse what is staged where it makes a machine worse; for a hook before commits')
    .addArgument(new Argument('[paths...]', 'what to compare; the current folder when left out'))
    .addOption(new Option('--fail-on <severity>', 'new findings as grave as this are refused').choices(thresholds).default('warning'))
    .option('--margin-loss <share>', 'refuse more margin lost than this, such as "10 %"; any is allowed when left out')
    .addHelpText('after', `\n${stagedHelp}`)
    .action(async (given: string[], options: StagedOptions) => {
      status = await runStaged(given, options, host);
    });

  program.command('hook').description('print a hook for git that runs before each commit')
    .addHelpText('after', `\n${hookHelp}`)
    .action(() => host.print(preCommitHook));

  try {
    await program.parseAsync([...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    // Help and version are asked for and end well; everything else is a slip in the arguments.
    return error.exitCode === 0 ? exitStatus.passed : exitStatus.couldNotRun;
  }
  return status;
}
