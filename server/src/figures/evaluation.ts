import type { Input } from '../machine/input.ts';
import type { Subject } from '../machine/subject.ts';
import { isUncertain, type Bounded } from '../machine/values.ts';
import { scopeOf, type Computed, type Figure } from './figure.ts';
import type { Need, Plan } from './plan.ts';
import { directNeeds, type FigureRegistry } from './registry.ts';

export type FigureResult =
  | ({ readonly state: 'computed'; readonly note?: string; /** Uncertain inputs, the one that moves the figure most first. */ readonly movedBy: readonly string[] } & Bounded)
  /** Entries that would make it computable. */
  | { readonly state: 'missing'; readonly missing: readonly string[] }
  | { readonly state: 'unable'; readonly reason: string }
  /** Does not concern this subject: a ball nut's life on a sliding screw. */
  | { readonly state: 'left-out' };

/** A figure's value at one point, or why it has none. */
type Outcome =
  | { readonly state: 'value'; readonly value: number; readonly note?: string }
  | { readonly state: 'missing'; readonly missing: readonly string[] }
  | { readonly state: 'unable'; readonly reason: string }
  | { readonly state: 'left-out' };

type Obstacle = Exclude<Outcome, { state: 'value' }>;

/** A numeric input as the evaluation keeps it. */
interface Slot {
  /** Of a map that the subject cannot have: what needs it does not concern the subject. */
  readonly foreign: boolean;
  readonly value: Bounded | undefined;
  /** Index among the uncertain inputs; -1 for an exact or missing one. */
  readonly index: number;
}

const LEFT_OUT: Obstacle = { state: 'left-out' };

/** Levels at which inputs are taken: both ends, and half way for figures that are not monotonic. */
const HALF_LEVELS = [-0.5, 0.5] as const;

const ENDS = [-1, 1] as const;

/** A second round mends what a later input changed for an earlier one; more seldom find anything. */
const MOST_ROUNDS = 3;

/** So many uncertain inputs fit into a whole number as the name of a point (5 levels each, 5^22 < 2^53). */
const MOST_IN_A_NUMBER = 22;

/**
 * Figures of one subject, computed on demand and remembered, with their bounds.
 *
 * A point says for each uncertain input at which level it is taken: -1 its low end, 0 nominal, 1 its high end. A figure is taken at the nominal
 * point, at both ends of one input after the other, and at the two corners that these signs point to; its bounds are the extremes found.
 * Where a sign may turn on the way to a corner (a thread that holds at the nominal friction and runs down at the lowest, a value that is cut off
 * at 0), the corners are climbed to: one input after the other goes to its better end, until none improves.
 */
export class Evaluation {
  readonly #uncertain: { readonly id: string; readonly value: Bounded }[] = [];
  readonly #slots = new Map<string, Slot>();
  /** The point that is being computed; changed in place, since thousands of points are visited for one keystroke. */
  readonly #levels: number[] = [];
  readonly #dependencies: (readonly number[] | undefined)[] = [];
  readonly #outcomes: (Map<number | string, Outcome> | undefined)[] = [];
  readonly #concerned: (boolean | undefined)[] = [];
  readonly #results = new Map<string, FigureResult>();
  /** The variant of each figure that holds here, by the number of the figure. */
  readonly #variants: (Plan | undefined)[] = [];
  readonly #inputsUnder = new Map<string, readonly string[]>();
  readonly #shown = new Map<Figure, Figure>();
  #figures: readonly Figure[] | undefined;

  constructor(
    readonly subject: Subject,
    readonly registry: FigureRegistry,
  ) {}

  input(id: string): Input {
    return this.subject.input(id);
  }

  /** Never throws: a figure that throws is `unable`, with the error's text for the report. */
  result(id: string): FigureResult {
    let result = this.#results.get(id);
    if (!result) {
      const plan = this.#planOf(this.registry.numberOf(id));
      result = plan ? this.#bound(plan) : { state: 'missing', missing: [id] };
      this.#results.set(id, result);
    }
    return result;
  }

  /** The declaration of a figure that holds for this subject; the first one where none does. */
  figure(id: string): Figure | undefined {
    const figure = this.#planOf(this.registry.numberOf(id))?.figure;
    return figure && this.#shownAs(figure);
  }

  /** The unit in which a figure is shown; undefined where the customary one for its size is taken. */
  unitOf({ quantity, unit }: Pick<Figure, 'quantity' | 'unit'>): string | undefined {
    return this.subject.machine.units.get(quantity) ?? unit;
  }

