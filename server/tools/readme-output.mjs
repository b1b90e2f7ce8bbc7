// Keeps what the README shows of the command line true. A block of code below a comment
//   <!-- output of: check PATH, finding CODE -->
// holds the first finding with that code as the command prints it, 80 columns wide.
import { loadTypeScript } from './load-typescript.mjs';
import { root } from './processes.mjs';

const block = /^( *)<!-- output of: (.+), finding ([a-z-]+) -->\n\1```text\n[\s\S]*?\1```$/gm;

/**
 * @param {string} readme text of the README
 * @returns {Promise<string>} the text with every block as it is printed now; throws where a finding is printed no more
 */
export async function withRealOutput(readme) {
  const { runProgram } = await loadTypeScript('server/src/command-line/program.ts');
  const shown = new Map();
  for (const [, , command, code] of readme.matchAll(block)) shown.set(`${command} ${code}`, findingIn(await outputOf(runProgram, command.split(' ')), code, command));
  return readme.replace(block, (_, indent, command, code) => {
    const lines = (shown.get(`${command} ${code}`) ?? '').split('\n').map((line) => `${indent}${line}`.trimEnd());
    return `${indent}<!-- output of: ${command}, finding ${code} -->\n${indent}\`\`\`text\n${lines.join('\n')}\n${indent}\`\`\``;
  });
}

async function outputOf(runProgram, args) {
  let text = '';
  await runProgram(args, {
    current: root, env: {}, input: [], print: (more) => { text += more; }, complain: () => {}, breathe: async () => {}, isTerminal: false, terminalColumns: undefined,
  });
  return text;
}

/** The lines of one finding, up to the next blank one. */
function findingIn(output, code, command) {
  const found = output.split('\n\n').find((paragraph) => paragraph.split('\n')[0]?.trim().split(/\s+/)[1] === code);
  if (found === undefined) throw new Error(`The README shows the finding ${code}, which "${command}" prints no more. Let it show another.`);
  return found;
}
