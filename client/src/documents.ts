/** Which documents the extension looks after. */
export const languageId = 'axiswright-machine';

/**
 * Where a machine description may lie. Named one by one, since a selector without a scheme also takes the old side of every comparison and every
 * version in a history view: memfs and vscode-test-web are the file systems of web workbenches without a server.
 */
const schemes = ['file', 'untitled', 'vscode-remote', 'vscode-vfs', 'memfs', 'vscode-test-web'];

export const documentSelector = schemes.map((scheme) => ({ scheme, language: languageId }));
