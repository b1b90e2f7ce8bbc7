import remedyModules from '../generated/remedies.ts';
import type { Analysis } from '../checks/analysis.ts';
import { severityRank, type Finding } from '../checks/judge.ts';
import type { Evaluation } from '../figures/evaluation.ts';
import { contextOf } from './context.ts';
import { allOf, changedTexts, evaluationOf, tryOut, type DocumentSet, type Proven, type Trial } from './prove.ts';
import type { Proposal, Remedy } from './remedy.ts';
import { composeTitle, LONGEST_TITLE, resultOf } from './title.ts';

let shared: readonly Remedy[] | undefined;

/** The remedies found by their place, the gentlest first. */
export function allRemedies(): readonly Remedy[] {
  shared ??= (remedyModules as readonly (Remedy | readonly Remedy[])[]).flat().sort((a, b) => a.cost - b.cost);
  return shared;
}

/** No more are offered: a menu is no catalogue. */
const MOST_OFFERED = 5;

/** So many are put together, where no single change holds. */
const ENOUGH_TOGETHER = 2;

/** Changes of the design that are put together at most. */
const MOST_TOGETHER = 3;

/** Analyses spent on putting changes together, for one finding. */
const MOST_TRIALS = 24;

/** Cures with a drawback that are built upon, the gentlest. */
const MOST_BUILT_UPON = 6;

/** Times that a remedy is asked for another value, because the one before brought a new finding. */
const MOST_ROUNDS = 3;

/** Steps on the way to a cure: proposals that belong together, in the order in which they are carried out. */
interface Plan {
  readonly steps: readonly { readonly remedy: Remedy; readonly proposal: Proposal }[];
  readonly trial: Trial;
}

