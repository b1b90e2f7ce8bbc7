/** The page of a check, as a read-only document that the built-in Markdown preview shows. */
import * as vscode from 'vscode';
import { languageId } from './documents.ts';

export const pageScheme = 'axiswright-page';
const source = 'axiswright';

export interface PageReader {
  /** The Markdown of a check's page, or undefined when no check has that identifier. */
  page(id: string): Promise<string | undefined>;
}

export function pageUri(id: string): vscode.Uri {
  return vscode.Uri.from({ scheme: pageScheme, path: `/${id}.md` });
}

export function pageProvider(reader: PageReader): vscode.TextDocumentContentProvider {
  return {
    async provideTextDocumentContent(uri) {
      const id = uri.path.replace(/^\//, '').replace(/\.md$/, '');
      return (await reader.page(id)) ?? vscode.l10n.t('There is no check named "{0}".', id);
    },
  };
}

/** Opens the page of a check: of the one named, else of the finding at the cursor, else of one chosen among the file's findings. */
export async function explainCommand(named: unknown): Promise<void> {
  const id = typeof named === 'string' && /^[a-z0-9-]+$/.test(named) ? named : await chooseFinding();
  if (id === undefined) return;
  const uri = pageUri(id);
  try {
    await vscode.commands.executeCommand('markdown.showPreviewToSide', uri);
  } catch {
    await vscode.window.showTextDocument(uri, { preview: true, viewColumn: vscode.ViewColumn.Beside }); // the Markdown preview is disabled
  }
}

async function chooseFinding(): Promise<string | undefined> {
  const editor = vscode.window.activeTextEditor;
  if (editor?.document.languageId !== languageId) return undefined;
  const findings = vscode.languages.getDiagnostics(editor.document.uri).filter((finding) => finding.source === source && checkOf(finding) !== undefined);
  const here = findings.filter((finding) => finding.range.contains(editor.selection.active));
  const choice = here.length > 0 ? here : findings;
  const checks = new Set(choice.map(checkOf));
  if (checks.size <= 1) {
    if (checks.size === 0) vscode.window.setStatusBarMessage(vscode.l10n.t('No findings in this file.'), 4000);
    return [...checks][0];
  }
  const items = choice.map((finding) => ({ label: finding.message.split('\n')[0] ?? '', description: checkOf(finding) ?? '' }));
  return (await vscode.window.showQuickPick(items, { placeHolder: vscode.l10n.t('Which finding?'), matchOnDescription: true }))?.description;
}

/** The check that a finding came from. */
export function checkOf(finding: vscode.Diagnostic): string | undefined {
  const code = typeof finding.code === 'object' ? finding.code.value : finding.code;
  return typeof code === 'string' ? code : undefined;
}
