import type { Evaluation } from '../figures/evaluation.ts';
import { showInput } from '../figures/derivation.ts';
import { formatBounds, formatQuantity } from '../language/format-quantity.ts';
import type { Severity } from '../language/problems.ts';
import { describeInput } from '../machine/fallback-registry.ts';
import { entrySchema } from '../machine/entry-schema.ts';
import { isDefault, placesOf, type Origin, type Place } from '../machine/origin.ts';
import { scopeRow, splitInput } from '../machine/scopes.ts';
import { exactly, scaled, type Bounded } from '../machine/values.ts';
import { cautions, type CautionId } from './cautions.ts';
import type { Check, FactVerdict, Facts, Judged, Limit, LimitCheck } from './check.ts';

/** Why a finding is accepted: an entry of `accepted` in the description. */
export interface Acceptance {
  readonly reason: string;
  readonly by?: string;
  /** The last day on which it holds, YYYY-MM-DD. */
  readonly until?: string;
  /** The entry of `accepted`. */
  readonly place: Place;
  /** The severity that the finding would have. */
  readonly originally: Severity;
}

/** An engineering finding. Places are paths, so that it stays true while text elsewhere moves. */
export interface Finding {
  readonly check: string;
  readonly title: string;
  readonly severity: Severity;
  readonly certain: boolean;
  readonly message: string;
  readonly subject: string;
  readonly place: Place;
  readonly related: readonly { readonly message: string; readonly place: Place }[];
  readonly cautions: readonly CautionId[];
  /** The figure compared, the end that decided and the limit that it broke, in SI. */
  readonly figure?: string;
  readonly worst?: number;
  readonly limit?: number;
  /** Set where the description accepts the finding with a reason; its severity is then `information`. */
  readonly accepted?: Acceptance;
}

const lowered: Readonly<Record<Severity, Severity>> = { error: 'warning', warning: 'information', information: 'hint', hint: 'hint' };
const rank: Readonly<Record<Severity, number>> = { error: 0, warning: 1, information: 2, hint: 3 };

/** One step milder, as for what is not certain. */
export const loweredSeverity = (severity: Severity): Severity => lowered[severity];

export const severityRank = (severity: Severity): number => rank[severity];

/** Applies one check to an evaluated subject. A check that throws becomes a finding that asks for a report, so that the others still show. */
export function judge(check: Check, evaluation: Evaluation): Finding | undefined {
  try {
    return judgeUnguarded(check, evaluation);
  } catch (error) {
    const place = evaluation.subject.placeOf(evaluation.subject.kind === 'drive' ? 'drive' : evaluation.subject.kind);
    if (!place) return undefined;
    const reason = error instanceof Error ? error.message : String(error);
    return {
      check: check.id, title: check.title, severity: 'information', certain: true, subject: evaluation.subject.id, place, related: [], cautions: [],
      message: `The check "${check.title}" could not be computed (${reason}). This is a fault of the tool: please report it with this file.`,
    };
  }
}

function judgeUnguarded(check: Check, evaluation: Evaluation): Finding | undefined {
  const facts = factsOf(evaluation);
  if (check.when && !check.when(facts)) return undefined;
  const found = 'judge' in check ? judgeFacts(check.judge(facts)) : judgeLimits(check, facts);
  if (!found) return undefined;
  const verdict = check.milder?.(facts) ? { ...found, severity: lowered[found.severity] } : found;
  const place = placeFor(typeof check.place === 'function' ? check.place(facts) : check.place, evaluation);
  if (!place) return undefined;
  const { moved } = verdict;
  // A message tells the limit that was applied.
  const show: Facts['show'] = moved ? (id, end, like) => facts.show(id, end, like, id === moved.id ? moved.times : 1) : facts.show;
  const judged: Judged = { ...facts, ...verdict, show: (id, end, like) => show(id, end, like) };
  return {
    check: check.id,
    title: check.title,
    severity: verdict.severity,
    certain: verdict.certain,
    message: check.message(judged),
    subject: evaluation.subject.id,
    place,
    related: relatedOf(check, evaluation, verdict.certain),
    cautions: check.cautions ?? [],
    ...(check.figure === undefined ? {} : { figure: check.figure }),
    ...('judge' in check ? {} : { worst: verdict.worst, limit: verdict.limit }),
  };
}

/** `moved`: the input or figure that holds the limit, and what settings multiply it by. */
type Verdict = Pick<Judged, 'worst' | 'limit' | 'severity' | 'certain'> & { readonly moved?: { readonly id: string; readonly times: number } };

