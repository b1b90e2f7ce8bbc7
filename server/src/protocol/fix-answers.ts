import type { CancellationToken, CodeAction, Diagnostic as Message, TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Diagnostic as Found } from '../services/diagnostics.ts';
import type { DocumentEdits, Fix, FixKind } from '../services/fixes.ts';
import type { Asked, Desk } from './desk.ts';
import { outdated } from './fence.ts';
import { linesOf } from './finding-messages.ts';
import { fixAllKind } from './offers.ts';
import { fieldAt, fieldsOf, listIn, rangeIn, textIn, uriIn } from './parameters.ts';
import { rangeOf, spanOf, type Span } from './positions.ts';
import { turn } from './scheduling.ts';

/** What is kept in a fix that comes without its edits, to find it again in a text that may have changed. */
export interface Ticket {
  readonly uri: string;
  readonly revision: number;
  readonly code: string;
  readonly title: string;
  /** Where its finding begins, in the text that it was offered for. */
  readonly start: number;
}

/** The light bulb. */
export function answerFixes(desk: Desk): void {
  const { fence } = desk;
  fence.request<readonly CodeAction[]>('textDocument/codeAction', [], async (params, token) => {
    const range = rangeIn(fieldsOf(params)['range']);
    const asked = range && (await desk.open(uriIn(params), token));
    if (!range || asked?.fresh !== true) return [];
    const only = fieldAt(params, 'context', 'only');
    const kinds = Array.isArray(only) ? only.flatMap((kind) => textIn(kind) ?? []) : undefined;
    const wanted = (kind: string): boolean => kinds === undefined || kinds.some((asking) => asking === '' || kind === asking || kind.startsWith(`${asking}.`));
    return [
      ...(wanted('quickfix') ? await quickFixes(desk, asked, spanOf(asked.snapshot.document.lines, range), listIn(fieldAt(params, 'context', 'diagnostics')), token) : []),
      // Only where it is asked for by name: it belongs to saving and to its own menu, not to the light bulb.
      ...(kinds !== undefined && wanted(fixAllKind) ? fixAllAction(desk, asked) : []),
    ];
  });

  fence.request<unknown>('codeAction/resolve', null, async (action, token) => {
    const ticket = ticketIn(fieldsOf(action)['data']);
    if (!ticket) return action;
    const asked = await desk.open(ticket.uri, token);
    const fix = asked && findAgain(ticket, asked);
    if (!fix) throw outdated('The text has changed since this was offered. Ask for the fixes again.');
    return { ...fieldsOf(action), edit: editOf(fix.changes, asked, desk) };
  });
}

/** Milliseconds of work on fixes before others have their turn. */
const LONGEST_STRETCH = 10;

/**
 * The fixes of the findings that the person sees there; of what is not shown, none. Proving cures takes some time, so it is done in short
 * stretches between which others have their turn.
 */
async function quickFixes(desk: Desk, asked: Asked, span: Span, shown: readonly unknown[], token: CancellationToken): Promise<readonly CodeAction[]> {
  const { client } = desk;
  const { snapshot, document, analysis } = asked;
  const { revision } = document;
  const kinds: readonly FixKind[] = client.pages ? ['spelling', 'remedy', 'accept', 'explain'] : ['spelling', 'remedy', 'accept'];
  const offered: { readonly fix: Fix; readonly action: CodeAction; readonly told: Message[] }[] = [];
  for (const diagnostic of snapshot.diagnostics) {
    if (diagnostic.span.start > span.end || diagnostic.span.end < span.start) continue;
    const range = rangeOf(snapshot.document.lines, diagnostic.span);
    const told = shown.find((candidate) => codeIn(candidate) === diagnostic.code && sameStart(rangeIn(fieldsOf(candidate)['range']), range));
    if (told === undefined) continue;
    // Every few steps others have their turn; what was asked for meanwhile may make the rest needless.
    let since = -Infinity;
    for (const search = analysis.searchFixes(snapshot, diagnostic); ; ) {
      if (performance.now() - since > LONGEST_STRETCH) {
        await turn();
        if (token.isCancellationRequested || document.revision !== revision) return [];
        since = performance.now();
      }
      if (search.next().done === true) break;
    }
    const fixes = analysis.fixesAt(snapshot, diagnostic.span, kinds).filter((fix) => fix.diagnostic === diagnostic);
    for (const fix of fixes) {
      // Two findings at one place may have the same cure: it is offered once, for both.
      const same = offered.find((other) => other.fix.kind === fix.kind && other.fix.title === fix.title && sameChanges(other.fix.changes, fix.changes));
      if (same) same.told.push(told as Message);
      else {
        const cured = [told as Message]; // the finding is given back as it came
        offered.push({ fix, told: cured, action: actionOf(fix, cured, asked, desk) });
      }
    }
  }
  // What cures stands before what leaves the finding as it is, and that before what only explains.
  const rank = ({ fix }: { readonly fix: Fix }): number => (fix.kind === 'accept' ? 1 : fix.kind === 'explain' ? 2 : 0);
  return offered.sort((a, b) => rank(a) - rank(b)).map(({ action }) => action);
}

