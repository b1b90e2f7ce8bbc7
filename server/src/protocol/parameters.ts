import type { Position, Range, TextDocumentContentChangeEvent } from 'vscode-languageserver';

/**
 * What a client sends is taken for what it ought to be only after a look: a client may be wrong, and a wrong message must not end the server.
 * Each of these gives undefined (or something empty) for what is malformed.
 */

/** The fields of an object; of anything else, none. */
export function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Readonly<Record<string, unknown>>) : {};
}

/** The value at a path of fields. */
export function fieldAt(value: unknown, ...path: readonly string[]): unknown {
  return path.reduce<unknown>((inner, name) => fieldsOf(inner)[name], value);
}

export const textIn = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

export const listIn = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** The `textDocument.uri` of a request or notification. */
export const uriIn = (params: unknown): string | undefined => textIn(fieldAt(params, 'textDocument', 'uri'));

export function positionIn(value: unknown): Position | undefined {
  const { line, character } = fieldsOf(value);
  return isWhole(line) && isWhole(character) ? { line, character } : undefined;
}

export function rangeIn(value: unknown): Range | undefined {
  const start = positionIn(fieldsOf(value)['start']);
  const end = positionIn(fieldsOf(value)['end']);
  return start && end ? { start, end } : undefined;
}

/** The changes of a `textDocument/didChange`; undefined when one of them is malformed, since the others alone would make a wrong text. */
export function changesIn(params: unknown): readonly TextDocumentContentChangeEvent[] | undefined {
  const changes: TextDocumentContentChangeEvent[] = [];
  for (const change of listIn(fieldsOf(params)['contentChanges'])) {
    const text = textIn(fieldsOf(change)['text']);
    const whole = fieldsOf(change)['range'] === undefined || fieldsOf(change)['range'] === null;
    const range = rangeIn(fieldsOf(change)['range']);
    if (text === undefined || (!whole && !range)) return undefined;
    changes.push(range ? { range, text } : { text });
  }
  return changes;
}

const isWhole = (value: unknown): value is number => Number.isSafeInteger(value);
