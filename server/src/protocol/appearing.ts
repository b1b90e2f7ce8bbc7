import type { Diagnostic } from '../services/diagnostics.ts';
import type { Editing } from './documents.ts';
import type { Lines } from './positions.ts';

/** How long a new engineering finding on the line that is being typed waits for a pause, in milliseconds. */
export const PATIENCE = 400;

/** What is to be shown now, and after how many milliseconds to look again because something was held back. */
export interface Showing {
  readonly shown: readonly Diagnostic[];
  readonly wait: number | undefined;
}

/**
 * Decides when findings appear: what is cured vanishes at once, slips of syntax, units and names appear at once, and so does what is
 * already shown or stands elsewhere; but a new engineering finding on a line that is being typed waits until the typing pauses, since
 * half of a number is not yet a design.
 */
export class Appearing {
  #shown: ReadonlySet<string> = new Set();

  /** @param editing where something was typed last; undefined shows everything at once */
  select(diagnostics: readonly Diagnostic[], lines: Lines, editing: Editing | undefined, now: number): Showing {
    const rest = editing ? editing.at + PATIENCE - now : 0;
    const typed = rest > 0 ? (editing?.lines ?? []) : [];
    const held = (diagnostic: Diagnostic): boolean => {
      if (!diagnostic.finding || this.#shown.has(nameOf(diagnostic))) return false;
      const first = lines.positionAt(diagnostic.span.start).line;
      const last = lines.positionAt(diagnostic.span.end).line;
      return typed.some((stretch) => first <= stretch.last && last >= stretch.first);
    };
    const shown = diagnostics.filter((diagnostic) => !held(diagnostic));
    this.#shown = new Set(shown.map(nameOf));
    return { shown, wait: shown.length < diagnostics.length ? rest : undefined };
  }
}

/** The same finding in two versions of a text, wherever it stands and whatever its numbers are. */
const nameOf = ({ code, finding }: Diagnostic): string => `${code} ${finding?.subject ?? ''}`;
