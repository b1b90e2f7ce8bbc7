/** The language status item: shown only beside machine descriptions, out of the way. */
import * as vscode from 'vscode';
import { documentSelector } from './documents.ts';

/** What the server tells after an analysis. */
export interface AnalysisReport {
  /** Checks that were run. */
  readonly checks: number;
  /** Findings of any severity in the files that were analysed. */
  readonly findings: number;
}

export class ServerStatus implements vscode.Disposable {
  readonly #item = vscode.languages.createLanguageStatusItem('axiswright.server', documentSelector);

  constructor() {
    this.#item.name = 'Axiswright';
    this.#item.command = { command: 'axiswright.showServerLog', title: vscode.l10n.t('Show log') };
  }

  starting(): void {
    this.#show(vscode.LanguageStatusSeverity.Information, vscode.l10n.t('Starting'), true);
  }

  running(): void {
    this.#show(vscode.LanguageStatusSeverity.Information, vscode.l10n.t('Ready'));
  }

  analysed({ checks, findings }: AnalysisReport): void {
    this.#show(vscode.LanguageStatusSeverity.Information, vscode.l10n.t('Checks run: {0}, findings: {1}', checks, findings));
  }

  stopped(): void {
    this.#show(vscode.LanguageStatusSeverity.Warning, vscode.l10n.t('The language server has stopped'), false, true);
  }

  failed(reason: string): void {
    this.#show(vscode.LanguageStatusSeverity.Error, vscode.l10n.t('The language server did not start: {0}', reason), false, true);
  }

  dispose(): void {
    this.#item.dispose();
  }

  #show(severity: vscode.LanguageStatusSeverity, text: string, busy = false, restartable = false): void {
    this.#item.severity = severity;
    this.#item.text = text;
    this.#item.busy = busy;
    this.#item.command = restartable
      ? { command: 'axiswright.restartServer', title: vscode.l10n.t('Restart') }
      : { command: 'axiswright.showServerLog', title: vscode.l10n.t('Show log') };
  }
}
