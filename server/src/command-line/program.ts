import { Argument, Command, CommanderError, Option } from 'commander';
import { version } from '../../../package.json';
import { runCheck, type CheckOptions } from './check-command.ts';
import { exitStatus, exitStatusTable, thresholds, thresholdTable, type ExitStatus } from './exit-status.ts';
import { runFigures, type FiguresOptions } from './figures-command.ts';
import type { Host } from './host.ts';

const pathsHelp = `Paths:
  a file, a folder (searched for *.machine.yaml and *.parts.yaml, except in
  node_modules, .git and dist), or a pattern: * ? [abc] ** {one,two}; quote it,
  so that it means the same in every shell. "-" is standard input.
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
      .addOption(new Option('--color <when>', 'colour the output').choices(['auto', 'always', 'never']).default('auto'))
      .addHelpText('after', `\n${pathsHelp}`);

  const program = new Command('axiswright')
    .description('Checks the drives of machines with moving axes, from their descriptions.')
    .version(version)
    .configureOutput({ writeOut: host.print, writeErr: host.complain })
    .exitOverride()
    .showSuggestionAfterError()
    .addHelpText('after', `\n${exitStatusTable}\n\nFor the options of a command: axiswright COMMAND --help`);

  shared(program.command('check').description('find what cannot work, is dangerous, or could be better'))
    .addOption(new Option('--fail-on <severity>', 'the threshold of exit status 1').choices(thresholds).default('error'))
    .addOption(new Option('--format <format>', 'for people, one line a finding, or JSON').choices(['human', 'lines', 'json']).default('human'))
    .option('--no-fixes', 'do not look for remedies (faster)')
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

  try {
    await program.parseAsync([...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    // Help and version are asked for and end well; everything else is a slip in the arguments.
    return error.exitCode === 0 ? exitStatus.passed : exitStatus.couldNotRun;
  }
  return status;
}