function actionOf(fix: Fix, told: Message[], asked: Asked, desk: Desk): CodeAction {
  const { client } = desk;
  const { document } = asked;
  const action: CodeAction = { title: fix.title, kind: 'quickfix', diagnostics: told, ...(fix.isPreferred && client.preferredFix ? { isPreferred: true } : {}) };
  if (fix.page !== undefined) return { ...action, command: { title: fix.title, command: 'axiswright.explainFinding', arguments: [fix.page] } };
  const ticket: Ticket = { uri: document.uri, revision: document.revision, code: fix.diagnostic.code, title: fix.title, start: fix.diagnostic.span.start };
  // Our own extension asks for the reason first; elsewhere a placeholder stands for it, which is reported until it is replaced.
  if (fix.kind === 'accept' && client.asksReasons) {
    const until = asked.analysis.usualEnd(asked.snapshot.analysis?.options.today);
    return { ...action, command: { title: fix.title, command: 'axiswright.accept', arguments: [ticket, until ?? ''] } };
  }
  if (!client.resolvesEdits) return { ...action, edit: editOf(fix.changes, asked, desk) };
  return { ...action, data: ticket };
}

function fixAllAction(desk: Desk, asked: Asked): readonly CodeAction[] {
  const edits = asked.analysis.fixAll(asked.snapshot);
  if (edits.length === 0) return [];
  return [{ title: 'Mend spelling and units', kind: fixAllKind, edit: editOf([{ uri: asked.snapshot.uri, edits }], asked, desk) }];
}

/** The findings that a ticket may mean: in the text that it was made for the one at its place, in another all of its kind. */
export function findDiagnostics(ticket: Ticket, { document, snapshot }: Asked): readonly Found[] {
  const unchanged = document.revision === ticket.revision;
  return snapshot.diagnostics.filter((diagnostic) => diagnostic.code === ticket.code && (!unchanged || diagnostic.span.start === ticket.start));
}

/** The fix as it is in the present text. After an edit elsewhere it must be the only one of its kind and title: a guess could change the wrong place. */
function findAgain(ticket: Ticket, asked: Asked): Fix | undefined {
  const { document, snapshot, analysis } = asked;
  const unchanged = document.revision === ticket.revision;
  const candidates = findDiagnostics(ticket, asked)
    .flatMap((diagnostic) => analysis.fixesAt(snapshot, diagnostic.span, ['spelling', 'remedy', 'accept']).filter((fix) => fix.diagnostic === diagnostic && fix.title === ticket.title));
  return unchanged || candidates.length === 1 ? candidates[0] : undefined;
}

/** Edits for the client, each for the version of the text that it was computed from. */
export function editOf(changes: readonly DocumentEdits[], { snapshot }: Asked, { documents, client }: Desk): WorkspaceEdit {
  const parts = changes.map(({ uri, edits }) => {
    const lines = linesOf(uri, snapshot);
    const open = documents.get(uri);
    return {
      textDocument: { uri: open?.uri ?? uri, version: open?.version ?? null },
      edits: edits.map((edit): TextEdit => ({ range: rangeOf(lines, edit.span), newText: edit.text })),
    } satisfies TextDocumentEdit;
  });
  return client.versionedEdits ? { documentChanges: parts } : { changes: Object.fromEntries(parts.map((part) => [part.textDocument.uri, part.edits])) };
}

/** Both are plain data in the same order. */
const sameChanges = (a: readonly DocumentEdits[], b: readonly DocumentEdits[]): boolean => JSON.stringify(a) === JSON.stringify(b);

const codeIn = (message: unknown): string | undefined => textIn(fieldsOf(message)['code']) ?? textIn(fieldAt(message, 'code', 'value'));

const sameStart = (a: Message['range'] | undefined, b: Message['range']): boolean => a?.start.line === b.start.line && a.start.character === b.start.character;

export function ticketIn(value: unknown): Ticket | undefined {
  const { uri, revision, code, title, start } = fieldsOf(value);
  const whole = typeof uri === 'string' && typeof revision === 'number' && typeof code === 'string' && typeof title === 'string' && typeof start === 'number';
  return whole ? { uri, revision, code, title, start } : undefined;
}

