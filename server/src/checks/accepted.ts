import type { Problem } from '../language/problems.ts';
import { nodeAt, type EntryPath } from '../language/syntax-tree.ts';
import type { Machine, SourceDocument } from '../machine/machine.ts';
import type { PlacedProblem } from '../machine/name-problems.ts';
import type { Place } from '../machine/origin.ts';
import { acceptableProblems, acceptedEntries, partNamedAt, type AcceptedEntry } from './accepted-entries.ts';
import { shortText, type EntryProblem } from './entry-problem.ts';
import { severityRank, type Acceptance, type Finding } from './judge.ts';

/** What a description accepts. */
export interface Accepting {
  /** The findings, those that are accepted as information. */
  readonly findings: readonly Finding[];
  /** Of the problems that can be accepted, what is said of each: by `problemKey`. */
  readonly problems: ReadonlyMap<string, Verdict>;
  /** What is wrong with the entries themselves. */
  readonly entryProblems: readonly EntryProblem[];
}

/** How an entry stands to what it names: it accepts it, or did until its last day. */
export type Verdict = { readonly accepted: Acceptance } | { readonly ended: { readonly message: string; readonly place: Place } };

/** Longest message of a finding. */
const LONGEST = 240;
/** A reason cut shorter than this says nothing. */
const LEAST_OF_REASON = 12;

export const problemKey = (code: string, path: EntryPath): string => [code, ...path].join('\n');

/** Applies the entries of `accepted` to what was found. Whether an entry is too old is told by `today` (YYYY-MM-DD); without it none is. */
export function accepting(machine: Machine, found: readonly Finding[], problems: readonly PlacedProblem[], today: string | undefined): Accepting {
  const { entries, problems: wrong } = acceptedEntries(machine, today);
  if (entries.length === 0) return { findings: found, problems: new Map(), entryProblems: wrong };
  const needed = new Set<AcceptedEntry>();
  const decide = (code: string, paths: readonly EntryPath[]): AcceptedEntry | undefined => {
    const fitting = entries.filter((entry) => entry.check === code && paths.some((path) => isWithin(path, entry.at)));
    for (const entry of fitting) needed.add(entry);
    return fitting.find((entry) => !entry.ended) ?? fitting[0];
  };

  const findings = found.map((finding) => {
    const entry = decide(finding.check, pathsOf(finding, machine));
    return entry ? told(finding, entry) : finding;
  });
  const verdicts = new Map<string, Verdict>();
  const ofText = entries.some((entry) => acceptableProblems.has(entry.check)) ? problemsOfText(machine.main) : [];
  const placed = problems.map(({ code, severity, place }) => ({ code, severity, path: place.path }));
  for (const { code, severity, path } of [...ofText, ...placed]) {
    const entry = acceptableProblems.has(code) ? decide(code, [path]) : undefined;
    if (entry) verdicts.set(problemKey(code, path), entry.ended ? { ended: endOf(entry) } : { accepted: acceptanceOf(entry, severity) });
  }
  const idle = entries.filter((entry) => !needed.has(entry)).map((entry) => acceptedNothing(entry, found));
  return { findings, problems: verdicts, entryProblems: [...wrong, ...idle] };
}

/** The paths under which a finding is known: its own, and, in a part, the one that leads there from the drive. */
export function pathsOf(finding: Finding, machine: Machine): readonly EntryPath[] {
  const { path, uri } = finding.place;
  if (path.length === 0) return [['machine']];
  if (path[0] !== 'parts') return uri === machine.main.uri ? [path] : [];
  const own = uri === machine.main.uri ? [path] : [];
  const drive = machine.subjects.find(({ id }) => id === finding.subject)?.fixed.get('drive');
  const holder = drive && nodeAt(machine.main.root, drive);
  if (!drive || holder?.type !== 'map') return own;
  return [...own, ...holder.entries.flatMap(({ key }): readonly EntryPath[] => {
    const through = [...drive, key.text];
    const part = partNamedAt(through, machine);
    return part?.uri === uri && isWithin(path, part.path) ? [[...through, ...path.slice(part.path.length)]] : [];
  })];
}

