/** What a present-day editor says that it can do, as far as it concerns the server. It fetches findings, or has them sent. */
export function capabilities(findings: 'pull' | 'push'): Record<string, unknown> {
  return {
    general: { positionEncodings: ['utf-16'] },
    workspace: {
      configuration: true,
      workspaceFolders: true,
      didChangeConfiguration: { dynamicRegistration: true },
      didChangeWatchedFiles: { dynamicRegistration: true },
      workspaceEdit: { documentChanges: true },
      inlayHint: { refreshSupport: true },
      diagnostics: { refreshSupport: true },
    },
    textDocument: {
      synchronization: { didSave: true },
      publishDiagnostics: { relatedInformation: true, codeDescriptionSupport: true, tagSupport: { valueSet: [1, 2] }, versionSupport: false, dataSupport: true },
      ...(findings === 'pull' ? { diagnostic: { relatedDocumentSupport: false, markupMessageSupport: false } } : {}),
      hover: { contentFormat: ['markdown', 'plaintext'] },
      completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'], insertTextModeSupport: { valueSet: [1, 2] }, resolveSupport: { properties: ['documentation', 'detail', 'additionalTextEdits'] } } },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'source'] } }, isPreferredSupport: true, dataSupport: true, resolveSupport: { properties: ['edit'] } },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      inlayHint: { resolveSupport: { properties: ['tooltip'] } },
      documentLink: { tooltipSupport: true },
    },
  };
}
