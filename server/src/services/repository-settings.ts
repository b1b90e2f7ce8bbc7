import { readSettings, type RepositorySettings } from '../checks/settings.ts';
import { readDocument, settingsName } from '../language/read-document.ts';

export { settingsName, type RepositorySettings };

/** What the text of an `axiswright.yaml` says. */
export const settingsIn = (uri: string, text: string): RepositorySettings => readSettings(readDocument(uri, text));
