import { fieldAt, listIn, textIn } from './parameters.ts';

/** What the editor at the other end can do, as far as it matters here. All of it is asked for before it is used. */
export interface Client {
  /** Fetches findings itself; then none are ever pushed to it. */
  readonly pulls: boolean;
  readonly refreshesFindings: boolean;
  readonly refreshesHints: boolean;
  readonly relatedPlaces: boolean;
  readonly unnecessaryTag: boolean;
  readonly codeDescriptions: boolean;
  readonly configuration: boolean;
  readonly configurationNotice: boolean;
  readonly watchesFiles: boolean;
  readonly workspaceFolders: boolean;
  readonly markdownHover: boolean;
  readonly markdownCompletion: boolean;
  readonly snippets: boolean;
  /** Adds the indent of the line to the further lines of a completion. */
  readonly indentsCompletions: boolean;
  /** Fields of a completion that may come later. */
  readonly completionResolves: readonly string[];
  readonly codeActionLiterals: boolean;
  readonly preferredFix: boolean;
  /** Fixes may come without their edits, which are asked for when one is chosen. */
  readonly resolvesEdits: boolean;
  /** Edits may name the version that they are meant for. */
  readonly versionedEdits: boolean;
  readonly hintResolves: readonly string[];
  readonly nestedSymbols: boolean;
  readonly linkTooltips: boolean;
  /** Our own extension: knows the scheme of the pages, the command that explains a finding, and the notification of the status. */
  readonly pages: boolean;
  /** Asks the person for the reason when a finding is to be accepted. */
  readonly asksReasons: boolean;
  /** Reads files for a server that has no file system of its own. */
  readonly readsFiles: boolean;
}

/** Reads the parameters of `initialize`. */
export function clientOf(params: unknown): Client {
  const can = (...path: readonly string[]): boolean => fieldAt(params, 'capabilities', ...path) === true;
  const has = (...path: readonly string[]): boolean => isThere(fieldAt(params, 'capabilities', ...path));
  const words = (...path: readonly string[]): readonly string[] => listIn(fieldAt(params, 'capabilities', ...path)).flatMap((word) => textIn(word) ?? []);
  /** Of findings, whichever way they come. */
  const ofFindings = (name: string): boolean => can('textDocument', 'publishDiagnostics', name) || can('textDocument', 'diagnostic', name);
  const tags = ['publishDiagnostics', 'diagnostic'].flatMap((way) => listIn(fieldAt(params, 'capabilities', 'textDocument', way, 'tagSupport', 'valueSet')));
  const pulls = has('textDocument', 'diagnostic');
  const pages = fieldAt(params, 'initializationOptions', 'pages') === 'axiswright-page';
  return {
    pulls,
    refreshesFindings: can('workspace', 'diagnostics', 'refreshSupport'),
    refreshesHints: can('workspace', 'inlayHint', 'refreshSupport'),
    relatedPlaces: ofFindings('relatedInformation'),
    unnecessaryTag: tags.includes(1),
    codeDescriptions: ofFindings('codeDescriptionSupport'),
    configuration: can('workspace', 'configuration'),
    configurationNotice: can('workspace', 'didChangeConfiguration', 'dynamicRegistration'),
    watchesFiles: can('workspace', 'didChangeWatchedFiles', 'dynamicRegistration'),
    workspaceFolders: can('workspace', 'workspaceFolders'),
    markdownHover: readsMarkdown(words('textDocument', 'hover', 'contentFormat')),
    markdownCompletion: readsMarkdown(words('textDocument', 'completion', 'completionItem', 'documentationFormat')),
    indentsCompletions: listIn(fieldAt(params, 'capabilities', 'textDocument', 'completion', 'completionItem', 'insertTextModeSupport', 'valueSet')).includes(2),
    snippets: can('textDocument', 'completion', 'completionItem', 'snippetSupport'),
    completionResolves: words('textDocument', 'completion', 'completionItem', 'resolveSupport', 'properties'),
    codeActionLiterals: has('textDocument', 'codeAction', 'codeActionLiteralSupport'),
    preferredFix: can('textDocument', 'codeAction', 'isPreferredSupport'),
    resolvesEdits: can('textDocument', 'codeAction', 'dataSupport') && words('textDocument', 'codeAction', 'resolveSupport', 'properties').includes('edit'),
    versionedEdits: can('workspace', 'workspaceEdit', 'documentChanges'),
    hintResolves: words('textDocument', 'inlayHint', 'resolveSupport', 'properties'),
    nestedSymbols: can('textDocument', 'documentSymbol', 'hierarchicalDocumentSymbolSupport'),
    linkTooltips: can('textDocument', 'documentLink', 'tooltipSupport'),
    pages,
    asksReasons: fieldAt(params, 'initializationOptions', 'askReason') === true,
    readsFiles: fieldAt(params, 'initializationOptions', 'readFile') === true,
  };
}

const isThere = (value: unknown): boolean => value !== undefined && value !== null && value !== false;

/** Clients that name no format are taken to show Markdown as it is, which reads well enough. */
const readsMarkdown = (formats: readonly string[]): boolean => formats.length === 0 || formats.includes('markdown');
