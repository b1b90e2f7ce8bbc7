import type { Input } from '../machine/input.ts';
import type { Subject } from '../machine/subject.ts';
import { isUncertain, type Bounded, type InputValue } from '../machine/values.ts';
import { scopeOf, type Computed, type Figure } from './figure.ts';
import type { FigureRegistry } from './registry.ts';

export type FigureResult =
  | ({ readonly state: 'computed'; readonly note?: string; /** Uncertain inputs, the one that moves the figure most first. */ readonly movedBy: readonly string[] } & Bounded)
  /** Entries that would make it computable. */
  | { readonly state: 'missing'; readonly missing: readonly string[] }
  | { readonly state: 'unable'; readonly reason: string }
  /** Does not concern this subject: a ball nut's life on a sliding screw. */
  | { readonly state: 'left-out' };

/** Ends of the uncertain inputs at one point: -1 low, 0 nominal, 1 high, halves between; index as in `#uncertain`. */
type Point = readonly number[];

type Outcome = { readonly value: number; readonly note?: string } | { readonly missing: readonly string[] } | { readonly unable: string } | 'left-out';

/** Figures of one subject, computed on demand and remembered, with their bounds. */
export class Evaluation {
  readonly #uncertain: { readonly id: string; readonly value: Bounded }[] = [];
  readonly #indexOf = new Map<string, number>();
  readonly #dependencies = new Map<string, readonly number[]>();
  readonly #outcomes = new Map<string, Map<string, Outcome>>();
  readonly #results = new Map<string, FigureResult>();

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
      result = this.#bound(id);
      this.#results.set(id, result);
    }
    return result;
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

  /** The values that a figure's `compute` saw at the nominal point, for its derivation and its chart. */
  valuesAt(figure: Figure, end: -1 | 0 | 1 = 0): Record<string, unknown> | undefined {
    const result = this.result(figure.id);
    if (result.state !== 'computed') return undefined;
    const gathered = this.#gather(figure, this.#uncertain.map(() => end));
    return gathered !== 'left-out' && 'values' in gathered ? gathered.values : undefined;
  }

  #bound(id: string): FigureResult {
    const dependencies = this.#dependenciesOf(id);
    const centre = this.#uncertain.map(() => 0);
    const nominal = this.#at(id, centre, dependencies);
    if (nominal === 'left-out') return { state: 'left-out' };
    if ('missing' in nominal) return { state: 'missing', missing: nominal.missing };
    if ('unable' in nominal) return { state: 'unable', reason: nominal.unable };
    let low = nominal.value;
    let high = nominal.value;
    const take = (point: Point): number | undefined => {
      const outcome = this.#at(id, point, dependencies);
      if (outcome === 'left-out' || !('value' in outcome)) return undefined;
      low = Math.min(low, outcome.value);
      high = Math.max(high, outcome.value);
      return outcome.value;
    };
    const figure = this.registry.get(id);
    const influence: { readonly index: number; readonly spread: number }[] = [];
    const rising = [...centre];
    const falling = [...centre];
    for (const index of dependencies) {
      const at = (level: number): number | undefined => take(centre.map((_, other) => (other === index ? level : 0)));
      const below = at(-1);
      const above = at(1);
      if (figure?.notMonotonicIn?.includes(this.#uncertain[index]?.id ?? '')) [-0.5, 0.5].forEach(at);
      if (below === undefined && above === undefined) continue;
      const from = below ?? nominal.value;
      const to = above ?? nominal.value;
      if (from === to && from === nominal.value) continue;
      rising[index] = to >= from ? 1 : -1;
      falling[index] = to >= from ? -1 : 1;
      influence.push({ index, spread: Math.abs(to - from) });
    }
    if (influence.length > 1) {
      take(rising);
      take(falling);
    }
    influence.sort((a, b) => b.spread - a.spread);
    const movedBy = influence.map(({ index }) => this.#uncertain[index]?.id ?? '');
    return { state: 'computed', nominal: nominal.value, low, high, movedBy, ...(nominal.note === undefined ? {} : { note: nominal.note }) };
  }

  /** Indices of the uncertain inputs under a figure. */
  #dependenciesOf(id: string): readonly number[] {
    let found = this.#dependencies.get(id);
    if (!found) {
      found = this.registry.inputsUnder(id).flatMap((input) => {
        const known = this.#indexOf.get(input);
        if (known !== undefined) return known < 0 ? [] : [known];
        const value = this.subject.reader.number(input);
        const index = value && isUncertain(value) ? this.#uncertain.push({ id: input, value }) - 1 : -1;
        this.#indexOf.set(input, index);
        return index < 0 ? [] : [index];
      });
      this.#dependencies.set(id, found);
    }
    return found;
  }

  #at(id: string, point: Point, dependencies = this.#dependenciesOf(id)): Outcome {
    const key = dependencies.map((index) => point[index] ?? 0).join();
    let remembered = this.#outcomes.get(id);
    if (!remembered) this.#outcomes.set(id, (remembered = new Map()));
    let outcome = remembered.get(key);
    if (outcome === undefined) {
      outcome = this.#compute(id, point);
      remembered.set(key, outcome);
    }
    return outcome;
  }

  #compute(id: string, point: Point): Outcome {
    const figure = this.registry.get(id);
    if (!figure) return { missing: [id] };
    if (!this.#concerns(figure)) return 'left-out';
    const gathered = this.#gather(figure, point);
    if (gathered === 'left-out' || !('values' in gathered)) return gathered;
    try {
      return settle(figure.compute(gathered.values as never));
    } catch (error) {
      return { unable: `it could not be computed (${error instanceof Error ? error.message : String(error)})` };
    }
  }

  #concerns(figure: Figure): boolean {
    if (!this.subject.hasScope(scopeOf(figure.id))) return false;
    if (figure.onlyWith?.some((scope) => !this.subject.isPresent(scope))) return false;
    return Object.entries(figure.onlyWhere ?? {}).every(([choice, allowed]) => {
      const text = this.choice(choice);
      return text !== undefined && allowed.includes(text);
    });
  }

  #gather(figure: Figure, point: Point): { readonly values: Record<string, unknown> } | Exclude<Outcome, { value: number }> {
    const values: Record<string, unknown> = {};
    const missing = new Set<string>();
    let obstacle: { readonly unable: string } | undefined;
    for (const [alias, id] of Object.entries(figure.needs)) {
      const found = this.#number(id, point);
      if (typeof found === 'number') values[alias] = found;
      else if (found === 'left-out') return 'left-out';
      else if ('missing' in found) for (const entry of found.missing) missing.add(entry);
      else obstacle ??= found;
    }
    for (const [alias, id] of Object.entries(figure.choices ?? {})) {
      const text = this.choice(id);
      if (text === undefined) missing.add(id);
      else values[alias] = text;
    }
    if (missing.size > 0) return { missing: [...missing] };
    if (obstacle) return obstacle;
    for (const [alias, id] of Object.entries(figure.optional ?? {})) {
      const found = this.#number(id, point);
      values[alias] = typeof found === 'number' ? found : undefined;
    }
    for (const [alias, id] of Object.entries(figure.optionalChoices ?? {})) values[alias] = this.choice(id);
    for (const [alias, id] of Object.entries(figure.tables ?? {})) {
      const input = this.subject.input(id);
      values[alias] = input.state === 'known' && input.value.type === 'table' ? input.value.rows : undefined;
    }
    return { values };
  }

  #number(id: string, point: Point): number | Exclude<Outcome, { value: number }> {
    if (this.registry.get(id)) {
      const outcome = this.#at(id, point);
      return outcome !== 'left-out' && 'value' in outcome ? outcome.value : outcome;
    }
    const input = this.subject.input(id);
    if (input.state !== 'known') return { missing: [id] };
    return input.value.type === 'number' ? this.#valueAt(id, input.value, point) : { missing: [id] };
  }

  #valueAt(id: string, value: InputValue & Bounded, point: Point): number {
    const index = this.#indexOf.get(id);
    const level = index === undefined || index < 0 ? 0 : (point[index] ?? 0);
    return level < 0 ? value.nominal + level * (value.nominal - value.low) : value.nominal + level * (value.high - value.nominal);
  }
}

function settle(computed: Computed): Outcome {
  if (typeof computed === 'number') return Number.isFinite(computed) ? { value: computed } : { unable: 'its value has no bound here' };
  if ('unable' in computed) return computed;
  return Number.isFinite(computed.value) ? computed : { unable: 'its value has no bound here' };
}