function judgeFacts(found: Severity | FactVerdict | undefined): Verdict | undefined {
  if (found === undefined) return undefined;
  return { ...(typeof found === 'string' ? { severity: found, certain: true } : found), worst: Number.NaN, limit: Number.NaN };
}

function judgeLimits(check: LimitCheck, facts: Facts): Verdict | undefined {
  const value = facts.bounds(check.figure);
  if (!value) return undefined;
  let gravest: Verdict | undefined;
  for (const limit of check.limits) {
    const verdict = judgeLimit(check, limit, value, facts);
    if (verdict && (!gravest || isGraver(verdict, gravest))) gravest = verdict;
  }
  return gravest;
}

/** Of two verdicts of one severity the certain one is told: it can be said without "may". */
const isGraver = (one: Verdict, other: Verdict): boolean =>
  rank[one.severity] < rank[other.severity] || (one.severity === other.severity && one.certain && !other.certain);

function judgeLimit(check: LimitCheck, limit: Limit, value: Bounded, facts: Facts): Verdict | undefined {
  const bound = typeof limit.at === 'number' ? exactly(limit.at) : scaled(facts.bounds(limit.at), limit.times);
  if (!bound) return undefined;
  const above = check.bad === 'above';
  const worst = above ? value.high : value.low;
  const strictest = above ? bound.low : bound.high;
  // Exactly at the limit is within it, and rounding in the last digits is no breach.
  const slack = 1e-9 * Math.abs(strictest);
  const breaks = (a: number, b: number): boolean => (above ? a > b + slack : a < b - slack);
  if (!breaks(worst, strictest)) return undefined;
  const certain = breaks(value.nominal, bound.nominal);
  const severity = certain || check.concernsPeople ? limit.severity : lowered[limit.severity];
  const moved = typeof limit.at === 'string' && limit.times !== undefined ? { moved: { id: limit.at, times: limit.times } } : {};
  return { severity, certain, worst, limit: strictest, ...moved };
}

/** The place of an entry where it is written, else of the map that would hold it, else of the nearest map around. */
function placeFor(target: string, evaluation: Evaluation): Place | undefined {
  const { subject } = evaluation;
  if (!target.includes('.')) return subject.placeOf(target);
  const input = subject.input(target);
  if (input.state === 'known') {
    const written = placesOf(input.origin)[0];
    if (written) return written;
  }
  const scope = target.slice(0, target.indexOf('.'));
  return subject.isPresent(scope) ? subject.placeOf(scope) : subject.placeOf(subject.kind === 'drive' ? 'drive' : subject.kind);
}

/** Titles of inputs come from the schema, those of put-together inputs from their declaration. */
export function titleOf(id: string, evaluation: Evaluation): string {
  return evaluation.registry.get(id)?.title ?? describeInput(id).title;
}

/** Scopes whose entries are called by their own titles alone: there is only one axis, and one motion, in view. */
const PLAIN_SCOPES = new Set(['axis', 'motion', 'drive', 'guides', 'conditions', 'controller', 'machine']);

/** `Nut axial stiffness`, so that it is not taken for the bearing's. */
function relatedTitle(id: string, evaluation: Evaluation): string {
  const title = titleOf(id, evaluation);
  const { scope } = splitInput(id);
  if (PLAIN_SCOPES.has(scope)) return title;
  const element = scopeRow(scope).title;
  const full = title.toLowerCase().startsWith(element) ? title : `${element} ${title.charAt(0).toLowerCase()}${title.slice(1)}`;
  return full.charAt(0).toUpperCase() + full.slice(1);
}

function relatedOf(check: Check, evaluation: Evaluation, certain: boolean): readonly { readonly message: string; readonly place: Place }[] {
  const facts = factsOf(evaluation);
  const deciding = !certain && check.figure !== undefined ? decidingInput(check.figure, evaluation) : undefined;
  const ids = [...(deciding === undefined ? [] : [deciding]), ...(check.because ?? [])];
  const seen = new Set<string>();
  return ids.flatMap((id) => {
    const input = evaluation.subject.input(id);
    if (evaluation.registry.get(id) || input.state !== 'known' || seen.has(id)) return [];
    seen.add(id);
    const assumed = isDefault(input.origin);
    // What is taken of a brake that is not there led to nothing.
    if (assumed && input.value.type === 'choice' && !evaluation.subject.isPresent(splitInput(id).scope)) return [];
    const place = placesOf(input.origin)[0] ?? (assumed && input.origin.from === 'handbook' ? nearestPlace(input.origin.place, evaluation) : undefined);
    if (!place) return [];
    const shown = facts.show(id, 'range');
    const title = relatedTitle(id, evaluation);
    const role = id === deciding ? ': this range decides' : '';
    return [{ message: assumed ? `${title} assumed: ${shown} (handbook range${keyToWrite(id, input.origin, place)})${role}` : `${title}: ${shown}${role}`, place }];
  }).slice(0, 4);
}