/** What a document that was read by the language knows of its own problems. */
interface ReadText {
  readonly problems: readonly Problem[];
  readonly pathAt: (offset: number) => { readonly path: EntryPath };
}

const isWithin = (path: EntryPath, outer: EntryPath): boolean => outer.length > 0 && outer.every((key, index) => path[index] === key);

function problemsOfText(main: SourceDocument & Partial<ReadText>): readonly { readonly code: string; readonly severity: Problem['severity']; readonly path: EntryPath }[] {
  return (main.problems ?? []).flatMap((problem) => (acceptableProblems.has(problem.code) && main.pathAt ? [{ code: problem.code, severity: problem.severity, path: main.pathAt(problem.span.start).path }] : []));
}

function acceptanceOf({ reason, by, until, place }: AcceptedEntry, originally: Finding['severity']): Acceptance {
  return { reason, place, originally, ...(by === undefined ? {} : { by }), ...(until === undefined ? {} : { until }) };
}

function endOf({ by, until, place }: AcceptedEntry): { readonly message: string; readonly place: Place } {
  return { message: `acceptance${by === undefined ? '' : ` by ${shortText(by)}`} ended on ${until ?? ''}`, place: { uri: place.uri, path: [...place.path, 'until'] } };
}

/** The finding as an entry leaves it: as information, or with the remark that its time is over. */
function told(finding: Finding, entry: AcceptedEntry): Finding {
  if (entry.ended) return { ...finding, related: [endOf(entry), ...finding.related].slice(0, 4) };
  const accepted = acceptanceOf(entry, finding.severity);
  return { ...finding, severity: milder(finding.severity), accepted, message: withReason(finding.message, entry.reason), related: [relatedOf(accepted), ...finding.related].slice(0, 4) };
}

/** Accepted findings are information; a hint stays one. */
export const milder = (severity: Finding['severity']): Finding['severity'] => (severityRank(severity) < severityRank('information') ? 'information' : severity);

/** Where a finding is accepted: `accepted by R. Okafor until 2027-06-30: …`. */
export function relatedOf({ reason, by, until, place }: Acceptance): { readonly message: string; readonly place: Place } {
  const who = by === undefined ? '' : ` by ${shortText(by)}`;
  const how = `accepted${who}${until === undefined ? '' : ` until ${until}`}: `;
  return { message: how + cut(oneLine(reason), LONGEST - how.length), place: { uri: place.uri, path: [...place.path, 'reason'] } };
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** A message with the reason behind it, as much of it as fits. */
export function withReason(message: string, reason: string): string {
  const room = LONGEST - message.length - ' (accepted: )'.length;
  if (room >= Math.min(LEAST_OF_REASON, reason.length)) return `${message} (accepted: ${cut(oneLine(reason), room)})`;
  return message.length + ' (accepted)'.length <= LONGEST ? `${message} (accepted)` : message;
}

/** Counted as messages are, in UTF-16 units, and never through a character. */
function cut(text: string, most: number): string {
  if (text.length <= most) return text;
  let short = '';
  for (const character of text) {
    if (short.length + character.length > most - 1) break;
    short += character;
  }
  return `${short.trimEnd()}…`;
}

function acceptedNothing(entry: AcceptedEntry, found: readonly Finding[]): EntryProblem {
  const elsewhere = found.find(({ check, place }) => check === entry.check && place.path.length > 0);
  const at = shortText(entry.at.join('/'), 60);
  const hint = elsewhere ? ` One stands at "${shortText(elsewhere.place.path.join('/'), 60)}".` : '';
  return {
    code: 'accepted-nothing', severity: 'information', place: { uri: entry.place.uri, path: [...entry.place.path, 'check'] }, removable: entry.place,
    message: `No finding "${entry.check}" stands at "${at}", so nothing is accepted.${hint} Take the entry out, or mend its place.`,
    ...(elsewhere ? { related: [{ message: 'it stands here', place: elsewhere.place }] } : {}),
  };
}
