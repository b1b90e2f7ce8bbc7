import type { CancellationToken, InlayHint as Message } from 'vscode-languageserver';
import type { InlayHint, KeptHints } from '../services/inlay-hints.ts';
import type { Snapshot } from '../services/snapshot.ts';
import type { Desk } from './desk.ts';
import type { OpenDocument } from './documents.ts';
import { fieldAt, fieldsOf, positionIn, rangeIn, textIn, uriIn } from './parameters.ts';
import { spanOf } from './positions.ts';
import { markup } from './reading-answers.ts';
import type { Analysis } from './scheduling.ts';

/** The figures at the ends of lines. */
export class Hints {
  readonly #desk: Desk;
  /** What each element showed last, so that a half-typed value does not make its line flicker. */
  readonly #kept = new WeakMap<OpenDocument, KeptHints>();
  readonly #made = new WeakMap<Snapshot, readonly InlayHint[]>();
  /** What was answered last, to be given again should an answer fail. */
  readonly #answered = new WeakMap<OpenDocument, readonly Message[]>();
  /** All hints of a text as they were when it was asked for last. */
  readonly #shown = new WeakMap<OpenDocument, string>();

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  answer(): void {
    const { fence, documents } = this.#desk;
    fence.request<readonly Message[]>('textDocument/inlayHint', [], async (params, token) => {
      const document = documents.description(uriIn(params));
      if (!document) return [];
      try {
        return (await this.#messages(document, params, token)) ?? this.#answered.get(document) ?? [];
      } catch (error) {
        fence.report('textDocument/inlayHint', error);
        return this.#answered.get(document) ?? [];
      }
    });
    fence.request<unknown>('inlayHint/resolve', null, async (hint, token) => this.#resolved(hint, token));
  }

  /** Whether the hints of a text differ from what its editor was given; it may not have asked for any. */
  async differ(document: OpenDocument): Promise<boolean> {
    const before = this.#shown.get(document);
    if (before === undefined) return false;
    if (!(await this.#areOn(document))) return before !== '';
    const snapshot = await this.#desk.scheduler.latest(document);
    if (!snapshot) return false;
    return signature(this.#all(document, snapshot, await this.#desk.scheduler.analysis())) !== before;
  }

  async #areOn(document: OpenDocument): Promise<boolean> {
    return (await this.#desk.settings.of(document.uri)).inlayHints;
  }

  async #messages(document: OpenDocument, params: unknown, token: CancellationToken): Promise<readonly Message[] | undefined> {
    if (!(await this.#areOn(document))) {
      this.#shown.set(document, '');
      return [];
    }
    const asked = await this.#desk.open(document.uri, token);
    if (!asked) return undefined;
    const { snapshot, analysis } = asked;
    const { lines } = snapshot.document;
    const range = rangeIn(fieldsOf(params)['range']);
    const span = range && spanOf(lines, range);
    const all = this.#all(document, snapshot, analysis);
    this.#shown.set(document, signature(all));
    const messages = all
      .filter((hint) => !span || (hint.offset >= span.start && hint.offset <= span.end))
      .map((hint): Message => ({
        position: lines.positionAt(hint.offset),
        label: hint.text,
        paddingLeft: true,
        ...(this.#desk.client.hintResolves.includes('tooltip') ? { data: { uri: document.uri } } : { tooltip: this.#tooltip(hint) }),
      }));
    this.#answered.set(document, messages);
    return messages;
  }

  /** The hints of a snapshot, made once. */
  #all(document: OpenDocument, snapshot: Snapshot, { inlayHints }: Analysis): readonly InlayHint[] {
    let made = this.#made.get(snapshot);
    if (!made) {
      let kept = this.#kept.get(document);
      if (!kept) this.#kept.set(document, (kept = new Map<string, string>()));
      made = inlayHints(snapshot, undefined, kept);
      this.#made.set(snapshot, made);
    }
    return made;
  }

  /** The hint with its tooltip, if it still stands there. */
  async #resolved(message: unknown, token: CancellationToken): Promise<unknown> {
    const position = positionIn(fieldsOf(message)['position']);
    const asked = position && (await this.#desk.open(textIn(fieldAt(message, 'data', 'uri')), token));
    if (!asked) return message;
    const offset = asked.snapshot.document.lines.offsetAt(position);
    const hint = this.#all(asked.document, asked.snapshot, asked.analysis).find((candidate) => candidate.offset === offset && candidate.text === fieldsOf(message)['label']);
    return hint ? { ...fieldsOf(message), tooltip: this.#tooltip(hint) } : message;
  }

  #tooltip(hint: InlayHint): NonNullable<Message['tooltip']> {
    return markup(hint.tooltip(), this.#desk.client.markdownHover);
  }
}

const signature = (hints: readonly InlayHint[]): string => hints.map(({ offset, text }) => `${offset} ${text}`).join('\n');