/** The key that would override a default, as seen from the map at which the finding points: `; write "thrust-bearing: friction" here`. */
function keyToWrite(id: string, origin: Origin, at: Place): string {
  const would = origin.from === 'handbook' ? origin.place : undefined;
  if (!would || !entrySchema(id)) return '';
  return `; write "${would.path.slice(at.path.length).join(': ')}" here`;
}

function decidingInput(figure: string, evaluation: Evaluation): string | undefined {
  const result = evaluation.result(figure);
  return result.state === 'computed' ? result.movedBy[0] : undefined;
}

/** Where an entry would go: its map if there is one, else the subject's. */
function nearestPlace(place: Place | undefined, evaluation: Evaluation): Place | undefined {
  if (!place) return undefined;
  const { machine } = evaluation.subject;
  for (let path = place.path; path.length > 0; path = path.slice(0, -1)) {
    if (machine.look(place.uri, path) !== undefined) return { uri: place.uri, path };
  }
  return undefined;
}

/** Facts whose `show` can multiply what it shows. */
type ScalingFacts = Omit<Facts, 'show'> & { readonly show: (...given: [...Parameters<Facts['show']>, times?: number]) => string };

export function factsOf(evaluation: Evaluation): ScalingFacts {
  const { subject } = evaluation;
  return {
    bounds: (id) => evaluation.bounds(id),
    choice: (id) => evaluation.choice(id),
    isPresent: (scope) => subject.isPresent(scope),
    isDefault: (id) => {
      const input = subject.input(id);
      return input.state === 'known' && isDefault(input.origin);
    },
    show: (id, end = 'nominal', like, times = 1) => {
      const unit = like === undefined ? undefined : writtenUnit(like, evaluation);
      return showValue(id, evaluation, end, { digits: isRough(id, evaluation) ? 2 : 3, times, ...(unit === undefined ? {} : { unit }) });
    },
    note: (id) => {
      const result = evaluation.registry.get(id) ? evaluation.result(id) : undefined;
      return result?.state === 'computed' ? result.note : undefined;
    },
  };
}

/** Whether a figure is uncertain by more than a third; inputs are shown as they were written. */
function isRough(id: string, evaluation: Evaluation): boolean {
  const value = evaluation.registry.get(id) ? evaluation.bounds(id) : undefined;
  return value !== undefined && value.high - value.low > Math.max(Math.abs(value.high), Math.abs(value.low)) / 3;
}

/** The unit in which an input was written, or in which its default is customarily given. */
function writtenUnit(id: string, evaluation: Evaluation): string | undefined {
  const input = evaluation.registry.get(id) ? undefined : evaluation.input(id);
  const unit = input?.state === 'known' && input.value.type === 'number' ? input.value.unit : undefined;
  return unit === '' ? undefined : unit;
}

/** A figure or input as text, in the unit in which it is customarily given or in which the person wrote it. */
export function showValue(
  id: string, evaluation: Evaluation, end: 'nominal' | 'low' | 'high' | 'range' = 'nominal', form: { readonly digits?: number; readonly unit?: string; /** What the value is multiplied by. */ readonly times?: number } = {},
): string {
  const figure = evaluation.registry.get(id);
  const input = figure ? undefined : evaluation.input(id);
  if (input?.state === 'known' && input.value.type !== 'number') return showInput(id, evaluation);
  const value = scaled(evaluation.bounds(id), form.times);
  if (!value) return 'unknown';
  const quantity = figure?.quantity ?? describeInput(id).quantity;
  const unit = form.unit ?? (figure && evaluation.unitOf(figure)) ?? writtenUnit(id, evaluation);
  const options = { digits: form.digits ?? 3, ...(unit === undefined ? {} : { unit }) };
  return end === 'range' ? formatBounds(value, quantity ?? 'count', options) : formatQuantity(value[end], quantity ?? 'count', options);
}

/** The hazard sentence of a caution. */
export const cautionText = (id: CautionId): string => cautions[id];
