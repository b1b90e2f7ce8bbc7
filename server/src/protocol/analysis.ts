/**
 * Everything that the server asks of the services. The server's own bundle knows only the types: this one is loaded after `initialize`
 * has been answered, so that the answer does not wait for it.
 */
export { acceptanceEdits, canBeAccepted, usualEnd } from '../services/accept.ts';
export { completionsAt, figuresOfCompletion, withoutTabStops } from '../services/completion.ts';
export { elementsAt } from '../services/elements.ts';
export { standingOf } from '../services/element-checks.ts';
export { fixAll, fixesAt, searchFixes } from '../services/fixes.ts';
export { hoverAt } from '../services/hover.ts';
export { inlayHints } from '../services/inlay-hints.ts';
export { definitionAt, documentLinks, referencesAt } from '../services/links.ts';
export { outlineOf } from '../services/outline.ts';
export { hasPage, page } from '../services/pages.ts';
export { Snapshots } from '../services/snapshot.ts';
