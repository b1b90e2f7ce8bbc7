import type { Diagnostic } from '../diagnostics.ts';
import { childOf, nodeAt, type SyntaxNode } from '../../language/syntax-tree.ts';

/** A deviation that the designer stands by, as written under `accepted`. */
export interface Acceptance {
  readonly check: string;
  /** The path of the entry, keys joined by "/". */
  readonly at: string;
  readonly reason: string;
  readonly by: string;
  /** A date, or empty. */
  readonly until: string;
}

/** The accepted deviations of a description in the order of the text, whether they apply or not. */
export function acceptancesOf(root: SyntaxNode | null): readonly Acceptance[] {
  const list = childOf(root, 'accepted');
  return list?.type === 'list' ? list.items.flatMap((item) => (item?.type === 'map' ? [acceptanceIn(item)] : [])) : [];
}

/** The deviation by which something is accepted, as it is written; undefined where it is not accepted. */
export function acceptanceOf({ accepted }: Diagnostic, root: SyntaxNode | null): Acceptance | undefined {
  const item = accepted && nodeAt(root, accepted.place.path);
  return item?.type === 'map' ? acceptanceIn(item) : undefined;
}

function acceptanceIn(item: SyntaxNode): Acceptance {
  const text = (key: string): string => {
    const value = childOf(item, key);
    return value?.type === 'scalar' ? value.text : '';
  };
  return { check: text('check'), at: text('at'), reason: text('reason'), by: text('by'), until: text('until') };
}
