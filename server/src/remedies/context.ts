import type { Check } from '../checks/check.ts';
import { judge, severityRank, type Finding } from '../checks/judge.ts';
import { checksFor } from '../checks/registry.ts';
import { Evaluation } from '../figures/evaluation.ts';
import { kinOf } from './families.ts';
import { number, type Inputs, type RemedyContext } from './remedy.ts';

/** Values tried between the present one and the farthest before halving, where passing may begin and end again. */
const ROW = 8;

/** How finely a share is found: about the step of the two digits that are written. */
const FINENESS = 1 / 256;

/** Checks that judge alone: a message costs more figures than the verdict, and thousands of verdicts are asked for. */
const silent = new WeakMap<readonly Check[], ReadonlyMap<string, Check>>();

function silentCheck(id: string, evaluation: Evaluation): Check | undefined {
  const checks = checksFor(evaluation);
  let known = silent.get(checks);
  if (!known) {
    known = new Map(checks.map((check) => [check.id, { ...check, because: [], message: () => '' }]));
    silent.set(checks, known);
  }
  return known.get(id);
}

/** What is accepted is as grave as before for a remedy: acceptance is not part of what it tries out. */
const gravity = ({ severity, accepted }: Finding): number => severityRank(accepted?.originally ?? severity);

/**
 * What a remedy works with. The finding's own check must have nothing to say; a check of `watched` must have nothing graver to say than
 * what `known` (the findings that the description has anyway) holds of it.
 */
export function contextOf(
  finding: Finding,
  before: Evaluation,
  known: readonly Finding[],
  watched: ReadonlySet<string> = new Set(),
  /** Evaluations of the same subject with other inputs, kept from one context to the next. */
  tried: Map<string, Evaluation> = new Map<string, Evaluation>(),
): RemedyContext {
  const tryWith = (inputs: Inputs): Evaluation => {
    const key = JSON.stringify(inputs);
    let evaluation = tried.get(key);
    if (!evaluation) {
      evaluation = new Evaluation(before.subject.withInputs(new Map(Object.entries(inputs))), before.registry);
      tried.set(key, evaluation);
    }
    return evaluation;
  };
  // Of the same danger nothing may be left that was not there; of other checks nothing as grave.
  const kin = kinOf(finding.check).filter((id) => !known.some((other) => other.check === id));
  const grave = Math.max(severityRank(finding.severity), severityRank('warning'));
  const borne = new Map([...watched].map((id) => [id, Math.min(...known.filter((other) => other.check === id).map(gravity), grave + 1)]));
  for (const id of kin) borne.set(id, severityRank('hint'));
  borne.delete(finding.check);
  const order = [...borne.keys()];
  const speaks = (id: string, evaluation: Evaluation): Finding | undefined => {
    const check = silentCheck(id, before);
    return check && judge(check, evaluation);
  };
  const passes = (evaluation: Evaluation): boolean => {
    if (!silentCheck(finding.check, before) || speaks(finding.check, evaluation) || outOfSight(finding, before, evaluation)) return false;
    const against = order.findIndex((id) => {
      const spoken = speaks(id, evaluation);
      return spoken !== undefined && severityRank(spoken.severity) < (borne.get(id) ?? 0);
    });
    // What spoke against this value is likely to speak against the next: it is asked first.
    if (against > 0) order.unshift(...order.splice(against, 1));
    return against < 0;
  };
  // A figure against its limits is taken to fall or rise all the way, so that the farthest value tells whether any passes.
  const own = silentCheck(finding.check, before);
  const oneSided = own !== undefined && !('judge' in own) && watched.size === 0;
  const solveAlong = (path: (share: number) => Inputs): number | undefined => {
    const passesAt = (share: number): boolean => passes(tryWith(path(share)));
    const steps = oneSided ? [1] : Array.from({ length: ROW }, (_, index) => (index + 1) / ROW);
    const first = steps.find(passesAt);
    if (first === undefined) return undefined;
    let [failing, passing] = [first - 1 / steps.length, first];
    while (passing - failing > FINENESS) {
      const middle = (failing + passing) / 2;
      if (passesAt(middle)) passing = middle;
      else failing = middle;
    }
    return passing;
  };
  return {
    finding,
    before,
    tryWith,
    passes,
    place: (input) => {
      const [scope = '', ...entry] = input.split('.');
      return before.subject.placeOf(scope, entry.length === 0 ? undefined : entry.join('.'));
    },
    solveAlong,
    solve: (input, towards) => {
      const present = before.bounds(input)?.nominal;
      if (present === undefined || present === towards) return undefined;
      const at = (share: number): number => between(present, towards, share);
      const share = solveAlong((part) => ({ [input]: number(at(part)) }));
      return share === undefined ? undefined : at(share);
    },
    first: (candidates, inputs) => candidates.find((candidate) => passes(tryWith(inputs(candidate)))),
  };
}

/** A figure that was compared and now lacks an entry proves nothing, nor does a check for which another one speaks: the finding would only be out of sight. */
export function outOfSight({ check, figure }: Finding, before: Evaluation | undefined, after: Evaluation): boolean {
  if (figure !== undefined && before?.result(figure).state === 'computed' && after.result(figure).state === 'missing') return true;
  const withoutOthers = speaksForItself.has(check) ? silentCheck(check, after) : undefined;
  if (!withoutOthers) return false;
  const bare = { ...withoutOthers };
  delete bare.when;
  return judge(bare, after) !== undefined;
}

/** Checks that stay quiet where another one tells of the same cause, so that their silence alone is no cure. */
const speaksForItself = new Set(['nut-overpressed-at-rest', 'nut-overpressed-in-motion', 'nut-overheats']);

/** Part of the way from one value to another: in equal ratios where both are positive, else in equal steps. */
export function between(from: number, to: number, share: number): number {
  return from > 0 && to > 0 ? from * (to / from) ** share : from + (to - from) * share;
}
