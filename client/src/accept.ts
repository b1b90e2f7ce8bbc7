/** Asks for the reason for which a finding is accepted, and has it written into the description. */
import * as vscode from 'vscode';

export interface Acceptance {
  /** What the server gave to find the finding again. */
  readonly finding: unknown;
  readonly reason: string;
  readonly by: string;
  /** YYYY-MM-DD, or empty. */
  readonly until: string;
}

export interface AcceptanceWriter {
  accept(acceptance: Acceptance): Promise<boolean>;
}

/** Where the name is kept that was given last. */
const nameKey = 'accept.name';

/** @param until the last day that is proposed */
export async function acceptCommand(finding: unknown, until: unknown, writer: AcceptanceWriter, memory: vscode.Memento): Promise<void> {
  if (finding === undefined) return;
  const title = vscode.l10n.t('Accept with a reason');
  const reason = await vscode.window.showInputBox({ title, prompt: vscode.l10n.t('Why may it stay as it is?'), ignoreFocusOut: true, validateInput: (text) => (text.trim() === '' ? vscode.l10n.t('A reason is needed.') : undefined) });
  if (reason === undefined) return;
  const by = await vscode.window.showInputBox({ title, prompt: vscode.l10n.t('Who stands by it? May be left empty.'), value: memory.get<string>(nameKey, ''), ignoreFocusOut: true });
  if (by === undefined) return;
  const end = await vscode.window.showInputBox({
    title,
    prompt: vscode.l10n.t('Last day on which it is accepted, as year-month-day. Empty: for good.'),
    value: typeof until === 'string' ? until : '',
    ignoreFocusOut: true,
    validateInput: (text) => (isDay(text.trim()) || text.trim() === '' ? undefined : vscode.l10n.t('Write a day such as {0}.', '2027-06-30')),
  });
  if (end === undefined) return;
  await memory.update(nameKey, by.trim());
  const done = await writer.accept({ finding, reason: reason.trim(), by: by.trim(), until: end.trim() });
  if (!done) void vscode.window.showWarningMessage(vscode.l10n.t('The text has changed meanwhile. Ask for the fixes again.'));
}

/** Whether a text is a day of the calendar. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}
