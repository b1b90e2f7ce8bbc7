import inputModules from '../generated/inputs.ts';
import type { QuantityKind } from '../language/quantity-kinds.ts';
import { entrySchema } from './entry-schema.ts';
import type { Fallback } from './input.ts';

let byInput: Map<string, readonly Fallback[]> | undefined;

function index(): Map<string, readonly Fallback[]> {
  const map = new Map<string, readonly Fallback[]>();
  for (const fallback of allFallbacks()) map.set(fallback.input, [...(map.get(fallback.input) ?? []), fallback]);
  return map;
}

/** What stands in for an input, in the order of the declaring files; the first that answers wins. Built on first use, since loading modules must stay cheap. */
export function fallbacksFor(input: string): readonly Fallback[] {
  byInput ??= index();
  return byInput.get(input) ?? [];
}

/** Every declared fallback, in the order of their files. */
export function allFallbacks(): readonly Fallback[] {
  return (inputModules as readonly (Fallback | readonly Fallback[])[]).flat();
}

/** How an input is called and what it measures: from the schema, or from the declaration that puts it together. */
export function describeInput(input: string): { readonly title: string; readonly symbol: string; readonly quantity: QuantityKind | undefined } {
  const declared = fallbacksFor(input);
  const schema = entrySchema(input);
  const title = schema?.title ?? declared.find((fallback) => fallback.title !== undefined)?.title ?? input;
  return {
    title,
    symbol: declared.find((fallback) => fallback.symbol !== undefined)?.symbol ?? title.toLowerCase(),
    quantity: schema?.quantity ?? declared.find((fallback) => fallback.quantity !== undefined)?.quantity,
  };
}
