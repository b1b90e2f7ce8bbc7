import { problemCodes } from '../language/problem-codes.ts';
import { nearestNames } from '../language/nearest-names.ts';
import { childOf, nodeAt, type EntryPath, type SyntaxNode } from '../language/syntax-tree.ts';
import type { Machine } from '../machine/machine.ts';
import { nameProblemCodes } from '../machine/name-problem-codes.ts';
import type { Place } from '../machine/origin.ts';
import { meant, shortText, type EntryProblem } from './entry-problem.ts';
import { entryProblemCodes } from './entry-problem-codes.ts';
import { allChecks } from './registry.ts';

/** An entry of `accepted` that says what is accepted, where and why. */
export interface AcceptedEntry {
  readonly check: string;
  /** From the top of the description; `machine` alone for what concerns the machine as a whole. */
  readonly at: EntryPath;
  readonly reason: string;
  readonly by?: string;
  readonly until?: string;
  /** The item of the list. */
  readonly place: Place;
  /** Its last day is over. */
  readonly ended: boolean;
}

/**
 * Problems of the description that tell of the design and not of its spelling: they can be meant, and be accepted. All others leave open
 * what the text says.
 */
export const acceptableProblems: ReadonlySet<string> = new Set(['magnitude-implausible', 'axis-moves-nothing', 'mass-without-axis', 'unused-part', 'no-drive-chosen']);

/** What stands for a reason until one is written; a fix that cannot ask puts it there. */
export const reasonPlaceholder = 'why';

/** The identifiers that an entry may name. */
export const acceptableCodes = (): readonly string[] => [...allChecks().map(({ id }) => id), ...acceptableProblems];

/** The entries of `accepted` that hold or have held, and what is wrong with the others. `today` as YYYY-MM-DD; without it nothing ends. */
export function acceptedEntries(machine: Machine, today: string | undefined): { readonly entries: readonly AcceptedEntry[]; readonly problems: readonly EntryProblem[] } {
  const list = childOf(machine.main.root, 'accepted');
  const entries: AcceptedEntry[] = [];
  const problems: EntryProblem[] = [];
  if (list?.type !== 'list') return { entries, problems };
  list.items.forEach((item, index) => {
    const place: Place = { uri: machine.main.uri, path: ['accepted', String(index)] };
    const found = problemsOf(item, place, machine);
    problems.push(...found);
    const check = textOf(item, 'check');
    const at = textOf(item, 'at');
    const reason = textOf(item, 'reason')?.trim();
    const until = textOf(item, 'until');
    const by = textOf(item, 'by');
    // What is incomplete is reported by the schema, and accepts nothing; so does a last day that cannot be read.
    if (found.length > 0 || check === undefined || at === undefined || reason === undefined || reason === '' || (until !== undefined && !isForm(until))) return;
    entries.push({ check, at: pathIn(at), reason, place, ended: until !== undefined && today !== undefined && until < today, ...(by === undefined ? {} : { by }), ...(until === undefined ? {} : { until }) });
  });
  return { entries, problems };
}

/** `axes/lift/drive` as a path. */
export const pathIn = (at: string): EntryPath => at.split('/').filter((key) => key !== '');

function textOf(item: SyntaxNode | null, key: string): string | undefined {
  const node = childOf(item, key);
  return node?.type === 'scalar' && node.text !== '' ? node.text : undefined;
}

function problemsOf(item: SyntaxNode | null, place: Place, machine: Machine): readonly EntryProblem[] {
  const within = (key: string): Place => ({ uri: place.uri, path: [...place.path, key] });
  const problems: EntryProblem[] = [];
  const check = textOf(item, 'check');
  if (check !== undefined && !acceptableCodes().includes(check)) problems.push(wrongCheck(check, within('check')));
  const at = textOf(item, 'at');
  if (at !== undefined) problems.push(...wrongPlace(pathIn(at), within('at'), machine));
  if (textOf(item, 'reason')?.trim() === reasonPlaceholder) {
    problems.push({ code: 'reason-not-told', severity: 'warning', place: within('reason'), message: `"${reasonPlaceholder}" only holds the place of the reason, so nothing is accepted. Write why it may stay as it is.` });
  }
  const until = textOf(item, 'until');
  const impossible = until === undefined ? undefined : impossibleDate(until);
  if (impossible !== undefined) problems.push({ code: 'date-impossible', severity: 'error', place: within('until'), message: `${impossible}, so nothing is accepted. Write the last day as year-month-day, such as "2027-06-30".` });
  return problems;
}

function wrongCheck(check: string, place: Place): EntryProblem {
  const ofText = { ...problemCodes, ...nameProblemCodes, ...entryProblemCodes };
  if (Object.hasOwn(ofText, check)) {
    return { code: 'not-acceptable', severity: 'error', place, message: `"${check}" is a problem of the text, which leaves open what is meant. Mend it; only findings about the design can be accepted.` };
  }
  const near = nearestNames(check, acceptableCodes());
  return { code: 'check-unknown', severity: 'error', place, message: `No check is called "${shortText(check)}", so nothing is accepted.${meant(near) || ' The identifier stands behind the finding.'}`, replacements: near };
}

/** A path whose keys are not there, with the keys that are where it goes astray. */
function wrongPlace(at: EntryPath, place: Place, machine: Machine): readonly EntryProblem[] {
  if (at.length === 1 && at[0] === 'machine') return [];
  const documents = [machine.main, ...machine.lists];
  if (at.length > 0 && documents.some((document) => nodeAt(document.root, at) !== undefined)) return [];
  // What a part holds may be told as seen from the drive that names it.
  if (throughPart(at, machine)) return [];
  let known = 0;
  while (known < at.length && nodeAt(machine.main.root, at.slice(0, known + 1)) !== undefined) known++;
  const around = nodeAt(machine.main.root, at.slice(0, known));
  const near = around?.type === 'map' ? nearestNames(at[known] ?? '', around.entries.map(({ key }) => key.text)) : [];
  const paths = near.map((key) => [...at.slice(0, known), key, ...at.slice(known + 1)].join('/'));
  const where = known === 0 ? '' : ` in "${shortText(at.slice(0, known).join('/'))}"`;
  return [{
    code: 'accepted-nowhere', severity: 'warning', place, replacements: paths,
    message: `There is no entry "${shortText(at[known] ?? '')}"${where}, so nothing is accepted.${meant(near) || ' Write the keys that lead to the entry, with "/" between them.'}`,
  }];
}

function throughPart(at: EntryPath, machine: Machine): boolean {
  for (let length = at.length - 1; length > 0; length--) {
    const part = partNamedAt(at.slice(0, length), machine);
    if (part) return nodeAt(machine.document(part.uri)?.root, [...part.path, ...at.slice(length)]) !== undefined;
  }
  return false;
}

/** Where the part is described that the entry at a path names, by its own text or under `part`. */
export function partNamedAt(path: EntryPath, machine: Machine): Place | undefined {
  const node = nodeAt(machine.main.root, path);
  const name = node?.type === 'scalar' ? node.text : textOf(node ?? null, 'part');
  return name === undefined || name === '' ? undefined : machine.named('parts', name)?.place;
}

const isForm = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text);

/** What is wrong with a date that has the right form; undefined where it is in the calendar, or where its form is reported already. */
function impossibleDate(text: string): string | undefined {
  if (!isForm(text)) return undefined;
  const [year = 0, month = 0, day = 0] = text.split('-').map(Number);
  if (month < 1 || month > 12) return `"${text}" is no date: there are twelve months`;
  const days = month === 2 ? (year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return day < 1 || day > days ? `"${text}" is no date: that month has ${days} days` : undefined;
}
