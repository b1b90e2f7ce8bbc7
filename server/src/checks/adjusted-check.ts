import { allFigures } from '../figures/registry.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import type { Severity } from '../language/problems.ts';
import { readQuantity } from '../language/read-quantity.ts';
import type { Place } from '../machine/origin.ts';
import type { Basis, Check, FactCheck, Limit, LimitCheck } from './check.ts';
import { shortText, type EntryProblem } from './entry-problem.ts';
import { loweredSeverity } from './judge.ts';

/** What settings say of a check, as it is written. */
export interface Change {
  readonly severity?: Severity | 'off';
  /** Where it begins to report, as a quantity. */
  readonly limit?: string;
  /** What its limits are multiplied by. */
  readonly factor?: string;
}

/** Whether a limit gives way to settings: one of practice does, one of a standard, a book or the mechanics does not. */
export const givesWay = (basis: Basis): boolean => basis === 'common practice' || basis === 'our threshold';

/** Whether someone can be hurt by what a check tells of. */
export const isAboutPeople = (check: Check): boolean => check.concernsPeople === true || (check.cautions ?? []).length > 0;

/** What of a check settings can change: all of its limits, those that rest on practice, or nothing. */
export function changeable(check: Check): 'all' | 'some' | 'none' {
  const bases = 'judge' in check ? [check.basis] : check.limits.map(({ basis }) => basis);
  if (isAboutPeople(check) || !bases.some(givesWay)) return 'none';
  return bases.every(givesWay) ? 'all' : 'some';
}

/** A check as settings let it judge; undefined where it is off. What the settings must not or cannot change stays, with a problem at the entry. */
export function adjusted(check: Check, change: Change, place: Place): { readonly check: Check | undefined; readonly problems: readonly EntryProblem[] } {
  if (Object.keys(change).length === 0) return { check, problems: [] };
  if (changeable(check) === 'none') return { check, problems: [refusal(check, place)] };
  return 'judge' in check ? adjustedFacts(check, change, place) : adjustedLimits(check, change, place);
}

const words: Readonly<Record<Basis, string>> = {
  standard: 'comes from a standard', book: 'comes from a book', 'follows from the mechanics': 'follows from the mechanics', 'common practice': 'is common practice', 'our threshold': 'is a threshold of our own',
};

/** Why a check does not give way, as a clause. */
export function reasonNotChangeable(check: Check): string {
  if (isAboutPeople(check)) return 'people can be hurt';
  const bases = [...new Set('judge' in check ? [check.basis] : check.limits.map(({ basis }) => basis))];
  return `its limit ${bases.map((basis) => words[basis]).join(' or ')}`;
}

function refusal(check: Check, place: Place): EntryProblem {
  return {
    code: 'limit-not-changeable', severity: 'error', place, onKey: true,
    message: `"${check.id}" stays as it is: ${reasonNotChangeable(check)}. A finding of it can only be accepted with a reason, in its description.`,
  };
}

function adjustedFacts(check: FactCheck, { severity, limit, factor }: Change, place: Place): ReturnType<typeof adjusted> {
  const problems = limit === undefined && factor === undefined ? [] : [noLimit(check, place, limit === undefined ? 'limit-factor' : 'limit')];
  if (severity === undefined) return { check, problems };
  if (severity === 'off') return { check: undefined, problems };
  const judge: FactCheck['judge'] = (facts) => {
    const found = check.judge(facts);
    if (found === undefined) return undefined;
    const certain = typeof found === 'string' || found.certain;
    return { severity: certain ? severity : loweredSeverity(severity), certain };
  };
  return { check: { ...check, judge }, problems };
}

function adjustedLimits(check: LimitCheck, change: Change, place: Place): ReturnType<typeof adjusted> {
  const { severity } = change;
  const problems: EntryProblem[] = [];
  const times = factorOf(check, change, place, problems);
  const limits = check.limits.flatMap((limit): readonly Limit[] => {
    if (!givesWay(limit.basis)) return [limit];
    if (severity === 'off') return [];
    const own = severity === undefined ? limit : { ...limit, severity };
    if (times === 1 || (change.limit !== undefined && typeof limit.at !== 'number')) return [own];
    return [typeof own.at === 'number' ? { ...own, at: own.at * times } : { ...own, times: (own.times ?? 1) * times }];
  });
  return { check: limits.length === 0 ? undefined : { ...check, limits }, problems };
}

/** What the limits are multiplied by; 1 where nothing is said, or what is said cannot be read. */
function factorOf(check: LimitCheck, { limit, factor }: Change, place: Place, problems: EntryProblem[]): number {
  if (factor !== undefined) {
    // What is no number, or not above zero, is reported with the text.
    const reading = readQuantity(factor, 'ratio');
    if (reading.ok && reading.quantity.nominal > 0 && limit === undefined) return reading.quantity.nominal;
  }
  if (limit === undefined) return 1;
  const base = check.limits.findLast(({ at, basis }) => typeof at === 'number' && at !== 0 && givesWay(basis))?.at;
  const figure = allFigures().get(check.figure);
  if (typeof base !== 'number' || !figure) {
    problems.push(noLimit(check, place, 'limit'));
    return 1;
  }
  const reading = readQuantity(limit, figure.quantity);
  if (reading.ok && reading.quantity.nominal / base > 0) return reading.quantity.nominal / base;
  const usual = formatQuantity(base, figure.quantity, figure.unit === undefined ? {} : { unit: figure.unit });
  problems.push({
    code: 'limit-not-understood', severity: 'error', place: { uri: place.uri, path: [...place.path, 'limit'] },
    message: `"${shortText(limit, 24)}" is no limit for "${check.id}". It judges ${figure.title.toLowerCase()}; without a setting it reports ${check.bad === 'above' ? 'above' : 'below'} ${usual}.`,
  });
  return 1;
}

function noLimit(check: Check, place: Place, key: string): EntryProblem {
  const why = 'judge' in check ? 'it compares no figure with a limit' : 'its limit is written in the description';
  const cure = 'judge' in check ? 'Set its "severity" instead.' : 'Set "limit-factor" instead, or mend the entry there.';
  return { code: 'limit-not-understood', severity: 'error', place: { uri: place.uri, path: [...place.path, key] }, onKey: true, message: `"${check.id}" has no limit that could be set here: ${why}. ${cure}` };
}