  /** A declaration with the unit in which the machine's figures are to be shown. */
  #shownAs(figure: Figure): Figure {
    const unit = this.unitOf(figure);
    if (unit === figure.unit || unit === undefined) return figure;
    let shown = this.#shown.get(figure);
    if (!shown) {
      shown = { ...figure, unit };
      this.#shown.set(figure, shown);
    }
    return shown;
  }

  /** One figure for each id that this kind of subject has: the declaration that holds here. */
  figures(): readonly Figure[] {
    return (this.#figures ??= this.registry.ofKind(this.subject.kind).flatMap(({ id }) => this.figure(id) ?? []));
  }

  /** Inputs (not figures) that a figure depends on here, directly or through others; an input is under itself. */
  inputsUnder(id: string): readonly string[] {
    let inputs = this.#inputsUnder.get(id);
    if (!inputs) {
      const figure = this.figure(id);
      inputs = figure ? [...new Set(directNeeds(figure).flatMap((need) => this.inputsUnder(need)))] : [id];
      this.#inputsUnder.set(id, inputs);
    }
    return inputs;
  }

  /** Bounds of a figure or of a numeric input. */
  bounds(id: string): Bounded | undefined {
    if (this.registry.get(id)) {
      const result = this.result(id);
      return result.state === 'computed' ? result : undefined;
    }
    return this.subject.reader.number(id);
  }

  choice(id: string): string | undefined {
    return this.subject.reader.choice(id);
  }

  /** The values that a figure's `compute` saw with every input nominal, or at one end of its range; for derivations and charts. */
  valuesAt(figure: Figure, end: -1 | 0 | 1 = 0): Record<string, unknown> | undefined {
    const plan = this.#planOf(this.registry.numberOf(figure.id));
    if (!plan || this.result(figure.id).state !== 'computed') return undefined;
    this.#dependenciesOf(plan);
    this.#levels.fill(end);
    const values: Record<string, unknown> = {};
    const obstacle = this.#gather(plan, values);
    this.#levels.fill(0);
    return obstacle ? undefined : values;
  }

  #bound(plan: Plan): FigureResult {
    const dependencies = this.#dependenciesOf(plan);
    const nominal = this.#at(plan);
    if (nominal.state !== 'value') return nominal;
    let low = nominal.value;
    let high = nominal.value;
    const take = (): number | undefined => {
      const outcome = this.#at(plan);
      if (outcome.state !== 'value') return undefined;
      low = Math.min(low, outcome.value);
      high = Math.max(high, outcome.value);
      return outcome.value;
    };
    const influence: { readonly index: number; readonly rises: boolean; readonly spread: number }[] = [];
    for (const index of dependencies) {
      const at = (level: number): number | undefined => {
        this.#levels[index] = level;
        const value = take();
        this.#levels[index] = 0;
        return value;
      };
      const from = at(-1) ?? nominal.value;
      const to = at(1) ?? nominal.value;
      if (plan.figure.notMonotonicIn?.includes(this.#uncertain[index]?.id ?? '')) HALF_LEVELS.forEach(at);
      if (from !== nominal.value || to !== nominal.value) influence.push({ index, rises: to >= from, spread: Math.abs(to - from) });
    }
    if (influence.length > 1 || (influence.length === 1 && dependencies.length > 1)) {
      for (const corner of [1, -1]) {
        for (const { index, rises } of influence) this.#levels[index] = rises ? corner : -corner;
        const reached = take();
        if (reached !== undefined && (influence.length < dependencies.length || low <= 0)) this.#climb(dependencies, corner, reached, take);
        for (const index of dependencies) this.#levels[index] = 0;
      }
    }
    influence.sort((a, b) => b.spread - a.spread);
    const movedBy = influence.map(({ index }) => this.#uncertain[index]?.id ?? '');
    return { state: 'computed', nominal: nominal.value, low, high, movedBy, ...(nominal.note === undefined ? {} : { note: nominal.note }) };
  }

  /** From a corner, moves one input after the other to the end that raises (or lowers) the figure, until none does; `take` notes the values met. */
  #climb(dependencies: readonly number[], direction: number, from: number, take: () => number | undefined): void {
    let best = from;
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const before = best;
      for (const index of dependencies) {
        const level = this.#levels[index] ?? 0;
        for (const other of ENDS) {
          if (other === level) continue;
          this.#levels[index] = other;
          const value = take();
          if (value !== undefined && direction * (value - best) > 0) best = value;
          else this.#levels[index] = level;
          if (this.#levels[index] === other) break;
        }
      }
      if (best === before) return;
    }
  }

  /** The first of the variants of a figure that concerns this subject; the first of all where none does, which is then left out. */
  #planOf(number: number): Plan | undefined {
    if (number < 0) return undefined;
    let plan = this.#variants[number];
    if (!plan) {
      const plans = this.registry.plansAt(number);
      plan = plans.find((candidate) => plans.length === 1 || this.#concerns(candidate)) ?? plans[0];
      this.#variants[number] = plan;
    }
    return plan;
  }

  /** Indices of the uncertain inputs under a figure, in the variants that hold here. */
  #dependenciesOf(plan: Plan): readonly number[] {
    let indices = this.#dependencies[plan.index];
    if (!indices) {
      const found = new Set<number>();
      for (const group of [plan.needs, plan.optional, plan.choices, plan.optionalChoices, plan.tables]) {
        for (const need of group) {
          const under = this.#planOf(need.figure);
          if (under) for (const index of this.#dependenciesOf(under)) found.add(index);
          else found.add(this.#slot(need.id).index);
        }
      }
      found.delete(-1);
      indices = [...found];
      this.#dependencies[plan.index] = indices;
    }
    return indices;
  }

  #slot(input: string): Slot {
    let slot = this.#slots.get(input);
    if (!slot) {
      const value = this.subject.reader.number(input);
      const uncertain = value !== undefined && isUncertain(value);
      slot = { foreign: !this.subject.hasScope(scopeOf(input)), value, index: uncertain ? this.#uncertain.push({ id: input, value }) - 1 : -1 };
      if (uncertain) this.#levels.push(0);
      this.#slots.set(input, slot);
    }
    return slot;
  }

  #at(plan: Plan): Outcome {
    const dependencies = this.#dependenciesOf(plan);
    const key = this.#nameOfPoint(dependencies);
    const remembered = (this.#outcomes[plan.index] ??= new Map<number | string, Outcome>());
    let outcome = remembered.get(key);
    if (!outcome) {
      outcome = this.#compute(plan);
      remembered.set(key, outcome);
    }
    return outcome;
  }

  #nameOfPoint(dependencies: readonly number[]): number | string {
    if (dependencies.length > MOST_IN_A_NUMBER) return dependencies.map((index) => this.#levels[index]).join();
    let name = 0;
    for (const index of dependencies) name = name * 5 + 2 + 2 * (this.#levels[index] ?? 0);
    return name;
  }

  #compute(plan: Plan): Outcome {
    if (!(this.#concerned[plan.index] ??= this.#concerns(plan))) return LEFT_OUT;
    const values: Record<string, unknown> = {};
    const obstacle = this.#gather(plan, values);
    if (obstacle) return obstacle;
    try {
      // The declaration's own types hold, since exactly its aliases were filled in.
      return settle(plan.figure.compute(values as never));
    } catch (error) {
      return { state: 'unable', reason: `it could not be computed (${error instanceof Error ? error.message : String(error)})` };
    }
  }

  #concerns(plan: Plan): boolean {
    if (!this.subject.hasScope(plan.scope)) return false;
    if (plan.figure.onlyWith?.some((scope) => !this.subject.isPresent(scope))) return false;
    return plan.onlyWhere.every(([choice, allowed]) => {
      const text = this.choice(choice);
      return text !== undefined && allowed.includes(text);
    });
  }

  /** Fills in what a figure reads at the present point; what stands in the way otherwise. */
  #gather(plan: Plan, values: Record<string, unknown>): Obstacle | undefined {
    let missing: string[] | undefined;
    let unable: Obstacle | undefined;
    for (const need of plan.needs) {
      const found = this.#number(need);
      if (typeof found === 'number') values[need.alias] = found;
      else if (found.state === 'left-out') return found;
      else if (found.state === 'missing') (missing ??= []).push(...found.missing);
      else unable ??= found;
    }
    for (const { alias, id } of plan.choices) {
      if (!this.subject.hasScope(scopeOf(id))) return LEFT_OUT;
      const text = this.choice(id);
      if (text === undefined) (missing ??= []).push(id);
      else values[alias] = text;
    }
    if (missing) return { state: 'missing', missing: [...new Set(missing)] };
    if (unable) return unable;
    for (const need of plan.optional) {
      const found = this.#number(need);
      values[need.alias] = typeof found === 'number' ? found : undefined;
    }
    for (const { alias, id } of plan.optionalChoices) values[alias] = this.choice(id);
    for (const { alias, id } of plan.names) {
      const input = this.subject.input(id);
      values[alias] = input.state === 'known' && input.value.type === 'table' ? input.value.titles : undefined;
    }
    for (const { alias, id } of plan.tables) {
      const input = this.subject.input(id);
      values[alias] = input.state === 'known' && input.value.type === 'table' ? input.value.rows : undefined;
    }
    return undefined;
  }

  #number(need: Need): number | Obstacle {
    const plan = this.#planOf(need.figure);
    if (plan) {
      const outcome = this.#at(plan);
      return outcome.state === 'value' ? outcome.value : outcome;
    }
    const { foreign, value, index } = this.#slot(need.id);
    if (foreign) return LEFT_OUT;
    if (!value) return { state: 'missing', missing: [need.id] };
    if (index < 0) return value.nominal;
    const level = this.#levels[index] ?? 0;
    return level < 0 ? value.nominal + level * (value.nominal - value.low) : value.nominal + level * (value.high - value.nominal);
  }
}

function settle(computed: Computed): Outcome {
  if (typeof computed === 'number') return finite(computed);
  if ('unable' in computed) return { state: 'unable', reason: computed.unable };
  const outcome = finite(computed.value);
  return outcome.state === 'value' ? { ...outcome, note: computed.note } : outcome;
}

const finite = (value: number): Outcome => (Number.isFinite(value) ? { state: 'value', value } : { state: 'unable', reason: 'its value has no bound here' });