/** The cures of a finding that hold, the gentlest first: each was carried out in memory and analysed. */
export function remediesFor(finding: Finding, documents: DocumentSet, analysis: Analysis, remedies: readonly Remedy[] = allRemedies()): readonly Proven[] {
  const search = searchFor(finding, documents, analysis, remedies);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

/** The same search in steps of a few milliseconds, so that whoever runs it can see to other things in between, or give it up. */
export function* searchFor(finding: Finding, documents: DocumentSet, analysis: Analysis, remedies: readonly Remedy[] = allRemedies()): Generator<void, readonly Proven[], void> {
  const before = evaluationOf(analysis, finding.subject);
  return before ? yield* new Search(finding, before, documents, analysis, remedies).run() : [];
}

class Search {
  readonly #proven: Proven[] = [];
  readonly #open: Plan[] = [];
  readonly #seen = new Set<string>();
  readonly #tried = new Map<string, Evaluation>();
  #trials = MOST_TRIALS;

  constructor(
    readonly finding: Finding,
    readonly before: Evaluation,
    readonly documents: DocumentSet,
    readonly analysis: Analysis,
    readonly remedies: readonly Remedy[],
  ) {}

  *run(): Generator<void, readonly Proven[], void> {
    const fitting = this.remedies.filter((remedy) => remedy.cures.includes(this.finding.check));
    for (const remedy of fitting) {
      if (this.#proven.length >= MOST_OFFERED) break;
      if (!remedy.lastResort) yield* this.#singly(remedy);
    }
    if (this.#proven.length === 0 && severityRank(this.finding.severity) <= severityRank('warning')) yield* this.#together();
    for (const remedy of fitting) {
      if (remedy.lastResort && this.#proven.length === 0) yield* this.#singly(remedy);
    }
    return this.#proven.sort((a, b) => a.cost - b.cost).slice(0, MOST_OFFERED);
  }

  /** Tries what one remedy proposes. A value that brings a new finding is looked for again, with that finding's check watched. */
  *#singly(remedy: Remedy): Generator<void, void, void> {
    const watched = new Set<string>();
    const known = this.analysis.findings.filter((other) => other.subject === this.finding.subject);
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const size = watched.size;
      for (const proposal of remedy.propose(contextOf(this.finding, this.before, known, watched, this.#tried))) {
        yield;
        const plan = this.#try([{ remedy, proposal }]);
        if (!plan) continue;
        this.#open.push(plan);
        for (const { check, subject } of plan.trial.fresh) if (subject === this.finding.subject) watched.add(check);
      }
      if (watched.size === size) return;
    }
  }

  /** Cures that bring a new finding, each put together with a cure of that finding. */
  *#together(): Generator<void, void, void> {
    let open = this.#open.filter(({ trial }) => trial.cured && !trial.spoiled).sort((a, b) => a.trial.fresh.length - b.trial.fresh.length || costOf(a) - costOf(b));
    for (let count = 2; count <= MOST_TOGETHER && open.length > 0; count++) {
      const next: Plan[] = [];
      for (const plan of open.slice(0, MOST_BUILT_UPON)) next.push(...(yield* this.#extended(plan)));
      if (this.#proven.length >= ENOUGH_TOGETHER) return;
      open = next.sort((a, b) => a.trial.fresh.length - b.trial.fresh.length || costOf(a) - costOf(b));
    }
  }

  *#extended({ steps, trial }: Plan): Generator<void, readonly Plan[], void> {
    const [fresh] = trial.fresh;
    const evaluation = fresh && evaluationOf(trial.analysis, fresh.subject);
    if (!fresh || !evaluation) return [];
    const open: Plan[] = [];
    const known = this.analysis.findings.filter((other) => other.subject === fresh.subject);
    // What is cured must stay cured, and what else is new must go too.
    const watched = new Set([this.finding.check, ...trial.fresh.map(({ check }) => check)]);
    const stillKnown = known.filter((other) => other.check !== this.finding.check);
    const tried = new Map<string, Evaluation>();
    for (const remedy of this.remedies) {
      if (remedy.lastResort || !remedy.cures.includes(fresh.check)) continue;
      for (const proposal of remedy.propose(contextOf(fresh, evaluation, stillKnown, watched, tried))) {
        if (this.#trials <= 0 || this.#proven.length >= ENOUGH_TOGETHER) return [];
        if (steps.some((step) => overlap(step.proposal, proposal))) continue;
        this.#trials--;
        yield;
        const plan = this.#try([...steps, { remedy, proposal }]);
        if (plan?.trial.cured) open.push(plan);
      }
    }
    return open;
  }

  /** Carries a plan out. Kept when it is proven; given back when it only wants more; undefined when it leads nowhere or was tried before. */
  #try(steps: Plan['steps']): Plan | undefined {
    const changes = steps.flatMap(({ proposal }) => proposal.changes);
    const key = JSON.stringify(changes);
    if (this.#seen.has(key)) return undefined;
    this.#seen.add(key);
    const trial = tryOut(changes, this.finding, this.documents, this.analysis);
    if (!trial) return undefined;
    const plan = { steps, trial };
    const caught = trial.softened && steps.some(({ proposal }) => proposal.catches === true);
    if (!(trial.cured || caught) || trial.fresh.length > 0 || trial.spoiled) return plan;
    const texts = changedTexts(this.documents, trial.changed);
    const title = this.#titleOf(plan, texts);
    if (title.length <= LONGEST_TITLE && !this.#proven.some((other) => sameTexts(other.texts, texts))) {
      this.#proven.push({ title, remedies: steps.map(({ remedy }) => remedy.id), cost: costOf(plan), changes, texts });
    }
    return undefined;
  }

  #titleOf({ steps, trial }: Plan, texts: ReadonlyMap<string, string>): string {
    const own = steps[0]?.proposal.result?.(trial.evaluation);
    return composeTitle({
      orders: steps.map(({ proposal }) => proposal.what),
      lists: allOf(this.documents).slice(1).filter(({ uri }) => texts.has(uri)).map(({ uri }) => fileName(uri)),
      result: own === undefined ? resultOf(this.finding, this.before, trial.evaluation) : [own],
      prices: [...new Set(steps.flatMap(({ proposal }) => proposal.price ?? []))],
    });
  }
}

/** Whether two proposals write the same entry, or one of them into what the other writes. */
function overlap(a: Proposal, b: Proposal): boolean {
  const paths = (proposal: Proposal): readonly string[] => proposal.changes.map(({ place }) => `${[place.uri, ...place.path].join('\n')}\n`);
  return paths(a).some((one) => paths(b).some((other) => one.startsWith(other) || other.startsWith(one)));
}

const costOf = ({ steps }: Plan): number => steps.reduce((sum, { remedy, proposal }) => sum + (proposal.cost ?? remedy.cost), 0);

const sameTexts = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean => a.size === b.size && [...a].every(([uri, text]) => b.get(uri) === text);

function fileName(uri: string): string {
  const name = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
